// What a practice session has on record beside its job: the seed of its machine, what was asked of the machine, and what the
// trainee decided before the sheet did. Null in every other job. What the machine is like stands nowhere here.
import { readStamp } from '../lib/instant.ts'
import type { VerdictWord } from '../metrology/verdict.ts'
import type { Entry } from './entries.ts'
import type { GateState, Pending, State } from './state.ts'

export const LEVELS = [1, 2, 3, 4, 5] as const
export type Level = (typeof LEVELS)[number]

/** The same seed and level on the same files are the same machine, always. */
export interface Practised {
  readonly seed: number
  readonly level: Level
  /** Of the list of faults, and of how machines are built, that it was opened with; left out of sessions before there was one. */
  readonly edition?: string
}

export const MANNERS = ['sheet', 'quick'] as const
/** As the sheet says, or as somebody in a hurry does it. */
export type Manner = (typeof MANNERS)[number]

export type PracticeBody =
  /** The machine was looked at, or measured. */
  | {
      readonly type: 'practice.asked'
      readonly step: string | null
      /** A place of a read step, a line of a hold point, an observe step, or the plate: see `askedOf`. */
      readonly of: string
      readonly manner: Manner
      /** What was seen, in sentences. */
      readonly shown: string
      /** What the instrument showed, as it is keyed. */
      readonly figure?: string
      readonly instrument?: string
      /** The monitor on the chest sounded. */
      readonly alarm?: true
      /** It was measured anew while the reading of this entry was put right, and is for nothing else. */
      readonly corrects?: number
    }
  /** The verdict and what governs it, before the sheet shows its own. */
  | {
      readonly type: 'practice.called'
      readonly step: string
      readonly verdict: VerdictWord
      readonly governs: readonly string[]
    }
  /** What was hidden on the machine, by the ids of the faults; empty: nothing. */
  | {
      readonly type: 'practice.named'
      readonly step: string | null
      readonly faults: readonly string[]
      /** What was there: on record only from here on, when it gives nothing away; left out of older sessions. */
      readonly hidden?: readonly string[]
    }
  | { readonly type: 'practice.hinted'; readonly step: string | null; readonly text: string }

export interface Asked {
  readonly seq: number
  readonly atMs: number
  readonly of: string
  readonly manner: Manner
  readonly figure: string | null
  readonly instrument: string | null
  readonly alarm: boolean
  readonly corrects: number | null
  /** In sentences, as it stands on the sheet. */
  readonly shown: string
}

export interface Called {
  readonly seq: number
  readonly verdict: VerdictWord
  readonly governs: readonly string[]
}

export interface PracticeState extends Practised {
  readonly asked: readonly Asked[]
  /** Entries that answered what the machine is asked of, by what that is: one figure answers once. */
  readonly answered: Readonly<Record<string, readonly number[]>>
  /** Entries by which what had been seen is over, by what the machine is asked of; `EVERY_LINE`: plate and hold points, all of them. */
  readonly over: Readonly<Record<string, readonly number[]>>
  /** Entries by which a hold point was complete, by its id. */
  readonly opened: Readonly<Record<string, readonly number[]>>
  /** When the wait of a line was begun last, by what the machine is asked of there. */
  readonly begun: Readonly<Record<string, number>>
  /** When a step was confirmed last, by its id: what was done to the machine. */
  readonly confirmed: Readonly<Record<string, number>>
  readonly called: Readonly<Record<string, Called>>
  /** Hold points as they stood before the last STOP, which strikes them all: what was keyed there is told of at it. */
  readonly atStop: State['gates']
  /** A reading that waited and was taken with the last entry: it is marked there, and not before. */
  readonly kept: Pending | null
  readonly named: readonly string[] | null
  /** What was there, once it was named; null before, and in older sessions. */
  readonly hidden: readonly string[] | null
  readonly hints: number
}

export function practiceOpened(practised: Practised | undefined): PracticeState | null {
  if (practised === undefined) return null
  const empty = { asked: [], answered: {}, over: {}, opened: {}, begun: {}, confirmed: {}, called: {} }
  return { ...practised, ...empty, atStop: {}, kept: null, named: null, hidden: null, hints: 0 }
}

export const PLATE = 'plate'
export const EVERY_LINE = '*'

/** What an entry answers, named as the machine is asked for it; null where it answers nothing of the machine. */
export function askedOf(entry: Entry): string | null {
  switch (entry.type) {
    case 'machine.named':
    case 'machine.mismatched':
      return PLATE
    case 'reading.taken':
    case 'reading.doubted':
    case 'reading.late':
    case 'reading.corrected':
      return entry.place
    case 'finding.observed':
    case 'finding.corrected':
    case 'step.confirmed':
    case 'step.objected':
      return entry.step
    case 'evidence.given':
    case 'evidence.failed':
      return lineOf(entry.step, entry.item)
    default:
      return null
  }
}

/** A line of a hold point; no id holds a stroke. */
export function lineOf(step: string, item: string): string {
  return `${step}/${item}`
}

/** @param job the state before the entry. */
export function foldPractice(job: State, entry: Entry): PracticeState | null {
  if (job.practice === null) return null
  const { doubt, gates } = job
  const before = job.practice.kept === null ? job.practice : { ...job.practice, kept: null }
  const { seq } = entry
  switch (entry.type) {
    case 'practice.asked': {
      const { of, manner, figure = null, instrument = null, alarm = false, corrects = null, shown } = entry
      const atMs = readStamp(entry.at)?.ms ?? Number.NaN
      const one = { seq, atMs, of, manner, figure, instrument, alarm, corrects, shown }
      return { ...before, asked: [...before.asked, one] }
    }
    case 'practice.called': {
      const { step, verdict, governs } = entry
      return { ...before, called: { ...before.called, [step]: { seq, verdict, governs } } }
    }
    case 'practice.named':
      return { ...before, named: entry.faults, hidden: entry.hidden ?? null }
    case 'practice.hinted':
      return { ...before, hints: before.hints + 1 }
    case 'wait.begun': {
      const atMs = readStamp(entry.at)?.ms ?? Number.NaN
      const of = lineOf(entry.step, entry.item)
      // What was seen before it began says nothing of its end.
      return { ...before, begun: { ...before.begun, [of]: atMs }, over: added(before.over, [of], seq) }
    }
    case 'gate.opened':
      return { ...before, opened: added(before.opened, [entry.step], seq) }
    case 'gate.closed': {
      const fallen = fallenFor(gates[entry.step], entry).map((item) => lineOf(entry.step, item))
      return { ...before, over: added(before.over, fallen, seq) }
    }
    case 'stop.raised':
      return { ...before, atStop: gates, over: added(before.over, [EVERY_LINE], seq) }
    case 'job.left':
    case 'job.taken-up':
    case 'job.handed-over':
    case 'record.taken-in':
    case 'clock.moved':
      return { ...before, over: added(before.over, [EVERY_LINE], seq) }
    case 'doubt.settled': {
      if (entry.choice === 'kept') return { ...before, kept: doubt }
      // A slip of the keys: what was measured for it is still to be keyed.
      if (entry.choice !== 'mistyped' || doubt === null) return before
      const left = (before.answered[doubt.place] ?? []).filter((one) => one !== doubt.seq)
      return { ...before, answered: { ...before.answered, [doubt.place]: left } }
    }
    case 'late.settled':
      return entry.kept ? { ...before, kept: job.late } : before
    // What was measured for the next one is not used up by it.
    case 'reading.corrected':
      return before
    case 'evidence.failed': {
      const of = lineOf(entry.step, entry.item)
      const answered = added(before.answered, [of], seq)
      const shown = before.asked.findLast((one) => one.of === of)?.figure ?? null
      // What is really bad there has to be put right and measured anew; of a slip of the keys the figure is still to be keyed.
      const isSo = shown !== null && entry.reading?.value === Number(shown)
      return { ...before, answered, over: isSo ? added(before.over, [of], seq) : before.over }
    }
    default: {
      const of = askedOf(entry)
      if (of === null) return before
      const confirmed =
        entry.type === 'step.confirmed'
          ? { ...before.confirmed, [entry.step]: readStamp(entry.at)?.ms ?? Number.NaN }
          : before.confirmed
      return { ...before, confirmed, answered: added(before.answered, [of], seq) }
    }
  }
}

type ByLine = Readonly<Record<string, readonly number[]>>

function added(to: ByLine, lines: readonly string[], seq: number): ByLine {
  return { ...to, ...Object.fromEntries(lines.map((of) => [of, [...(to[of] ?? []), seq]])) }
}

/**
 * Lines that have to be looked at anew. Of a slip that is taken back while nobody was let in, none: nothing has changed at the machine,
 * and what is keyed there again is where it was seen. A wait begins anew in any case, and a figure has its life.
 */
function fallenFor(
  gate: GateState | undefined,
  entry: Extract<Entry, { type: 'gate.closed' }>,
): readonly string[] {
  const isSlip = gate?.status !== 'open' && (entry.cause === 'again' || entry.cause === 'corrected')
  return isSlip ? [] : entry.items
}
