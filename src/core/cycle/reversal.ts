// Does the load at the crosshead pin change direction for long enough and hard enough to let oil in? The criterion is
// the site's; none is built in, as published ones differ widely (15 deg and 3 %, 30 deg and 25 %).
import { ok, type Result, refuse } from '../lib/result.ts'
import { firstFault, within } from './guard.ts'

export interface ReversalCriterion {
  /** Least unbroken arc of the turn in the lesser direction, radians. */
  readonly leastAngle: number
  /** Least peak in the lesser direction as a share of the peak in the other. */
  readonly leastShare: number
}

export interface Reversal {
  readonly compressionPeakN: number
  /** Size of the pull; 0 where the rod is never pulled. */
  readonly tensionPeakN: number
  /** Longest unbroken arc in the direction that has the lesser one, radians; 0 without reversal. */
  readonly angle: number
  /** Lesser peak over greater peak; 0 without reversal. */
  readonly share: number
}

/**
 * Arc and size of reversal from loads at even angles round one turn (compression positive). Crossings lie on the
 * straight line between two points. The arc is the LONGEST UNBROKEN one, which is the stricter reading.
 * Source: the two measures are those of API Std 618 5th ed. 6.6.4 (from memory: at least 15 degrees and 3 %); loads
 * are combined gas and inertia at the pin.
 * Refuses: fewer than 36 loads, one that is not a number.
 */
export function reversalOf(loadsN: readonly number[]): Result<Reversal> {
  if (loadsN.length < 36) return refuse('too-few', 'There are fewer than 36 loads round the turn.')
  if (!loadsN.every(Number.isFinite)) return refuse('not-a-number', 'A load round the turn is not a number.')
  const compressionPeakN = Math.max(0, ...loadsN)
  const tensionPeakN = Math.max(0, ...loadsN.map((load) => -load))
  const greater = Math.max(compressionPeakN, tensionPeakN)
  const step = (2 * Math.PI) / loadsN.length
  const pull = longestArc(loadsN.map((load) => -load))
  const arcs = Math.min(longestArc(loadsN), pull)
  return ok({
    compressionPeakN,
    tensionPeakN,
    angle: arcs * step,
    share: greater === 0 ? 0 : Math.min(compressionPeakN, tensionPeakN) / greater,
  })
}

/** Longest run above zero round the ring, in steps, with its ends on the crossings. */
function longestArc(loads: readonly number[]): number {
  const start = loads.findIndex((load) => load <= 0)
  if (start === -1) return loads.length
  let longest = 0
  let run = 0
  // Once round from a point that is not above zero, so that no run is cut in two by the end of the list.
  for (let i = 0; i < loads.length; i++) {
    const here = loads[(start + i) % loads.length] as number
    const next = loads[(start + i + 1) % loads.length] as number
    run += shareAbove(here, next)
    longest = Math.max(longest, run)
    if (next <= 0) run = 0
  }
  return longest
}

/** Part of one step on which the straight line between two loads is above zero. */
function shareAbove(here: number, next: number): number {
  if (here <= 0 && next <= 0) return 0
  if (here > 0 && next > 0) return 1
  const above = Math.max(here, next)
  return above / (above - Math.min(here, next))
}

/** Met only when both measures are. Refuses a criterion missing or out of range (0 to 180 degrees, 0 to 1). */
export function meetsReversal(found: Reversal, criterion: ReversalCriterion): Result<boolean> {
  const fault = firstFault(
    within('least reversal angle in radians', criterion.leastAngle, 0, Math.PI),
    within('least reversal share', criterion.leastShare, 0, 1),
    within('reversal angle', found.angle, 0, 2 * Math.PI),
    within('reversal share', found.share, 0, 1),
  )
  if (fault !== null) return fault
  // A criterion of zero would pass a pin that is never unloaded.
  const reverses = found.angle > 0 && found.share > 0
  return ok(reverses && found.angle >= criterion.leastAngle && found.share >= criterion.leastShare)
}
