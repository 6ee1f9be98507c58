// From the drop of a rod at a probe to the wear of the rider far from it.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result } from '../lib/result.ts'

/** Below this piston size the source calls rod drop unreliable: about 6 in (150 mm). */
export const ROD_DROP_LEAST_PISTON_M = 0.15

/**
 * Rider wear (down, radial) = drop at the probe x (L1 + L2) / L1, metres, with L1 from crosshead pin to probe and L2 from
 * probe to the middle of the piston; the crosshead is taken not to have dropped.
 * Source: an article in a trade magazine, first quarter 2004, read as a stored copy (publisher not named here).
 * Refuses: a figure missing or unsound; a drop below zero, as a piston does not rise by wear: look for growth by heat,
 * a moved probe or a turned sign.
 *
 * @example drop 0.010 in, L1 40 in, L2 20 in: 0.015 in
 */
export function riderWearFromDrop(input: {
  readonly dropM: number | null | undefined
  readonly crossheadToProbeM: number | null | undefined
  readonly probeToPistonM: number | null | undefined
}): Result<number> {
  const fault =
    refuseUnsound({ 'length from crosshead to probe': input.crossheadToProbeM }) ??
    refuseUnsound(
      { 'drop at the probe': input.dropM, 'length from probe to piston': input.probeToPistonM },
      'zero or more',
    )
  if (fault !== null) return fault
  const [near, far] = [input.crossheadToProbeM as number, input.probeToPistonM as number]
  const wearM = ((input.dropM as number) * (near + far)) / near
  return refuseOverflow(wearM) ?? ok(wearM)
}
