// The chance that a measured thing is inside its limits in truth, and the guard band that keeps that chance in hand.
import { ok, type Result, refuse } from '../lib/result.ts'
import { normalBelow } from '../statistics/normal.ts'
import { normalAt } from '../statistics/normal-quantile.ts'

export interface Conformance {
  /** Chance, 0 to 1, that the true value is inside. */
  readonly inside: number
  readonly below: number
  readonly above: number
}

export interface Tolerance {
  readonly lower?: number | undefined
  readonly upper?: number | undefined
}

/**
 * Chance that a value measured as `value` with standard uncertainty `u` (k = 1) is inside its limits in truth, taking
 * the error as normal and nothing else as known of the part. Any one unit for all.
 * Source: JCGM 106:2012 7.3 (one limit), 7.4 (two limits).
 * Refuses: no limit; limits crossed; a figure that is not finite; u not above zero.
 */
export function conformance(value: number, u: number, { lower, upper }: Tolerance): Result<Conformance> {
  if (lower === undefined && upper === undefined)
    return refuse('no-limit', 'There is no limit to judge against: give a lower one, an upper one or both.')
  const figures = [value, u, ...(lower === undefined ? [] : [lower]), ...(upper === undefined ? [] : [upper])]
  if (!figures.every(Number.isFinite)) return refuse('not-finite', 'A figure is not a number: key it again.')
  if (!(u > 0)) return refuse('no-uncertainty', 'The measuring error must be known and above zero.')
  if (lower !== undefined && upper !== undefined && lower >= upper)
    return refuse('limits-crossed', 'The lower limit is not below the upper one.')
  const below = lower === undefined ? 0 : normalBelow((lower - value) / u)
  const above = upper === undefined ? 0 : normalBelow((value - upper) / u)
  return ok({ inside: Math.max(0, 1 - below - above), below, above })
}

/**
 * Greatest chance of being beyond one limit for a value accepted with a guard band of r U, U stated at `k`:
 * the part of a normal distribution beyond r k. Source: JCGM 106:2012 8.3.2 (guarded acceptance; clause from memory).
 * Throws unless r >= 0 and k > 0.
 * @example r 1, k 2: 0.0228
 */
export function guardBandRisk(r: number, k: number): number {
  if (!(r >= 0 && k > 0 && Number.isFinite(r * k))) throw new Error('guardBandRisk needs r >= 0 and k > 0')
  return normalBelow(-r * k)
}

/**
 * Guard band as a share r of U that keeps that chance at `risk` or less. Throws unless 0 < risk <= 0.5 and k > 0.
 * @example risk 0.05, k 2: 0.822
 */
export function guardBandFor(risk: number, k: number): number {
  if (!(risk > 0 && risk <= 0.5 && k > 0)) throw new Error('guardBandFor needs 0 < risk <= 0.5 and k > 0')
  const r = -normalAt(risk) / k
  return r === 0 ? 0 : r
}
