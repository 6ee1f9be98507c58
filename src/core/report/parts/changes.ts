// As found, as left and the last overhaul at each place, with the wear between and the hours left, as the review has them.
import type { Definitions } from '../../job/definitions.ts'
import type { Changed } from '../../review/review.ts'
import { limitSource } from '../../sheet/limit-source.ts'
import { changeFigures, wearFigures } from '../../talk/changes.ts'
import type { QuantityKind } from '../../units/index.ts'
import type { Report } from '../schema.ts'
import type { Figure } from '../schema-words.ts'
import { asFinish, figureOf, shopLength } from './figure.ts'

type Told = Report['changes'][number]

export function changesOf(defs: Definitions, changes: readonly Changed[]): Told[] {
  return changes.flatMap((one): Told[] => {
    const taken = one.found ?? one.left
    const figures = changeFigures(defs, one)
    if (taken === null || figures === null) return []
    const kind: QuantityKind = taken.step.step.quantity
    // A finish names itself beside its unit; for programs the unit alone counts.
    const unit = figures.unit.split(' ')[0] ?? figures.unit
    const named = figures.unit === unit ? (one: Figure) => one : asFinish
    const figure = (si: number | undefined, shown: string | null) =>
      si === undefined || shown === null ? null : named(figureOf(kind, si, unit, shown))
    const last = figure(one.last?.si, figures.last)
    return [
      {
        of: one.of,
        place: placeOf(one),
        last: one.last === null || last === null ? null : { on: one.last.on, value: last },
        found: figure(one.found?.si, figures.found),
        left: figure(one.left?.si, figures.left),
        worn: figures.worn,
        change: figures.change,
        ...(one.held.found === null && one.held.left === null ? {} : { held: one.held }),
        wear: wearOf(defs, one),
        hoursLeft: hoursOf(defs, one),
      },
    ]
  })
}

/** `CENTRE of ring travel, TOP TO BOTTOM`. */
export function placeOf({ found, left }: Pick<Changed, 'found' | 'left'>): string {
  const place = (found ?? left)?.place
  if (place === undefined) return ''
  return [place.station.label, ...(place.axis === null ? [] : [place.axis.label])].join(', ')
}

function wearOf(defs: Definitions, { found, rate, history }: Changed): Told['wear'] {
  if (rate === null || found === null) return null
  if (!rate.ok) return { refused: rate.error.say }
  const { per1000, interval, basis } = wearFigures(defs, found, rate.value)
  return {
    perHour: rate.value.perHour,
    U: rate.value.U,
    per1000,
    interval,
    basis,
    readings: history?.readings.length ?? 0,
  }
}

function hoursOf(defs: Definitions, { hoursLeft }: Changed): Told['hoursLeft'] {
  if (hoursLeft === null) return null
  if (!hoursLeft.ok) return { refused: hoursLeft.error.say }
  const { earliest, expected, latest, of } = hoursLeft.value
  return { earliest, expected, latest, limit: shopLength(defs, of.value), source: limitSource(of) }
}
