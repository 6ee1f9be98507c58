// Clock positions round the bore, seen from the head end: as words and as points on a small rim.
import type { DrawnAxis } from './types.ts'

export const SEEN_FROM = 'seen from the head end'

/** `10:30` for 10.5, `12` for 12; undefined when the position is no number. Taken to the minute. */
export function clockText(position: number): string | undefined {
  if (!Number.isFinite(position)) return undefined
  const minutes = Math.round((((position % 12) + 12) % 12) * 60)
  const hour = Math.floor(minutes / 60)
  const rest = minutes % 60
  return rest === 0 ? `${hour === 0 ? 12 : hour}` : `${hour === 0 ? 12 : hour}:${`${rest}`.padStart(2, '0')}`
}

/** `12 to 6 o'clock`, or the axis's own name when a position is no number. */
export function axisText(axis: DrawnAxis): string | undefined {
  const from = clockText(axis.from)
  const to = clockText(axis.to)
  return from === undefined || to === undefined ? undefined : `${from} to ${to} o'clock`
}

export interface Point {
  readonly x: number
  readonly y: number
}

/** Point on a rim reaching `across` columns and `down` rows from its centre; x to the right, y downwards. */
export function rimPoint(position: number, across: number, down: number): Point {
  const turn = (position / 12) * 2 * Math.PI
  return { x: across * Math.sin(turn), y: -down * Math.cos(turn) }
}

/** To the nearest whole, halves away from the centre, so that opposite points stay opposite. */
function nearest(value: number): number {
  // A hair is taken off so that a half reached by way of sine and cosine falls the same way on both sides.
  return Math.sign(value) * Math.floor(Math.abs(value) + 0.5 - 1e-9) || 0
}

/** The cells of a straight line between two points, one to each column or row, whichever it crosses more of. */
export function lineCells(from: Point, to: Point): Point[] {
  const centre = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }
  const dx = to.x - from.x
  const dy = to.y - from.y
  const long = Math.abs(dx) >= Math.abs(dy)
  const [start, end] = long ? [nearest(from.x), nearest(to.x)] : [nearest(from.y), nearest(to.y)]
  const cells: Point[] = []
  for (let i = Math.min(start, end); i <= Math.max(start, end); i += 1) {
    if (long)
      cells.push({ x: i, y: dx === 0 ? nearest(from.y) : nearest(centre.y + ((i - centre.x) * dy) / dx) })
    else cells.push({ x: nearest(centre.x + ((i - centre.y) * dx) / dy), y: i })
  }
  return cells
}
