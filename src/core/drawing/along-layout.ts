// Columns along a part drawn from the side: its own landmarks (faces, a shoulder, rings) and the stations between them.
import { type Settling, settle, sideOf } from './settle.ts'
import type { DrawnStation } from './types.ts'

/** Something of the part itself that has its place along it. */
export interface Landmark {
  readonly id: string
  /** As of stations: 0 at the head end of the part, 1 at its crank end. */
  readonly at: number
  /** On which side of it a station with the same `at` is drawn. */
  readonly same: 'left' | 'right'
  /** Left out where there is no room for it. */
  readonly extra?: boolean
}

export interface AlongLayout {
  readonly first: number
  readonly last: number
  /** Column of each landmark drawn, by its id. */
  readonly landmarks: ReadonlyMap<string, number>
  /** Column of each station, by its place in the list given. */
  readonly columns: readonly number[]
}

interface Thing {
  readonly id: string | number
  readonly at: number
  readonly order: number
}

/**
 * Columns from `first` to `last`, or undefined when a station lies outside the part or there is no room. Landmarks and
 * stations keep their order along the part whatever the width, so a station never crosses a shoulder or a face.
 */
export function layOutAlong(
  stations: readonly DrawnStation[],
  landmarks: readonly Landmark[],
  { first, last }: { readonly first: number; readonly last: number },
): AlongLayout | undefined {
  if (!stations.every(({ at }) => at >= 0 && at <= 1)) return undefined
  const needed = landmarks.filter((landmark) => landmark.extra !== true)
  for (const [marks, apart] of [
    [landmarks, 4],
    [landmarks, 2],
    [needed, 2],
    [needed, 1],
  ] as const) {
    const found = spread(inOrder(stations, marks), first, last, apart)
    if (found !== undefined) return { first, last, ...found }
  }
  return undefined
}

function inOrder(stations: readonly DrawnStation[], landmarks: readonly Landmark[]): Thing[] {
  const things: Thing[] = [
    ...stations.map(({ at }, id) => ({ id, at, order: 0 })),
    ...landmarks.map(({ id, at, same }) => ({ id, at, order: same === 'left' ? 1 : -1 })),
  ]
  return things.sort((a, b) => a.at - b.at || a.order - b.order)
}

function spread(things: readonly Thing[], first: number, last: number, apart: number) {
  const middle = (first + last) / 2
  const columns = settle(
    things.map(({ id, at }, i): Settling => {
      const want = first + at * (last - first)
      return {
        want,
        gap: gapTo(things[i - 1], { id, at }, apart),
        min: first,
        max: last,
        side: sideOf(want, middle),
      }
    }),
  )
  if (columns === undefined) return undefined
  const landmarks = new Map<string, number>()
  const stations: number[] = []
  things.forEach(({ id }, i) => {
    const column = columns[i] as number
    if (typeof id === 'string') landmarks.set(id, column)
    else stations[id] = column
  })
  return { landmarks, columns: stations }
}

/** Stations keep apart for their names; one that touches a landmark stands right beside it. */
function gapTo(before: Thing | undefined, thing: Pick<Thing, 'id' | 'at'>, apart: number): number {
  if (before === undefined) return 0
  const both = typeof before.id === 'number' && typeof thing.id === 'number'
  if (both) return apart
  return before.at === thing.at ? 1 : Math.min(2, apart)
}
