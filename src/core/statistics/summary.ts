// Mean and scatter of a list of readings. Sums are compensated, so that small scatter about a large size keeps its digits.
import { ok, type Result, refuse } from '../lib/result.ts'

export interface Summary {
  readonly n: number
  readonly mean: number
  /** Standard deviation with n - 1; null for a single value, which shows no scatter. */
  readonly sd: number | null
  /** sd / sqrt n: standard uncertainty of the mean; null for a single value. */
  readonly sdOfMean: number | null
  readonly least: number
  readonly greatest: number
}

/** Finite, and small enough that its square is too: nothing that is read off an instrument comes near. */
export function isTractable(x: number): boolean {
  return Math.abs(x) < 1e150
}

/**
 * Sum with the rounding of each addition carried along. Source: A. Neumaier, Z. Angew. Math. Mech. 54 (1974) 39-51
 * (from memory). Throws on a number that is not finite.
 */
export function sumOf(values: readonly number[]): number {
  let sum = 0
  let lost = 0
  for (const value of values) {
    if (!Number.isFinite(value)) throw new Error('a sum was asked for with a value that is not finite')
    const next = sum + value
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum
    sum = next
  }
  return sum + lost
}

/** Arithmetic mean, in the unit of the values. Throws when there are none or one is not finite. */
export function meanOf(values: readonly number[]): number {
  if (values.length === 0) throw new Error('a mean was asked for of no values')
  const first = sumOf(values) / values.length
  return first + sumOf(values.map((value) => value - first)) / values.length
}

/** Sum of squares about the mean, corrected for the rounding of the mean. Same throws. */
export function squaresAbout(values: readonly number[], mean: number): number {
  const off = values.map((value) => value - mean)
  const drift = sumOf(off)
  return Math.max(0, sumOf(off.map((d) => d * d)) - (drift * drift) / values.length)
}

/**
 * A power of two that brings the largest of the values near one. Multiplying by it is exact, and squares then neither
 * run out of range nor lose their digits to it. 1 when all values are zero.
 */
export function scaleFor(values: readonly number[]): number {
  const most = Math.max(...values.map(Math.abs))
  if (most === 0) return 1
  // The exponent is bounded so that the scale itself is finite, for the smallest numbers there are too.
  return 2 ** -Math.max(-1000, Math.min(1000, Math.floor(Math.log2(most))))
}

/**
 * Experimental standard deviation with n - 1. Source: JCGM 100:2008 4.2.2, equation (4). Throws below two values.
 * @example 10000001, 10000003, 10000002: 1 (NIST StRD NumAcc1)
 */
export function sdOf(values: readonly number[]): number {
  if (values.length < 2) throw new Error('scatter needs two values or more')
  const scale = scaleFor(values)
  const scaled = values.map((value) => value * scale)
  return Math.sqrt(squaresAbout(scaled, meanOf(scaled)) / (values.length - 1)) / scale
}

/** Mean, scatter and ends. Refuses: no values; a value that is not finite. Source: JCGM 100:2008 4.2.1 to 4.2.3. */
export function summarise(values: readonly number[]): Result<Summary> {
  const n = values.length
  if (n === 0) return refuse('no-values', 'There are no readings: key at least one.')
  if (!values.every(isTractable)) return refuse('not-finite', 'A reading is not a number: key it again.')
  const sd = n < 2 ? null : sdOf(values)
  return ok({
    n,
    mean: meanOf(values),
    sd,
    sdOfMean: sd === null ? null : sd / Math.sqrt(n),
    least: Math.min(...values),
    greatest: Math.max(...values),
  })
}
