// A drawing in box signs on a page: every sign as wide as any other, and upright lines that meet from line to line.
import { type Hand, put, take } from './ink.ts'
import { INKS, type Pages } from './pages.ts'

const DRAWN: Hand = { font: 'mono', size: 8, colour: INKS.ink }
/** Upright signs of the font meet at this share of its size. */
const LEADING = 1.164
const UNDER = 3
const SET_IN = 6

/** Points of a page that it takes. */
export function heightOfLines(lines: readonly string[]): number {
  return lines.length * DRAWN.size * LEADING + UNDER
}

/** Not parted by the end of a page. */
export function drawLines(pages: Pages, lines: readonly string[], set = 0): void {
  const height = DRAWN.size * LEADING
  pages.keep(height * lines.length)
  for (const one of lines)
    pages.line(height, '', (base) => {
      take(pages.doc, DRAWN)
      put(pages.doc, one, pages.edge.text + set + SET_IN, base)
    })
  pages.strut(UNDER)
}
