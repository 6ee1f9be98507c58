// How large the measuring error of a reading, and of what is reckoned from readings, may be. One level for all: that of k = 2.

import { ok, type Result, refuse } from '../lib/result.ts'
import { normalBelow } from '../statistics/normal.ts'
import { type Component, combineBudget, type Expanded, expandBudget } from './budget.ts'
import { REFERENCE_C } from './reduce-to-20.ts'
import type { RepeatsError } from './repeatability.ts'

/** Coverage factor of every U stated here: about 95 % two-sided (JCGM 100:2008, 6.2 and 6.3). Few repeats ask for a larger one. */
export const COVERAGE_K = 2

/** What a U covers, whatever its own k: as much of a normal error as k = 2, 95.45 in 100. */
export const COVERAGE_LEVEL = 1 - 2 * normalBelow(-COVERAGE_K)

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
  /** What the repeats add, pooled over places or of this one (repeatability.ts); left out where nothing was read twice. */
  readonly repeats?: RepeatsError | undefined
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
 * Expanded uncertainty of one combined reading in metres, at the level of k = 2: root sum of squares of standard
 * uncertainties, widened by Student's t where the repeats that make much of it are few.
 *
 * Terms: instrument U/k; length x alpha x u(temperature) for part and for instrument; resolution/sqrt(12) unless it is
 * inside U already; repeats as repeatability.ts has them; length x (T - 20) x u(alpha) where the doubt in the coefficients
 * is given. All but the repeats are taken as well known.
 * Between readings of ONE session an error in the shared temperature is second order: it changes a difference d
 * by d x alpha x u(T), nanometres for any wear, and it changes a size by length x alpha x u(T), microns. So these
 * terms count for a size against its limit, and to leave them in a difference is to err on the safe side.
 * Source: JCGM 100:2008 (GUM) 5.1.2 (combining), 6.2 (expanding), G.4.1 (effective degrees of freedom, cut to a whole number),
 * G.3 and Table G.2 (t at 95.45 in 100), H.1 (temperature terms); F.2.2.1 (resolution) is a clause number from memory.
 * Refuses: no stated U; any input that is missing, not finite or below zero.
 */
export function expandedOfReading(input: ReadingUncertaintyInput): Result<number> {
  const stated = statedOfReading(input)
  return stated.ok ? ok(stated.value.U) : stated
}

export interface StatedError extends Expanded {
  /** Standard uncertainty of the whole, k = 1, metres. */
  readonly uc: number
  readonly parts: readonly ErrorPart[]
}

/** The same with what it is made of: its terms, its k, and the degrees of freedom that k is for (may be infinite). */
export function statedOfReading(input: ReadingUncertaintyInput): Result<StatedError> {
  const parts = partsOfReading(input)
  if (!parts.ok) return parts
  const budget = combineBudget(
    parts.value.map(({ from, u }): Component => {
      return { name: from, u, dof: from === 'repeats' && u > 0 ? input.repeats?.dof : undefined }
    }),
  )
  if (!budget.ok) return budget
  const { uc, effectiveDof } = budget.value
  if (effectiveDof === Number.POSITIVE_INFINITY)
    return ok({
      level: COVERAGE_LEVEL,
      dof: effectiveDof,
      k: COVERAGE_K,
      U: COVERAGE_K * uc,
      uc,
      parts: parts.value,
    })
  const expanded = expandBudget(budget.value, COVERAGE_LEVEL)
  return expanded.ok ? ok({ ...expanded.value, uc, parts: parts.value }) : expanded
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

/** The terms of `statedOfReading`, each by itself: formula, source and what is refused stand there. */
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
    { from: 'repeats', u: input.repeats?.u ?? 0 },
    ...expansionParts(lengthM, input.expansion),
  ]
  const inputs = [instrumentU, lengthM, input.partAlpha, input.instrumentAlpha, input.partTempU]
  inputs.push(input.instrumentTempU, input.resolutionM)
  inputs.push(...parts.map(({ u }) => u))
  const isFew = input.repeats !== undefined && !(input.repeats.dof >= 1)
  if (!inputs.every((x) => Number.isFinite(x) && x >= 0) || lengthM === 0 || input.resolutionM === 0 || isFew)
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
