// Wear over running hours: what the overhauls left, what was found now, straight on, and where one further reading may lie.
import { area, line } from 'd3-shape'
import { fromSi, hoursText, valueIn } from '../../units/index.ts'
import type { PlotOf } from '../schema-plots.ts'
import { axesShapes, domainOf, frameOf, levels, mark, rounded } from './frame.ts'
import { backed, type Datum, type Scene, type Shape, stroke, text } from './scene.ts'

const FAR = 3
/** Half the height of a mark, and what of a bar has to stand out of it to be seen. */
const MARK_HALF = 6
const CAP = 4

export function wearScene(plot: PlotOf<'wear'>): Scene {
  const size = (si: number) => valueIn(fromSi('length', si), plot.unit)
  const edges = plot.band.flatMap(({ low, high }) => [size(low), size(high)])
  const sizes = plot.readings.flatMap(({ value, U }) => [size(value.si - U), size(value.si + U)])
  const [least, most] = [Math.min(...edges, ...sizes), Math.max(...edges, ...sizes)]
  const limit = plot.limit === null ? null : size(plot.limit.si)
  const isFar =
    limit !== null && (limit - most > FAR * (most - least) || least - limit > FAR * (most - least))
  const frame = frameOf({
    x: domainOf([...plot.band.map(({ hours }) => hours), ...plot.readings.map(({ hours }) => hours)], 0.06),
    y: domainOf([...edges, ...sizes, ...(limit === null || isFar ? [] : [limit])]),
  })
  const { x, y, box } = frame
  const data = plot.readings.map((one): Datum => {
    const value = size(one.value.si)
    return {
      series: one.isNow ? 'this job' : 'left by an overhaul',
      label: one.value.text,
      value: [one.hours, value],
      px: [x(one.hours), y(value)],
    }
  })
  type Edge = (typeof plot.band)[number]
  const band = area<Edge>(
    ({ hours }) => x(hours),
    ({ low }) => y(size(low)),
    ({ high }) => y(size(high)),
  )([...plot.band])
  const straight = line<Edge>(
    ({ hours }) => x(hours),
    ({ fit }) => y(size(fit)),
  )([...plot.band])
  const isTwo = plot.readings.length === 2
  const isSeen = plot.readings.some(({ value, U }) => y(size(value.si)) - y(size(value.si + U)) > MARK_HALF)
  const inBox = (at: number) => Math.max(box.top + 7, Math.min(box.bottom - 4, at))
  return {
    title: plot.title,
    told: `${plot.readings.map(({ hours, value, isNow }) => `${value.text} at ${hoursText(hours)} h${isNow ? ', read on this job' : ''}`).join('; ')}. The band is ${plot.basis}.${plot.limit === null ? '' : ` Limit ${plot.limit.text}${isFar ? ', outside the plot' : ''}.`}`,
    notes: plot.notes,
    width: 520,
    height: 290,
    shapes: [
      { is: 'path', d: rounded(band ?? ''), fill: 'band' },
      ...axesShapes(frame, {
        x: 'running hours',
        y: `size [${plot.unit}]`,
        tickX: (value) => String(Math.round(value)),
      }),
      { is: 'path', d: rounded(straight ?? ''), stroke: 'first', width: 1.25, dash: [5, 2] },
      ...plot.readings.flatMap((one): Shape[] => [
        stroke(
          [
            [x(one.hours), y(size(one.value.si - one.U))],
            [x(one.hours), y(size(one.value.si + one.U))],
          ],
          'ink',
          1,
        ),
        ...[-1, 1].map((side) =>
          stroke(
            [
              [x(one.hours) - CAP, y(size(one.value.si + side * one.U))],
              [x(one.hours) + CAP, y(size(one.value.si + side * one.U))],
            ],
            'ink',
            1,
          ),
        ),
        mark(
          one.isNow ? 'diamond' : 'circle',
          x(one.hours),
          y(size(one.value.si)),
          'ink',
          one.isNow ? 64 : 42,
        ),
        ...backed(
          x(one.hours),
          inBox(Math.min(y(size(one.value.si + one.U)), y(size(one.value.si)) - MARK_HALF) - 5),
          one.value.shown,
        ),
      ]),
      ...(limit === null || plot.limit === null || isFar
        ? []
        : levels(frame, [{ value: limit, label: `limit ${plot.limit.shown}`, ink: 'limit' as const }])),
      ...(isFar && plot.limit !== null
        ? [
            text(box.left + 6, box.top + 10, `limit ${plot.limit.text}: outside what is drawn`, 'start', {
              ink: 'limit' as const,
              size: 8,
            }),
          ]
        : []),
      mark('circle', box.right + 12, box.bottom - 50, 'ink'),
      text(box.right + 20, box.bottom - 47, 'left by an overhaul', 'start', { size: 8 }),
      mark('diamond', box.right + 12, box.bottom - 36, 'ink', 64),
      text(box.right + 20, box.bottom - 33, 'read on this job', 'start', { size: 8 }),
      text(box.right + 8, box.bottom - 19, isSeen ? 'bars: U, k = 2' : 'U is in the mark', 'start', {
        size: 8,
      }),
      text(box.right + 8, box.bottom - 8, isTwo ? 'band: measuring' : 'band: one further', 'start', {
        size: 8,
      }),
      text(box.right + 8, box.bottom + 2, isTwo ? 'error only' : 'reading', 'start', { size: 8 }),
    ],
    data,
  }
}
