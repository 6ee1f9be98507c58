// The kinds of drawing a reading may ask for, by the trade's words for what is drawn, and what each can show.

import type { AlongKind } from './along-part.ts'
import { ALONG_PARTS } from './along-parts.ts'
import { SPOT_ART } from './spot-art.ts'
import type { SpotKind } from './spot-place.ts'

export type DrawingKind = 'bore' | 'bore_wall' | AlongKind | SpotKind

const along = Object.keys(ALONG_PARTS) as AlongKind[]
const spots = Object.keys(SPOT_ART) as SpotKind[]

export const DRAWING_KINDS: readonly DrawingKind[] = ['bore', 'bore_wall', ...along, ...spots]

export function isAlong(kind: DrawingKind): kind is AlongKind {
  return along.some((one) => one === kind)
}

export function isSpot(kind: DrawingKind): kind is SpotKind {
  return spots.some((one) => one === kind)
}

/** Whether a line of measurement across it is drawn: `must` where the picture is of nothing else. */
export function axesOf(kind: DrawingKind): 'must' | 'may' | 'no' {
  if (kind === 'bore') return 'must'
  return isAlong(kind) && ALONG_PARTS[kind].spans ? 'may' : 'no'
}

/** Whether what is drawn goes on past `at` 0 and 1, as the bore does beyond ring travel. */
export function goesOn(kind: DrawingKind): boolean {
  return kind === 'bore' || kind === 'bore_wall'
}

/** Whether what is drawn is read with nothing open: nobody reaches into the machine for it. */
export function isOutside(kind: DrawingKind | 'none' | undefined): boolean {
  return kind === 'pocket_stem' || kind === 'pocket_wheel'
}
