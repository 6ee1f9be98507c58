// What the plot of wear is drawn from: what the overhauls left, what this job found, and where one further reading may lie.
import { recordedSame } from '../../job/changes.ts'
import type { Definitions } from '../../job/definitions.ts'
import type { Changed } from '../../review/review.ts'
import { limitSource } from '../../sheet/limit-source.ts'
import { spreadAt } from '../../statistics/line.ts'
import { type WearHistory, wornSide } from '../../wear/history.ts'
import type { WearRate } from '../../wear/rate.ts'
import type { PlotOf } from '../schema-plots.ts'
import { placeOf } from './changes.ts'
import { shopLength } from './figure.ts'

/** Places along the band. */
const STEPS = 24
/** Figures of a worked-out edge: more than any gauge, fewer than what two makes of processor may round apart. */
const FIGURES = 9

/** One plot for each thing that wears, of the place that is nearest to its limit, or wears fastest where no limit is told. */
export function wearPlots(defs: Definitions, changes: readonly Changed[]): PlotOf<'wear'>[] {
  const things = [...new Set(changes.map(({ of }) => of))]
  return things.flatMap((thing) => {
    const places = changes.filter((one) => one.of === thing && one.rate?.ok === true && one.history !== null)
    const first = nearest(places)
    return first === null ? [] : plotOf(defs, first, places.length)
  })
}

function nearest(places: readonly Changed[]): Changed | null {
  const hours = ({ hoursLeft }: Changed) =>
    hoursLeft?.ok === true ? hoursLeft.value.earliest : Number.POSITIVE_INFINITY
  const rate = ({ rate: worn }: Changed) =>
    worn?.ok === true ? worn.value.perHour : Number.NEGATIVE_INFINITY
  return places.reduce<Changed | null>((best, one) => {
    if (best === null || hours(one) < hours(best)) return one
    return hours(one) === hours(best) && rate(one) > rate(best) ? one : best
  }, null)
}

function plotOf(defs: Definitions, one: Changed, of: number): PlotOf<'wear'>[] {
  const { history, rate, hoursLeft } = one
  if (history === null || rate === null || !rate.ok) return []
  const limit = hoursLeft?.ok === true ? hoursLeft.value.of : null
  const refused = hoursLeft !== null && !hoursLeft.ok ? [`Hours left not told: ${hoursLeft.error.say}`] : []
  const others = of > 1 ? [`The nearest to its limit, or the fastest, of ${of} places.`] : []
  return [
    {
      kind: 'wear',
      title: `${one.of}, ${placeOf(one)}: wear over running hours`,
      unit: defs.machine.shop_units.length,
      notes: [
        ...others,
        ...(one.held.found === null ? [] : [`THE LAST READING WAS MEASURED ON HOLD: ${one.held.found}.`]),
        ...anewNote(defs, one),
        `The band is where one further reading may lie: ${basisText(rate.value)}.`,
        ...(limit === null ? refused : [`Limit: ${limitSource(limit)}.`]),
        'As read, not brought to 20 degC.',
      ],
      readings: history.readings.map(({ hours, value, U }, n) => ({
        hours,
        value: shopLength(defs, value),
        U,
        isNow: n === history.readings.length - 1,
      })),
      band: bandOf(history, rate.value, hoursLeft?.ok === true ? hoursLeft.value.expected : null),
      basis: rate.value.basis,
      limit: limit === null ? null : shopLength(defs, limit.value),
    },
  ]
}

/** Why the record of before does not count further back. */
function anewNote(defs: Definitions, { found }: Changed): string[] {
  const why =
    found === null ? null : (recordedSame(defs, found).findLast((one) => one.why !== null)?.why ?? null)
  return why === null ? [] : [`Wear begins anew: ${why}.`]
}

/** From two readings nothing is known of scatter, and that is said. */
export function basisText({ basis, line }: WearRate): string {
  return line === null ? `${basis}, as two readings show no scatter` : `${basis}, 95 in 100`
}

/** As far ahead as the record is long, and no further: the limit may lie beyond it. */
export function bandOf(
  history: WearHistory,
  rate: WearRate,
  expected: number | null,
): PlotOf<'wear'>['band'] {
  const span = rate.to.hours - rate.from.hours
  const ahead = Math.min(span, Math.max(span / 4, expected ?? 0))
  const turn = history.wears === 'larger' ? 1 : -1
  return Array.from({ length: STEPS + 1 }, (_, i) => {
    const hours = rate.from.hours + ((span + ahead) * i) / STEPS
    const { fit, half } = predictionAt(history, rate, hours)
    const edges = [turn * (fit - half), turn * (fit + half)]
    return {
      hours: rounded(hours),
      low: rounded(Math.min(...edges)),
      fit: rounded(turn * fit),
      high: rounded(Math.max(...edges)),
    }
  })
}

/**
 * On the worn side: straight on, and half the interval for one further reading. It is the band whose edges reach the limit at
 * the ends that wear/hours-left tells (same sources): of two readings the errors of both carried on, of more that of the line.
 */
export function predictionAt(
  history: WearHistory,
  rate: WearRate,
  hours: number,
): { readonly fit: number; readonly half: number } {
  if (rate.line !== null && rate.band !== null) {
    const { line } = rate
    return { fit: line.yMean + line.slope * (hours - line.xMean), half: rate.band * spreadAt(line, hours) }
  }
  const span = rate.to.hours - rate.from.hours
  const h = hours - rate.to.hours
  const [u1, u2] = [rate.from.U, rate.to.U]
  const square = u2 ** 2 + (2 * u2 ** 2 * h) / span + ((u1 ** 2 + u2 ** 2) * h ** 2) / span ** 2
  return { fit: wornSide(history, rate.to.value) + rate.perHour * h, half: Math.sqrt(Math.max(0, square)) }
}

export function rounded(value: number): number {
  return Number(value.toPrecision(FIGURES))
}
