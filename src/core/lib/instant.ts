// A moment as the job's own clock showed it: milliseconds since 1970 in UTC, and the offset of the wall clock then.
// Written with its offset, so a log reads the same on any machine, in any time zone, on either side of a clock change.

export interface Instant {
  readonly ms: number
  readonly offsetMin: number
}

const MINUTE = 60_000
const DAY = 86_400_000

/** Days since 1970-01-01 of a civil date (proleptic Gregorian; H. Hinnant's published day-count algorithm). */
function daysFromCivil(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year
  const era = Math.floor(y / 400)
  const yoe = y - era * 400
  const doy = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1
  const doe = yoe * 365 + Math.floor(yoe / 4) - Math.floor(yoe / 100) + doy
  return era * 146_097 + doe - 719_468
}

function civilFromDays(days: number): [number, number, number] {
  const z = days + 719_468
  const era = Math.floor(z / 146_097)
  const doe = z - era * 146_097
  const yoe = Math.floor(
    (doe - Math.floor(doe / 1460) + Math.floor(doe / 36_524) - Math.floor(doe / 146_096)) / 365,
  )
  const doy = doe - (365 * yoe + Math.floor(yoe / 4) - Math.floor(yoe / 100))
  const mp = Math.floor((5 * doy + 2) / 153)
  const month = mp < 10 ? mp + 3 : mp - 9
  return [yoe + era * 400 + (month <= 2 ? 1 : 0), month, doy - Math.floor((153 * mp + 2) / 5) + 1]
}

const two = (n: number) => String(n).padStart(2, '0')

/** `2026-03-14T06:52:10.125+01:00`. */
export function stamp(now: Instant): string {
  const local = now.ms + now.offsetMin * MINUTE
  const days = Math.floor(local / DAY)
  const [y, mo, d] = civilFromDays(days)
  const rest = local - days * DAY
  const time = [Math.floor(rest / 3_600_000), Math.floor(rest / MINUTE) % 60, Math.floor(rest / 1000) % 60]
    .map(two)
    .join(':')
  const off = Math.abs(now.offsetMin)
  const zone = `${now.offsetMin < 0 ? '-' : '+'}${two(Math.floor(off / 60))}:${two(off % 60)}`
  return `${String(y).padStart(4, '0')}-${two(mo)}-${two(d)}T${time}.${String(rest % 1000).padStart(3, '0')}${zone}`
}

const STAMP =
  /^(\d{4})-(\d{2})-(\d{2})[T ](\d{2}):(\d{2})(?::(\d{2})(?:\.(\d{3}))?)?(?:([+-])(\d{2}):(\d{2})|Z)?$/

/** Reads a stamp (seconds and offset may be left out: then 0 and UTC). Anything else is null. */
export function readStamp(text: string): Instant | null {
  const m = STAMP.exec(text)
  if (m === null) return null
  const n = (i: number) => Number(m[i] ?? 0)
  const valid =
    n(2) >= 1 &&
    n(2) <= 12 &&
    n(3) >= 1 &&
    n(3) <= 31 &&
    n(4) <= 23 &&
    n(5) <= 59 &&
    n(6) <= 59 &&
    n(9) <= 14 &&
    n(10) <= 59
  if (!valid) return null
  const days = daysFromCivil(n(1), n(2), n(3))
  if (civilFromDays(days)[2] !== n(3)) return null
  const offsetMin = (n(9) * 60 + n(10)) * (m[8] === '-' ? -1 : 1)
  const ms = days * DAY + n(4) * 3_600_000 + n(5) * MINUTE + n(6) * 1000 + n(7) - offsetMin * MINUTE
  return { ms, offsetMin }
}

/** `06:52`, as the wall clock showed it. */
export function clockOf(now: Instant): string {
  return stamp(now).slice(11, 16)
}

/** `2026-03-14`, as the wall calendar showed it. */
export function dayOf(now: Instant): string {
  return stamp(now).slice(0, 10)
}

/** Whole minutes from one moment to a later one, rounded down; never negative. */
export function minutesBetween(from: number, to: number): number {
  return Math.max(0, Math.floor((to - from) / MINUTE))
}

/** The moment at which the day ends on the wall calendar, by the offset of the wall clock then. */
export function dayEndsMs(at: Instant): number {
  const offset = at.offsetMin * MINUTE
  return (Math.floor((at.ms + offset) / DAY) + 1) * DAY - offset
}
