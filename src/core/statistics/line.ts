// A straight line through points by least squares, and what a further point may be expected to lie between.
import { ok, type Result, refuse } from '../lib/result.ts'
import { coverageFactor } from './student-t.ts'
import { isTractable, meanOf, squaresAbout, sumOf } from './summary.ts'

export interface Point {
  readonly x: number
  readonly y: number
}

export interface Line {
  readonly n: number
  readonly slope: number
  readonly intercept: number
  readonly xMean: number
  readonly yMean: number
  /** Sum of squares of x about its mean. */
  readonly sxx: number
  /** n - 2. */
  readonly df: number
  /** Scatter about the line, sqrt(SSE / (n - 2)); null for two points, which any line fits. */
  readonly residualSd: number | null
  readonly slopeSe: number | null
  readonly interceptSe: number | null
  /** Part of the scatter in y that the line accounts for; null when y does not change. */
  readonly r2: number | null
  readonly sse: number
}

export interface Prediction {
  readonly fit: number
  /** Coverage factor t at (1 + level) / 2 with n - 2 degrees of freedom. */
  readonly t: number
  /** Interval for one further point. */
  readonly low: number
  readonly high: number
  /** Interval for the line itself. */
  readonly meanLow: number
  readonly meanHigh: number
}

/**
 * Least squares of y on x, x taken as exact. Source: N. R. Draper & H. Smith, Applied Regression Analysis, ch. 1
 * (from memory); figures checked against NIST StRD Norris.
 * Refuses: fewer than two points; a point that is not finite; all x alike.
 */
export function fitLine(points: readonly Point[]): Result<Line> {
  const n = points.length
  if (n < 2) return refuse('too-few-points', 'A line needs two points or more.')
  if (!points.every(({ x, y }) => isTractable(x) && isTractable(y)))
    return refuse('not-finite', 'A point of the line is not a number: key it again.')
  const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)]
  const [xMean, yMean] = [meanOf(xs), meanOf(ys)]
  const sxx = squaresAbout(xs, xMean)
  if (!(sxx > 0) || xs.every((x) => x === xs[0]))
    return refuse('one-place', 'All points lie at one place: a line needs two.')
  const slope = sumOf(points.map(({ x, y }) => (x - xMean) * (y - yMean))) / sxx
  const intercept = yMean - slope * xMean
  const sse = sumOf(points.map(({ x, y }) => (y - yMean - slope * (x - xMean)) ** 2))
  const syy = squaresAbout(ys, yMean)
  const residualSd = n > 2 ? Math.sqrt(sse / (n - 2)) : null
  const line: Line = {
    ...{ n, slope, intercept, xMean, yMean, sxx, df: n - 2, residualSd, sse },
    slopeSe: residualSd === null ? null : residualSd / Math.sqrt(sxx),
    interceptSe: residualSd === null ? null : residualSd * Math.sqrt(1 / n + xMean ** 2 / sxx),
    r2: syy > 0 ? 1 - sse / syy : null,
  }
  const isSound = [slope, intercept, sse, sxx].every(Number.isFinite)
  return isSound ? ok(line) : refuse('too-large', 'The figures are too large to draw a line through.')
}

/** How much wider than the scatter about the line the scatter of one further point at `x` is: sqrt(1 + 1/n + ...). */
export function spreadAt(line: Line, x: number): number {
  return Math.sqrt(1 + 1 / line.n + (x - line.xMean) ** 2 / line.sxx)
}

/**
 * What one further point at `x` may be expected to lie between, and the line itself, at `level` (0.95 for 95 in 100).
 * Source: D. C. Montgomery & G. C. Runger, Applied Statistics and Probability for Engineers, ch. 11, intervals on the
 * mean response and prediction (read second-hand). Refuses fewer than three points; throws on an unsound level.
 */
export function predict(line: Line, x: number, level: number): Result<Prediction> {
  if (line.residualSd === null)
    return refuse('no-scatter', 'Two points show no scatter: an interval needs three or more.')
  const fit = line.yMean + line.slope * (x - line.xMean)
  const t = coverageFactor(level, line.df)
  const half = t * line.residualSd * spreadAt(line, x)
  const meanHalf = t * line.residualSd * Math.sqrt(spreadAt(line, x) ** 2 - 1)
  return ok({
    ...{ fit, t, low: fit - half, high: fit + half },
    ...{ meanLow: fit - meanHalf, meanHigh: fit + meanHalf },
  })
}
