// The picture of a place to measure, whatever is drawn: one way in for all kinds.
import { type AlongKind, drawAlong } from './along-part.ts'
import { drawBorePlace } from './bore-place.ts'
import { drawBoreWall } from './bore-wall.ts'
import { type DrawingKind, isAlong } from './kinds.ts'
import { drawSpot } from './spot-place.ts'
import type { Drawing, DrawnAxis, DrawnStation, DrawOptions } from './types.ts'
import { withEndView } from './with-end-view.ts'

export interface DrawnPlace {
  readonly kind: DrawingKind
  readonly stations: readonly DrawnStation[]
  /** Id of the station being measured; null for a sketch of what was: no instrument is drawn. */
  readonly here: string | null
  /** The line being measured, where the step has axes. */
  readonly axis?: DrawnAxis
  /** All lines of the step. */
  readonly axes?: readonly DrawnAxis[]
  /** The instrument goes across the part, as a micrometer does. */
  readonly across: boolean
  readonly hasCounterbore?: boolean
}

/**
 * The drawing of a place in the room given, as its own kind says. A bore without an axis, which only a file that did not
 * pass the checks can ask for, gives no lines. Throws when no station has the id `here`.
 */
export function drawPlace(place: DrawnPlace, options: DrawOptions): Drawing {
  const { kind, axis } = place
  if (kind === 'bore')
    return axis === undefined ? { lines: [], width: 0 } : drawBorePlace({ ...place, axis }, options)
  if (kind === 'bore_wall') return drawBoreWall(place, options)
  if (isAlong(kind)) return drawPart(kind, place, options)
  const { here } = place
  // One place drawn large is nothing without its instrument.
  return here === null ? { lines: [], width: 0 } : drawSpot({ ...place, kind, here }, options)
}

function drawPart(kind: AlongKind, place: DrawnPlace, options: DrawOptions): Drawing {
  const { axis } = place
  const draw = (given: DrawOptions): Drawing => drawAlong({ ...place, kind }, given)
  return axis === undefined ? draw(options) : withEndView({ draw, tall: 6 }, { ...place, axis }, options)
}
