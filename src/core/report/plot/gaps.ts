// Sizes of rings and riders side by side, each a bar, with their limits across.
import { fromSi, valueIn } from '../../units/index.ts'
import type { PlotOf } from '../schema-plots.ts'
import { axesShapes, frameOf } from './frame.ts'
import { type Datum, hundredth, type Scene, type Shape, stroke, text } from './scene.ts'

const BAR = 11
const STEP = 19
const NAMES = 170

export function gapsScene(plot: PlotOf<'gaps'>): Scene {
  const size = (si: number) => valueIn(fromSi('length', si), plot.unit)
  const all = [...plot.bars, ...plot.lines].map(({ value }) => size(value.si))
  const height = 30 + plot.bars.length * STEP + 42
  const frame = frameOf({
    x: [0, Math.max(...all, 1e-9) * 1.06],
    y: [plot.bars.length, 0],
    height,
    room: { top: 30, right: 66, bottom: 42, left: NAMES },
  })
  const { x, box } = frame
  const middle = (i: number) => box.top + STEP * (i + 0.5)
  const data = plot.bars.map(({ label, value }, i): Datum => {
    return { series: plot.title, label, value: [size(value.si), i], px: [x(size(value.si)), middle(i)] }
  })
  const scaleOnly = axesShapes(frame, { x: `[${plot.unit}], from zero`, y: '' }).filter(
    (one) =>
      !(one.is === 'text' && (one.up === true || one.anchor === 'end')) &&
      !(one.is === 'path' && one.stroke === 'grid'),
  )
  return {
    title: plot.title,
    told: `${plot.bars.map(({ label, value }) => `${label} ${value.text}`).join('; ')}. ${plot.lines.map(({ label, value }) => `${label} ${value.text}`).join('; ')}.`,
    notes: plot.notes,
    width: 520,
    height,
    shapes: [
      ...scaleOnly,
      ...data.flatMap(({ label, px: [end, at] }, i): Shape[] => [
        {
          is: 'path',
          d: `M${hundredth(box.left)},${hundredth(at - BAR / 2)}H${hundredth(end)}V${hundredth(at + BAR / 2)}H${hundredth(box.left)}Z`,
          fill: 'first',
        },
        text(box.left - 6, at + 3, short(label), 'end', { size: 8 }),
        text(WIDTH_END, at + 3, plot.bars[i]?.value.shown ?? '', 'end', { size: 8 }),
      ]),
      ...plot.lines.flatMap(({ label, value }, i): Shape[] => [
        stroke(
          [
            [x(size(value.si)), box.top - 4],
            [x(size(value.si)), box.bottom],
          ],
          'limit',
          1.25,
          [6, 3],
        ),
        text(x(size(value.si)), box.top - 8 - (i % 2) * 10, `${label} ${value.shown}`, 'middle', {
          ink: 'limit',
          size: 8,
        }),
      ]),
    ],
    data,
  }
}

const WIDTH_END = 514
const MOST = 34

function short(label: string): string {
  return label.length <= MOST ? label : `${label.slice(0, MOST - 3)}...`
}
