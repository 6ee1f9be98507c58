// The ideal cycle of each end that acts: pressure against volume, once round.
import { line } from 'd3-shape'
import { fromSi, valueIn } from '../../units/index.ts'
import type { PlotOf } from '../schema-plots.ts'
import { axesShapes, domainOf, frameOf, rounded, SERIES_INKS } from './frame.ts'
import { type Datum, type Scene, type Shape, stroke, text } from './scene.ts'

export function pvScene(plot: PlotOf<'pv'>): Scene {
  const volumeUnit = plot.unit === 'psia' ? 'in3' : 'L'
  const volume = (si: number) => valueIn(fromSi('volume', si), volumeUnit)
  const pressure = (si: number) => valueIn(fromSi('pressure-absolute', si), plot.unit)
  const all = plot.ends.flatMap(({ points }) => points)
  const frame = frameOf({
    x: [0, domainOf(all.map((one) => volume(one.volume)))[1]],
    y: [0, domainOf(all.map((one) => pressure(one.pressure)))[1]],
  })
  const { x, y, box } = frame
  const series = plot.ends.map(({ label, points }) => ({
    label,
    data: points.map((one): Datum => {
      const at: [number, number] = [volume(one.volume), pressure(one.pressure)]
      return { series: label, label, value: at, px: [x(at[0]), y(at[1])] }
    }),
  }))
  const outline = line<Datum>(
    ({ px }) => px[0],
    ({ px }) => px[1],
  )
  return {
    title: plot.title,
    told: plot.ends
      .map(({ label, points }) => {
        const [low, high] = [
          Math.min(...points.map((one) => one.pressure)),
          Math.max(...points.map((one) => one.pressure)),
        ]
        return `${label}: from ${Math.round(pressure(low))} to ${Math.round(pressure(high))} ${plot.unit}.`
      })
      .join(' '),
    notes: plot.notes,
    width: 520,
    height: 290,
    shapes: [
      ...axesShapes(frame, { x: `volume [${volumeUnit}]`, y: `pressure [${plot.unit}]` }),
      ...series.flatMap(({ label, data }, i): Shape[] => {
        const ink = SERIES_INKS[i % SERIES_INKS.length] ?? 'ink'
        const dash = i === 0 ? {} : { dash: [5, 2] as const }
        const at = box.top + 10 + 13 * i
        return [
          { is: 'path', d: rounded(outline(data) ?? ''), stroke: ink, width: 1.5, ...dash },
          stroke(
            [
              [box.right + 8, at - 3],
              [box.right + 30, at - 3],
            ],
            ink,
            1.5,
            i === 0 ? undefined : [5, 2],
          ),
          text(box.right + 35, at, label, 'start', { ink, size: 8 }),
        ]
      }),
    ],
    data: series.flatMap(({ data }) => data),
  }
}
