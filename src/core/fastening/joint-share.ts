// What share of a load from outside a tightened bolt feels, and when the joint would open.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

export interface JointShare {
  /** C = kb / (kb + km). */
  readonly share: number
  readonly boltN: number
  /** What still clamps the joint, newtons; zero when it has opened. */
  readonly clampN: number
  readonly boltStressPa: number
  readonly preloadStressPa: number
  /** Load from outside at which the joint opens, newtons. */
  readonly opensAtN: number
  readonly isOpen: boolean
}

/**
 * C = kb / (kb + km); bolt Fi + C P; clamp Fi - (1 - C) P; it opens at Fi / (1 - C), and once open the bolt takes all.
 * Only the ratio of the two stiffnesses matters, so any one unit serves for both.
 * Source: J. E. Shigley (Budynas & Nisbett), Mechanical Engineering Design, 9th ed., example 8-3 p. 439.
 * Refuses: a figure missing or unsound; a load from outside below zero (a joint that is pressed together).
 *
 * @example Fi 25 kip, P 6 kip, kb 6.50, km 13.8, At 0.373 in2: C 0.320, stress 67.0 to 72.2 kpsi
 */
export function jointShare(input: {
  readonly preloadN: number | null | undefined
  readonly loadN: number | null | undefined
  readonly boltStiffness: number | null | undefined
  readonly jointStiffness: number | null | undefined
  readonly stressAreaM2: number | null | undefined
}): Result<JointShare> {
  const fault =
    refuseUnsound({
      preload: input.preloadN,
      'stiffness of the bolt': input.boltStiffness,
      'stiffness of the joint': input.jointStiffness,
      'stress area': input.stressAreaM2,
    }) ?? refuseUnsound({ 'load from outside': input.loadN }, 'any')
  if (fault !== null) return fault
  const [preload, load, area] = [
    input.preloadN as number,
    input.loadN as number,
    input.stressAreaM2 as number,
  ]
  if (load < 0)
    return refuse(
      'joint-pressed',
      'A load that presses the joint together is not shared in this way: leave it out.',
    )
  const [kb, km] = [input.boltStiffness as number, input.jointStiffness as number]
  const share = kb / (kb + km)
  const opensAtN = preload / (1 - share)
  const isOpen = load >= opensAtN
  const boltN = isOpen ? load : preload + share * load
  const figures = {
    share,
    boltN,
    clampN: isOpen ? 0 : preload - (1 - share) * load,
    boltStressPa: boltN / area,
    preloadStressPa: preload / area,
    opensAtN,
  }
  return refuseOverflow(...Object.values(figures)) ?? ok({ ...figures, isOpen })
}
