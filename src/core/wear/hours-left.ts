// Service hours until wear reaches a limit, as an interval whose early end is the one to plan by.
import { ok, type Result, refuse } from '../lib/result.ts'
import { spreadAt } from '../statistics/line.ts'
import { type WearHistory, wornSide } from './history.ts'
import { type WearRate, wearRate } from './rate.ts'

export interface HoursLeft {
  /** The limit as given, metres. */
  readonly limit: number
  /** Service hours from the last reading at which the limit may already be reached; zero when it may be now. */
  readonly earliest: number
  /** Straight on at the rate found; null when no wear shows. */
  readonly expected: number | null
  /** By when it should have been reached; null when wear this slow may never reach it. Never a promise. */
  readonly latest: number | null
  /** Further ahead than the record is long. */
  readonly beyondRecord: boolean
}

export interface Outlook {
  readonly rate: WearRate
  readonly limits: readonly HoursLeft[]
}

/** Distance to the limit c + r h against a band with square p + q h + s h^2, h in hours after the last reading. */
interface Approach {
  readonly c: number
  readonly r: number
  readonly p: number
  readonly q: number
  readonly s: number
}

/**
 * Hours to each limit on a straight line. The early end is where limit and upper edge of the band for one further
 * reading meet, the late end where limit and lower edge meet. From two readings the band is the measuring error of both
 * carried forward, from three on that of the line (see `wearRate`).
 * Straight-line wear is common practice, no source. Band of a line: D. C. Montgomery & G. C. Runger, Applied Statistics
 * and Probability for Engineers, ch. 11 (read second-hand). First sets: H. P. Bloch & J. J. Hoefner, Reciprocating
 * Compressors: Operation and Maintenance (1996), p. 217, and inference from it.
 *
 * Refuses what `wearRate` refuses; `first-set`, for the first set of a new ring material; `no-limit`; `limit-unsound`;
 * a limit on the unworn side of the first reading (`limit-side`); and wear so near to going back that no early end can
 * be told (`no-telling`).
 */
export function hoursToLimits(
  history: WearHistory,
  limits: readonly number[],
  firstSet: 'yes' | 'no' | 'unknown',
): Result<Outlook> {
  if (firstSet !== 'no')
    return refuse(
      'first-set',
      firstSet === 'yes'
        ? 'HOLD: the first set of a new ring material beds in and may wear fast at first; its rate is not carried forward.'
        : 'HOLD: it is not on record whether this is the first set of a new ring material.',
    )
  if (limits.length === 0) return refuse('no-limit', 'HOLD: no limit is on record to reckon hours to.')
  if (!limits.every((limit) => Number.isFinite(limit) && limit > 0))
    return refuse('limit-unsound', 'HOLD: a limit is not a size above zero.')
  const found = wearRate(history)
  if (!found.ok) return found
  const rate = found.value
  const start = wornSide(history, rate.from.value)
  if (limits.some((limit) => wornSide(history, limit) <= start))
    return refuse(
      'limit-side',
      'HOLD: the first reading is already at or past the limit; check the limit and which way the part wears.',
    )
  const left = limits.map((limit) => leftTo(history, rate, limit))
  if (!left.every((one) => one !== null))
    return refuse('no-telling', 'HOLD: this wear cannot be told from wear going back: measure again.')
  return ok({ rate, limits: left })
}

function leftTo(history: WearHistory, rate: WearRate, limit: number): HoursLeft | null {
  const bar = wornSide(history, limit)
  const record = rate.to.hours - rate.from.hours
  if (wornSide(history, rate.to.value) >= bar)
    return { limit, earliest: 0, expected: 0, latest: 0, beyondRecord: false }
  const approach = rate.line === null ? ofTwo(history, rate, bar) : ofLine(rate, bar)
  const expected = rate.perHour > 0 ? Math.max(0, -approach.c / rate.perHour) : null
  const earliest = meets(approach, -1)
  const latest = meets(approach, 1)
  const far = expected ?? Number.POSITIVE_INFINITY
  return earliest === null ? null : { limit, earliest, expected, latest, beyondRecord: far > record }
}

/** v2 + (v2 - v1) h / H: the errors of both readings carried forward, the last one's growing with it. */
function ofTwo(history: WearHistory, rate: WearRate, bar: number): Approach {
  const span = rate.to.hours - rate.from.hours
  const [u1, u2] = [rate.from.U, rate.to.U]
  return {
    c: wornSide(history, rate.to.value) - bar,
    r: rate.perHour,
    p: u2 ** 2,
    q: (2 * u2 ** 2) / span,
    s: (u1 ** 2 + u2 ** 2) / span ** 2,
  }
}

function ofLine({ line, band, to, perHour }: WearRate, bar: number): Approach {
  if (line === null || band === null) throw new Error('a line and its band come together')
  const ahead = to.hours - line.xMean
  return {
    c: line.yMean + line.slope * ahead - bar,
    r: perHour,
    p: (band * spreadAt(line, to.hours)) ** 2,
    q: (2 * ahead * band ** 2) / line.sxx,
    s: band ** 2 / line.sxx,
  }
}

/**
 * First h >= 0 where c + r h = side x band(h): side -1 is the early end, +1 the late one. Zero when it is past already;
 * null when it never comes. Squared it is one quadratic, whose roots belong to one side or the other by the sign of
 * c + r h.
 */
function meets({ c, r, p, q, s }: Approach, side: -1 | 1): number | null {
  if (c >= side * Math.sqrt(p)) return 0
  const [a, b, d] = [r * r - s, 2 * c * r - q, c * c - p]
  const root = Math.sqrt(b * b - 4 * a * d)
  // The form without cancellation: W. Kahan's way with the quadratic (from memory).
  const big = -(b + (b < 0 ? -root : root)) / 2
  const roots = [big / a, d / big].filter((h) => Number.isFinite(h) && h >= 0)
  const own = roots.filter((h) => side * (c + r * h) >= 0).sort((x, y) => x - y)
  return own[0] ?? null
}
