// Where the instrument goes now: along the bore and round it, together when the width allows.
import { type BoreSide, drawBoreSide } from './bore-side.ts'
import type { Drawing, DrawnAxis, DrawOptions } from './types.ts'
import { withEndView } from './with-end-view.ts'

export interface BorePlace extends BoreSide {
  readonly axis: DrawnAxis
  /** All lines of this bore; see the end view. */
  readonly axes?: readonly DrawnAxis[]
}

/**
 * The side view of the bore with its end view: next to each other, one above the other, or the end view in words, see
 * `withEndView`. Throws when no station has the id `here`.
 */
export function drawBorePlace(place: BorePlace, options: DrawOptions): Drawing {
  return withEndView({ draw: (given) => drawBoreSide(place, given), tall: 7 }, place, options)
}
