// What gas shut in a cavity can do: the push on a plug, and the work it can give when let go. Both are large at
// pressures that look small.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

/**
 * Force on a round plug = (pressure inside less outside) x pi/4 d2, newtons; d where the gas acts on it, and the
 * greatest thread diameter when that is not known. Source: definition of pressure.
 * Refuses: a figure missing; a diameter not above zero; a pressure difference below zero.
 *
 * @example 100 psi on a 1.5 in plug: 177 lbf
 */
export function plugForce(plug: {
  readonly pressureDifferencePa: number | null | undefined
  readonly diameterM: number | null | undefined
}): Result<number> {
  const fault =
    refuseUnsound({ 'diameter of the plug': plug.diameterM }) ??
    refuseUnsound({ 'pressure difference': plug.pressureDifferencePa }, 'zero or more')
  if (fault !== null) return fault
  const force = (plug.pressureDifferencePa as number) * (Math.PI / 4) * (plug.diameterM as number) ** 2
  return refuseOverflow(force) ?? ok(force)
}

const CROWL = 'D. A. Crowl, Understanding Explosions, AIChE 2003, app. B'

/**
 * Models of the energy, ideal gas. They answer different questions and differ by half, so the model is always said.
 * The formula of `isothermal-available` is from memory; the others were read.
 */
export const ENERGY_MODELS = {
  'isentropic-expansion': {
    formula: 'E = p1 V / (k - 1) x (1 - (p0/p1)^((k - 1)/k))',
    source: `${CROWL}, eq. B-2; the same in ASME PCC-2, art. 501, app. 501-II, eq. II-1 (read second-hand)`,
    needsK: true,
  },
  'constant-volume': { formula: 'E = (p1 - p0) V / (k - 1)', source: `${CROWL}, eq. B-1`, needsK: true },
  isothermal: { formula: 'E = p1 V ln(p1/p0)', source: `${CROWL}, eq. B-3`, needsK: false },
  'isothermal-available': {
    formula: 'E = p1 V (ln(p1/p0) - 1 + p0/p1)',
    source: `${CROWL}, eq. B-4 (formula from memory), gas at ambient temperature`,
    needsK: false,
  },
} as const
export type EnergyModel = keyof typeof ENERGY_MODELS

/**
 * Energy of gas shut in a cavity, joules, on expansion from p1 to the air at p0 (both absolute). Ideal gas; at the few
 * tens of bar a piston can hold, compressibility changes it by a few per cent. k as in cp/cv, above 1 up to 1.67.
 * Refuses: a figure missing or not above zero; p1 below p0; a k that is missing or outside that range where needed.
 *
 * @example 12.4 L at 7 barg, air at 1.01325 bara, k 1.24, isentropic: 13.7 kJ; with k 1.4 it is 11.1 kJ
 */
export function cavityEnergy(gas: {
  readonly volumeM3: number | null | undefined
  readonly insidePa: number | null | undefined
  readonly ambientPa: number | null | undefined
  readonly k?: number | null | undefined
  readonly model: EnergyModel
}): Result<number> {
  const fault = refuseUnsound({
    'volume of the cavity': gas.volumeM3,
    'absolute pressure in the cavity': gas.insidePa,
    'absolute pressure of the air': gas.ambientPa,
  })
  if (fault !== null) return fault
  if (!Object.hasOwn(ENERGY_MODELS, gas.model))
    return refuse(
      'not-offered',
      `There is no such model: choose one of ${Object.keys(ENERGY_MODELS).join(', ')}.`,
    )
  const unsoundK = ENERGY_MODELS[gas.model].needsK
    ? refuseUnsound({ 'ratio of specific heats k': gas.k })
    : null
  if (unsoundK !== null) return unsoundK
  if (ENERGY_MODELS[gas.model].needsK && !((gas.k as number) > 1 && (gas.k as number) <= 1.67))
    return refuse('k-implausible', 'The ratio of specific heats k is not between 1 and 1.67: check it.')
  const [p1, p0, volume] = [gas.insidePa as number, gas.ambientPa as number, gas.volumeM3 as number]
  if (p1 < p0)
    return refuse(
      'cavity-under-vacuum',
      'The cavity is below the air pressure: it holds a vacuum, not a push.',
    )
  const energy = modelled(gas.model, p1, p0, volume, gas.k as number)
  return refuseOverflow(energy) ?? ok(energy)
}

function modelled(model: EnergyModel, p1: number, p0: number, volume: number, k: number): number {
  const log = Math.log(p1 / p0)
  switch (model) {
    case 'isentropic-expansion':
      // expm1 keeps its digits where the pressures are nearly equal.
      return ((p1 * volume) / (k - 1)) * -Math.expm1((-log * (k - 1)) / k)
    case 'constant-volume':
      return ((p1 - p0) * volume) / (k - 1)
    case 'isothermal':
      return p1 * volume * log
    case 'isothermal-available':
      return Math.max(0, p1 * volume * (log - 1 + p0 / p1))
  }
}

/** Joules in one gram of TNT in ASME PCC-2, art. 501, app. 501-II, eq. II-3 (4 266 920 J/kg; read second-hand). */
export const TNT_J_PER_G = 4266.92
