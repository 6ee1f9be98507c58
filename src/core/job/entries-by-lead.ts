// What a lead puts into a log while nobody is on the job: a changed machine record, and, once it is closed, what it left and words.
import type { LeftFigure, RenewedPart } from './adopt.ts'
import type { FileCopy } from './entries.ts'
import type { ChangedField } from './record-changes.ts'
import type { Signed } from './signature.ts'

/** A machine record that was written with what a job left. */
export interface WrittenFile {
  readonly name: string
  readonly sha256: string
}

/** What a changed machine record differs in, and what falls with it. */
export interface TakeIn {
  readonly changed: readonly ChangedField[]
  /** Hold points that had been complete, or had anything shown: they are proved anew before anybody goes near. */
  readonly gates: readonly string[]
  /** Verdicts and decisions that no longer stand, by step. */
  readonly voids: readonly string[]
  /** Findings that stay found, and what a lead had decided about them is void. */
  readonly undecided: readonly string[]
  /** Answers about the record itself, by step: one with a hold point stays and is signed anew, another is given anew. */
  readonly anew: readonly string[]
  /** Tests over time of which something stood, by title: each begins anew, whole. */
  readonly tests: readonly string[]
  /** Readings that waited to be settled and are asked anew, by seq. */
  readonly dropped: readonly number[]
}

export type ByLead =
  /**
   * A lead put a changed machine record in the place of the job's own, while nobody was on it: from here on it alone counts.
   * Every hold point falls, also one that is not named; every verdict and every decision is void.
   */
  | ({
      readonly type: 'record.taken-in'
      /** The whole file, to the byte, as the opening carries its own. */
      readonly file: FileCopy
      readonly why: string
      readonly person: string
      readonly signed?: Signed
    } & TakeIn)
  /** After the close: what went back is the baseline that wear is measured from. Only figures that stood then. */
  | {
      readonly type: 'left.adopted'
      /** Running hours of the machine, h. */
      readonly hours: number
      readonly renewed: readonly RenewedPart[]
      readonly figures: readonly LeftFigure[]
      /** Figures that were to be had and were not adopted. */
      readonly without: readonly LeftFigure[]
      readonly file: WrittenFile
      readonly person: string
      readonly signed?: Signed
    }
  /** After the close: words of a lead, read with the job. */
  | {
      readonly type: 'remark.made'
      readonly text: string
      readonly person: string
      readonly signed?: Signed
    }
