// Everything a bore is judged from, as the caller has it: any part may be missing, and then it says so here.

import type { Limit } from '../metrology/limit.ts'
import type { BoreReading, Place } from './bore-readings.ts'
import type { BoreDatum } from './bore-wear.ts'

export const BORE_CHARACTERISTICS = ['out-of-round', 'taper', 'spread', 'largest-diameter'] as const
export type BoreCharacteristic = (typeof BORE_CHARACTERISTICS)[number]

/** The instrument put on its standard: how far off it showed, and how far off it may be. Metres. */
export interface SetCheck {
  readonly deviationM: number | null | undefined
  readonly allowedM: number | null | undefined
}

export interface MissingPlace extends Place {
  /** Why there is no settled reading, when known. */
  readonly why?: string | undefined
}

export interface BoreJudgeInput {
  /** Combined readings, reduced to 20 C. */
  readonly readings: readonly BoreReading[]
  /** Places that should have a reading and have none that settled. */
  readonly missing: readonly MissingPlace[]
  readonly nominalM: number | null | undefined
  readonly limits: Readonly<Partial<Record<BoreCharacteristic, Limit>>>
  /** Expanded uncertainty (k below) of one combined reading, and of a difference of two, metres. */
  readonly readingU: number | null | undefined
  readonly differenceU: number | null | undefined
  /** Coverage factor of both; 2 when left out. */
  readonly k?: number | undefined
  readonly resolutionM: number | null | undefined
  readonly simpleAcceptance?: { readonly by: string } | null | undefined
  readonly datum?: BoreDatum | null | undefined
  /** Why there is none, where something on record may not be used. */
  readonly noDatum?: string | undefined
  readonly counterboreM?: number | null | undefined
  readonly maxBoreM?: number | null | undefined
  readonly lined: boolean
  readonly setCheck: {
    readonly before: SetCheck | null | undefined
    readonly after: SetCheck | null | undefined
  }
  /** Whether part and instrument temperature are both on record (and the readings reduced with them). */
  readonly temperaturesKnown: boolean
}

/** A reason that the whole bore is on HOLD. `measuring` is put right by measuring, `record` by the record. */
export interface Hold {
  readonly about: 'measuring' | 'record'
  /** One sentence. */
  readonly say: string
}
