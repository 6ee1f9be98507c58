// Torque and the tension it gives. The nut factor K is an estimate, so the tension is an interval and never one figure.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

/** Shigley (Budynas & Nisbett), Mechanical Engineering Design, 9th ed., table 8-15 p. 439; two rows of makers left out. */
export const NUT_FACTORS = {
  'non-plated-black': 0.3,
  'zinc-plated': 0.2,
  lubricated: 0.18,
  'cadmium-plated': 0.16,
  'anti-seize': 0.12,
} as const

/**
 * How far the tension may lie from what was meant, both ways, by method. Two published lists disagree, even tenfold for
 * ultrasonic reading, so each is its own option and none is averaged.
 */
export const PRELOAD_SCATTER = {
  'feel-35': scatter(0.35, 'M'),
  'torque-wrench-25': scatter(0.25, 'M'),
  'turn-of-nut-15': scatter(0.15, 'M'),
  'indicating-washer-10': scatter(0.1, 'M'),
  'elongation-5': scatter(0.05, 'M'),
  'strain-gauge-or-ultrasonic-1': scatter(0.01, 'M'),
  'nasa-torque-dry-35': scatter(0.35, 'N'),
  'nasa-torque-lubricated-25': scatter(0.25, 'N'),
  'nasa-tensioner-15': scatter(0.15, 'N'),
  'nasa-ultrasonic-10': scatter(0.1, 'N'),
  'nasa-elongation-5': scatter(0.05, 'N'),
} as const
export type ScatterName = keyof typeof PRELOAD_SCATTER

function scatter(part: number, list: 'M' | 'N') {
  const source =
    list === 'M'
      ? "Machinery's Handbook, as quoted second-hand (elongation printed 3 to 5 %: the larger is used)"
      : 'NASA figures, as quoted second-hand'
  return { part, source }
}

export interface TensionInterval {
  readonly meantN: number
  readonly leastN: number
  readonly mostN: number
  readonly source: string
}

/**
 * Tension from torque: F = T / (K D), newtons, with the interval F (1 - s) to F (1 + s) of the method named.
 * Source: Shigley, 9th ed., eq. 8-27 (number from memory) and table 8-15; scatter as PRELOAD_SCATTER.
 * Refuses: a figure missing or not above zero; a K outside 0.05 to 0.5; a method not offered.
 *
 * @example 82 N m on M12, K 0.2, torque wrench: 34.2 kN, and may be 25.6 to 42.7 kN
 */
export function tensionFromTorque(input: {
  readonly torqueNm: number | null | undefined
  readonly diameterM: number | null | undefined
  readonly nutFactor: number | null | undefined
  readonly method: ScatterName
}): Result<TensionInterval> {
  const fault =
    refuseUnsound({ torque: input.torqueNm, 'thread diameter': input.diameterM }) ??
    nutFactorFault(input.nutFactor)
  if (fault !== null) return fault
  return interval(
    (input.torqueNm as number) / ((input.nutFactor as number) * (input.diameterM as number)),
    input.method,
  )
}

/** The interval about a tension that was meant, by the method named. Refuses: as tensionFromTorque. */
export function interval(meantN: number, method: ScatterName): Result<TensionInterval> {
  if (!Object.hasOwn(PRELOAD_SCATTER, method))
    return refuse(
      'not-offered',
      `Name how it is tightened: one of ${Object.keys(PRELOAD_SCATTER).join(', ')}.`,
    )
  const { part, source } = PRELOAD_SCATTER[method]
  return (
    refuseOverflow(meantN * (1 + part)) ??
    ok({ meantN, leastN: meantN * (1 - part), mostN: meantN * (1 + part), source })
  )
}

/**
 * Torque for a tension: T = K D F, newton metres. Sources and refusals as tensionFromTorque.
 *
 * @example 25 kip on a 3/4 in bolt, K 0.2: 3750 lbf in
 */
export function torqueForTension(input: {
  readonly tensionN: number | null | undefined
  readonly diameterM: number | null | undefined
  readonly nutFactor: number | null | undefined
}): Result<number> {
  const fault =
    refuseUnsound({ tension: input.tensionN, 'thread diameter': input.diameterM }) ??
    nutFactorFault(input.nutFactor)
  if (fault !== null) return fault
  const torqueNm = (input.nutFactor as number) * (input.diameterM as number) * (input.tensionN as number)
  return refuseOverflow(torqueNm) ?? ok(torqueNm)
}

function nutFactorFault(nutFactor: number | null | undefined) {
  const fault = refuseUnsound({ 'nut factor K': nutFactor })
  if (fault !== null) return fault
  const isPlausible = (nutFactor as number) >= 0.05 && (nutFactor as number) <= 0.5
  return isPlausible
    ? null
    : refuse('nut-factor-implausible', 'The nut factor K is not between 0.05 and 0.5: check it.')
}

/**
 * Nut factor from friction, for a 60 degree thread:
 * K = (dm / 2d) (tan l + f sec a) / (1 - f tan l sec a) + 0.625 fc, tan l = pitch / (pi dm), a = 30 degrees.
 * Source: Shigley, 9th ed., eq. 8-26 (from memory); dm is the mean of major and minor diameter there.
 * Refuses: a figure missing or not above zero; a mean diameter not below the major; friction above 0.5.
 *
 * @example 3/4-16, dm 0.7094 in, f = fc = 0.15: K 0.189
 */
export function nutFactorFromFriction(input: {
  readonly diameterM: number | null | undefined
  readonly meanDiameterM: number | null | undefined
  readonly pitchM: number | null | undefined
  readonly threadFriction: number | null | undefined
  readonly collarFriction: number | null | undefined
}): Result<number> {
  const fault = refuseUnsound({
    'thread diameter': input.diameterM,
    'mean diameter of the thread': input.meanDiameterM,
    'thread pitch': input.pitchM,
    'friction in the thread': input.threadFriction,
    'friction under the nut': input.collarFriction,
  })
  if (fault !== null) return fault
  const [f, fc] = [input.threadFriction as number, input.collarFriction as number]
  const [d, dm] = [input.diameterM as number, input.meanDiameterM as number]
  if (dm >= d)
    return refuse('mean-not-below-major', 'The mean diameter is not below the major one: check both.')
  if (f > 0.5 || fc > 0.5)
    return refuse('friction-implausible', 'A friction above 0.5 is not steel on steel: check it.')
  const tanLead = (input.pitchM as number) / (Math.PI * dm)
  const secant = 1 / Math.cos(Math.PI / 6)
  const thread = (dm / (2 * d)) * ((tanLead + f * secant) / (1 - f * tanLead * secant))
  return refuseOverflow(thread) ?? ok(thread + 0.625 * fc)
}
