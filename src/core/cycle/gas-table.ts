// A few named gases. The figures were worked out with open property libraries from reference equations of state; they
// were NOT read from a printed table, and each says so. A mixture's own figures are inputs, not built here.
import { ok, type Result, refuse } from '../lib/result.ts'
import { firstFault, within } from './guard.ts'

/**
 * Cross-check: handbook CO2 548 R, 1071 psia, k 1.3 (E. W. McAllister, Pipeline Rules of Thumb Handbook, p. 271-272).
 */
export const GAS_SOURCE =
  'worked out with the open libraries CoolProp and chemicals (reference equations of state); k = Cp/(Cp - R), ideal gas'

export interface Gas {
  readonly name: string
  /** g/mol */
  readonly molarMass: number
  readonly criticalK: number
  readonly criticalPa: number
  /** Ideal-gas k at 60 F and at 150 F. */
  readonly k60F: number
  readonly k150F: number
}

const PSI = (0.45359237 * 9.80665) / 0.0254 ** 2

function row(name: string, molarMass: number, tcR: number, pcPsia: number, k60F: number, k150F: number): Gas {
  return { name, molarMass, criticalK: tcR / 1.8, criticalPa: pcPsia * PSI, k60F, k150F }
}

export const GASES: readonly Gas[] = [
  row('methane', 16.0428, 343.02, 667.1, 1.3073, 1.2857),
  row('ethane', 30.069, 549.58, 706.7, 1.1932, 1.169),
  row('propane', 44.0956, 665.8, 616.6, 1.1316, 1.1138),
  row('nitrogen', 28.0135, 227.15, 492.5, 1.3996, 1.399),
  row('carbon dioxide', 44.0098, 547.43, 1070.0, 1.2929, 1.2716),
  row('hydrogen', 2.0159, 59.66, 188.0, 1.4067, 1.401),
  row('air', 28.9655, 238.56, 549.1, 1.4002, 1.3986),
]

/** Refuses a name that is not in the table: give k, molar mass and Z of the gas itself then. */
export function gasNamed(name: string): Result<Gas> {
  const found = GASES.find((gas) => gas.name === name)
  if (found !== undefined) return ok(found)
  return refuse(
    'gas-unknown',
    `There is no gas of that name here (${GASES.map((gas) => gas.name).join(', ')}): give its own figures.`,
  )
}

const COLD_K = (60 + 459.67) / 1.8
const WARM_K = (150 + 459.67) / 1.8

/**
 * Ideal-gas k at a temperature in kelvin, on the straight line between its figures at 60 F and 150 F.
 * Source: GAS_SOURCE. 288.7 to 338.7 K only: outside, the line is not followed. Refuses: unknown gas, temperature
 * outside.
 *
 * @example methane at 105 F (313.7 K): 1.2965
 */
export function idealK(name: string, temperatureK: number): Result<number> {
  const gas = gasNamed(name)
  if (!gas.ok) return gas
  const fault = firstFault(within('temperature in K', temperatureK, COLD_K - 1e-6, WARM_K + 1e-6))
  if (fault !== null) return fault
  const share = (temperatureK - COLD_K) / (WARM_K - COLD_K)
  return ok(gas.value.k60F + share * (gas.value.k150F - gas.value.k60F))
}
