// Gas load on the piston rod. Compression is positive: discharging at the head end pushes the rod towards the crank.
import type { Result } from '../lib/result.ts'
import type { PistonAreas } from './cylinder-ends.ts'
import { aboveZero, firstFault, sound, soundAll, within } from './guard.ts'

export interface RodLoadInputs {
  readonly areas: PistonAreas
  /** Absolute, in the cylinder: add valve losses before if they are to count. */
  readonly suctionPa: number
  readonly dischargePa: number
  /**
   * Absolute pressure on the ends of the rod outside the cylinder: the barometer, which gives the same as gauge
   * pressures throughout. 0 leaves it out, as handbooks do that put absolute pressures in the formula.
   */
  readonly outsidePa: number
}

/** Net gas force on the piston, N, positive = rod in compression, from absolute pressures at each end. Unguarded. */
export function netGasLoad(areas: PistonAreas, headPa: number, crankPa: number, outsidePa: number): number {
  return headPa * areas.headM2 - crankPa * areas.crankM2 - outsidePa * (areas.rodM2 - areas.tailRodM2)
}

export interface GasRodLoad {
  /** Discharging at the head end, newtons. */
  readonly compressionN: number
  /** Discharging at the crank end: size of the pull, newtons. Below zero: the rod is never pulled by the gas. */
  readonly tensionN: number
}

/**
 * Fc = Pd A_he - Ps A_ce and Ft = Pd A_ce - Ps A_he, each with the outside pressure on the rod's section.
 * Source: Bloch & Hoefner, Reciprocating Compressors, Gulf 1996, p. 83-85 (direction in words p. 83-84: discharge
 * towards the head end = compression). Stored secondary pages swap the two; the wording decides.
 * Both ends acting. Inertia is not in it: see pinLoad.
 * Refuses: a pressure missing or not above zero (outside: below zero), discharge below suction.
 *
 * @example bore 12 in, rod 2.5 in, 100 and 300 psia, outside left out: 23,110 lbf and 21,147 lbf
 */
export function gasRodLoad({ areas, suctionPa, dischargePa, outsidePa }: RodLoadInputs): Result<GasRodLoad> {
  const fault = firstFault(
    aboveZero('suction pressure', suctionPa),
    within('discharge pressure in Pa', dischargePa, suctionPa, 1e9),
    within('outside pressure in Pa', outsidePa, 0, 2e5),
  )
  if (fault !== null) return fault
  return soundAll('rod load', {
    compressionN: netGasLoad(areas, dischargePa, suctionPa, outsidePa),
    tensionN: -netGasLoad(areas, suctionPa, dischargePa, outsidePa),
  })
}

/**
 * Discharge pressure, absolute Pa, at which the compression load reaches `limitN`:
 * Pd = (F + Ps A_ce + Po (A_rod - A_tail)) / A_he.
 * Source: H. P. Bloch & F. K. Geitner, Practical Machinery Management for Process Plants, vol. 4: Major Process
 * Equipment Maintenance and Repair, p. 181. Refuses: an input missing or not above zero.
 *
 * @example bore 34 in, rod 4 in, limit 125,000 lbf, suction 10 psig: 147.5 psig
 */
export function dischargeAtCompressionLimit(
  { areas, suctionPa, outsidePa }: Omit<RodLoadInputs, 'dischargePa'>,
  limitN: number,
): Result<number> {
  const fault = firstFault(
    aboveZero('suction pressure', suctionPa),
    aboveZero('rod load limit', limitN),
    within('outside pressure in Pa', outsidePa, 0, 2e5),
  )
  if (fault !== null) return fault
  const carried = suctionPa * areas.crankM2 + outsidePa * (areas.rodM2 - areas.tailRodM2)
  return sound('discharge pressure', (limitN + carried) / areas.headM2)
}
