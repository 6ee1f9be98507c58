// The bore along ring travel: sizes by station and axis against the limits of size, drawn larger than lengths and saying so.
import { line } from 'd3-shape'
import { fromSi, shownNumber, valueIn } from '../../units/index.ts'
import type { PlotOf } from '../schema-plots.ts'
import { axesShapes, domainOf, frameOf, levels, MARKS, mark, rounded, SERIES_INKS, WIDTH } from './frame.ts'
import { backed, type Datum, hundredth, type Ink, type Scene, type Shape, text } from './scene.ts'

/** A limit further off than this many times the spread of the sizes is told at the edge, or nothing could be seen of the sizes. */
const FAR = 3
/** Sizes are never drawn over more of the height than this share of what they may differ by would take. */
const SHARE = 0.3
/** Room for the name of a line of measurement, above the plot. */
const KEY = 110

type Plot = PlotOf<'bore-profile'>

/** The name of the line that is drawn above the least size. */
export const LIMIT_OF_SPREAD = 'limit of the spread'

export function boreScene(plot: Plot): Scene {
  const sizes = plot.points.map(({ value }) => inUnit(value.si, plot.unit))
  const [least, most] = [Math.min(...sizes), Math.max(...sizes)]
  const lines = plot.lines.map((one) => ({ ...one, at: inUnit(one.value.si, plot.unit) }))
  const spread = Math.max(
    most - least,
    ...lines.map(({ label, at }) => (isOfSpread(label) ? SHARE * (at - least) : 0)),
    1e-9,
  )
  const isFar = (at: number) => at - most > FAR * spread || least - at > FAR * spread
  const near = lines.filter(({ at }) => !isFar(at))
  const far = lines.filter(({ at }) => isFar(at))
  const travel = plot.points.map(({ at }) => at)
  const frame = frameOf({
    x: [Math.min(0, ...travel) - 0.1, Math.max(1, ...travel) + 0.1],
    y: domainOf([...sizes, least + spread, ...near.map(({ at }) => at)]),
  })
  const times = exaggeration(plot, frame)
  const axes = [...new Set(plot.points.map(({ axis }) => axis))]
  const series = axes.map((axis, i) => seriesOf(plot, axis, frame, i))
  const { box } = frame
  const stations = new Map(plot.points.map(({ at, station }) => [at, station]))
  return {
    title: plot.title,
    told: toldOf(
      plot,
      far.map(({ label }) => label),
    ),
    notes: [`Sizes are drawn ${times} times as large as lengths: exaggerated.`, ...plot.notes],
    width: 520,
    height: 290,
    shapes: [
      ...axesShapes(frame, {
        x: `along ring travel, HE to CE, ${plot.travel.text}`,
        y: `diameter [${plot.unit}]`,
        at: [...stations].map(([value, label]) => ({ value, label })),
      }),
      ...levels(
        frame,
        near.map(({ at, label, value }) => ({
          value: at,
          label: `${label} ${value.shown}`,
          ink: label === 'nominal' ? ('quiet' as const) : ('limit' as const),
        })),
      ),
      ...farShapes(far, most, box),
      ...series.flatMap(({ shapes }) => shapes),
      ...series.flatMap(({ values }) => values),
      ...axes.flatMap((axis, i): Shape[] => [
        mark(MARKS[i % MARKS.length] ?? 'circle', box.left + 8 + KEY * i, 9, inkOf(i)),
        text(box.left + 15 + KEY * i, 12, axis, 'start', { ink: inkOf(i), size: 8 }),
      ]),
    ],
    data: series.flatMap(({ data }) => data),
  }
}

const isOfSpread = (label: string) => label === LIMIT_OF_SPREAD

function inUnit(si: number, unit: string): number {
  return valueIn(fromSi('length', si), unit)
}

/** Above and below what is drawn, at the right, clear of the names of lines that are in it. */
function farShapes(
  far: readonly (Plot['lines'][number] & { readonly at: number })[],
  most: number,
  box: ReturnType<typeof frameOf>['box'],
): Shape[] {
  const told = (isAbove: boolean) =>
    far
      .filter(({ at }) => at > most === isAbove)
      .map(({ label, value }, i) =>
        text(
          WIDTH - 6,
          isAbove ? 9 + 10 * i : box.bottom + 28 + 10 * i,
          `${label} ${value.shown} lies ${isAbove ? 'above' : 'below'} this`,
          'end',
          { ink: label === 'nominal' ? 'quiet' : 'limit', size: 8 },
        ),
      )
  return [...told(true), ...told(false)]
}

const inkOf = (i: number): Ink => SERIES_INKS[i % SERIES_INKS.length] ?? 'ink'

/** Above its mark or below it, and never on the axis. */
function valueAt(y: number, isAbove: boolean, box: ReturnType<typeof frameOf>['box']): number {
  const below = y + 15
  return isAbove && y - 8 > box.top + 6 ? y - 8 : below < box.bottom - 3 ? below : y - 8
}

function seriesOf(plot: Plot, axis: string, { x, y, box }: ReturnType<typeof frameOf>, i: number) {
  const points = plot.points.filter((one) => one.axis === axis).sort((a, b) => a.at - b.at)
  const data = points.map((one): Datum => {
    const value = inUnit(one.value.si, plot.unit)
    return { series: axis, label: one.station, value: [one.at, value], px: [x(one.at), y(value)] }
  })
  const ink = inkOf(i)
  const d = line<Datum>(
    ({ px }) => px[0],
    ({ px }) => px[1],
  )(data)
  const shapes: Shape[] = [
    {
      is: 'path',
      d: rounded(d ?? ''),
      stroke: ink,
      width: 1.25,
      ...(i === 0 ? {} : { dash: [5, 2] as const }),
    },
    ...data.flatMap(({ px }): Shape[] => [mark(MARKS[i % MARKS.length] ?? 'circle', px[0], px[1], ink)]),
  ]
  // Under the line of another axis nobody could read them: they are drawn after all lines and marks.
  const values = data.flatMap(({ px }, n) =>
    backed(px[0], valueAt(px[1], i === 0, box), points[n]?.value.shown ?? '', ink),
  )
  return { data, shapes, values }
}

/** How many times a size is drawn larger than a length along the bore, to two figures. */
export function exaggeration(plot: Plot, { x, y }: ReturnType<typeof frameOf>): string {
  const travel = inUnit(plot.travel.si, plot.unit)
  const perSize = Math.abs(y(1) - y(0))
  const perLength = Math.abs(x(1) - x(0)) / travel
  const times = Number((perSize / perLength).toPrecision(2))
  return Number.isFinite(times) ? shownNumber(hundredth(times), 0) : 'many'
}

function toldOf(plot: Plot, far: readonly string[]): string {
  const each = plot.points.map(({ station, axis, value }) => `${station} ${axis} ${value.text}`)
  const lines = plot.lines.map(
    ({ label, value }) => `${label} ${value.text}${far.includes(label) ? ', outside the plot' : ''}`,
  )
  return `${each.join('; ')}. ${lines.join('; ')}.`
}
