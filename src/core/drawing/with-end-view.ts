// A view from the side together with the view from the head end: where along, and which way across.
import { beside, drawing } from './canvas.ts'
import { axisText, SEEN_FROM } from './clock.ts'
import { drawEndView, END_VIEW_WIDTH, type EndView } from './end-view.ts'
import type { Drawing, DrawnAxis, DrawOptions } from './types.ts'
import { plain } from './words.ts'

export interface SideView {
  readonly draw: (options: DrawOptions) => Drawing
  /** Its lines at most; every side view has a low form of 5. */
  readonly tall: number
}

const BESIDE_FROM = 60
const GAP = 2
const LOW = 5
const END_TALL = 7

/**
 * From 60 columns on: both next to each other, at most 7 lines, or 5 when `height` is under 7. Narrower: one above the
 * other when `height` allows the low forms of both (or states no limit), else the side view and one line of words, which
 * gives way in 5 lines as the place is told in words beside any drawing; lower than that, words alone.
 */
export function withEndView(side: SideView, end: EndView, options: DrawOptions): Drawing {
  const width = Math.floor(options.width)
  const height = options.height ?? Number.POSITIVE_INFINITY
  if (width >= BESIDE_FROM && height >= LOW) {
    const drawn = side.draw({ ...options, width: Math.min(width, 66) - END_VIEW_WIDTH - GAP })
    return beside(drawn, drawEndView(end, options), GAP)
  }
  const under = (sideHeight: number, rest: readonly string[]): Drawing =>
    drawing([...side.draw({ ...options, height: sideHeight }).lines, ...rest])
  const endLines = (lines: number): string[] => drawEndView(end, { ...options, height: lines }).lines
  const words = [axisWords(end.axis, width)]
  if (width >= END_VIEW_WIDTH) {
    if (height >= side.tall + END_TALL) return under(side.tall, endLines(END_TALL))
    if (height >= side.tall + LOW) return under(side.tall, endLines(LOW))
    if (height >= LOW + LOW) return under(LOW, endLines(LOW))
  }
  if (height >= side.tall + 1) return under(side.tall, words)
  if (height >= LOW) return under(LOW, height > LOW ? words : [])
  return height >= 2 ? under(1, words) : under(1, [])
}

/** The line of measurement in one line of words, the fullest that fits. */
export function axisWords(axis: DrawnAxis, width: number): string {
  const clock = axisText(axis) ?? plain(axis.label)
  const short = clock.replace(" o'clock", '').replace(' to ', '-')
  const forms = [`${clock}, ${SEEN_FROM}`, `${clock}, from head end`, `${short} seen from HE`]
  return forms.find((form) => form.length <= width) ?? short.slice(0, Math.max(0, width))
}
