// The state of a job: plain data, only ever produced by folding entries.

import { oncePer } from '../lib/once.ts'
import type { AttachedFile } from './attachment.ts'
import type { RecordKind } from './definitions.ts'
import type { JobSeen } from './elsewhere.ts'
import type { CloseCause, ReadingAt } from './entries.ts'
import type { FellWith } from './fell-with.ts'
import type { PaperState } from './paper.ts'
import type { PracticeState } from './practice.ts'
import type { Thing } from './register.ts'
import type { StopCause } from './stop-causes.ts'
import type { Validity } from './validity.ts'
import type { VerdictRecord } from './verdict-record.ts'

export interface Given {
  readonly seq: number
  readonly atMs: number
  readonly at: string
  readonly by: string | null
  readonly shown: string
  readonly si: number | null
  readonly person: string | null
  readonly instrument: string | null
  /** Who took it off, where that was asked. */
  readonly offBy?: string
  /** Name that the number was noted under. */
  readonly notes?: string
}

export interface Begun {
  readonly seq: number
  readonly atMs: number
  readonly at: string
  readonly by: string | null
  readonly shown: string
}

/** Of void evidence: what was keyed, by whom and when, and why it fell. */
export type Struck = Pick<Given, 'seq' | 'at' | 'by' | 'shown'> & {
  readonly item: string
  readonly cause: CloseCause
  /** Of what somebody took back as a slip: what had been shown for it before, when the hold point fell. */
  readonly before?: Keying
}

/** What was keyed, by whom and when. */
export type Keying = Pick<Given, 'seq' | 'at' | 'by' | 'shown'>

/** A number that is keyed again later in the job. */
export interface Noted {
  readonly shown: string
  /** The gate that it was noted at. */
  readonly step: string
  /** Another one was keyed since: it stays so until a lead has released a STOP. */
  readonly differs: boolean
  /** It was taken back where it was noted, and not noted anew since. */
  readonly takenBack: boolean
}

export interface GateState {
  /** `never` opened yet, `open`, or `closed` again after it had been open. */
  readonly status: 'never' | 'open' | 'closed'
  readonly given: Readonly<Record<string, Given>>
  /** Waits that run, and those that a given answer ended, by item. */
  readonly begun: Readonly<Record<string, Begun>>
  /** Void evidence, kept to be shown. */
  readonly struck: readonly Struck[]
  /** Numbers that stood when the hold point fell and that another was keyed in place of since: nobody told them off. */
  readonly replaced: readonly (Keying & { readonly item: string })[]
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
  /** Seq of the entry that made it void: its instrument was found out of calibration, or its branch was left. */
  readonly voidBy: number | null
}

export interface Pending extends ReadingAt {
  readonly seq: number
  readonly at: string
  readonly by: string | null
}

export interface StopState {
  readonly seq: number
  /** At the keyboard when it was raised. */
  readonly by: string | null
  /** Everybody known to be on the job when it was raised: signed on, or a witness at a hold point. */
  readonly on: readonly string[]
  /** Null until it is answered from the list. */
  readonly cause: StopCause | null
  readonly why: string | null
  /** Everybody who was ever named as having called it. */
  readonly calledBy: readonly string[]
  /** Once its caller was given as not known, that is never taken back. */
  readonly callerUnknown: boolean
  readonly releasedBy: string | null
}

export interface VerdictState {
  readonly seq: number
  readonly verdict: VerdictRecord
  /** Who was on the job when it was given: any of them may have had a hand on the gauge. */
  readonly on: readonly string[]
  readonly void: boolean
}

export interface DispositionState {
  readonly seq: number
  /** The judge step it is about. */
  readonly about: string
  readonly choice: string
  readonly why: string
  readonly person: string
  readonly void: boolean
  /** Who keyed what the lead said by radio; null where the lead signed. */
  readonly radio: string | null
  readonly countersigned: boolean
  readonly authority: string | null
  readonly valid: Validity | null
}

export interface Raised {
  readonly seq: number
  readonly step: string
  /** The verdict, or the id of the condition found. */
  readonly word: string
  readonly voidBy: number | null
  /** What made it void; null while it stands. */
  readonly voidWith: FellWith | null
}

export interface PointState {
  readonly seq: number
  readonly how: 'signed' | 'not-attended'
  readonly person: string | null
  readonly void: boolean
}

export interface DeviationState {
  readonly seq: number
  readonly step: string
  readonly what: string
  readonly why: string
  readonly authority: string
  readonly valid: Validity
  readonly person: string
}

/** A machine record that was taken in, for those who are to be told. */
export interface RecordTaken {
  readonly seq: number
  readonly at: string
  readonly person: string
  readonly why: string
  /** Fields that differ from the record before. */
  readonly changed: readonly string[]
}

export interface State {
  readonly record: RecordKind
  readonly job: string
  /** What stands on the sheet it is keyed from; null: it is live. */
  readonly paper: PaperState | null
  /** Its answers come from a file or a pipe. */
  readonly scripted: boolean
  /** A practice session on a hidden machine; null: a job. */
  readonly practice: PracticeState | null
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
  /** It was taken up since the plate was read: whoever goes on may stand at another machine. */
  readonly plateAgain: boolean
  /** Taken up for a word of a lead alone, away from the machine. */
  readonly atDesk: boolean
  readonly seats: Readonly<Record<string, string>>
  /** Every instrument picked on this job, also those put back since; none that was only picked by mistake. */
  readonly picked: readonly string[]
  /** Those of them that a figure was keyed of, whatever became of it. */
  readonly used: readonly string[]
  /** Instruments found out of calibration, with the seq of the entry that says so. */
  readonly doubted: Readonly<Record<string, number>>
  /** Steps answered: tell done, confirm seen, observe condition. */
  readonly done: Readonly<Record<string, string>>
  /** When each was answered last, also one that was gone back to since. */
  readonly doneAt: Readonly<Record<string, { readonly seq: number; readonly atMs: number }>>
  readonly findings: Readonly<Record<string, string>>
  readonly gates: Readonly<Record<string, GateState>>
  /** Numbers to hold later ones against, by name, and by person or isolation point where each has one. */
  readonly noted: Readonly<Record<string, Noted>>
  readonly readings: Readonly<Record<string, readonly Reading[]>>
  readonly notApplicable: Readonly<Record<string, string>>
  readonly doubt: (Pending & { readonly why: string; readonly shown?: string }) | null
  readonly late: Pending | null
  readonly verdicts: Readonly<Record<string, VerdictState>>
  readonly dispositions: Readonly<Record<string, DispositionState>>
  /** Verdicts and findings in the order of entry, also those that are void by now. */
  readonly raised: readonly Raised[]
  /** Who answered a step, also before it was answered anew. */
  readonly doneBy: Readonly<Record<string, readonly (string | null)[]>>
  /** Inspection points signed or gone on without anybody, by step. */
  readonly points: Readonly<Record<string, PointState>>
  /** Notices of witness points that count, by step. */
  readonly notices: Readonly<
    Record<string, { readonly seq: number; readonly at: string; readonly whom: string }>
  >
  /** Deviation permits, in the order they were given. */
  readonly deviations: readonly DeviationState[]
  readonly stops: readonly StopState[]
  /** Other jobs on the machine as they were seen last, by kind and id. */
  readonly elsewhere: Readonly<Record<string, JobSeen>>
  /** Everything temporary that was ever placed. */
  readonly things: readonly Thing[]
  /** What was put down in words, in the order it was. */
  readonly notes: readonly {
    readonly seq: number
    readonly at: string
    readonly by: string | null
    readonly text: string
  }[]
  /** Files attached, in the order they were. */
  readonly files: readonly AttachedFile[]
  /** Machine records taken in since the job was opened, in that order. */
  readonly records: readonly RecordTaken[]
  /** Who adopted the figures as left; void once something they rest on fell. Null: nobody. */
  readonly adopted: {
    readonly seq: number
    readonly at: string
    readonly person: string
    readonly void: boolean
  } | null
  /** What leads said of it after the close. */
  readonly remarks: readonly {
    readonly seq: number
    readonly at: string
    readonly person: string
    readonly text: string
  }[]
  /** A gate fell by time alone and nothing was done since: whatever was asked then may still be called out. */
  readonly cutShort: boolean
  readonly left: boolean
  readonly closed: string | null
  /** The verdict as left when it was closed, in words; null: the same as found. */
  readonly asLeft: string | null
  /** What it was closed with, when its outcome fell afterwards. */
  readonly fellFrom: string | null
  /** Instruments by which it fell, in that order: none that was out of calibration before the close. */
  readonly fellBy: readonly string[]
}

export const EMPTY_GATE: GateState = {
  status: 'never',
  given: {},
  begun: {},
  struck: [],
  replaced: [],
  cause: null,
  why: null,
  mustClear: false,
}

/** Taken up by people who work, and the plate of the machine they stand at was not read yet. */
export function waitsForPlate(state: State): boolean {
  return state.plateAgain && !state.atDesk
}

export const PLATE_FIRST = 'The job was taken up again: the plate of the cylinder comes first.'

/** The oldest STOP that is not released; everything is blocked while there is one. */
export function openStop(state: State): StopState | null {
  return state.stops.find((s) => s.releasedBy === null) ?? null
}

/** The first value stays in the log; corrected or void it no longer counts. */
export function stands(reading: Reading): boolean {
  return reading.correctedBy === null && reading.voidBy === null
}

/** Readings of a place that stand. */
export function standing(state: State, place: string): readonly Reading[] {
  const all = state.readings[place]
  return all === undefined ? [] : thoseStanding(all)
}

const thoseStanding = oncePer((all: readonly Reading[]) => all.filter(stands))

/** A step's own verdict or disposition, while it stands. */
export function standingVerdict(state: State, step: string): VerdictState | null {
  const verdict = state.verdicts[step]
  return verdict === undefined || verdict.void ? null : verdict
}
