// The form of a bore along one axis: taper, end against end, middle against ends. A name only where U allows one.

import {
  type BoreGrid,
  type BoreReading,
  type CommonU,
  differenceUOf,
  extremes,
  readingAt,
  type Station,
} from './bore-readings.ts'

/** `uneven`: stations differ for sure, yet neither middle against ends nor end against end shows it. */
export type FormWord =
  | 'barrel'
  | 'hourglass'
  | 'tapered'
  | 'straight'
  | 'uneven'
  | 'not told apart from measuring error'

/** Expanded uncertainties that a form is told apart with, metres; missing means nothing is told apart. */
export interface FormUncertainty extends CommonU {
  readonly readingU?: number | undefined
  readonly differenceU?: number | undefined
  readonly centreU?: number | undefined
}

export interface AxisForm {
  readonly axis: string
  /** Greatest difference between any two stations on this axis, metres. */
  readonly taperM: number
  readonly widestAt: string
  readonly narrowestAt: string
  /** Difference between the two end stations, metres, and the wider of them (null when they read the same). */
  readonly endToEndM: number
  readonly widerEnd: string | null
  /** Middle less the mean of both ends, metres: positive is wider in the middle. Null with two stations only. */
  readonly widerInMiddleM: number | null
  readonly form: FormWord
}

/** Floating noise, metres. */
const NOISE_M = 1e-9

/** Form along one axis of a whole grid. `straight` is said only where every station reads the same. */
export function axisForm(grid: BoreGrid, axis: string, uncertainty: FormUncertainty): AxisForm {
  const readings = grid.stations.map(({ station }) => readingAt(grid, station, axis))
  const { most, least } = extremes(readings)
  const near = readings[0]
  const far = readings[readings.length - 1]
  if (near === undefined || far === undefined) throw new Error('a whole grid has stations')
  const endToEndM = Math.abs(far.valueM - near.valueM)
  const wider = far.valueM > near.valueM ? far.station : near.station
  const middle = middleStations(grid.stations).map(({ station }) => readingAt(grid, station, axis))
  const widerInMiddleM =
    middle.length === 0 ? null : mean(middle.map(({ valueM }) => valueM)) - mean([near.valueM, far.valueM])
  const taperM = most.valueM - least.valueM
  return {
    axis,
    taperM,
    widestAt: most.station,
    narrowestAt: least.station,
    endToEndM,
    widerEnd: endToEndM <= NOISE_M ? null : wider,
    widerInMiddleM,
    form: formWord(
      { taperM, endToEndM, widerInMiddleM },
      {
        taperU: differenceUOf(most, least, uncertainty) ?? undefined,
        endsU: differenceUOf(near, far, uncertainty) ?? undefined,
        centreU: centreUOf(middle, [near, far], uncertainty),
      },
    ),
  }
}

function formWord(
  differ: { taperM: number; endToEndM: number; widerInMiddleM: number | null },
  { taperU, endsU, centreU }: Record<'taperU' | 'endsU' | 'centreU', number | undefined>,
): FormWord {
  const middle = differ.widerInMiddleM ?? 0
  if (isToldApart(Math.abs(middle), centreU)) return middle > 0 ? 'barrel' : 'hourglass'
  if (isToldApart(differ.endToEndM, endsU)) return 'tapered'
  if (isToldApart(differ.taperM, taperU)) return 'uneven'
  const areErrorsKnown = taperU !== undefined && centreU !== undefined
  return areErrorsKnown && differ.taperM <= NOISE_M ? 'straight' : 'not told apart from measuring error'
}

function isToldApart(differenceM: number, u: number | undefined): boolean {
  return u !== undefined && differenceM > u + NOISE_M
}

/** U of the middle less the mean of both ends where one of them carries its own: the sum of squares, ends by a half each. */
function centreUOf(
  middle: readonly BoreReading[],
  ends: readonly BoreReading[],
  { readingU, centreU }: FormUncertainty,
): number | undefined {
  const all = [...middle, ...ends]
  if (all.every(({ expandedU }) => expandedU === undefined)) return centreU
  if (readingU === undefined) return undefined
  const share = (some: readonly BoreReading[]) =>
    some.map(({ expandedU = readingU }) => expandedU / some.length)
  return Math.hypot(...share(middle), ...share(ends))
}

/** The inner station nearest to half way between the ends; both, when two are as near. */
function middleStations(stations: readonly Station[]): Station[] {
  const inner = stations.slice(1, -1)
  const halfWay = mean([stations[0]?.at ?? 0, stations[stations.length - 1]?.at ?? 0])
  const away = inner.map(({ at }) => Math.abs(at - halfWay))
  const nearest = Math.min(...away)
  return inner.filter((_, index) => (away[index] ?? Number.POSITIVE_INFINITY) <= nearest + NOISE_M)
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
