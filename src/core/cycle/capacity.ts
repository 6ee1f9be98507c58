// What a cylinder passes: inlet volume, amount of gas, and the same at stated standard or free-air conditions.
import type { Result } from '../lib/result.ts'
import { aboveZero, compressibilityFault, firstFault, sound, within } from './guard.ts'

/** Molar gas constant, J/(mol K): exact, SI Brochure 9th ed. (2019), k N_A. */
export const GAS_CONSTANT = 8.31446261815324

/** A state of the gas: absolute pressure, absolute temperature, compressibility (1 for an ideal gas, said). */
export interface GasState {
  readonly pressurePa: number
  readonly temperatureK: number
  readonly z: number
}

function stateFaults(where: string, { pressurePa, temperatureK, z }: GasState) {
  return [
    aboveZero(`${where} pressure`, pressurePa),
    within(`${where} pressure in Pa`, pressurePa, 0, 1e9),
    within(`${where} temperature in K`, temperatureK, 50, 1000),
    compressibilityFault(where, z),
  ]
}

/**
 * Inlet capacity Q = VE x displacement, m3/s at the cylinder's own suction conditions.
 * Source: E. W. McAllister (ed.), Pipeline Rules of Thumb Handbook, p. 272.
 * Refuses: an efficiency outside 0 to 2, a displacement missing or not above zero.
 *
 * @example VE 0.93 of 107.6 cfm: 100.1 cfm
 */
export function inletCapacity(efficiency: number, displacementM3PerS: number): Result<number> {
  const fault = firstFault(
    within('volumetric efficiency', efficiency, 0, 2),
    aboveZero('displacement', displacementM3PerS),
  )
  return fault ?? sound('capacity', efficiency * displacementM3PerS)
}

/**
 * n = P Q / (Z R T), mol/s. Source: the gas law with compressibility; R exact, SI Brochure 9th ed.
 * Refuses: a flow that is missing or negative; a state missing or out of range.
 *
 * @example 0.0210 m3/s at 101.3 kPa, 288 K, Z 1: 0.888 mol/s
 */
export function molarFlow(inletM3PerS: number, state: GasState): Result<number> {
  const fault = firstFault(
    within('inlet flow in m3/s', inletM3PerS, 0, 1e6),
    ...stateFaults('suction', state),
  )
  if (fault !== null) return fault
  return sound(
    'amount of gas',
    (state.pressurePa * inletM3PerS) / (state.z * GAS_CONSTANT * state.temperatureK),
  )
}

/**
 * The same gas at another state: Q_b = Q (P/P_b)(T_b/T)(Z_b/Z), m3/s. For standard conditions the base is the
 * site's own, stated (for example 14.696 psia, 60 F); for free air it is the air round the machine.
 * Source: gas law; the form with base conditions: GPSA Engineering Data Book, section 13, nomenclature.
 * Refuses: a flow missing or negative, a state missing or out of range.
 *
 * @example 500 icfm, 100 psia, 100 F to 14.696 psia, 60 F, Z 1: 3159.1 cfm, that is 4.549 MMscfd
 */
export function flowAt(inletM3PerS: number, from: GasState, base: GasState): Result<number> {
  const fault = firstFault(
    within('inlet flow in m3/s', inletM3PerS, 0, 1e6),
    ...stateFaults('suction', from),
    ...stateFaults('base', base),
  )
  if (fault !== null) return fault
  return sound('flow at base conditions', inletM3PerS * stateRatio(from, base))
}

function stateRatio(from: GasState, base: GasState): number {
  return (from.pressurePa / base.pressurePa) * (base.temperatureK / from.temperatureK) * (base.z / from.z)
}

/**
 * Volumetric efficiency on the free-air basis: the suction-basis figure times (P/P_f)(T_f/T)(Z_f/Z). The two differ
 * for the same machine, so the basis is always named.
 * Source: R. Joel, Basic Engineering Thermodynamics, Ex 14.1, p. 400 (one machine, both figures).
 * Refuses: an efficiency outside 0 to 2, a state missing or out of range.
 *
 * @example 86.00 % on suction (97 kPa, 293 K) is 80.9 % on free air (101.325 kPa, 288 K)
 */
export function freeAirEfficiency(
  suctionBasis: number,
  suction: GasState,
  freeAir: GasState,
): Result<number> {
  const fault = firstFault(
    within('volumetric efficiency', suctionBasis, 0, 2),
    ...stateFaults('suction', suction),
    ...stateFaults('free-air', freeAir),
  )
  if (fault !== null) return fault
  return sound('free-air efficiency', suctionBasis * stateRatio(suction, freeAir))
}
