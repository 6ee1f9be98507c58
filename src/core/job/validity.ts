// How long something stands that a lead let pass: until a day, or for a number of running hours. Never without an end.
import { day } from '../definition/common.ts'
import { daysNamed } from '../lib/days-named.ts'
import { dayOf, readStamp } from '../lib/instant.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

/** `until`: the last day, YYYY-MM-DD. `hours`: running hours, from `from` on the counter; left out, from when it was signed. */
export type Validity = { readonly until: string } | { readonly hours: number; readonly from?: number }

const HOURS = /^(\d{1,6}) ?(?:h|hours|running hours)$/i

/** `at` is the record's clock; the day must lie after its day, the hours above zero. A day in words is taken where it can only be one. */
export function validityFrom(typed: string, at: string): Result<Validity> {
  const text = typed.trim()
  const hours = HOURS.exec(text)
  if (hours !== null) {
    const count = Number(hours[1])
    return count > 0 ? ok({ hours: count }) : refuse('validity', 'Running hours have to be above zero.')
  }
  const now = readStamp(at)
  const [named, ...more] = daysNamed(text)
  const isAll = named !== undefined && more.length === 0 && named.text.length === text.length
  if (isAll && named.doubt !== null)
    return refuse(
      'validity',
      `${text} ${named.doubt.includes(' or ') ? 'can be' : 'is'} ${named.doubt}. Key the day as YYYY-MM-DD, or in words with day, month and year.`,
    )
  const until = isAll ? (named.day ?? '') : text
  if (!day.safeParse(until).success)
    return refuse(
      'validity',
      'Key a day as YYYY-MM-DD or in words with day, month and year, or running hours such as 4000 h.',
    )
  if (now === null || !(until > dayOf(now)))
    return refuse(
      'validity',
      `${text} is not after today: key a day to come, or running hours such as 4000 h.`,
    )
  return ok({ until })
}

/** A year of running without a stand, and of days. */
const MOST_HOURS = 8760
const MOST_DAYS = 366

/**
 * Whether an end is further off than a year: by then most machines were opened again and somebody looked. Common practice, no source: it is
 * no limit, and asks for a reason. What cannot be told is far.
 */
export function isFar(valid: Validity, at: string): boolean {
  if ('hours' in valid) return !(valid.hours <= MOST_HOURS)
  const now = readStamp(at)
  const end = readStamp(`${valid.until}T00:00:00.000+00:00`)
  const from = now === null ? null : readStamp(`${dayOf(now)}T00:00:00.000+00:00`)
  return end === null || from === null || !(end.ms - from.ms <= MOST_DAYS * 86_400_000)
}

export function validityText(valid: Validity): string {
  if ('until' in valid) return `until ${valid.until}`
  const { hours, from } = valid
  return from === undefined
    ? `for ${hours} running hours from when it was signed`
    : `for ${hours} running hours from ${from} h, to ${from + hours} h on the counter`
}

/** `until 2027-06-30`, `until 72300 h on the counter`: the end alone, as far as it is known. */
export function endText(valid: Validity): string {
  return 'until' in valid || valid.from === undefined
    ? validityText(valid)
    : `until ${valid.from + valid.hours} h on the counter`
}

const COUNTER = /^(\d{1,7}) ?h?$/i

/**
 * A running time with the hours it counts from: those that this job has read, else those keyed. Without them nobody could tell its
 * end. Refuses `hours-from`, and `hours-before` where the counter was further at the last overhaul on record.
 */
export function countedFrom(
  valid: Validity,
  read: number | null,
  keyed: string | undefined,
  last: number | null,
): Result<Validity> {
  if ('until' in valid) return ok(valid)
  const typed = COUNTER.exec((keyed ?? '').trim())?.[1]
  const from = read ?? (typed === undefined ? Number.NaN : Number(typed))
  if (!Number.isFinite(from))
    return refuse(
      'hours-from',
      'Key the hours on the counter of the machine now, such as 68300: the running time counts from there. back, and a day, where nobody can read it.',
    )
  if (last !== null && !(from >= last))
    return refuse(
      'hours-before',
      `The last overhaul on record was at ${last} h, and ${from} h are fewer: read the counter again.`,
    )
  return ok({ ...valid, from })
}

/** Past its last day at the given moment; running hours are not told from a clock. A time that cannot be read is past. */
export function isOver(valid: Validity, at: string): boolean {
  if (!('until' in valid)) return false
  const now = readStamp(at)
  return now === null || !(dayOf(now) <= valid.until)
}
