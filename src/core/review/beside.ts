// What no entry tells and only the disk does: whether the log is as it was written, its attached files, the crew before it.
import type { Crew } from '../definition/crew.ts'

export interface Beside {
  readonly log: LogFacts
  readonly files: readonly FileFact[]
  /** Names that lie with the attached files and are on no record, in words. */
  readonly strays: readonly string[]
  /** Of the last job before this one on the same machine; null when there is none to compare with. */
  readonly crewBefore: { readonly job: string; readonly crew: Crew } | null
}

export interface LogFacts {
  /** Each in a sentence: lines that were changed, a chain that breaks, copies or sums that do not fit. Empty: sound. */
  readonly faults: readonly string[]
  /** A head noted elsewhere: none was given, or it fits a line of this log, or none. */
  readonly head: 'none' | 'like' | 'unlike'
  /** Whether a head that was noted elsewhere proves it whole. */
  readonly whole: 'proved' | 'unknown'
  /** What was checked against such a head, in words. */
  readonly checked: readonly string[]
  /** What is known of an unfinished last line, in sentences; left out where there is none. */
  readonly torn?: string | null
  /** Where the sound lines end, and how many behind that are not read; left out where all are sound. */
  readonly broken?: { readonly line: number; readonly behind: number } | null
}

export interface FileFact {
  /** Entry it was attached with. */
  readonly seq: number
  readonly name: string
  readonly isAsAttached: boolean
  /** One clause in words. */
  readonly what: string
}
