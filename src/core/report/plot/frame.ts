// The frame of a plot: its scales, grid, ticks and names of axes.
import { type ScaleLinear, scaleLinear } from 'd3-scale'
import { symbol, symbolCircle, symbolDiamond, symbolSquare, symbolTriangle } from 'd3-shape'
import { hundredth, type Ink, type Shape, stroke, text } from './scene.ts'

export const WIDTH = 520
export const HEIGHT = 290

/** Room around what is drawn: for names of lines on the right, for ticks on the left and below. */
export interface Room {
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly left: number
}
export const ROOM: Room = { top: 22, right: 118, bottom: 42, left: 66 }

export interface Frame {
  readonly x: ScaleLinear<number, number>
  readonly y: ScaleLinear<number, number>
  readonly box: {
    readonly left: number
    readonly right: number
    readonly top: number
    readonly bottom: number
  }
}

export interface Axes {
  readonly x: readonly [least: number, most: number]
  readonly y: readonly [least: number, most: number]
  readonly height?: number
  readonly room?: Room
}

export function frameOf({ x, y, height = HEIGHT, room = ROOM }: Axes): Frame {
  const box = { left: room.left, right: WIDTH - room.right, top: room.top, bottom: height - room.bottom }
  return {
    x: scaleLinear(x, [box.left, box.right]),
    y: scaleLinear(y, [box.bottom, box.top]),
    box,
  }
}

/** The least and the most of some values with a share of their spread on either side; never an empty range. */
export function domainOf(values: readonly number[], share = 0.08): [number, number] {
  const [least, most] = [Math.min(...values), Math.max(...values)]
  const spread = most - least
  const add = spread > 0 ? spread * share : Math.max(Math.abs(most) * 0.01, 1e-6)
  return [least - add, most + add]
}

export interface Named {
  readonly x: string
  readonly y: string
  /** How a tick is written. */
  readonly tickX?: (value: number) => string
  readonly tickY?: (value: number) => string
  /** Where ticks of x stand; left out: where the scale has them. */
  readonly at?: readonly { readonly value: number; readonly label: string }[]
}

/** Grid, ticks, names. Signs are ASCII: a minus too, so that every writer has it. */
export function axesShapes({ x, y, box }: Frame, named: Named): Shape[] {
  const tickX = named.tickX ?? plainTick(x)
  const tickY = named.tickY ?? plainTick(y)
  const across = named.at ?? x.ticks(6).map((value) => ({ value, label: tickX(value) }))
  return [
    ...y.ticks(6).flatMap((value): Shape[] => [
      stroke(
        [
          [box.left, y(value)],
          [box.right, y(value)],
        ],
        'grid',
        0.5,
      ),
      text(box.left - 6, y(value) + 3, tickY(value), 'end'),
    ]),
    ...across.flatMap(({ value, label }): Shape[] => [
      stroke(
        [
          [x(value), box.bottom],
          [x(value), box.bottom + 4],
        ],
        'quiet',
        0.75,
      ),
      text(x(value), box.bottom + 15, label, 'middle'),
    ]),
    stroke(
      [
        [box.left, box.top],
        [box.left, box.bottom],
        [box.right, box.bottom],
      ],
      'quiet',
      1,
    ),
    text((box.left + box.right) / 2, box.bottom + 32, named.x, 'middle'),
    text(12, (box.top + box.bottom) / 2, named.y, 'middle', { up: true }),
  ]
}

function plainTick(scale: ScaleLinear<number, number>): (value: number) => string {
  const format = scale.tickFormat(6)
  return (value) => format(value).replaceAll('\u2212', '-').replaceAll(',', '')
}

/** A level line with its name on the right; names that would lie on each other are moved apart. */
export function levels(
  { y, box }: Frame,
  lines: readonly { readonly value: number; readonly label: string; readonly ink: Ink }[],
): Shape[] {
  const sorted = [...lines].sort((a, b) => y(b.value) - y(a.value))
  let lowest = Number.POSITIVE_INFINITY
  return sorted.flatMap(({ value, label, ink }): Shape[] => {
    const at = Math.min(y(value) + 3, lowest - 10)
    lowest = at
    return [
      stroke(
        [
          [box.left, y(value)],
          [box.right, y(value)],
        ],
        ink,
        1.25,
        [6, 3],
      ),
      text(box.right + 5, at, label, 'start', { ink, size: 8 }),
    ]
  })
}

const SYMBOLS = {
  circle: symbolCircle,
  square: symbolSquare,
  diamond: symbolDiamond,
  triangle: symbolTriangle,
}
export type Mark = keyof typeof SYMBOLS
export const MARKS: readonly Mark[] = ['circle', 'square', 'triangle', 'diamond']
export const SERIES_INKS: readonly Ink[] = ['first', 'second', 'third', 'ink']

/** Series are told apart by the shape of their mark; ink only repeats it. */
export function mark(kind: Mark, x: number, y: number, ink: Ink, size = 42): Shape {
  const d = symbol(SYMBOLS[kind], size)()
  return { is: 'path', d: rounded(d ?? ''), fill: ink, at: [hundredth(x), hundredth(y)] }
}

/** Two decimals are finer than any printer. */
export function rounded(d: string): string {
  return d.replace(/-?\d+\.\d+(?:e-?\d+)?/g, (number) => String(hundredth(Number(number))))
}
