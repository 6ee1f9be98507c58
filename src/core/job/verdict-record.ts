// A verdict as it is stored: with its inputs, so that it can be worked again a year later and compared, never replaced.
import type { BoreVerdict } from '../bore/bore-judge.ts'
import type { BoreJudgeInput } from '../bore/bore-judge-input.ts'

export interface BoreVerdictRecord {
  readonly compute: 'bore_form'
  /** Version of the program that worked it out. */
  readonly version: string
  readonly inputs: BoreJudgeInput
  readonly result: BoreVerdict
  /** Readings that went in, by seq, so the chain from figure to entry can be followed. */
  readonly readings: readonly number[]
}
