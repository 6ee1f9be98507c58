// How long something stands that a lead let pass: until a day, or for a number of running hours. Never without an end.
import { day } from '../definition/common.ts'
import { dayOf, readStamp } from '../lib/instant.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

/** `until`: the last day, YYYY-MM-DD. `hours`: running hours from now. */
export type Validity = { readonly until: string } | { readonly hours: number }

const HOURS = /^(\d{1,6}) ?(?:h|hours|running hours)$/i

/** `at` is the record's clock; the day must lie after its day, the hours above zero. */
export function validityFrom(typed: string, at: string): Result<Validity> {
  const text = typed.trim()
  const hours = HOURS.exec(text)
  if (hours !== null) {
    const count = Number(hours[1])
    return count > 0 ? ok({ hours: count }) : refuse('validity', 'Running hours have to be above zero.')
  }
  const now = readStamp(at)
  if (!day.safeParse(text).success)
    return refuse('validity', 'Key a day as YYYY-MM-DD, or running hours such as 4000 h.')
  if (now === null || !(text > dayOf(now)))
    return refuse(
      'validity',
      `${text} is not after today: key a day to come, or running hours such as 4000 h.`,
    )
  return ok({ until: text })
}

export function validityText(valid: Validity): string {
  return 'until' in valid ? `until ${valid.until}` : `for ${valid.hours} running hours`
}

/** Past its last day at the given moment; running hours are not told from a clock. A time that cannot be read is past. */
export function isOver(valid: Validity, at: string): boolean {
  if (!('until' in valid)) return false
  const now = readStamp(at)
  return now === null || !(dayOf(now) <= valid.until)
}
