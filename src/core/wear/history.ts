// What several overhauls found of one part, and every reason why no line may be drawn through it.
import { formatNumber } from '../lib/decimal.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { expandedOfTwo } from '../metrology/budget.ts'

/** What may have been done to the part between one reading and the next; `unknown` counts as done. */
export type Renewal = 'nothing' | 'reline' | 'rebore' | 'material' | 'unknown'

export interface WearReading {
  /** Service hours (hours run, not calendar time) on the meter when it was read. */
  readonly hours: number
  /** Metres. */
  readonly value: number
  /** Expanded uncertainty (k = 2) of this reading, metres. */
  readonly U: number
  /** What was done to the part since the reading before; of no account on the first. */
  readonly since: Renewal
}

export interface WearHistory {
  readonly readings: readonly WearReading[]
  /** Which way wear takes the reading: a bore grows, a ring thins. */
  readonly wears: 'larger' | 'smaller'
}

const DONE: Readonly<Record<Exclude<Renewal, 'nothing'>, string>> = {
  reline: 'the part was relined or renewed',
  rebore: 'the part was bored or machined',
  material: 'the material was changed',
  unknown: 'it is not on record whether the part was renewed',
}

/** The reading turned so that wear always makes it greater. */
export function wornSide({ wears }: WearHistory, value: number): number {
  return wears === 'larger' ? value : -value
}

/**
 * A history that a rate may be taken from: two readings or more, in order of service hours, none renewed between, no
 * step back by more than its measuring error. Everything else is refused, and a refusal here means HOLD.
 *
 * Codes: too-few-readings, reading-unsound, hours-order, renewed-between, contradiction.
 * Wear that goes back can only be a wrong reading, a part that was renewed without a record, or deposit: common
 * practice, no source.
 */
export function soundHistory(history: WearHistory): Result<WearHistory> {
  const { readings } = history
  if (readings.length < 2)
    return refuse('too-few-readings', 'HOLD: a rate needs readings from two overhauls or more.')
  for (const [i, reading] of readings.entries()) {
    const fault = readingFault(reading)
    if (fault !== null) return refuse('reading-unsound', `HOLD: reading ${i + 1} ${fault}.`)
    const before = readings[i - 1]
    if (before === undefined) continue
    const step = `between ${whole(before.hours)} h and ${whole(reading.hours)} h`
    if (!(reading.hours > before.hours))
      return refuse(
        'hours-order',
        `HOLD: service hours must rise from reading to reading, and reading ${i + 1} does not; was the meter changed?`,
      )
    if (reading.since !== 'nothing')
      return refuse(
        'renewed-between',
        `HOLD: ${step} ${DONE[reading.since]}; a rate across that means nothing: give only the readings since.`,
      )
    const back = wornSide(history, before.value) - wornSide(history, reading.value)
    if (back > expandedOfTwo(before.U, reading.U) * (1 + 1e-9) + 1e-12)
      return refuse(
        'contradiction',
        `HOLD: ${step} the wear went back by more than the measuring error; read again, or find what was renewed.`,
      )
  }
  return ok(history)
}

function readingFault({ hours, value, U }: WearReading): string | null {
  if (!(Number.isFinite(hours) && hours >= 0)) return 'has no service hours of zero or more'
  if (!(Number.isFinite(value) && value >= 0)) return 'is not a size of zero or more'
  return Number.isFinite(U) && U > 0 ? null : 'has no measuring error U above zero on record'
}

export function whole(hours: number): string {
  return formatNumber(hours, 0)
}
