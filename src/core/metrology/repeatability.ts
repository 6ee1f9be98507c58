// How far readings of one place lie apart by themselves: worked out over all places that one instrument read, and apart for a
// place that stands out.
import { cochranOdds, type Scatter } from '../statistics/cochran.ts'
import { isTractable, meanOf, scaleFor, squaresAbout } from '../statistics/summary.ts'

/** A place stands out, and carries its own scatter, where chance would have it so in fewer cases than this (a straggler). */
export const STANDS_OUT = 0.05
/** Where chance would have it in fewer than this (an outlier), the others carry no more of it than that. */
export const BEYOND_CHANCE = 0.01

export interface PlaceReadings {
  readonly place: string
  /** All that stand, in any order, SI. One that the repeat rule left out of the middle is among them. */
  readonly values: readonly number[]
}

/** What repeats add to the error of a combined reading. */
export interface RepeatsError {
  /** Standard uncertainty, k = 1, SI. */
  readonly u: number
  /** Degrees of freedom it is known with, one or more. */
  readonly dof: number
}

export interface PlaceRepeats {
  readonly place: string
  readonly n: number
  /** Greatest less least, SI. */
  readonly spread: number
  /** Scatter of one reading by its own readings, SI; null for a single reading. */
  readonly ownS: number | null
  readonly standsOut: boolean
  /** In the pool it counts with fewer squares than it has: no more than chance allows. */
  readonly isHeld: boolean
  /** Null where no place was read twice. */
  readonly error: RepeatsError | null
}

export interface Repeatability {
  /** Pooled scatter of one reading, SI; null where no place was read twice. */
  readonly s: number | null
  /** Readings less places, of those read twice or more; 0 where there are none. */
  readonly dof: number
  readonly places: readonly PlaceRepeats[]
  /** What most places carry: two readings or more, and not standing out. Null where no place was read twice. */
  readonly error: RepeatsError | null
}

/**
 * Pooled within-place scatter: s^2 = sum of squares about each place's own mean / sum of (n - 1). Source: JCGM 100:2008 4.2.4
 * (a pooled estimate from earlier or like measurements) and H.3.6, H.5.2 (pooled variance with its degrees of freedom). The value
 * used is the median, whose scatter is never above that of a mean of two: u = s / sqrt 2, no credit for more; a single reading s.
 *
 * A place whose share of all squares is beyond Cochran's C at 5 in 100 carries its own scatter with its own n - 1, and only what
 * is worked out from it does. A reading that the repeat rule left out of the middle stays in the scatter of its place. In the pool a
 * place counts with no more squares than C at 1 in 100 allows it: all of an ordinary place, and of one that was a slip as much as
 * chance could make. ISO 5725-2:1994 7.3.3 (from memory) keeps what is beyond 5 in 100 and drops what is beyond 1 in 100; to
 * hold it at that bound in place of dropping it is our own, on the safe side, so that no scatter that grows makes the pool smaller.
 * Places no further apart than one step of the instrument never stand out: where all others read alike any other would.
 *
 * @throws when a reading is not a number or the step is below zero: entries and registers are checked before this.
 */
export function repeatability(all: readonly PlaceReadings[], step: number): Repeatability {
  if (!(Number.isFinite(step) && step >= 0)) throw new Error('repeatability needs the step of the instrument')
  const read = all.filter(({ values }) => values.length > 0)
  const scatters = read.map(({ values }) => scatterOf(values))
  const repeated = scatters.filter((one) => one !== null)
  const dof = repeated.reduce((sum, one) => sum + one.dof, 0)
  if (dof === 0) return { s: null, dof, error: null, places: read.map((one) => placeOf(one, null, null)) }
  const { held, mostOwn } = heldToChance(repeated, dof, step)
  const s = Math.sqrt(sum(held) / dof)
  const pooled = { u: s / Math.SQRT2, dof }
  let n = 0
  const places = read.map((one, at): PlaceRepeats => {
    const scatter = scatters[at] ?? null
    if (scatter === null) return placeOf(one, null, { u: s, dof })
    const standsOut = scatter.squares > (mostOwn[n] ?? Number.POSITIVE_INFINITY) * (1 + 1e-9)
    const isHeld = (held[n] ?? 0) < scatter.squares
    n += 1
    const own = Math.sqrt(scatter.squares / scatter.dof)
    const error = standsOut ? { u: own / Math.SQRT2, dof: scatter.dof } : pooled
    return { ...placeOf(one, own, error), standsOut, isHeld }
  })
  return { s, dof, places, error: pooled }
}

function placeOf(
  { place, values }: PlaceReadings,
  ownS: number | null,
  error: RepeatsError | null,
): PlaceRepeats {
  const spread = Math.max(...values) - Math.min(...values)
  return { place, n: values.length, spread, ownS, standsOut: false, isHeld: false, error }
}

/** Null for a single reading, which shows no scatter. */
function scatterOf(values: readonly number[]): Scatter | null {
  if (!values.every(isTractable)) throw new Error('repeatability was given a reading that is not a number')
  if (values.length < 2) return null
  const scale = scaleFor(values)
  const scaled = values.map((value) => value * scale)
  return { squares: squaresAbout(scaled, meanOf(scaled)) / scale ** 2, dof: values.length - 1 }
}

/**
 * The squares of each group, cut to what chance lets it have beside the others as they are cut themselves; and how many each
 * may have before it stands out. Cut again until nothing changes, one round for each group at most, so that two slips do not hide
 * behind each other. Every round is greater where any group scatters more, and so is what comes of it.
 */
function heldToChance(
  groups: readonly Scatter[],
  dof: number,
  step: number,
): { held: readonly number[]; mostOwn: readonly number[] } {
  if (groups.length < 2)
    return { held: groups.map((one) => one.squares), mostOwn: groups.map(() => Number.POSITIVE_INFINITY) }
  const odds = oddsFor(dof, groups.length)
  const most = (squares: readonly number[], risk: number) => {
    const whole = sum(squares)
    return groups.map((one, n) =>
      Math.max((one.dof * step * step) / 2, odds(one.dof, risk) * Math.max(0, whole - (squares[n] ?? 0))),
    )
  }
  let held: readonly number[] = groups.map((one) => one.squares)
  for (let round = 0; round < groups.length; round += 1) {
    const bound = most(held, BEYOND_CHANCE)
    held = held.map((squares, n) => Math.min(squares, bound[n] ?? squares))
  }
  return { held, mostOwn: most(held, STANDS_OUT) }
}

/** Most places were read as often as each other, so that few of these are worked out. */
function oddsFor(dof: number, groups: number): (own: number, risk: number) => number {
  const known = new Map<string, number>()
  return (own, risk) => {
    const key = `${own} ${risk}`
    const found = known.get(key) ?? cochranOdds(own, dof, groups, risk)
    known.set(key, found)
    return found
  }
}

function sum(values: readonly number[]): number {
  return values.reduce((whole, value) => whole + value, 0)
}
