// Where the instrument goes now: along the bore and round it, together when the width allows.
import { type BoreSide, drawBoreSide } from './bore-side.ts'
import { beside, drawing } from './canvas.ts'
import { axisText, SEEN_FROM } from './clock.ts'
import { drawEndView, END_VIEW_WIDTH } from './end-view.ts'
import type { Drawing, DrawnAxis, DrawOptions } from './types.ts'
import { plain } from './words.ts'

export interface BorePlace extends BoreSide {
  readonly axis: DrawnAxis
  /** All lines of this bore; see the end view. */
  readonly axes?: readonly DrawnAxis[]
}

const BESIDE_FROM = 60
const GAP = 2

/**
 * From 60 columns on: side view and end view next to each other, 7 lines, or 5 when `height` is under 7. Narrower: one
 * above the other when `height` allows 10 lines or more (or states no limit), else the side view and one line of
 * words, else words alone. Throws when no station has the id `here`.
 */
export function drawBorePlace(place: BorePlace, options: DrawOptions): Drawing {
  const width = Math.floor(options.width)
  const height = options.height ?? Number.POSITIVE_INFINITY
  if (width >= BESIDE_FROM && height >= 5) {
    const side = drawBoreSide(place, { ...options, width: Math.min(width, 66) - END_VIEW_WIDTH - GAP })
    return beside(side, drawEndView(place, options), GAP)
  }
  const under = (sideHeight: number, rest: readonly string[]): Drawing =>
    drawing([...drawBoreSide(place, { ...options, height: sideHeight }).lines, ...rest])
  const endLines = (lines: number): string[] => drawEndView(place, { ...options, height: lines }).lines
  const words = [axisWords(place.axis, width)]
  if (width >= END_VIEW_WIDTH) {
    if (height >= 14) return under(7, endLines(7))
    if (height >= 12) return under(7, endLines(5))
    if (height >= 10) return under(5, endLines(5))
  }
  if (height >= 8) return under(7, words)
  if (height >= 6) return under(5, words)
  return height >= 2 ? under(1, words) : under(1, [])
}

/** The line of measurement in one line of words, the fullest that fits. */
export function axisWords(axis: DrawnAxis, width: number): string {
  const clock = axisText(axis) ?? plain(axis.label)
  const short = clock.replace(" o'clock", '').replace(' to ', '-')
  const forms = [`${clock}, ${SEEN_FROM}`, `${clock}, from head end`, `${short} seen from HE`]
  return forms.find((form) => form.length <= width) ?? short.slice(0, Math.max(0, width))
}
