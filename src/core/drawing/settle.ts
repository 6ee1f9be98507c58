// Gives things on one row whole columns: in order, far enough apart, each as near as can be to where it belongs.

/** Left half, exactly in the middle, right half. */
export type Side = -1 | 0 | 1

export interface Settling {
  /** Wished column. */
  readonly want: number
  /** Least distance to the thing before it. */
  readonly gap: number
  readonly min: number
  readonly max: number
  /** Which half of its row it wishes to be on; halves are rounded outwards, so that a mirrored row mirrors. */
  readonly side: Side
}

/** Anything nearer to a half than this is one: the wishes are fractions that carry rounding. */
const HAIR = 1e-9

export function sideOf(column: number, middle: number): Side {
  if (Math.abs(column - middle) < HAIR) return 0
  return column > middle ? 1 : -1
}

function nearest({ want, side }: Settling): number {
  return side >= 0 ? Math.floor(want + 0.5 + HAIR) : Math.ceil(want - 0.5 - HAIR)
}

/**
 * Whole columns for the things of a row, given in order, or undefined when they can't all have one.
 *
 * Crowded things give way to both sides alike: the answer is the mean of
 * pushing everything right and pushing everything left, and the mean of two good rows is a good row.
 */
export function settle(things: readonly Settling[]): number[] | undefined {
  const least: number[] = []
  things.forEach((thing, i) => {
    least.push(Math.max(thing.min, (least[i - 1] ?? Number.NEGATIVE_INFINITY) + thing.gap))
  })
  const most: number[] = []
  for (let i = things.length - 1; i >= 0; i -= 1) {
    const thing = things[i] as Settling
    const after = things[i + 1]
    const bound = after === undefined ? thing.max : (most[i + 1] as number) - after.gap
    most[i] = Math.min(thing.max, bound)
  }
  if (least.some((column, i) => column > (most[i] as number))) return undefined

  const wished = things.map((thing, i) =>
    Math.min(Math.max(nearest(thing), least[i] as number), most[i] as number),
  )
  const right: number[] = []
  wished.forEach((column, i) => {
    right.push(Math.max(column, (right[i - 1] ?? Number.NEGATIVE_INFINITY) + (things[i] as Settling).gap))
  })
  const left: number[] = []
  for (let i = wished.length - 1; i >= 0; i -= 1) {
    const after = things[i + 1]
    const bound = after === undefined ? Number.POSITIVE_INFINITY : (left[i + 1] as number) - after.gap
    left[i] = Math.min(wished[i] as number, bound)
  }
  return right.map((column, i) => {
    const mean = (column + (left[i] as number)) / 2
    // In the very middle there is no outwards: there it goes on the way it was pushed.
    const outwards = (things[i] as Settling).side || mean - (wished[i] as number)
    return outwards > 0 ? Math.ceil(mean) : Math.floor(mean)
  })
}
