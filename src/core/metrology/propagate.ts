// The measuring error of a figure worked out from several readings, by moving each reading and working it out again.

/** One reading: its value, its expanded uncertainty and the step of its instrument, all SI. */
export interface Source {
  readonly si: number
  readonly expandedU: number | null
  readonly resolution: number
  /** Readings of one group may share an error: the same instrument took them. */
  readonly group: string
}

export interface Propagated {
  /** Expanded uncertainty of the figure with the k of the sources; null when a source that moves it has none. */
  readonly expandedU: number | null
  /** Change of the figure for one step of the coarsest source; null when no source moves it. */
  readonly resolution: number | null
  /** How far each source alone moves the figure by its U; null where it has none. */
  readonly moves: readonly (number | null)[]
}

/**
 * Each reading is moved up and down by its U and the figure worked out again: the larger change is its share. Between
 * instruments the shares add as a root sum of squares. Within one, errors may be anything from independent to wholly
 * shared; for equal correlation r from 0 to 1 the variance is linear in r, so the larger of the two ends bounds it: the root
 * sum of squares, or the plain sum of the signed changes. Source: JCGM 100:2008 (GUM) 5.1.3 note 2 (shares by working the
 * figure out again), 5.1.2 and 5.2.2 (independent and correlated); clause numbers from memory. The larger of the two changes
 * in place of their mean is our own and on the safe side where a greatest or a least turns from one reading to another.
 *
 * `work` gives the figure for the values of the sources, or null where it cannot be worked out: then the error is NaN, which no
 * judgement passes. `base` is what it gives for the values as they stand.
 */
export function propagate(
  sources: readonly Source[],
  base: number,
  work: (values: readonly number[]) => number | null,
): Propagated {
  const values = sources.map(({ si }) => si)
  const at = (index: number, by: number): number => {
    const moved = work(values.map((value, n) => (n === index ? value + by : value)))
    return moved === null ? Number.NaN : moved - base
  }
  const steps = sources.map(({ resolution }, n) => larger(at(n, resolution), at(n, -resolution)))
  const resolution = steps.reduce((most, step) => larger(most, step), 0)
  const changes = sources.map(({ expandedU }, n) =>
    expandedU === null ? null : { up: at(n, expandedU), down: at(n, -expandedU) },
  )
  // A source without a stated error only matters if the figure moves with it at all.
  const isUnstated = changes.some((change, n) => change === null && steps[n] !== 0)
  const groups = new Map<string, { squares: number; sum: number }>()
  changes.forEach((change, n) => {
    if (change === null) return
    const group = groups.get(sources[n]?.group ?? '') ?? { squares: 0, sum: 0 }
    groups.set(sources[n]?.group ?? '', {
      squares: group.squares + larger(change.up, change.down) ** 2,
      sum: group.sum + (change.up - change.down) / 2,
    })
  })
  const variance = [...groups.values()].reduce((all, { squares, sum }) => all + larger(squares, sum * sum), 0)
  return {
    expandedU: isUnstated ? null : Math.sqrt(variance),
    resolution: resolution === 0 ? null : resolution,
    moves: changes.map((change) => (change === null ? null : larger(change.up, change.down))),
  }
}

/** The larger size of two changes; NaN as soon as one is NaN. */
function larger(a: number, b: number): number {
  return Math.max(Math.abs(a), Math.abs(b))
}
