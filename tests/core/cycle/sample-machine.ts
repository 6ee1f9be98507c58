// An invented two-stage machine: TC-401 where its record has the figure; the rest made up to be complete.
import type {
  CylinderModel,
  EndModel,
  MachineModel,
  StageModel,
} from '../../../src/core/cycle/machine-model.ts'
import type { PocketChoice } from '../../../src/core/cycle/pocket-choice.ts'
import type { Result } from '../../../src/core/lib/result.ts'
import { quantity } from '../../../src/core/units/index.ts'

export const si = (value: number, unit: string) => quantity(value, unit).si

export function get<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`refused: ${result.error.say}`)
  return result.value
}

export const BARO = si(14.7, 'psia')
export const absolute = (psig: number) => si(psig, 'psig') + BARO

export function end(clearance: number, more: Partial<EndModel> = {}): EndModel {
  return { acts: true, clearance, ...more }
}

/** 2 in3 a turn, 100 turns: nobody's wheel, but it reaches far enough for every test. */
export const WHEEL = {
  pocket: { is: 'variable', volumePerTurnM3: si(2, 'in3'), turns: 100 },
  opening: 0,
} as const

export function cylinder(name: string, boreIn: number, more: Partial<CylinderModel>): CylinderModel {
  return {
    name,
    boreM: si(boreIn, 'in'),
    rodM: si(2.25, 'in'),
    head: end(0.14),
    crank: end(0.15),
    reciprocatingKg: si(265, 'lb'),
    compressionLimitN: si(18000, 'lbf'),
    tensionLimitN: si(18000, 'lbf'),
    pinLimitN: si(20000, 'lbf'),
    ...more,
  }
}

export function stage(name: string, suctionF: number, cylinders: readonly CylinderModel[]): StageModel {
  return {
    name,
    cylinders,
    suctionK: si(suctionF, 'degF'),
    k: 1.27,
    zSuction: 0.97,
    zDischarge: 0.97,
    compressionEfficiency: 0.83,
    suctionDrop: 0,
    dischargeRise: 0,
    temperatureLimitK: si(300, 'degF'),
  }
}

export function twoStage(more: Partial<MachineModel> = {}): MachineModel {
  return {
    strokeM: si(11, 'in'),
    conRodM: si(27.5, 'in'),
    speedPerS: si(400, 'rpm'),
    suctionPa: absolute(60),
    dischargePa: absolute(520),
    barometerPa: BARO,
    veForm: '96-less-ratio',
    mechanicalEfficiency: 0.95,
    friction: 'in-proportion',
    stages: [
      stage('first', 80, [cylinder('1', 9.5, { head: end(0.14, WHEEL), crank: end(0.15) })]),
      stage('second', 110, [cylinder('2', 6.25, { head: end(0.16, WHEEL), crank: end(0.18) })]),
    ],
    between: [{ drop: 1 - absolute(180) / absolute(185), passedOn: 1 }],
    driverRatingW: si(250, 'hp'),
    margin: 0.05,
    measuredLoadW: si(252, 'hp'),
    agreement: 0.05,
    reversal: { leastAngle: si(15, 'deg'), leastShare: 0.03 },
    leastVe: 0.3,
    ...more,
  }
}

/** One stage of it alone, ideal, without losses: for what holds only in the ideal cycle. */
export function idealSingle(more: Partial<MachineModel> = {}): MachineModel {
  const [first] = twoStage().stages
  const only = { ...(first as StageModel), zSuction: 1, zDischarge: 1, compressionEfficiency: 1 }
  return twoStage({
    veForm: 'ideal',
    dischargePa: absolute(185),
    stages: [only],
    between: [],
    driverRatingW: si(95, 'hp'),
    measuredLoadW: si(108, 'hp'),
    ...more,
  })
}

export const FIRST_HEAD: PocketChoice = { stage: 1, cylinder: 1, ends: 'head' }
export const SECOND_HEAD: PocketChoice = { stage: 2, cylinder: 1, ends: 'head' }
