// A verdict as it is stored: with its inputs, so that it can be worked again a year later and compared, never replaced.
import type { BoreVerdict } from '../bore/bore-judge.ts'
import type { BoreJudgeInput } from '../bore/bore-judge-input.ts'
import type { PocketJudgeInput, PocketVerdict } from '../cycle/pocket-judge-input.ts'
import { assertNever } from '../lib/result.ts'
import type { FigureJudgeInput, FigureVerdict } from '../metrology/figure-judge.ts'
import type { VerdictWord } from '../metrology/verdict.ts'

interface Common {
  /** Version of the program that worked it out. */
  readonly version: string
  /** Readings that went in, by seq, so the chain from figure to entry can be followed. */
  readonly readings: readonly number[]
}

export interface BoreVerdictRecord extends Common {
  readonly compute: 'bore_form'
  readonly inputs: BoreJudgeInput
  readonly result: BoreVerdict
}

export interface FigureVerdictRecord extends Common {
  readonly compute: 'figures'
  readonly inputs: FigureJudgeInput
  readonly result: FigureVerdict
}

export interface PocketVerdictRecord extends Common {
  readonly compute: 'pocket_setting'
  readonly inputs: PocketJudgeInput
  readonly result: PocketVerdict
}

export type VerdictRecord = BoreVerdictRecord | FigureVerdictRecord | PocketVerdictRecord

/** The same verdict with another word: for searches in which any word may fall. */
export function withWord(record: VerdictRecord, word: VerdictWord): VerdictRecord {
  switch (record.compute) {
    case 'bore_form':
      return { ...record, result: { ...record.result, verdict: word } }
    case 'figures':
      return { ...record, result: { ...record.result, verdict: word } }
    case 'pocket_setting':
      return { ...record, result: { ...record.result, verdict: word } }
    default:
      return assertNever(record)
  }
}

/** A verdict on the form of a bore; undefined for none, or for one of another sort. */
export function boreRecord(record: VerdictRecord | undefined): BoreVerdictRecord | undefined {
  return record?.compute === 'bore_form' ? record : undefined
}

export function figureRecord(record: VerdictRecord | undefined): FigureVerdictRecord | undefined {
  return record?.compute === 'figures' ? record : undefined
}
