// Questions about the work at the prompt of a review: why hold points fell, what was found, who keyed the readings. From the items
// of the review, and from who keyed what.
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { type State, stands } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { type Block, row } from '../sheet/block.ts'
import { entriesText } from './asked-entries.ts'
import type { Exception, Kind } from './exception.ts'
import { count, named } from './look.ts'
import type { Review } from './review.ts'

const FALLS: readonly Kind[] = ['gate', 'start-clear', 'gate-proved', 'gate-after', 'gate-void']

/** Each item on hold points with its times and causes; of those with a number in the question only these, where there are any. */
export function whyItFell(review: Review, asked: string): Block[] {
  const all = review.exceptions.filter(({ kind }) => FALLS.includes(kind))
  const numbers: readonly string[] = asked.match(/\b\d{1,4}\b/g) ?? []
  const named = all.filter(({ what }) => numbers.some((n) => new RegExp(`(?:^|: )${n} `).test(what)))
  const planned = review.usual.find((text) => text.startsWith('hold points fell'))
  const meant = planned === undefined ? [] : [said(`As usual: ${planned}.`)]
  if (all.length === 0)
    return [
      heading('No hold point failed or fell otherwise than by a step that is meant to, by this record'),
      ...meant,
    ]
  return [
    heading('Why hold points failed or fell, by this record; a number opens it'),
    ...(named.length === 0 ? all : named).map(
      (one): Block => ({
        margin: String(one.number),
        rows: [
          row(one.what, one.open ? 'caution' : 'strong'),
          ...one.sentences.map((text) => row(`  ${text}`)),
        ],
      }),
    ),
    ...meant,
  ]
}

const FOUND: readonly Kind[] = ['verdict', 'finding', 'close', 'objection']

export function whatWasFound(review: Review): Block[] {
  const found = review.exceptions.filter(({ kind }) => FOUND.includes(kind))
  const accepted = review.usual.find((text) => /\bverdicts? ACCEPT$/.test(text))
  return [
    heading(
      found.length === 0
        ? 'Nothing that does not conform and nothing near its limit is on record'
        : 'What does not conform or is near its limit, by this record; a number opens it',
    ),
    ...found.map(asLine),
    said(accepted === undefined ? 'No verdict is ACCEPT.' : `Beside that ${accepted}.`),
  ]
}

/** Words that name no step. */
const NO_NAME =
  /^(?:who|took|takes?|taken|the|this|that|those|did|was|were|has|had|reads?|readings?|keyed|measured?|figures?|and|all|of)$/

/** For each step that was read: how many stand, who keyed them, and with what. Those whose title or thing the question names, where there are any. */
export function whoKeyed(defs: Definitions, state: State, asked: string): Block[] {
  const words = (asked.match(/\p{L}{3,}/gu) ?? []).filter((word) => !NO_NAME.test(word))
  const read = defs.steps.flatMap((placed) => {
    const lines = linesOf(placed, state)
    return lines === null ? [] : [{ placed, text: lines }]
  })
  const meant = read.filter(({ placed }) => words.some((word) => nameOf(placed).includes(word)))
  if (words.length > 0 && meant.length === 0 && read.length > 0)
    return [
      heading(`No reading that stands is of ${list(words, 'or')}, by the names of the steps`),
      said('Who keyed all of them: who took the readings.'),
    ]
  const told = meant.length === 0 ? read : meant
  return [
    heading(
      told.length === 0
        ? 'No reading stands in this record'
        : 'Who keyed the readings that stand, step by step',
    ),
    ...told.map(({ placed, text }) => said(`${named(placed)}: ${text}.`)),
    ...(told.length === 0 ? [] : [said('Who is at the keys is on record; who held the gauge is not.')]),
  ]
}

/** `12 readings, keyed by RO 09:00 to 09:04, with M-3`; null where nothing stands. */
function linesOf({ id, step }: PlacedStep, { readings }: State): string | null {
  if (step.kind !== 'read') return null
  const own = Object.values(readings)
    .flat()
    .filter((one) => one.step === id && stands(one))
    .sort((a, b) => a.seq - b.seq)
  if (own.length === 0) return null
  const who = [...new Set(own.map(({ by }) => by ?? 'nobody signed on'))].map((by) => {
    const times = own.filter((one) => (one.by ?? 'nobody signed on') === by).map(({ at }) => at)
    const [from = '', to = ''] = [times[0], times.at(-1)].map((at) => at?.slice(0, 16).replace('T', ' '))
    return `${by} ${from}${from === to ? '' : ` to ${to.slice(0, 10) === from.slice(0, 10) ? to.slice(11) : to}`}`
  })
  const withWhat = [...new Set(own.map(({ instrument }) => instrument))]
  return `${count(own.length, 'reading')}, keyed by ${list(who)}, with ${list(withWhat)} (${entriesText(own.map(({ seq }) => seq))})`
}

function nameOf({ step }: PlacedStep): string {
  return `${step.title} ${step.kind === 'read' ? (step.of ?? '') : ''}`.toLowerCase()
}

const heading = (text: string): Block => ({ margin: '', rows: [row(text, 'strong')] })
const said = (text: string): Block => ({ margin: '', rows: [row(text)] })
const asLine = ({ number, what, open }: Exception): Block => ({
  margin: String(number),
  rows: [row(`${open ? 'OPEN: ' : ''}${what}`, open ? 'caution' : 'plain')],
})
