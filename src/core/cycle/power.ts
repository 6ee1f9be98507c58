// Work and power of the ideal cycle, and what the shaft needs once the stated losses are taken in.
import type { Result } from '../lib/result.ts'
import {
  aboveZero,
  compressibilityFault,
  exponentFault,
  firstFault,
  ratioFault,
  sound,
  within,
} from './guard.ts'

/**
 * n/(n-1) (r^((n-1)/n) - 1), going over into ln r at n = 1. Work of compression and delivery per P1 V1.
 * Written with expm1, so that it stays true close to n = 1 and r = 1. Inputs are not looked at.
 */
export function workFactor(ratio: number, n: number): number {
  const exponent = (n - 1) / n
  const log = Math.log(ratio)
  return exponent === 0 ? log : Math.expm1(exponent * log) / exponent
}

export interface IndicatedInputs {
  /** Suction pressure, absolute. */
  readonly suctionPa: number
  /** Gas drawn in, at suction conditions, m3/s (or m3 a cycle, for joules a cycle). */
  readonly inletM3PerS: number
  /** Discharge over suction pressure, absolute. */
  readonly ratio: number
  readonly n: number
  readonly zSuction: number
  readonly zDischarge: number
}

/** As indicatedPower, without looking at the inputs. */
export function indicatedUnguarded(inputs: IndicatedInputs): number {
  const { suctionPa, inletM3PerS, ratio, n, zSuction, zDischarge } = inputs
  const real = (zSuction + zDischarge) / (2 * zSuction)
  return suctionPa * inletM3PerS * workFactor(ratio, n) * real
}

/**
 * Ideal indicated power, watts: P1 Q n/(n-1) (r^((n-1)/n) - 1) (Zs + Zd)/(2 Zs). Clearance does not appear: gas left in
 * it gives back on re-expansion what it took, so power falls as capacity falls AT UNCHANGED PRESSURES.
 * Source: P. K. Nag, Engineering Thermodynamics, ch. 18; no effect of clearance for a given capacity: Bloch & Hoefner,
 * Reciprocating Compressors, Gulf 1996, p. 19. The mean-Z factor is the handbooks' usual correction.
 * r 1 to 50, n 1 (isothermal) to 2. Valve and friction losses are not in it: see brakePower.
 * Refuses: an input missing or out of range.
 *
 * @example 1 m3/min at 1.013 bar to 7 bar, n 1.35: 4.24 kW
 */
export function indicatedPower(inputs: IndicatedInputs): Result<number> {
  const fault = firstFault(
    aboveZero('suction pressure', inputs.suctionPa),
    within('inlet flow in m3/s', inputs.inletM3PerS, 0, 1e6),
    ratioFault(inputs.ratio),
    exponentFault(inputs.n),
    compressibilityFault('suction', inputs.zSuction),
    compressibilityFault('discharge', inputs.zDischarge),
  )
  return fault ?? sound('indicated power', indicatedUnguarded(inputs))
}

export interface Efficiencies {
  /** Ideal over actual indicated power: what valves and passages cost. 1 leaves them out, said. */
  readonly compression: number
  /** Indicated over shaft power: friction of the machine. */
  readonly mechanical: number
}

/**
 * Shaft power, watts: ideal indicated / (compression efficiency x mechanical efficiency).
 * Source: P. K. Nag, Engineering Thermodynamics, Ex 18.1, 18.2 (mechanical 0.80, 0.85).
 * Refuses: a power missing or negative; an efficiency missing or outside 0.3 to 1.
 *
 * @example 5.48 kW at mechanical efficiency 0.85: 6.44 kW
 */
export function brakePower(
  idealIndicatedW: number,
  { compression, mechanical }: Efficiencies,
): Result<number> {
  const fault = firstFault(
    within('indicated power in watts', idealIndicatedW, 0, 1e9),
    within('compression efficiency', compression, 0.3, 1),
    within('mechanical efficiency', mechanical, 0.3, 1),
  )
  return fault ?? sound('brake power', idealIndicatedW / (compression * mechanical))
}

/**
 * Isothermal power over indicated power: ln r / workFactor(r, n), a fraction; 1 at r = 1.
 * Source: O. Singh, Applied Thermodynamics, Ex 16.2, p. 742. Refuses: an input missing or out of range.
 *
 * @example r 12, n 1.2: 80.72 %
 */
export function isothermalEfficiency(ratio: number, n: number): Result<number> {
  const fault = firstFault(ratioFault(ratio), exponentFault(n))
  if (fault !== null) return fault
  return sound('isothermal efficiency', ratio === 1 ? 1 : Math.log(ratio) / workFactor(ratio, n))
}
