// How one place of one machine wears over all jobs and overhauls on record, and when it may reach its limit.
import { type Result, refuse } from '../lib/result.ts'
import type { WearHistory, WearReading } from '../wear/history.ts'
import { type HoursLeft, hoursToLimits } from '../wear/hours-left.ts'
import { type WearRate, wearRate } from '../wear/rate.ts'
import type { JobDigest, PlaceDigest } from './digest.ts'

export interface Trend {
  readonly of: string
  readonly station: string
  readonly axis: string | null
  readonly name: string
  /** Since it was last renewed or worked on, in order of running hours. */
  readonly readings: readonly WearReading[]
  readonly wears: 'larger' | 'smaller'
  readonly limit: PlaceDigest['limit']
  readonly rate: Result<WearRate>
  /** Hours after the last reading; null where no limit is on record of this size. */
  readonly left: Result<HoursLeft> | null
}

interface Point extends Omit<WearReading, 'U'> {
  readonly U: number | null
}

/** Jobs of one machine, oldest first. Places that nothing says which way they wear are not told. */
export function trendsOf(jobs: readonly JobDigest[]): Trend[] {
  const latest = new Map<string, PlaceDigest>()
  for (const { places } of jobs) for (const place of places) latest.set(keyOf(place), place)
  return [...latest.values()].flatMap((place) => {
    const { of, station, axis, name, wears, limit } = place
    if (wears === null) return []
    const readings = measured(sinceRenewed(pointsOf(jobs, place)))
    if (readings === null) return []
    const history: WearHistory = { readings, wears }
    const rate = wearRate(history)
    return [{ of, station, axis, name, readings, wears, limit, rate, left: leftOf(history, place) }]
  })
}

export function keyOf({ of, station, axis }: Pick<PlaceDigest, 'of' | 'station' | 'axis'>): string {
  return [of.trim().toLowerCase(), station, axis ?? ''].join('\n')
}

/**
 * What the record of the last job says earlier overhauls left, and what each job found and left beside that. A job whose figures
 * stand in the record already, by its name or its hours, is not told twice.
 */
function pointsOf(jobs: readonly JobDigest[], { earlier, ...place }: PlaceDigest): Point[] {
  const points: Point[] = earlier.map(({ hours, si, U, since }) => ({ hours, value: si, U, since }))
  const isKnown = (job: JobDigest) =>
    earlier.some(({ report, hours }) => report === job.job || hours === job.hours)
  let since: WearReading['since'] = 'nothing'
  for (const job of jobs) {
    const own = job.places.find((one) => keyOf(one) === keyOf(place))
    if (own === undefined || job.hours === null || isKnown(job)) continue
    const { hours } = job
    if (own.found !== null) points.push({ hours, value: own.found.si, U: own.found.U, since })
    since = own.isRemade ? 'unknown' : 'nothing'
    if (own.isRemade && own.left !== null) {
      points.push({ hours, value: own.left.si, U: own.left.U, since })
      since = 'nothing'
    }
  }
  // Sorting keeps what was found before what was left at the same hours.
  return points.sort((a, b) => a.hours - b.hours)
}

/** Never across a reline, a rebore or a change of material. */
function sinceRenewed(points: readonly Point[]): Point[] {
  const last = points.findLastIndex(({ since }) => since !== 'nothing')
  return points.slice(Math.max(0, last)).map((one, n) => (n === 0 ? { ...one, since: 'nothing' } : one))
}

/** Null where an error is on no record: then nothing is told of wear. Of two readings at the same hours the later counts. */
function measured(points: readonly Point[]): WearReading[] | null {
  const readings = points.flatMap(({ U, ...one }) => (U === null ? [] : [{ ...one, U }]))
  if (readings.length !== points.length || readings.length === 0) return null
  return readings.filter((one, n) => readings[n + 1]?.hours !== one.hours)
}

function leftOf(history: WearHistory, { limit, firstSet }: PlaceDigest): Trend['left'] {
  if (limit === null) return null
  const told = hoursToLimits(history, [limit.si], firstSet)
  if (!told.ok) return told
  const [one] = told.value.limits
  return one === undefined ? refuse('no-limit', 'no limit is on record.') : { ok: true, value: one }
}
