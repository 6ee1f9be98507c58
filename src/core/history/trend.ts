// How one place of one machine wears over all jobs and overhauls on record, and when it may reach its limit.
import { type Result, refuse } from '../lib/result.ts'
import type { WearHistory, WearReading } from '../wear/history.ts'
import { type HoursLeft, hoursToLimits } from '../wear/hours-left.ts'
import { type WearRate, wearRate } from '../wear/rate.ts'
import type { JobDigest, PlaceDigest } from './digest.ts'
import { readMs, type Shrunk, shrunkAt } from './shrunk.ts'

export interface Trend {
  readonly of: string
  readonly station: string
  readonly axis: string | null
  readonly name: string
  /** Since it was last renewed or worked on, in order of running hours. */
  readonly readings: readonly WearReading[]
  readonly wears: 'larger' | 'smaller'
  /** Why nothing before the first of them counts, as a clause; null: nothing was renewed or worked on. */
  readonly anew: string | null
  /** Readings of it on jobs whose running hours nobody read: on record, and in no rate. */
  readonly untimed: number
  /** The newest reading of all, where nobody read the hours of its job; null where the newest has its hours. */
  readonly newest: Newest | null
  /** Jobs that measured it on HOLD, whatever they do to the rate. */
  readonly held: readonly { readonly job: string; readonly why: string }[]
  /** Where it went against its wear, with no work on record between. */
  readonly shrunk: readonly Shrunk[]
  readonly limit: PlaceDigest['limit']
  readonly rate: Result<WearRate>
  /** Hours after the last reading; null where no limit is on record of this size. */
  readonly left: Result<HoursLeft> | null
}

/** What was read last and is in no rate. SI. */
export interface Newest {
  readonly job: string
  /** Stamp of its reading; of one that does not tell it, of the job's opening. */
  readonly at: string
  readonly value: number
  /** The last reading before it of the same part whose hours are known; null where none is, or the part was worked on since. */
  readonly since: { readonly hours: number; readonly value: number } | null
}

interface Point extends Omit<WearReading, 'U'> {
  readonly U: number | null
  readonly why: string | null
}

interface Points {
  readonly points: readonly Point[]
  /** Why none of them counts any more: the part was worked on after the last, and not read since. */
  readonly pending: string | null
}

/** Jobs of one machine, oldest first. Places that nothing says which way they wear are not told. */
export function trendsOf(all: readonly JobDigest[]): Trend[] {
  const latest = new Map<string, { place: PlaceDigest; ms: number }>()
  for (const job of all)
    for (const place of job.places) {
      const ms = readMs(job, place)
      const known = latest.get(keyOf(place))
      if (known === undefined || ms >= known.ms) latest.set(keyOf(place), { place, ms })
    }
  return [...latest.values()].flatMap(({ place }) => {
    const { of, station, axis, name, wears, limit } = place
    if (wears === null) return []
    // Of two jobs that ran at once the one read last is the later, whichever was opened first.
    const jobs = byReading(all, place)
    const shrunk = shrunkAt(
      jobs,
      place,
      (job) => ownOf(job, place),
      (job) => isKnownIn(place, job),
    )
    const held = jobs.flatMap((job) => {
      const why = ownOf(job, place)?.held
      return why === undefined ? [] : [{ job: job.job, why }]
    })
    const { points, pending } = pointsOf(jobs, place)
    const untimed = jobs.filter(
      (job) =>
        job.hours === null && job.places.some((one) => one.found !== null && keyOf(one) === keyOf(place)),
    ).length
    if (pending !== null) {
      const rate = refuse('remade', `it was worked on or renewed, and not read since: ${pending}.`)
      return [
        {
          untimed,
          newest: newestOf(jobs, place, null),
          held,
          shrunk,
          of,
          station,
          axis,
          name,
          readings: [],
          wears,
          anew: pending,
          limit,
          rate,
          left: limit === null ? null : rate,
        },
      ]
    }
    const begun = sinceRenewed(points)
    const newest = newestOf(jobs, place, begun.points.at(-1) ?? null)
    const readings = measured(begun.points) ?? (points.length === 0 && newest !== null ? [] : null)
    if (readings === null) return []
    const history: WearHistory = { readings, wears }
    const rate =
      readings.length === 0
        ? refuse('no-hours', 'HOLD: nobody read the running hours of any job on which it was read.')
        : wearRate(history)
    const left = leftOf(history, place)
    return [
      {
        untimed,
        newest,
        held,
        shrunk,
        of,
        station,
        axis,
        name,
        readings,
        wears,
        anew: begun.why,
        limit,
        rate,
        left,
      },
    ]
  })
}

/** What was worked on since counts from what it was left at: no wear reaches across that. */
function newestOf(jobs: readonly JobDigest[], place: PlaceDigest, last: Point | null): Newest | null {
  const job = jobs.findLast((one) => ownOf(one, place) !== undefined)
  const read = job === undefined ? undefined : ownOf(job, place)
  if (job === undefined || read === undefined || job.hours !== null) return null
  const size = read.remade === null ? read.found : read.left
  if (size === null) return null
  const since = read.remade !== null || last === null ? null : { hours: last.hours, value: last.value }
  return { job: job.job, at: read.at ?? job.opened, value: size.si, since }
}

function ownOf(job: JobDigest, place: PlaceDigest): PlaceDigest | undefined {
  return job.places.find((one) => keyOf(one) === keyOf(place))
}

function byReading(jobs: readonly JobDigest[], place: PlaceDigest): JobDigest[] {
  return [...jobs].sort((a, b) => readMs(a, ownOf(a, place)) - readMs(b, ownOf(b, place)))
}

/** A job whose figures stand in the record already, by its name or its hours, is not told twice. */
function isKnownIn({ earlier }: PlaceDigest, job: JobDigest): boolean {
  return earlier.some(({ report, hours }) => report === job.job || hours === job.hours)
}

export function keyOf({ of, station, axis }: Pick<PlaceDigest, 'of' | 'station' | 'axis'>): string {
  return [of.trim().toLowerCase(), station, axis ?? ''].join('\n')
}

/**
 * What the record of the last job says earlier overhauls left, and what each job found and left beside that. A job whose figures
 * stand in the record already, by its name or its hours, is not told twice.
 */
function pointsOf(jobs: readonly JobDigest[], place: PlaceDigest): Points {
  const { earlier } = place
  const points: Point[] = earlier.map(({ hours, si, U, since, why }) => ({ hours, value: si, U, since, why }))
  let why: string | null = null
  /** Of a size at hours that nobody read nothing is told; that the part was worked on then is known all the same. */
  const put = (hours: number | null, size: PlaceDigest['found']) => {
    if (hours === null || size === null) return
    points.push({ hours, value: size.si, U: size.U, since: why === null ? 'nothing' : 'unknown', why })
    why = null
  }
  for (const job of jobs) {
    const own = ownOf(job, place)
    if (own === undefined || isKnownIn(place, job)) continue
    put(job.hours, own.found)
    if (own.remade === null) continue
    why = `${own.remade}, ${job.job}${job.hours === null ? ', at hours nobody read' : ''}`
    put(job.hours, own.left)
  }
  // Sorting keeps what was found before what was left at the same hours.
  return { points: points.sort((a, b) => a.hours - b.hours), pending: why }
}

/** Never across a reline, a rebore or a change of material. */
function sinceRenewed(points: readonly Point[]): {
  readonly points: readonly Point[]
  readonly why: string | null
} {
  const last = points.findLastIndex(({ since }) => since !== 'nothing')
  return {
    points: points.slice(Math.max(0, last)).map((one, n) => (n === 0 ? { ...one, since: 'nothing' } : one)),
    why: points[last]?.why ?? null,
  }
}

/** Null where an error is on no record: then nothing is told of wear. Of two readings at the same hours the later counts. */
function measured(points: readonly Point[]): WearReading[] | null {
  const readings = points.flatMap(({ hours, value, U, since }) =>
    U === null ? [] : [{ hours, value, U, since }],
  )
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
