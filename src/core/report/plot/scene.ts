// A drawn plot before it is written: shapes with a place on paper, and the data points they stand for. One scene, whatever
// writes it: SVG and PDF draw the same shapes, and what a test reads back is what both draw.

/** Inks by what they are for. Each stands out from white by 4.5 to 1 or more, but for `grid`, `band` and `paper`, which tell nothing. */
export const INKS = {
  ink: '#1a1a1a',
  quiet: '#595959',
  first: '#1f4e8c',
  second: '#8a4b00',
  third: '#1d6b3a',
  limit: '#a31515',
  grid: '#d0d0d0',
  band: '#dce6f2',
  paper: '#ffffff',
} as const
export type Ink = keyof typeof INKS

export type Shape =
  | {
      readonly is: 'path'
      /** SVG path data. */
      readonly d: string
      readonly stroke?: Ink
      readonly fill?: Ink
      readonly width?: number
      readonly dash?: readonly [number, number]
      /** Where its origin lies. */
      readonly at?: readonly [number, number]
    }
  | {
      readonly is: 'text'
      readonly x: number
      readonly y: number
      readonly text: string
      readonly size: number
      readonly anchor: 'start' | 'middle' | 'end'
      readonly ink?: Ink
      readonly bold?: true
      /** Written upwards. */
      readonly up?: true
    }

/** A point of the data and where it is drawn. */
export interface Datum {
  readonly series: string
  readonly label: string
  /** In the units of the axes. */
  readonly value: readonly [x: number, y: number]
  readonly px: readonly [x: number, y: number]
}

export interface Scene {
  readonly title: string
  /** What it shows, in words: for those who do not see it. */
  readonly told: string
  readonly notes: readonly string[]
  readonly width: number
  readonly height: number
  readonly shapes: readonly Shape[]
  readonly data: readonly Datum[]
}

export function text(
  x: number,
  y: number,
  words: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
  more: Partial<Extract<Shape, { is: 'text' }>> = {},
): Shape {
  return { is: 'text', x: hundredth(x), y: hundredth(y), text: words, size: 9, anchor, ...more }
}

/** Width of a figure as a share of its size, in fonts of either writer, and a little more. */
const FIGURE = 0.62

/** A value in the plot with paper behind it, so that no line runs through it. */
export function backed(x: number, y: number, words: string, ink: Ink = 'ink', size = 8): Shape[] {
  const half = (words.length * size * FIGURE) / 2 + 1
  const [left, right, top, bottom] = [x - half, x + half, y - size * 0.85, y + 1.5].map(hundredth)
  return [
    { is: 'path', d: `M${left},${top}H${right}V${bottom}H${left}Z`, fill: 'paper' },
    text(x, y, words, 'middle', { ink, size }),
  ]
}

export function stroke(
  points: readonly (readonly [number, number])[],
  ink: Ink,
  width = 1,
  dash?: readonly [number, number],
): Shape {
  const d = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${hundredth(x)},${hundredth(y)}`).join('')
  return { is: 'path', d, stroke: ink, width, ...(dash === undefined ? {} : { dash }) }
}

export function hundredth(n: number): number {
  // Adding nought takes the sign off a nought.
  return Math.round(n * 100) / 100 + 0
}
