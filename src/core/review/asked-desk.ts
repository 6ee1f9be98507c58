// What a lead asks who was not there and does not take it on trust: how long, who was in, what was left out, who did what, whose limits,
// whether one both measured and decided. From entries and items of this record; what nobody keyed is said to be not told.
import { type PlacedStep, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { gatesOf } from '../job/gate.ts'
import { nonconformances } from '../job/nonconformance.ts'
import { clockOf, readStamp } from '../lib/instant.ts'
import { list } from '../lib/wording.ts'
import { type Block, row } from '../sheet/block.ts'
import { becauseRows } from '../sheet/verdict-block.ts'
import { leftOut, leftOutCount } from '../talk/left-out.ts'
import { instrumentName, nonconformanceText } from '../talk/names.ts'
import { asItem, entriesText, heading, linesWhere, notTold, type OnRecord, said } from './asked-entries.ts'
import { offLines } from './asked-gauge.ts'
import { lapsesTold } from './asked-lapse.ts'
import { placedText } from './asked-stands.ts'
import { heldIn, wordsAsked } from './asked-words.ts'
import type { Kind } from './exception.ts'
import { count, named } from './look.ts'
import { sectionsOf } from './sections.ts'
import { namesPerson } from './whole-text.ts'

/** Items of these kinds with all that they say; `none`: where there are none. */
function itemsTold({ review }: OnRecord, kinds: readonly Kind[], title: string, none: string): Block[] {
  const all = review.exceptions.filter(({ kind }) => kinds.includes(kind))
  if (all.length === 0) return [heading(none)]
  return [
    heading(title),
    ...all.map((one): Block => {
      const [first] = asItem(one).rows
      return {
        margin: String(one.number),
        rows: [...(first === undefined ? [] : [first]), ...one.sentences.map((text) => row(`  ${text}`))],
      }
    }),
  ]
}

const COURSE: readonly Entry['type'][] = [
  ...(['job.opened', 'person.signed-on', 'person.came-on', 'person.signed-off', 'job.handed-over'] as const),
  ...(['job.left', 'job.taken-up', 'stop.raised', 'stop.released', 'job.closed'] as const),
]

/** From the first entry to the last, and when somebody came, went, handed over or left it. */
export function howLongTold(record: OnRecord): Block[] {
  const { entries, state } = record
  const [first, last] = [entries[0], entries.findLast((e) => e.type === 'job.closed') ?? entries.at(-1)]
  const [from, to] = [readStamp(first?.at ?? ''), readStamp(last?.at ?? '')]
  const span =
    from === null || to === null || !(to.ms >= from.ms)
      ? 'Its times cannot be held against each other.'
      : `From ${first?.at.slice(0, 10)} ${clockOf(from)} to ${last?.at.slice(0, 10)} ${clockOf(to)}, ${spanText(to.ms - from.ms)} by the clock of the log${state.closed === null ? '; it is open' : ''}.`
  return [
    heading(span),
    said(
      ...linesWhere(record, ({ entry }) => COURSE.includes(entry.type)),
      'How long anybody worked it does not tell: these are the times of keying.',
    ),
  ]
}

function spanText(ms: number): string {
  const minutes = Math.round(ms / 60_000)
  return minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`
}

/** At most so many hold points, each with when it was complete and when people were keyed clear. */
const MOST_GATES = 6

/** Who was behind a hold point no record tells: when it was complete, when it fell, and when people were keyed clear. */
export function whoWasInTold(record: OnRecord, asked: string): Block[] {
  if (/\b(?:gas|air|oxygen|test(?:ed|s)?)\b/.test(asked)) return whoWasInOnGas(record, asked)
  const words = wordsAsked(asked)
  const all = gatesOf(record.defs).filter(({ id }) =>
    record.entries.some((e) => OPEN_OR_NOT.includes(e.type) && isOf(e, id)),
  )
  const meant = all.filter((gate) => heldIn(named(gate), words) > 0)
  const told = meant.length === 0 ? all : meant
  return [
    heading('Who was in, and for how long, the log does not tell: it sees nobody'),
    said(`On the job were ${list(record.review.people)}, by signing on or for something.`),
    ...told.slice(0, MOST_GATES).map((gate) => whenOpen(record, gate)),
    ...(told.length > MOST_GATES
      ? [
          said(
            `and ${told.length - MOST_GATES} more hold points: ${told.slice(MOST_GATES).map(named).join('; ')}. One by its words, as: who was in at the bench.`,
          ),
        ]
      : []),
  ]
}

/** Every hold point with a gas test in it, whatever its name: which of them fell as a test was past its life, and which did not. */
function whoWasInOnGas(record: OnRecord, asked: string): Block[] {
  const tested = gatesOf(record.defs).filter(
    (gate) =>
      gate.step.evidence.some(({ kind }) => kind === 'gas') &&
      record.entries.some((e) => isOpened(e, gate.id)),
  )
  const lapsed = new Set(
    record.entries.flatMap((e) => (e.type === 'gate.closed' && e.cause === 'lapsed' ? [e.step] : [])),
  )
  const never = tested.filter(({ id }) => !lapsed.has(id))
  return [
    heading('Who was in, and for how long, the log does not tell: it sees nobody'),
    said(`On the job were ${list(record.review.people)}, by signing on or for something.`),
    ...lapsesTold(record, `gas ${asked}`),
    ...(never.length === 0 ? [] : [said('With gas tests, and never fallen by one past its life:')]),
    ...never.slice(0, MOST_GATES).map((gate) => whenOpen(record, gate)),
    ...(never.length > MOST_GATES
      ? [said(`and ${never.length - MOST_GATES} more: ${never.slice(MOST_GATES).map(named).join('; ')}.`)]
      : []),
    said('Each figure of each hold point, with its time: when was the gas tested.'),
  ]
}

/** When one was complete, when it fell, and when people were keyed clear of it. */
function whenOpen(record: OnRecord, gate: PlacedStep): Block {
  const lines = linesWhere(record, ({ entry }) => OPEN_OR_NOT.includes(entry.type) && isOf(entry, gate.id))
  const more = lines.length - MOST_GATES
  return {
    margin: '',
    rows: [
      row(named(gate), 'strong'),
      ...lines.slice(0, MOST_GATES).map((text) => row(`  ${text}`)),
      ...(more > 0 ? [row(`  and ${more} more: why did hold point ${gate.number} fall`)] : []),
    ],
  }
}

const OPEN_OR_NOT: readonly Entry['type'][] = ['gate.opened', 'gate.closed', 'people.clear']
const isOf = (entry: Entry, gate: string) => 'step' in entry && entry.step === gate
const isOpened = (e: Entry, gate: string) => e.type === 'gate.opened' && e.step === gate

/** From the first entry that has somebody in it to the last. Null: nobody of the crew file is named. */
export function personSpanTold(record: OnRecord, asked: string): Block[] | null {
  const { defs, entries } = record
  const id = defs.crew.crew.find((one) => new RegExp(`\\b${one.id}\\b`, 'i').test(asked))?.id
  if (id === undefined) return null
  const own = entries.filter((e) => e.by === id || ('person' in e && e.person === id))
  const [first, last] = [own[0], own.at(-1)]
  const [from, to] = [readStamp(first?.at ?? ''), readStamp(last?.at ?? '')]
  if (first === undefined || last === undefined || from === null || to === null || !(to.ms >= from.ms))
    return [notTold(`of ${id}: no entry, or none whose time can be read`)]
  return [
    heading(
      `No entry tells how long ${id} worked. Between the first entry with ${id} and the last: ${spanText(to.ms - from.ms)}`,
    ),
    said(
      ...linesWhere(
        record,
        ({ entry }) =>
          entry.seq === first.seq ||
          entry.seq === last.seq ||
          (COURSE.includes(entry.type) && own.some(({ seq }) => seq === entry.seq)),
      ),
      'Rests, and whatever nobody keyed, are in no log.',
    ),
  ]
}

/** Left out by rule, entered as n/a, never done or never settled. */
export function leftUndoneTold(record: OnRecord): Block[] {
  const { review, defs, state } = record
  const n = leftOutCount(leftOut(defs, state))
  const section = sectionsOf(review).find(({ name }) => /left out/i.test(name))
  const kinds: readonly Kind[] = [
    'unmeasured',
    'close',
    'objection',
    'open',
    'missing',
    'not-applicable',
    'deviation',
  ]
  const items = review.exceptions.filter(({ kind }) => kinds.includes(kind) && kind !== 'close')
  return [
    heading(
      items.length === 0
        ? 'Nothing that was asked stands undone, n/a or not settled, by this record'
        : 'What was asked and is not done, not judged again, n/a or not settled; a number opens it',
    ),
    ...items.map(asItem),
    said(
      n === 0
        ? 'No step was left out by its own condition.'
        : `${count(n, 'step')} left out by their own condition${section === undefined ? '' : `: behind ${section.number}`}.`,
      'What no step asks nobody was asked to do: the log does not tell of it.',
    ),
  ]
}

/** A limit from a book with its source; of a figure that is named, where it stands. */
export function whoseLimitsTold(record: OnRecord, asked: string): Block[] {
  const [figure] = asked.match(/\d+(?:\.\d+)?/) ?? []
  const { defs, state } = record
  const lines = defs.steps.flatMap((placed) => {
    const given = state.verdicts[placed.id]
    if (given === undefined || figure === undefined) return []
    return becauseRows(defs, given.verdict)
      .map(({ text }) => text.trim())
      .filter((text) => text.includes(figure))
      .map((text) => `${named(placed)}: ${text} (entry ${given.seq})`)
  })
  if (lines.length > 0)
    return [heading(`Where ${figure} stands beside a verdict, with its source`), said(...lines)]
  return itemsTold(
    record,
    ['fallback'],
    'Limits that are not the machine’s own, with book and page',
    'No verdict of this log rests on a fall-back limit',
  )
}

/** All that bears a person: keyed, signed, witnessed, decided. Null: nobody of the crew file is named. */
export function personTold(record: OnRecord, asked: string): Block[] | null {
  const { defs, entries } = record
  const person = defs.crew.crew.find(({ id }) => new RegExp(`\\b${id}\\b`, 'i').test(asked))
  if (person === undefined) return null
  const { id } = person
  const keyed = entries.filter((e) => e.by === id)
  // Also in the words of others: who cut a lock may stand in a reason alone.
  const signed = entries.filter((e) => namesPerson(e, id))
  const steps = [
    ...new Set(keyed.flatMap((e) => ('step' in e && typeof e.step === 'string' ? [e.step] : []))),
  ]
  if (keyed.length + signed.length === 0)
    return [heading(`${id} ${person.name}, ${person.role}, is in no entry of this log`)]
  const lines = linesWhere(record, ({ entry }) => signed.includes(entry) && entry.type !== 'pin.fitted')
  return [
    heading(
      `${id} ${person.name}, ${person.role}: ${count(keyed.length, 'entry', 'entries')} keyed, ${id} named in ${signed.length}, signatures and words of others among them`,
    ),
    said(
      ...(steps.length === 0
        ? []
        : [`Keyed at ${count(steps.length, 'sheet')}: ${numbersText(record, steps)}.`]),
      ...lines.slice(0, MOST_LINES),
      ...(lines.length > MOST_LINES
        ? [`and ${lines.length - MOST_LINES} more: barover report, signatures.`]
        : []),
      entries.some((e) => ON.includes(e.type) && 'person' in e && e.person === id)
        ? `Came onto the job by the entries above; where ${id} stood no entry tells.`
        : `No entry signs ${id} on: ${id} is in it by what is above alone, and where ${id} stood no entry tells.`,
      'Who keyed is on record; whose hands did the work is not.',
    ),
  ]
}

const ON: readonly Entry['type'][] = ['person.signed-on', 'person.came-on']

const MOST_LINES = 12

function numbersText({ defs }: OnRecord, steps: readonly string[]): string {
  const numbers = steps.map((id) => stepById(defs, id).number).sort((a, b) => a - b)
  const shown = numbers.slice(0, MOST_LINES).join(', ')
  return numbers.length > MOST_LINES ? `${shown} and ${numbers.length - MOST_LINES} more` : shown
}

/** For each decision who decided, and who keyed the readings that its verdict rests on. */
export function apartTold(record: OnRecord): Block[] {
  const { defs, state, entries, review } = record
  const ncs = nonconformances(defs, state)
  const lines = entries.flatMap((d) => {
    if (d.type !== 'disposition.set') return []
    const verdict = entries.findLast((v) => v.type === 'verdict.given' && v.step === d.about && v.seq < d.seq)
    const seqs = verdict?.type === 'verdict.given' ? verdict.verdict.readings : []
    const by = [...new Set(seqs.map((seq) => entries[seq]?.by ?? 'nobody signed on'))]
    const nc = ncs.findLast(({ step, seq }) => step === d.about && seq < d.seq)
    const about = nc === undefined ? named(stepById(defs, d.about)) : nonconformanceText(defs, nc)
    const same = by.includes(d.person) ? ', THE SAME' : ''
    return [
      `${about}: decided by ${d.person} (entry ${d.seq}), ${by.length === 0 ? 'it rests on no reading' : `its readings keyed by ${list(by)}${same}`}.`,
    ]
  })
  const asked = review.exceptions.filter(({ kind }) => kind === 'crew')
  return [
    heading(
      lines.length === 0
        ? 'No decision of a lead is in this log'
        : 'Who decided, and who keyed the readings behind it',
    ),
    said(...lines),
    ...(asked.length === 0 ? [] : [said('And asked about who signed:'), ...asked.map(asItem)]),
    said('Whose hand held the gauge, or whether one keyed for another, the log does not tell.'),
  ]
}

/** Those who witnessed, hold point by hold point; of those that the question names, where it names any. */
export function witnessesTold(record: OnRecord, asked: string): Block[] {
  const words = wordsAsked(asked).filter((word) => !/^witness/.test(word))
  const all = gatesOf(record.defs).flatMap((gate) => {
    const ids = new Set(gate.step.evidence.flatMap((one) => (one.kind === 'witness' ? [one.id] : [])))
    const lines = linesWhere(
      record,
      ({ entry }) => entry.type === 'evidence.given' && entry.step === gate.id && ids.has(entry.item),
    )
    return lines.length === 0 ? [] : [{ gate, lines }]
  })
  if (all.length === 0) return [notTold('of any witness: none is in it')]
  const meant = all.filter(({ gate }) => heldIn(named(gate), words) > 0)
  return [
    heading('Witnesses, as they signed; also of what has fallen since'),
    ...(meant.length === 0 ? all : meant).map(
      ({ gate, lines }): Block => ({
        margin: '',
        rows: [row(named(gate), 'strong'), ...lines.map((text) => row(`  ${text}`))],
      }),
    ),
    said('What a witness saw is on record by that signature alone.'),
  ]
}

/** Each instrument that read, with its certificate and the day until which it counts, held against the day of its last figure. */
export function calibrationTold(record: OnRecord): Block[] {
  const { defs, entries, review } = record
  const lines = defs.instruments.instruments.flatMap((one) => {
    const own = entries.filter((e) => 'instrument' in e && e.instrument === one.id)
    const last = own.at(-1)
    if (last === undefined) return []
    const isIn = last.at.slice(0, 10) <= one.calibration.due
    return [
      `${instrumentName(defs, one.id)}: until ${one.calibration.due}, certificate ${one.calibration.certificate}; ${isIn ? 'not past it' : 'PAST IT'} on ${last.at.slice(0, 10)} (${entriesText(own.map(({ seq }) => seq))}).`,
    ]
  })
  const out = review.exceptions.filter(({ kind }) => kind === 'instrument')
  return [
    heading(
      lines.length === 0
        ? 'No instrument is in this log'
        : 'Instruments of this log, with the day until which their calibration counts',
    ),
    ...offOnes(offLines(record)),
    // Before the days: one that was found out was inside its day until then.
    ...(out.length === 0
      ? [said('No entry puts one back as out of calibration.')]
      : [said('Found out, or put back:'), ...out.map(asItem), said('By their days:')]),
    said(...lines),
    said('Whether it was the right one to take, and how it was held, no record tells.'),
  ]
}

const offOnes = (off: readonly string[]): Block[] =>
  off.length === 0
    ? []
    : [
        said(
          'OFF ITS STANDARD by more than the register allows, whatever its day; what is judged on it is HOLD:',
          ...off,
        ),
      ]

export const repeatsTold = (record: OnRecord) =>
  itemsTold(
    record,
    ['apart', 'doubted'],
    'Places that were read once more, and figures that were doubted',
    'No place was read more often than asked, and no figure was doubted',
  )

export const paceTold = (record: OnRecord) =>
  itemsTold(
    record,
    ['improbable', 'clock'],
    'What looks improbable or out of time, asked and not accused',
    'Nothing of the pace, of figures too alike or of the clock stands in this list; that is no word that nothing was hurried',
  )

/** Of what is counted in and out, and that all are told: in the words that were keyed. */
const COUNTED = /\b(?:tools?|rags?|count|counted|nothing left|all told|clean and empty|clear)\b/i

/** What was placed and is not accounted for, what hangs, and what was keyed of tools and rags. */
export function leftInsideTold(record: OnRecord): Block[] {
  const { state, review } = record
  const lines = linesWhere(
    record,
    ({ entry }) =>
      ((entry.type === 'evidence.given' ||
        entry.type === 'step.confirmed' ||
        entry.type === 'people.clear') &&
        COUNTED.test(
          `${'shown' in entry ? entry.shown : ''} ${'item' in entry ? entry.item : ''} ${stepById(record.defs, entry.step).step.title}`,
        )) ||
      entry.type === 'thing.accounted',
  )
  const items = review.exceptions.filter(({ kind }) => kind === 'hanging' || kind === 'hung')
  return [
    heading('What is left inside no record tells: somebody has to have looked'),
    said(placedText(state)),
    ...items.map(asItem),
    ...(lines.length === 0
      ? [said('No entry tells of tools or rags that were counted.')]
      : [said('Keyed of what was counted or clear, the last of it:', ...lines.slice(-MOST_LINES))]),
  ]
}
