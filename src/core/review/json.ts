// The review as plain data for other programs: SI throughout, and nothing of the definitions behind it.
import type { Result } from '../lib/result.ts'
import type { Changed, Review } from './review.ts'

export function reviewJson({ changes, ...rest }: Review) {
  return { ...rest, changes: changes.map(changeJson) }
}

function changeJson({ of, found, left, last, rate, history, hoursLeft, held }: Changed) {
  const one = found ?? left
  return {
    of,
    quantity: one?.step.step.quantity ?? null,
    station: one?.place.station.id ?? null,
    axis: one?.place.axis?.id ?? null,
    last,
    found: found?.si ?? null,
    left: left?.si ?? null,
    held,
    rate: orRefusal(rate, ({ perHour, U, basis }) => ({
      perHour,
      U,
      basis,
      readings: history?.readings.length ?? 0,
    })),
    hoursLeft: orRefusal(hoursLeft, ({ earliest, expected, latest, beyondRecord, of: limit, now }) => ({
      earliest,
      expected,
      latest,
      beyondRecord,
      now,
      limit: { value: limit.value, source: limit.source, from: limit.from },
    })),
  }
}

function orRefusal<T, J>(
  result: Result<T> | null,
  of: (value: T) => J,
): J | { readonly refused: string } | null {
  if (result === null) return null
  return result.ok ? of(result.value) : { refused: result.error.say }
}
