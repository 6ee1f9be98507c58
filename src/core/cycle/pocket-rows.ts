// One row of the table of openings: the machine with its pocket there, cylinder by cylinder.
import type { MachineModel } from './machine-model.ts'
import type { CheckedOpening, PocketCase } from './pocket-cases.ts'
import type { PocketTravel } from './pocket-choice.ts'
import type { CylinderAt, PocketJudgeInput, PocketRow } from './pocket-judge-input.ts'
import type { CylinderCheck } from './setting-checks.ts'

/** Shut, quarters of the travel on whole steps of the hand-wheel, full open, and `also`; each once, in order. */
export function tableOpenings(travel: PocketTravel, also: readonly number[]): readonly number[] {
  const step = travel.is === 'variable' ? travel.step : 1
  const onStep = (share: number) => (step === null ? share : Math.min(1, Math.round(share / step) * step))
  const quarters = travel.is === 'open-or-shut' ? [] : [0.25, 0.5, 0.75].map(onStep)
  // One of `also` is kept as it is; what is the same but for rounding gives way to it.
  const others = [0, ...quarters, 1].filter((one) => !also.some((kept) => Math.abs(kept - one) <= 1e-9))
  return [...new Set([...also, ...others])].sort((a, b) => a - b)
}

export function pocketRow(
  { turns }: PocketJudgeInput,
  machine: MachineModel,
  asRead: PocketCase | undefined,
  { point, checks, faults }: CheckedOpening,
  opening: number,
  loadW: number,
): PocketRow {
  return {
    opening,
    turns: turns === null ? null : opening * turns,
    capacityShare: point.molPerS / (asRead?.present.molPerS ?? Number.NaN),
    loadW,
    cylinders: checks.cylinders.map((check) => cylinderAt(machine, check)),
    faults,
  }
}

function cylinderAt(
  machine: MachineModel,
  { stage, cylinder, gas, reversal, dischargeK }: CylinderCheck,
): CylinderAt {
  const of = machine.stages[stage - 1]
  const limits = of?.cylinders.find(({ name }) => name === cylinder)
  if (of === undefined || limits === undefined)
    throw new Error('a cylinder was checked that is not on the machine')
  const { compressionLimitN, tensionLimitN, pinLimitN } = limits
  return {
    stage,
    cylinder,
    compressionN: gas.compressionN,
    tensionN: gas.tensionN,
    compressionLimitN,
    tensionLimitN,
    share: Math.max(gas.compressionN / compressionLimitN, gas.tensionN / tensionLimitN),
    pinN: Math.max(reversal.compressionPeakN, reversal.tensionPeakN),
    pinLimitN: pinLimitN ?? null,
    reversalAngle: reversal.angle,
    reversalShare: reversal.share,
    dischargeK,
    dischargeLimitK: of.temperatureLimitK,
  }
}
