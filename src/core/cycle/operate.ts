// One operating point of the whole machine at given pocket settings: pressures between stages, flow, power, driver
// load.
import { ok, type Result } from '../lib/result.ts'
import { balance, type StagePressures } from './balance.ts'
import { GAS_CONSTANT } from './capacity.ts'
import { pocketVolume } from './clearance.ts'
import { displacement } from './cylinder-ends.ts'
import { dischargeTemperature } from './discharge-temperature.ts'
import { sound } from './guard.ts'
import type { CylinderModel, EndModel, MachineModel, StageModel } from './machine-model.ts'
import { indicatedUnguarded } from './power.ts'
import { type VeForm, veUnguarded } from './volumetric-efficiency.ts'

export interface EndPoint {
  readonly acts: boolean
  /** With the pocket at its setting. */
  readonly clearance: number
  /**
   * On suction conditions by the machine's form; null for an end that does not act. Zero or below: it draws nothing.
   */
  readonly efficiency: number | null
}

export interface CylinderPoint {
  readonly cylinder: CylinderModel
  readonly head: EndPoint
  readonly crank: EndPoint
}

export interface StagePoint extends StagePressures {
  readonly stage: StageModel
  readonly dischargeK: number
  readonly idealW: number
  readonly indicatedW: number
  readonly cylinders: readonly CylinderPoint[]
}

export interface OperatingPoint {
  readonly stages: readonly StagePoint[]
  /** Into the first stage. */
  readonly molPerS: number
  readonly indicatedW: number
  readonly driverW: number
}

interface SizedEnd extends Pick<EndModel, 'acts' | 'clearance'> {
  readonly m3PerS: number
}

/**
 * Working point of a complete record. The efficiencies, Z, suction temperatures, cooler drop fraction and k of
 * each stage
 * are held at their stated values at every setting. `frictionW` is the friction to add where it is constant; left out,
 * driver load is indicated power over the mechanical efficiency.
 * Refuses: what balance refuses; a result that is not finite.
 */
export function operate(machine: MachineModel, frictionW?: number): Result<OperatingPoint> {
  const sized = machine.stages.map((stage) =>
    stage.cylinders.map((one) => ({ cylinder: one, ends: sizedEnds(machine, one) })),
  )
  const draws = machine.stages.map((stage, i) => {
    const ends = (sized[i] ?? []).flatMap((one) => one.ends).filter((end) => end.acts)
    return { draws: (pa: number, ratio: number) => drawn(machine.veForm, stage, ends, pa, ratio) }
  })
  const balanced = balance(draws, machine.between, machine.suctionPa, machine.dischargePa)
  if (!balanced.ok) return balanced
  const stages: StagePoint[] = []
  for (const [i, pressures] of balanced.value.entries()) {
    const stage = machine.stages[i] as StageModel
    const point = stagePoint(machine.veForm, stage, pressures, sized[i] ?? [])
    if (!point.ok) return point
    stages.push(point.value)
  }
  return total(machine, stages, frictionW)
}

function total(
  machine: MachineModel,
  stages: readonly StagePoint[],
  frictionW?: number,
): Result<OperatingPoint> {
  const indicatedW = stages.reduce((sum, stage) => sum + stage.indicatedW, 0)
  const driver = sound(
    'driver load',
    frictionW === undefined ? indicatedW / machine.mechanicalEfficiency : indicatedW + frictionW,
  )
  if (!driver.ok) return driver
  return ok({ stages, molPerS: stages[0]?.molPerS ?? 0, indicatedW, driverW: driver.value })
}

/** A complete record has been looked at by machineHolds, so a refusal here is a bug. */
function sure<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`a complete record was refused: ${result.error.say}`)
  return result.value
}

function sizedEnds(machine: MachineModel, cylinder: CylinderModel): readonly [SizedEnd, SizedEnd] {
  const swept = sure(displacement(cylinder, machine.strokeM, machine.speedPerS))
  return [
    sizedEnd(cylinder.head, swept.headM3, swept.headM3PerS),
    sizedEnd(cylinder.crank, swept.crankM3, swept.crankM3PerS),
  ]
}

function sizedEnd(end: EndModel, sweptM3: number, m3PerS: number): SizedEnd {
  const added = end.pocket === undefined ? 0 : sure(pocketVolume(end.pocket, end.opening ?? Number.NaN))
  return { acts: end.acts, clearance: end.clearance + added / sweptM3, m3PerS }
}

function efficiencyOf(form: VeForm, stage: StageModel, clearance: number, ratio: number): number {
  const { k, zSuction, zDischarge, loss } = stage
  return veUnguarded({ form, clearance, ratio, k, zSuction, zDischarge, loss })
}

/** Gas drawn by a stage, mol/s. An end whose efficiency is zero or below draws nothing; it never gives back. */
function drawn(
  form: VeForm,
  stage: StageModel,
  ends: readonly SizedEnd[],
  suctionPa: number,
  ratio: number,
): number {
  const m3PerS = ends.reduce(
    (sum, end) => sum + end.m3PerS * Math.max(0, efficiencyOf(form, stage, end.clearance, ratio)),
    0,
  )
  return (suctionPa * m3PerS) / (stage.zSuction * GAS_CONSTANT * stage.suctionK)
}

function stagePoint(
  form: VeForm,
  stage: StageModel,
  pressures: StagePressures,
  sized: readonly { cylinder: CylinderModel; ends: readonly [SizedEnd, SizedEnd] }[],
): Result<StagePoint> {
  const dischargeK = dischargeTemperature(stage.suctionK, pressures.ratio, stage.k)
  if (!dischargeK.ok) return dischargeK
  const { zSuction, zDischarge } = stage
  const { suctionPa, ratio, molPerS } = pressures
  const inletM3PerS = (molPerS * zSuction * GAS_CONSTANT * stage.suctionK) / suctionPa
  const idealW = indicatedUnguarded({ suctionPa, inletM3PerS, ratio, n: stage.k, zSuction, zDischarge })
  const endPoint = ({ acts, clearance }: SizedEnd): EndPoint => ({
    acts,
    clearance,
    efficiency: acts ? efficiencyOf(form, stage, clearance, ratio) : null,
  })
  const cylinders = sized.map(({ cylinder, ends: [head, crank] }) => ({
    cylinder,
    head: endPoint(head),
    crank: endPoint(crank),
  }))
  const indicatedW = idealW / stage.compressionEfficiency
  return ok({ ...pressures, stage, dischargeK: dischargeK.value, idealW, indicatedW, cylinders })
}
