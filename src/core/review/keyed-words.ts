// Words at the prompt of a review: what is open on the word `decide`, what a word stands in, and for all else what can be keyed.
import { type Block, row } from '../sheet/block.ts'
import type { Desk } from '../talk/desk-words.ts'
import type { Exception } from './exception.ts'
import type { Review } from './review.ts'
import { sectionsOf } from './sections.ts'

const DECIDE = /\b(?:decide[ds]?|decisions?|open|due|to do)\b/
const LEAST_WORD = 3

/** The first row of the first block is a heading. Null where no word was keyed: a number is none. */
export function wordBlocks(review: Review, keyed: string): Block[] | null {
  const asked = keyed.trim().toLowerCase()
  if (!/\p{L}{2}/u.test(asked)) return null
  if (DECIDE.test(asked)) return openBlocks(review)
  const found = review.exceptions.filter((one) => standsIn(one, asked))
  if (asked.length >= LEAST_WORD && found.length > 0)
    return [
      heading(`${found.length} with "${asked}" in ${found.length === 1 ? 'it' : 'them'}`),
      ...found.map(asLine),
    ]
  return [
    heading('No such word here. What can be keyed'),
    { margin: '', rows: keysOf(review).map((text) => row(text)) },
  ]
}

/** What somebody still has to do something about, each under its number. */
function openBlocks({ exceptions }: Review): Block[] {
  const open = exceptions.filter((one) => one.open)
  if (open.length === 0) return [heading('Nothing in this list is open.')]
  return [heading(`Open: ${open.length}`), ...open.map(asLine)]
}

/** What a lead can do here, each in a word; then what is still open, and what is done elsewhere. */
export function actBlocks(review: Review, { acts, elsewhere, toClose }: Desk): Block[] {
  const [first, ...rest] = openBlocks(review)
  const lines = [
    ...acts.map(({ word, says }) => row(`${word}: ${says}`)),
    row('stop: STOP, as everywhere', 'plain'),
    ...(toClose.length === 0 ? [] : [row('Before it closes', 'strong')]),
    ...toClose.map((text) => row(text)),
    row('Not from here', 'strong'),
    ...elsewhere.map((text) => row(text)),
  ]
  return [
    heading('What a lead does here, each by its word; initials and PIN are asked'),
    { margin: '', rows: lines },
    ...(first === undefined ? [] : [first]),
    ...rest,
  ]
}

/** Of a word that is a lead's and does nothing as the job stands: why, and what does. */
export function whyNotBlocks(word: string, lines: readonly string[]): Block[] {
  return [heading(`${word}: not now`), { margin: '', rows: lines.map((text) => row(text)) }]
}

function keysOf(review: Review): string[] {
  const last = sectionsOf(review).at(-1)?.number ?? review.exceptions.length
  return [
    `1 to ${last}: what is behind that number, with every entry and, of a verdict, its sums.`,
    '3-9: those numbers, a line each. entry 214: that entry of the log.',
    'act: what a lead can do here. decide: what is open, too.',
    'Any word of the list: the numbers it stands in.',
    'A question is not answered here: why is behind the number of the verdict.',
  ]
}

function standsIn({ what, sentences }: Exception, asked: string): boolean {
  return [what, ...sentences].some((text) => text.toLowerCase().includes(asked))
}

const heading = (text: string): Block => ({ margin: '', rows: [row(text, 'strong')] })

const asLine = ({ number, what, open }: Exception): Block => ({
  margin: String(number),
  rows: [row(what, open ? 'caution' : 'plain')],
})
