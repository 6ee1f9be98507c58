// Words at the prompt of a review: what is open on the word `decide`, what a word stands in, and for all else what can be keyed.
import { type Block, row } from '../sheet/block.ts'
import type { Desk } from '../talk/desk-words.ts'
import { entriesText } from './asked-entries.ts'
import type { Exception } from './exception.ts'
import type { Review } from './review.ts'
import { sectionsOf } from './sections.ts'

const DECIDE = /\b(?:decide[ds]?|decisions?|open|due|to do)\b/
const LEAST_WORD = 3
/** The number of a lock, a tag or an instrument: `T-3`, `V-41`, `L-12`, `P7`, `SP-204B`. */
const TAG = /^(?:\p{L}{1,3}[-_])?\p{L}{1,4}[-_ ]?\d{1,5}\p{L}?$/u

/** The first row of the first block is a heading. Null where no word was keyed: a number is none. */
export function wordBlocks(review: Review, keyed: string): Block[] | null {
  const asked = keyed.trim().toLowerCase()
  const isTag = TAG.test(asked)
  if (!isTag && !/\p{L}{2}/u.test(asked)) return null
  if (DECIDE.test(asked)) return openBlocks(review)
  const found = review.exceptions.filter((one) => (isTag ? namesTag(one, asked) : standsIn(one, asked)))
  if (isTag && found.length === 0) return noTag(review, keyed.trim())
  if ((isTag || asked.length >= LEAST_WORD) && found.length > 0)
    return [
      heading(`${found.length} with "${asked}" in ${found.length === 1 ? 'it' : 'them'}`),
      ...found.map(asLine),
    ]
  return [
    heading(asked === 'help' ? 'What can be keyed here' : 'No such word here. What can be keyed'),
    { margin: '', rows: keysOf(review).map((text) => row(text)) },
  ]
}

/** The one item in which a tag, lock or instrument stands, to be opened at once; null for none, or for several. */
export function itemOfTag(review: Review, keyed: string): number | null {
  const asked = keyed.trim().toLowerCase()
  if (!TAG.test(asked)) return null
  const [one, ...others] = review.exceptions.filter((exception) => namesTag(exception, asked))
  return one === undefined || others.length > 0 ? null : one.number
}

/** Whether it is the number of a lock, a tag or an instrument, and no item names it: the log may. */
export function isTagOfNone({ exceptions }: Review, keyed: string): boolean {
  const asked = keyed.trim().toLowerCase()
  return TAG.test(asked) && !exceptions.some((exception) => namesTag(exception, asked))
}

/** Whole: T-1 does not stand in T-14. */
function namesTag({ what, sentences }: Exception, asked: string): boolean {
  const plain = asked.replace(/[-_ ]/g, '')
  const words =
    [what, ...sentences]
      .join(' ')
      .toLowerCase()
      .match(/[\p{L}\d]+(?:[-_][\p{L}\d]+)*/gu) ?? []
  return words.some((word) => word === asked || word.replace(/[-_]/g, '') === plain)
}

function noTag({ started }: Review, keyed: string): Block[] {
  const hung = (started?.hung ?? []).filter((text) =>
    text.toLowerCase().startsWith(`${keyed.toLowerCase()}:`),
  )
  return [
    heading(`${keyed} stands in no item of this list`),
    {
      margin: '',
      rows: [
        ...hung.map((text) => row(`On when it was started, ${text}`)),
        row('barover show has the whole sheet, with every number that was keyed.'),
      ],
    },
  ]
}

/** What somebody still has to do something about, each under its number. */
export function openBlocks({ exceptions }: Review): Block[] {
  const open = exceptions.filter((one) => one.open)
  if (open.length === 0) return [heading('Nothing in this list is open.')]
  return [
    heading(`Open: ${open.length}`),
    ...open.map((one): Block => {
      const behind = one.entries.length === 0 ? '' : ` (${entriesText(one.entries)})`
      return { margin: String(one.number), rows: [row(`${one.what}${behind}`, 'caution')] }
    }),
  ]
}

/** What a lead can do here, each in a word; then what is still open, and what is done elsewhere. */
export function actBlocks(review: Review, { acts, elsewhere, toClose }: Desk): Block[] {
  const [first, ...rest] = openBlocks(review)
  const lines = [
    ...acts.map(({ word, says }) => row(`${word}: ${says}`)),
    ...(review.isClosed ? [] : [row('stop: STOP, as everywhere')]),
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
    'A tag, lock or instrument, as T-9: the number it stands in. A time, as 10:45: what was keyed then.',
    'A question in your own words: it is answered from the log, or what is nearest to it is shown.',
    'what went wrong, why was it accepted, is it safe to run, who signed, what is open, when is the next overhaul.',
    'what did they find, who took the bore readings, why did the hold point fall.',
    'And of the log: who decided and why, who released the stop, in what order did it happen, when was the gas tested, 7.3.',
    'Why a verdict is as it is: behind its number.',
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
