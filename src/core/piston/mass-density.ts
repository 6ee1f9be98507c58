// What the weight of a piston says about a cavity in it. It is one fact among others and never decides alone.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

const LB_PER_IN3 = 0.45359237 / 0.0254 ** 3

/** kg/m3, from lb/in3 in Elements of Metric Gear Technology, table 18-10. The maker's own figure is better. */
export const METAL_DENSITY = {
  'grey-iron': 0.26 * LB_PER_IN3,
  'ductile-iron': 0.259 * LB_PER_IN3,
  'malleable-iron': 0.265 * LB_PER_IN3,
  'carbon-steel': 0.286 * LB_PER_IN3,
  'steel-4140': 0.284 * LB_PER_IN3,
  'wrought-aluminium': 0.098 * LB_PER_IN3,
} as const
export type PistonMetal = keyof typeof METAL_DENSITY

export interface PistonWeighing {
  /** As weighed, kg. */
  readonly weighedKg: number | null | undefined
  /** Rod, nut and rings that were weighed with it, kg; zero only when the piston was weighed bare. */
  readonly rodKg: number | null | undefined
  readonly diameterM: number | null | undefined
  readonly lengthM: number | null | undefined
  /** Diameter of the hole for the rod, metres; zero when there is none. */
  readonly rodHoleM: number | null | undefined
  /** Volume of ring grooves and recesses, m3; zero only when it was looked at and is none. */
  readonly groovesM3: number | null | undefined
  readonly metal: PistonMetal | null | undefined
  /** Expanded uncertainty (k = 2) of the ratio of mean to solid density: scale, sizes and metal together. */
  readonly ratioU: number | null | undefined
}

export interface WeightFact {
  readonly meanDensity: number
  /** Mean density over that of solid metal. */
  readonly ratio: number
  readonly says: 'hollow' | 'solid'
  readonly solidKg: number
  /** The largest cavity, m3, that such a weight and its uncertainty still leave room for. */
  readonly hiddenCavityM3: number
}

/**
 * Mean density = (weighed - rod) / (pi/4 (D2 - d2) L - grooves), over the density of the metal. Towards hollow when
 * below 1 by more than U, towards solid when within U of 1. No threshold is made up: U of the ratio is the bar, and the
 * cavity that could still hide behind it is told. It counts as ONE fact either way.
 * Sources: definition; densities as in METAL_DENSITY. That pistons up to about 7 in are mostly solid and larger ones
 * mostly hollow is a guide and never proof: common practice, no source.
 * Refuses, and the weight is then no fact: anything missing or unsound; metal not known; a rod heavier than the whole;
 * a piston denser than its metal by more than U (metal, weight or size is wrong).
 *
 * @example 10 x 6 in grey iron, 75 lb bare, no hole: 0.159 lb/in3 against 0.260, towards hollow
 */
export function weightFact(input: PistonWeighing): Result<WeightFact> {
  const fault =
    refuseUnsound({
      'weight of the piston': input.weighedKg,
      'piston diameter': input.diameterM,
      'piston length': input.lengthM,
    }) ??
    refuseUnsound(
      {
        'weight of rod and nut': input.rodKg,
        'hole for the rod': input.rodHoleM,
        'volume of grooves': input.groovesM3,
        'uncertainty of the density ratio': input.ratioU,
      },
      'zero or more',
    )
  if (fault !== null) return fault
  const { metal } = input
  if (metal === null || metal === undefined || !Object.hasOwn(METAL_DENSITY, metal))
    return refuse(
      'metal-not-known',
      'The metal of the piston is not known: its weight says nothing until it is.',
    )
  const volume = metalVolume(input)
  const massKg = (input.weighedKg as number) - (input.rodKg as number)
  if (!(massKg > 0))
    return refuse('rod-heavier-than-whole', 'Rod and nut are not lighter than the whole: weigh again.')
  if (!(volume > 0))
    return refuse('no-volume', 'The hole and the grooves take more than the whole piston: measure again.')
  const ratio = massKg / volume / METAL_DENSITY[metal]
  return refuseOverflow(ratio) ?? judged(ratio, volume, METAL_DENSITY[metal], input.ratioU as number)
}

function metalVolume({ diameterM, lengthM, rodHoleM, groovesM3 }: PistonWeighing): number {
  const section = (Math.PI / 4) * ((diameterM as number) ** 2 - (rodHoleM as number) ** 2)
  return section * (lengthM as number) - (groovesM3 as number)
}

function judged(ratio: number, volume: number, density: number, ratioU: number): Result<WeightFact> {
  if (ratioU >= 1)
    return refuse(
      'weight-says-nothing',
      'The uncertainty is as large as the piston itself: weigh and measure better.',
    )
  if (ratio > 1 + ratioU + 1e-12)
    return refuse(
      'denser-than-its-metal',
      'The piston is heavier than solid metal of that size: check the metal, the sizes and what was on the scale.',
    )
  return ok({
    meanDensity: ratio * density,
    ratio,
    says: ratio < 1 - ratioU - 1e-12 ? 'hollow' : 'solid',
    solidKg: density * volume,
    hiddenCavityM3: volume * Math.max(0, 1 - ratio + ratioU),
  })
}
