// How large the measuring error of a reading, and of what is reckoned from readings, may be. One k for all: 2.

import { ok, type Result, refuse } from '../lib/result.ts'
import { REFERENCE_C } from './reduce-to-20.ts'

/** Coverage factor of every U stated here: about 95 % two-sided (JCGM 100:2008, 6.2 and 6.3). */
export const COVERAGE_K = 2

export interface ReadingUncertaintyInput {
  /** Expanded uncertainty from the instrument's record, metres; missing when none is stated. */
  readonly instrumentU: number | null | undefined
  /** Coverage factor the record states it with. */
  readonly instrumentK: number | null | undefined
  readonly lengthM: number
  /** Expansion of part and instrument, per K. */
  readonly partAlpha: number
  readonly instrumentAlpha: number
  /** Standard uncertainty of each temperature, K. */
  readonly partTempU: number
  readonly instrumentTempU: number
  /** Greatest less least of the repeats, metres. */
  readonly repeatsSpread?: number | undefined
  readonly resolutionM: number
  /** Whether the stated U has the resolution in it already: the instrument record says so. */
  readonly resolutionInsideU: boolean
  /** How well the coefficients are known, and how far from 20 C the two were; matters for a size, not a difference. */
  readonly expansion?: ExpansionDoubt | undefined
}

export interface ExpansionDoubt {
  /** Standard uncertainty of each coefficient, per K. */
  readonly partAlphaU: number
  readonly instrumentAlphaU: number
  readonly partC: number
  readonly instrumentC: number
}

/**
 * Expanded uncertainty, k = 2, of one combined reading in metres: root sum of squares of standard uncertainties.
 *
 * Terms: instrument U/k; length x alpha x u(temperature) for part and for instrument; resolution/sqrt(12) unless it is
 * inside U already; repeats as spread/(1.128 sqrt 2), the mean of two by the range method, with no credit for more
 * repeats; length x (T - 20) x u(alpha) where the doubt in the coefficients is given.
 * Between readings of ONE session an error in the shared temperature is second order: it changes a difference d
 * by d x alpha x u(T), nanometres for any wear, and it changes a size by length x alpha x u(T), microns. So these
 * terms count for a size against its limit, and to leave them in a difference is to err on the safe side.
 * With few repeats and a large spread k = 2 is too small: let the repeat rule ask for more readings.
 * Source: JCGM 100:2008 (GUM) 5.1.2 (combining), 6.2 (expanding), H.1 (temperature terms);
 * F.2.2.1 (resolution) and G.3 (few repeats) are clause numbers from memory.
 * Refuses: no stated U; any input that is missing, not finite or below zero.
 */
export function expandedOfReading(input: ReadingUncertaintyInput): Result<number> {
  const parts = partsOfReading(input)
  return parts.ok ? ok(COVERAGE_K * Math.sqrt(parts.value.reduce((sum, { u }) => sum + u * u, 0))) : parts
}

/** Where the measuring error of a reading comes from. */
export type ErrorSource =
  | 'instrument'
  | 'part temperature'
  | 'instrument temperature'
  | 'resolution'
  | 'repeats'
  | 'expansion of the part'
  | 'expansion of the instrument'

export interface ErrorPart {
  readonly from: ErrorSource
  /** Standard uncertainty, k = 1, metres; zero where it adds nothing. */
  readonly u: number
}

/** The terms of `expandedOfReading`, each by itself: formula, source and what is refused stand there. */
export function partsOfReading(input: ReadingUncertaintyInput): Result<readonly ErrorPart[]> {
  const { instrumentU, instrumentK, lengthM } = input
  if (instrumentU === null || instrumentU === undefined)
    return refuse(
      'no-stated-uncertainty',
      'The instrument record states no measuring error U: add it from the certificate.',
    )
  if (instrumentK === null || instrumentK === undefined || !(Number.isFinite(instrumentK) && instrumentK > 0))
    return refuse(
      'no-coverage-factor',
      'The instrument record does not say what k its U is stated with: add it.',
    )
  const parts: ErrorPart[] = [
    { from: 'instrument', u: instrumentU / instrumentK },
    { from: 'part temperature', u: lengthM * input.partAlpha * input.partTempU },
    { from: 'instrument temperature', u: lengthM * input.instrumentAlpha * input.instrumentTempU },
    { from: 'resolution', u: input.resolutionInsideU ? 0 : input.resolutionM / Math.sqrt(12) },
    { from: 'repeats', u: (input.repeatsSpread ?? 0) / (1.128 * Math.SQRT2) },
    ...expansionParts(lengthM, input.expansion),
  ]
  const inputs = [instrumentU, lengthM, input.partAlpha, input.instrumentAlpha, input.partTempU]
  inputs.push(input.instrumentTempU, input.resolutionM, input.repeatsSpread ?? 0)
  inputs.push(...parts.map(({ u }) => u))
  if (!inputs.every((x) => Number.isFinite(x) && x >= 0) || lengthM === 0 || input.resolutionM === 0)
    return refuse(
      'uncertainty-input-unsound',
      'A figure that the measuring error is reckoned from is not a sound number.',
    )
  return ok(parts)
}

function expansionParts(lengthM: number, doubt: ExpansionDoubt | undefined): ErrorPart[] {
  if (doubt === undefined) return []
  const part = lengthM * Math.abs(doubt.partC - REFERENCE_C) * doubt.partAlphaU
  const instrument = lengthM * Math.abs(doubt.instrumentC - REFERENCE_C) * doubt.instrumentAlphaU
  return [
    { from: 'expansion of the part', u: part },
    { from: 'expansion of the instrument', u: instrument },
  ]
}

/**
 * U of the difference of two readings that each have this U: sqrt(2) U. Gives no credit for error common to both, so
 * it is on the safe side within one session. Source: JCGM 100:2008 5.1.2. @throws when U is not zero or more.
 */
export function expandedOfDifference(readingU: number): number {
  return Math.SQRT2 * checkedU(readingU)
}

/** U of centre less the mean of both ends: 1 + 1/4 + 1/4 = 1.5 variances, so sqrt(1.5) U. Same source and throws. */
export function expandedOfCentreAgainstEnds(readingU: number): number {
  return Math.sqrt(1.5) * checkedU(readingU)
}

function checkedU(u: number): number {
  if (!(Number.isFinite(u) && u >= 0))
    throw new Error('an expanded uncertainty must be a number of zero or more')
  return u
}
