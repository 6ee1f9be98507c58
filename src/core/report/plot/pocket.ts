// Driver load and gas against the opening of a clearance pocket, with where it stands and the setting that is recommended.

import { line } from 'd3-shape'
import { formatNumber } from '../../lib/decimal.ts'
import { fromSi, valueIn } from '../../units/index.ts'
import type { PlotOf } from '../schema-plots.ts'
import { axesShapes, domainOf, frameOf, levels, mark, rounded } from './frame.ts'
import { backed, type Datum, type Scene, type Shape, stroke, text } from './scene.ts'

type Plot = PlotOf<'pocket'>

export function pocketScene(plot: Plot): Scene {
  const power = (si: number) => valueIn(fromSi('power', si), plot.unit)
  const loads = plot.rows.map(({ load }) => power(load.si))
  const levelsAt = [plot.target, plot.measured].flatMap((one) => (one === null ? [] : [power(one.si)]))
  const frame = frameOf({ x: [-0.03, 1.03], y: domainOf([...loads, ...levelsAt]) })
  const { x, y, box } = frame
  const data = plot.rows.map((one): Datum => {
    const load = power(one.load.si)
    return {
      series: 'driver load',
      label: percent(one.opening),
      value: [one.opening, load],
      px: [x(one.opening), y(load)],
    }
  })
  const marks = [
    ...marksOf(plot, plot.present, 'as it stands', power),
    ...marksOf(plot, plot.setting, 'to be set', power),
  ].map((one): Datum => ({ ...one, px: [x(one.value[0]), y(one.value[1])] }))
  const curve = line<Datum>(
    ({ px }) => px[0],
    ({ px }) => px[1],
  )(data)
  return {
    title: plot.title,
    told: toldOf(plot),
    notes: plot.notes,
    width: 520,
    height: 290,
    shapes: [
      ...axesShapes(frame, {
        x: 'pocket, shut (0 %) to full open (100 %)',
        y: `driver load [${plot.unit}]`,
        tickX: percent,
        at: [0, 0.25, 0.5, 0.75, 1].map((value) => ({ value, label: percent(value) })),
      }),
      ...levels(frame, [
        ...(plot.target === null
          ? []
          : [{ value: power(plot.target.si), label: `target ${plot.target.shown}`, ink: 'limit' as const }]),
        ...(plot.measured === null
          ? []
          : [
              {
                value: power(plot.measured.si),
                label: `as read ${plot.measured.shown}`,
                ink: 'quiet' as const,
              },
            ]),
      ]),
      { is: 'path', d: rounded(curve ?? ''), stroke: 'first', width: 1.25 },
      ...data.flatMap(({ px }, i): Shape[] => {
        const row = plot.rows[i]
        const isOut = row?.isOut === true
        return [
          mark(isOut ? 'triangle' : 'circle', px[0], px[1], isOut ? 'limit' : 'first'),
          ...(row === undefined || isCrowded(plot, row.opening)
            ? []
            : [
                // The load falls with the opening: above to the right of a point, and below to the left of the last, is clear of it.
                ...backed(
                  px[0] + (i === data.length - 1 ? -26 : 27),
                  px[1] + (i === data.length - 1 ? 9 : -6),
                  `gas ${percent(row.capacity)}`,
                  'quiet',
                  7,
                ),
              ]),
        ]
      }),
      ...marked(plot, frame, plot.present, 'now', 0),
      ...marked(plot, frame, plot.setting, 'SET', 11),
      ...(plot.rows.some(({ isOut }) => isOut)
        ? [
            text(box.left, 12, 'triangle: OUT, something is beyond its limit there', 'start', {
              size: 8,
              ink: 'limit' as const,
            }),
          ]
        : []),
    ],
    data: [...data, ...marks],
  }
}

/** The opening that is marked, where the curve has it: nothing is drawn between what was worked out. */
function marksOf(
  { rows }: Plot,
  opening: number | null,
  series: string,
  power: (si: number) => number,
): Omit<Datum, 'px'>[] {
  const row = rows.find((one) => one.opening === opening)
  return row === undefined
    ? []
    : [{ series, label: percent(row.opening), value: [row.opening, power(row.load.si)] }]
}

/** So near to the present or the recommended setting that its words would lie on theirs. */
const NEAR = 0.1

function isCrowded({ present, setting }: Plot, opening: number): boolean {
  return [present, setting].some((one) => one !== null && one !== opening && Math.abs(one - opening) < NEAR)
}

/** A line down to the opening with its word; `down` keeps two words apart. */
function marked(
  plot: Plot,
  { x, box }: ReturnType<typeof frameOf>,
  opening: number | null,
  word: string,
  down: number,
): Shape[] {
  if (opening === null || !plot.rows.some((one) => one.opening === opening)) return []
  return [
    stroke(
      [
        [x(opening), box.top],
        [x(opening), box.bottom],
      ],
      'ink',
      0.75,
      [2, 3],
    ),
    text(x(opening) + 3, box.bottom - 6 - down, `${word} ${percent(opening)}`, 'start', {
      bold: true,
      size: 8,
    }),
  ]
}

function percent(share: number): string {
  return `${Number(formatNumber(share * 100, 1))} %`
}

function toldOf({ rows, target, present, setting }: Plot): string {
  const each = rows.map(
    ({ opening, load, capacity, isOut }) =>
      `${percent(opening)} open: ${load.text}, gas ${percent(capacity)}${isOut ? ', beyond a limit' : ''}`,
  )
  return [
    `${each.join('; ')}.`,
    ...(target === null ? [] : [`Target ${target.text}.`]),
    ...(present === null ? [] : [`It stands ${percent(present)} open.`]),
    ...(setting === null ? [] : [`To be set ${percent(setting)} open.`]),
  ].join(' ')
}
