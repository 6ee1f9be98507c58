// Whether it may run, asked at a review: it is never answered with a yes. What is open, what runs on although it does not conform, and
// what somebody told of danger are named with their numbers.
import type { Entry } from '../job/entries.ts'
import { nonconformances } from '../job/nonconformance.ts'
import { type Block, row } from '../sheet/block.ts'
import { safetyAsked } from '../talk/safety-asked.ts'
import { heading, type OnRecord, said } from './asked-entries.ts'
import { RUNS_ON } from './decided.ts'
import type { Exception, Kind } from './exception.ts'

/** Locks that are on, people not told clear: what could hurt whoever believes that nothing is open. */
const COULD_HURT: readonly Kind[] = [
  'started',
  'stop',
  'danger',
  'machine',
  'gate',
  'hanging',
  'unmeasured',
  'deadline',
]

export function isItSafe(record: OnRecord): Block[] {
  const { exceptions, standing } = record.review
  const open = exceptions.filter((one) => one.open)
  const runsOn = numbersOf(runsOnAsItIs(record))
  const told = numbersOf(toldOfHarm(record))
  const closed = exceptions.filter((one) => !one.open)
  const asIs = closed.filter((one) => runsOn.has(one.number))
  const harm = closed.filter((one) => told.has(one.number) && !runsOn.has(one.number))
  const rest = closed.filter(
    (one) => COULD_HURT.includes(one.kind) && !runsOn.has(one.number) && !told.has(one.number),
  )
  return [
    heading('No record tells that, and this one does not'),
    said(
      `It stands as: ${standing}.`,
      open.length === 0
        ? 'Nothing in this list is open. That is no word that it may run.'
        : 'Open by this record:',
    ),
    ...open.map(asLine),
    ...under('It does not conform, and runs on as it is by the word of a lead:', asIs, untilWhen),
    ...under('Somebody told of danger:', harm),
    ...under('Not open, and to be known before anybody decides:', rest),
    said('Whether it runs, a lead decides at the machine, by permit and the maker’s manual.'),
  ]
}

const under = (
  title: string,
  all: readonly Exception[],
  more: (one: Exception) => readonly string[] = () => [],
): Block[] =>
  all.length === 0
    ? []
    : [
        said(title),
        ...all.map((one) => {
          const line = asLine(one)
          return { ...line, rows: [...line.rows, ...more(one).map((text) => row(`  ${text}`))] }
        }),
      ]

const untilWhen = ({ sentences }: Exception) => sentences.filter((text) => /^On the authority of /.test(text))

const numbersOf = (all: readonly Exception[]) => new Set(all.map(({ number }) => number))

/** What stands, does not conform, and was accepted or conceded. MONITOR that was accepted conforms: a concession on it is told. */
function runsOnAsItIs({ defs, state, review }: OnRecord): Exception[] {
  const seqs = nonconformances(defs, state).flatMap(({ stands, decided, word, seq }) =>
    stands &&
    decided !== null &&
    RUNS_ON.includes(decided.choice) &&
    !(word === 'MONITOR' && decided.choice === 'accept')
      ? [seq]
      : [],
  )
  return review.exceptions.filter(
    ({ kind, entries }) =>
      (kind === 'verdict' || kind === 'finding') && seqs.some((seq) => entries[0] === seq),
  )
}

/** Notes, remarks and answers that something is not as it should be, in words that tell of danger. */
function toldOfHarm({ review, entries }: OnRecord): Exception[] {
  return review.exceptions.filter(
    (one) =>
      one.kind === 'danger' ||
      (MAY_TELL.includes(one.kind) && one.entries.some((seq) => tellsOfDanger(wordsOf(entries[seq])))),
  )
}

const MAY_TELL: readonly Kind[] = ['note', 'remark', 'objection']

function wordsOf(entry: Entry | undefined): string {
  switch (entry?.type) {
    case 'note.written':
    case 'remark.made':
      return entry.text
    case 'step.objected':
      return entry.remark
    default:
      return ''
  }
}

/** Wider than what closes a hold point or calls for a STOP: something lost inside or gone wrong is to be known too. */
function tellsOfDanger(text: string): boolean {
  const about = safetyAsked(text)
  return about !== null && DANGERS.includes(about)
}

const DANGERS: readonly (string | null)[] = [
  ...(['hurt', 'no-answer', 'alarm', 'starts', 'bad-air', 'off', 'missing', 'wrong'] as const),
]

const asLine = ({ number, what, open }: Exception): Block => ({
  margin: String(number),
  rows: [row(`${open ? 'OPEN: ' : ''}${what}`, open ? 'caution' : 'plain')],
})
