// What the readings of one bore say about its shape. Reckons only; judging is in bore-judge.ts.

import { ok, type Result, refuse } from '../lib/result.ts'
import { type AxisForm, axisForm, type FormUncertainty, type FormWord } from './axis-form.ts'
import {
  type BoreGrid,
  type BoreReading,
  boreGrid,
  extremes,
  type Place,
  readingAt,
} from './bore-readings.ts'

export interface StationRound {
  readonly station: string
  /** Greatest less least axis at this station, metres. */
  readonly outOfRoundM: number
  readonly widestOn: string
  readonly narrowestOn: string
}

export interface PlacedSize extends Place {
  readonly valueM: number
}

export interface BoreForm {
  /** In order along the bore. */
  readonly stations: readonly string[]
  readonly axes: readonly string[]
  readonly round: readonly StationRound[]
  readonly worstRound: StationRound
  readonly perAxis: readonly AxisForm[]
  readonly worstTaper: AxisForm
  /** The form all axes that tell one agree on; `uneven` where they differ. */
  readonly form: FormWord
  /** On the axis where middle and ends differ most, metres, positive when wider in the middle; null if no middle. */
  readonly widerInMiddleM: number | null
  readonly widerInMiddleOn: string | null
  /** Greatest less least of all readings, any plane or place, metres. */
  readonly spreadM: number
  readonly largest: PlacedSize
  readonly smallest: PlacedSize
}

/**
 * Out-of-round per station, taper per axis (greatest difference between ANY two stations), end against end and
 * middle against ends apart, spread of all, largest and smallest with their places.
 *
 * The form is named barrel, hourglass or tapered only where the difference exceeds its U, with
 * U(difference) = sqrt(2) U and U(middle less mean of ends) = sqrt(1.5) U; pass both from uncertainty.ts.
 * Names and stations: H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, 1996,
 * p. 256-259 (a bore is read at both ends and the middle of ring travel, on two axes). Which of barrel and hourglass
 * a worn bore takes, the book says both ways, so nothing is assumed.
 * Refuses: what boreGrid refuses; an uncertainty that is not a number of zero or more.
 */
export function boreForm(
  readings: readonly BoreReading[],
  uncertainty: FormUncertainty = {},
): Result<BoreForm> {
  const given = [...Object.values(uncertainty), ...readings.map(({ expandedU }) => expandedU)].filter(
    (u) => typeof u === 'number',
  )
  if (!given.every((u) => Number.isFinite(u) && u >= 0))
    return refuse(
      'bore-u-unsound',
      'The measuring error U is not a number of zero or more: correct the record.',
    )
  const checked = boreGrid(readings)
  if (!checked.ok) return checked
  const grid = checked.value
  const round = grid.stations.map(({ station }) => stationRound(grid, station))
  const perAxis = grid.axes.map((axis) => axisForm(grid, axis, uncertainty))
  const middle = greatest(perAxis, (axis) => Math.abs(axis.widerInMiddleM ?? 0))
  const inOrder = grid.stations.flatMap(({ station }) =>
    grid.axes.map((axis) => readingAt(grid, station, axis)),
  )
  const { most, least } = extremes(inOrder)
  return ok({
    stations: grid.stations.map(({ station }) => station),
    axes: grid.axes,
    round,
    worstRound: greatest(round, (station) => station.outOfRoundM),
    perAxis,
    worstTaper: greatest(perAxis, (axis) => axis.taperM),
    form: formOfAll(perAxis),
    widerInMiddleM: middle.widerInMiddleM,
    widerInMiddleOn: middle.widerInMiddleM === null ? null : middle.axis,
    spreadM: most.valueM - least.valueM,
    largest: placed(most),
    smallest: placed(least),
  })
}

function stationRound(grid: BoreGrid, station: string): StationRound {
  const { most, least } = extremes(grid.axes.map((axis) => readingAt(grid, station, axis)))
  return { station, outOfRoundM: most.valueM - least.valueM, widestOn: most.axis, narrowestOn: least.axis }
}

function placed({ station, axis, valueM }: BoreReading): PlacedSize {
  return { station, axis, valueM }
}

/** An axis that tells nothing has no say; axes that tell different forms make the whole uneven. */
function formOfAll(perAxis: readonly AxisForm[]): FormWord {
  const silent: readonly FormWord[] = ['straight', 'not told apart from measuring error']
  const [told, ...others] = new Set(perAxis.map(({ form }) => form).filter((form) => !silent.includes(form)))
  if (told !== undefined) return others.length === 0 ? told : 'uneven'
  return perAxis.every(({ form }) => form === 'straight') ? 'straight' : 'not told apart from measuring error'
}

function greatest<T>(items: readonly T[], size: (item: T) => number): T {
  const [first, ...rest] = items
  if (first === undefined) throw new Error('greatest of nothing')
  return rest.reduce((most, item) => (size(item) > size(most) ? item : most), first)
}
