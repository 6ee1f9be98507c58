// The state of a job: plain data, only ever produced by folding entries.

import type { RecordKind } from './definitions.ts'
import type { CloseCause, ReadingAt } from './entries.ts'
import type { BoreVerdictRecord } from './verdict-record.ts'

export interface Given {
  readonly seq: number
  readonly atMs: number
  readonly at: string
  readonly by: string | null
  readonly shown: string
  readonly si: number | null
  readonly person: string | null
  readonly instrument: string | null
}

export interface Begun {
  readonly seq: number
  readonly atMs: number
  readonly at: string
  readonly by: string | null
  readonly shown: string
}

export interface GateState {
  /** `never` opened yet, `open`, or `closed` again after it had been open. */
  readonly status: 'never' | 'open' | 'closed'
  readonly given: Readonly<Record<string, Given>>
  /** Waits that run, and those that a given answer ended, by item. */
  readonly begun: Readonly<Record<string, Begun>>
  /** Void evidence, kept to be shown. */
  readonly struck: readonly { readonly item: string; readonly shown: string; readonly cause: CloseCause }[]
  readonly cause: CloseCause | null
  /** The cause as a clause of its own, where the plain word does not say it all. */
  readonly why: string | null
  /** People were let in and must be called out before anything is asked again. */
  readonly mustClear: boolean
}

export interface Reading extends ReadingAt {
  readonly seq: number
  readonly at: string
  readonly by: string | null
  /** Kept although doubted, and why. */
  readonly keptBecause: string | null
  /** Seq of the entry that corrected it, or null while it stands. */
  readonly correctedBy: number | null
  /** Seq of the reading that this one corrects. */
  readonly corrects: number | null
}

export interface Pending extends ReadingAt {
  readonly seq: number
  readonly at: string
  readonly by: string | null
}

export interface StopState {
  readonly seq: number
  readonly by: string | null
  readonly why: string | null
  readonly releasedBy: string | null
}

export interface VerdictState {
  readonly seq: number
  readonly verdict: BoreVerdictRecord
  readonly void: boolean
}

export interface DispositionState {
  readonly choice: string
  readonly why: string
  readonly person: string
  readonly void: boolean
  /** Who keyed what the lead said by radio; null where the lead signed. */
  readonly radio: string | null
  readonly countersigned: boolean
}

export interface State {
  readonly record: RecordKind
  readonly job: string
  readonly seq: number
  readonly lastMs: number
  readonly lastAt: string
  readonly doer: string | null
  /** Who is on the job now, the one at the keyboard among them. */
  readonly people: readonly string[]
  /** Everybody who was ever on it. */
  readonly everOn: readonly string[]
  /** Wrong PINs in a row, by person; gone with the first one that fits. */
  readonly pinMisses: Readonly<Record<string, { readonly count: number; readonly lastMs: number }>>
  readonly machineNamed: boolean
  readonly seats: Readonly<Record<string, string>>
  /** Steps answered: tell done, confirm seen, observe condition. */
  readonly done: Readonly<Record<string, string>>
  readonly findings: Readonly<Record<string, string>>
  readonly gates: Readonly<Record<string, GateState>>
  readonly readings: Readonly<Record<string, readonly Reading[]>>
  readonly notApplicable: Readonly<Record<string, string>>
  readonly doubt: (Pending & { readonly why: string }) | null
  readonly late: Pending | null
  readonly verdicts: Readonly<Record<string, VerdictState>>
  readonly dispositions: Readonly<Record<string, DispositionState>>
  readonly stops: readonly StopState[]
  /** A gate fell by time alone and nothing was done since: whatever was asked then may still be called out. */
  readonly cutShort: boolean
  readonly left: boolean
  readonly closed: string | null
}

export const EMPTY_GATE: GateState = {
  status: 'never',
  given: {},
  begun: {},
  struck: [],
  cause: null,
  why: null,
  mustClear: false,
}

export function openStop(state: State): StopState | null {
  const last = state.stops[state.stops.length - 1]
  return last !== undefined && last.releasedBy === null ? last : null
}

/** Readings of a place that stand: the first ones stay in the log, a corrected one no longer counts. */
export function standing(state: State, place: string): readonly Reading[] {
  return (state.readings[place] ?? []).filter((r) => r.correctedBy === null)
}
