// The bore seen from the head end, as a small clock with the line of measurement across it.
import { canvas, drawing, INSTRUMENT, signs } from './canvas.ts'
import { axisText, lineCells, type Point, rimPoint, SEEN_FROM } from './clock.ts'
import type { Drawing, DrawnAxis, DrawOptions } from './types.ts'
import { plain } from './words.ts'

export interface EndView {
  /** The line being measured. */
  readonly axis: DrawnAxis
  /** All lines of this bore; the ends of the others are marked `o` on the rim. */
  readonly axes?: readonly DrawnAxis[]
}

interface Clock {
  /** Columns and rows from the centre to the rim, for cells of the drawing. */
  readonly across: number
  readonly down: number
  /** Rows from the centre for points on the rim: a cell is about twice as high as wide. */
  readonly reach: number
  readonly rows: readonly string[]
}

/** `seen from the head end` is the widest line; narrower than that there is no picture. */
export const END_VIEW_WIDTH = SEEN_FROM.length
const MIDDLE = Math.floor(END_VIEW_WIDTH / 2) - 1

/**
 * End view, 7 lines of 22 columns, or 5 when `height` is under 7; `#` is the line of measurement, `o` the ends of the
 * bore's other lines. Narrower than 22 columns or lower than 5 lines: words only. A position that is no number draws
 * no line and gives the axis's own name.
 */
export function drawEndView(view: EndView, options: DrawOptions): Drawing {
  const width = Math.floor(options.width)
  const height = options.height ?? 7
  const words = axisText(view.axis) ?? plain(view.axis.label)
  if (width < END_VIEW_WIDTH || height < 5) {
    return drawing([`${words}, ${SEEN_FROM}`.slice(0, Math.max(0, width))])
  }
  const clock = clockOf(height >= 7, options.ascii)
  const rows = clock.rows.length
  const paper = canvas(rows + 2, END_VIEW_WIDTH)
  clock.rows.forEach((row, i) => {
    paper.put(i, MIDDLE - clock.across, row)
  })
  const mark = (cells: readonly Point[], sign: string): void => {
    for (const [i, { x, y }] of cells.entries()) {
      const row = Math.max(-clock.down, Math.min(clock.down, y)) + clock.down
      const there = paper.at(row, MIDDLE + x)
      // The four clock figures stay readable, and the line meets the rim's top and foot only where it ends.
      const along = Math.abs(y) >= clock.down && i > 0 && i < cells.length - 1 && there !== ' '
      if (!along && !/[0-9]/.test(there)) paper.put(row, MIDDLE + x, sign)
    }
  }
  const ends = (axis: DrawnAxis): Point[] =>
    axisText(axis) === undefined
      ? []
      : [axis.from, axis.to].map((position) => rimPoint(position, clock.across, clock.reach))
  for (const axis of view.axes ?? []) {
    for (const end of ends(axis)) mark(lineCells(end, end), 'o')
  }
  const [from, to] = ends(view.axis)
  if (from !== undefined && to !== undefined) mark(lineCells(from, to), INSTRUMENT)
  const written = words.slice(0, END_VIEW_WIDTH)
  paper.put(rows, Math.max(0, MIDDLE - Math.floor(written.length / 2)), written)
  paper.put(rows + 1, 0, SEEN_FROM)
  return drawing(paper.lines())
}

function clockOf(tall: boolean, ascii: boolean): Clock {
  const s = signs(ascii)
  const [tl, tr, ll, lr, h] = [s.roundTopLeft, s.roundTopRight, s.roundLowLeft, s.roundLowRight, s.wall]
  const top = `${tl}${h.repeat(2)}12${h.repeat(3)}${tr}`
  const foot = `${ll}${h.repeat(3)}6${h.repeat(3)}${lr}`
  if (!tall) {
    return { across: 5, down: 1, reach: 1.4, rows: [` ${top}`, '9         3', ` ${foot}`] }
  }
  const upper = `${tl}${h}${lr}       ${ll}${h}${tr}`
  const lower = `${ll}${h}${tr}       ${tl}${h}${lr}`
  return { across: 6, down: 2, reach: 2.5, rows: [`  ${top}`, upper, '9           3', lower, `  ${foot}`] }
}
