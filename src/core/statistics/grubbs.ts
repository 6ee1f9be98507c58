// Is the reading farthest from the rest farther than chance would put it? It is pointed at, never dropped.
import { ok, type Result, refuse } from '../lib/result.ts'
import { tAt } from './student-t.ts'
import { isTractable, meanOf, scaleFor, sdOf } from './summary.ts'

export interface GrubbsTest {
  /** Place in the list, from 0, of the reading farthest from the mean. */
  readonly at: number
  readonly value: number
  /** Its distance from the mean, in standard deviations. */
  readonly g: number
  readonly critical: number
  /** True when g is beyond critical: a reading to ask about, not one to leave out. */
  readonly standsOut: boolean
}

/** Below this the test finds an outlier in most sound sets: read second-hand of the NIST/SEMATECH e-Handbook. */
export const GRUBBS_SOUND_FROM = 7

/**
 * Critical value of G for n readings, two-sided unless said: (n-1)/sqrt(n) sqrt(t^2 / (n-2+t^2)), t at alpha/(2n) (or
 * alpha/n) with n - 2 degrees of freedom. Source: NIST/SEMATECH e-Handbook of Statistical Methods 1.3.5.17.1 (from
 * memory). Throws below three readings.
 * @example n 10, alpha 0.05: 2.290
 */
export function grubbsCritical(n: number, alpha: number, sides: 1 | 2 = 2): number {
  if (!Number.isInteger(n) || n < 3) throw new Error('the test needs three readings or more')
  const t = tAt(1 - alpha / (sides * n), n - 2)
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t))
}

/**
 * Tests the reading farthest from the mean, two-sided. Where all others read alike any other reading is beyond critical,
 * so one that is off by no more than `step`, what the instrument reads in, never stands out.
 * Refuses: fewer than three readings; one that is not finite.
 */
export function grubbsTest(values: readonly number[], alpha = 0.05, step = 0): Result<GrubbsTest> {
  if (values.length < 3)
    return refuse('too-few-readings', 'To tell whether a reading stands out, three or more are needed.')
  if (!values.every(isTractable)) return refuse('not-finite', 'A reading is not a number: key it again.')
  // G has no unit, so it is worked out where no digit can get lost; the scale is a power of two and changes none.
  const scale = scaleFor(values)
  const scaled = values.map((value) => value * scale)
  const [mean, sd] = [meanOf(scaled), sdOf(scaled)]
  const off = scaled.map((value) => Math.abs(value - mean))
  const at = off.indexOf(Math.max(...off))
  // Readings all alike have no scatter to stand out from.
  const g = sd > 0 ? (off[at] ?? 0) / sd : 0
  const critical = grubbsCritical(values.length, alpha)
  return ok({
    at,
    value: values[at] ?? Number.NaN,
    g,
    critical,
    standsOut: g > critical && (off[at] ?? 0) > step * scale * (1 + 1e-9),
  })
}
