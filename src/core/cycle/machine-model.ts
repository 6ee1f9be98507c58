// The whole machine as the pocket solver needs it: every stage, cylinder, end and pocket, the driver, and the limits.
// Types only. All SI, all pressures absolute.
import type { Pocket } from './clearance.ts'
import type { ReversalCriterion } from './reversal.ts'
import type { VeForm } from './volumetric-efficiency.ts'

export interface EndModel {
  /** False: suction valves held off or removed; the end draws and delivers nothing. */
  readonly acts: boolean
  /**
   * Clearance over this end's swept volume, pocket shut. A fixed pocket may be counted here or given below, not both.
   */
  readonly clearance: number
  readonly pocket?: Pocket
  /** Present setting of the pocket, 0 shut to 1 full open. */
  readonly opening?: number
}

export interface CylinderModel {
  readonly name: string
  readonly boreM: number
  readonly rodM: number
  readonly tailRodM?: number
  readonly head: EndModel
  readonly crank: EndModel
  /** Piston, rod and crosshead, kg; not the connecting rod. */
  readonly reciprocatingKg: number
  /** Gas rod load limits of this throw. */
  readonly compressionLimitN: number
  readonly tensionLimitN: number
  /** Limit of gas plus inertia at the pin, where the maker gives one. */
  readonly pinLimitN?: number
}

export interface StageModel {
  readonly name: string
  readonly cylinders: readonly CylinderModel[]
  /** At the cylinder's own suction: for later stages, after the cooler. */
  readonly suctionK: number
  readonly k: number
  readonly zSuction: number
  readonly zDischarge: number
  /** L of the volumetric-efficiency form, where it has one. */
  readonly loss?: number
  /** Ideal over actual indicated power: valve and passage losses as one factor, held through the search. */
  readonly compressionEfficiency: number
  /** Valve losses for the loads: pressure in the cylinder below suction and above discharge, as fractions of each. */
  readonly suctionDrop: number
  readonly dischargeRise: number
  readonly temperatureLimitK: number
}

/** Between stage i and i + 1. */
export interface BetweenModel {
  /** Pressure lost in cooler and pipe as a fraction of the absolute discharge pressure before it. */
  readonly drop: number
  /** Moles passed on per mole received: below 1 for condensate or a take-off, above 1 for a side stream. */
  readonly passedOn: number
}

/**
 * How the driver load follows the indicated power. `constant`: friction stays what it is at the present setting while
 * the pocket opens (nearer the truth, and it never flatters the pocket). `in-proportion`: friction falls with the load.
 */
export const FRICTION_WORDS = ['constant', 'in-proportion'] as const
export type Friction = (typeof FRICTION_WORDS)[number]

export interface MachineModel {
  readonly strokeM: number
  readonly conRodM: number
  /** Turns a second. */
  readonly speedPerS: number
  /** Suction of the first and discharge of the last stage: held by the plant. */
  readonly suctionPa: number
  readonly dischargePa: number
  readonly barometerPa: number
  readonly veForm: VeForm
  readonly mechanicalEfficiency: number
  readonly friction: Friction
  readonly stages: readonly StageModel[]
  readonly between: readonly BetweenModel[]
  readonly driverRatingW: number
  /** Part of the rating kept free: 0.05 aims at 95 %. */
  readonly margin: number
  readonly measuredLoadW: number
  /** Computed and measured load may differ by this part of the measured one. */
  readonly agreement: number
  readonly reversal: ReversalCriterion
  readonly leastVe: number
}

/** A record in which anything may still be missing. */
export type Loose<T> = T extends number | string | boolean
  ? T | null | undefined
  : T extends readonly (infer Item)[]
    ? readonly Loose<Item>[] | null | undefined
    : { readonly [Key in keyof T]?: Loose<T[Key]> | null | undefined } | null | undefined

export type MachineRecord = NonNullable<Loose<MachineModel>>
export type StageRecord = NonNullable<Loose<StageModel>>
export type CylinderRecord = NonNullable<Loose<CylinderModel>>
export type EndRecord = NonNullable<Loose<EndModel>>
