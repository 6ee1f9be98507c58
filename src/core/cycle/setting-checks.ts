// Every cylinder looked at, at one operating point: rod load, load at the pin, reversal, discharge temperature, and how
// little the ends still draw. A check that cannot be made is a fault, never a pass.
import type { Result } from '../lib/result.ts'
import { pistonAreas } from './cylinder-ends.ts'
import type { MachineModel } from './machine-model.ts'
import type { CylinderPoint, OperatingPoint, StagePoint } from './operate.ts'
import { pinLoad } from './pin-load.ts'
import { meetsReversal, type Reversal, reversalOf } from './reversal.ts'
import { type GasRodLoad, gasRodLoad } from './rod-load.ts'

/** `hold`: the setting must not be used as it is. `warn`: said beside it. */
export interface SettingFault {
  readonly grade: 'hold' | 'warn'
  readonly about: 'rod-load' | 'pin-load' | 'reversal' | 'discharge-temperature' | 'volumetric-efficiency'
  readonly stage: number
  readonly cylinder: string
  readonly say: string
}

export interface CylinderCheck {
  readonly stage: number
  readonly cylinder: string
  readonly gas: GasRodLoad
  readonly reversal: Reversal
  readonly dischargeK: number
}

export interface SettingChecks {
  readonly cylinders: readonly CylinderCheck[]
  readonly faults: readonly SettingFault[]
}

/**
 * Rod load by rod-load.ts and pin load by pin-load.ts, both with the stage's valve drop and rise in the cylinder
 * and the
 * barometer on the rod's outer end; reversal by reversal.ts against the machine's criterion; ideal discharge
 * temperature.
 * Refuses: only what a complete record cannot give (a figure that is not finite).
 */
export function checkSetting(machine: MachineModel, point: OperatingPoint): Result<SettingChecks> {
  const cylinders: CylinderCheck[] = []
  const faults: SettingFault[] = []
  for (const [i, stage] of point.stages.entries()) {
    for (const one of stage.cylinders) {
      const check = checkCylinder(machine, stage, one, i + 1)
      if (!check.ok) return check
      const met = meetsReversal(check.value.reversal, machine.reversal)
      if (!met.ok) return met
      cylinders.push(check.value)
      faults.push(...loadFaults(one, check.value), ...reversalFaults(met.value, check.value))
      faults.push(...stageFaults(stage, check.value), ...efficiencyFaults(machine, one, check.value))
    }
  }
  return { ok: true, value: { cylinders, faults } }
}

function checkCylinder(
  machine: MachineModel,
  stage: StagePoint,
  { cylinder, head, crank }: CylinderPoint,
  number: number,
): Result<CylinderCheck> {
  const areas = pistonAreas(cylinder)
  if (!areas.ok) return areas
  const suctionPa = stage.suctionPa * (1 - stage.stage.suctionDrop)
  const dischargePa = stage.dischargePa * (1 + stage.stage.dischargeRise)
  const outsidePa = machine.barometerPa
  const gas = gasRodLoad({ areas: areas.value, suctionPa, dischargePa, outsidePa })
  if (!gas.ok) return gas
  const n = stage.stage.k
  const loads = pinLoad({
    areas: areas.value,
    gear: {
      crankM: machine.strokeM / 2,
      conRodM: machine.conRodM,
      omega: 2 * Math.PI * machine.speedPerS,
    },
    head: { acts: head.acts, clearance: head.clearance, suctionPa, dischargePa, n },
    crank: { acts: crank.acts, clearance: crank.clearance, suctionPa, dischargePa, n },
    outsidePa,
    reciprocatingKg: cylinder.reciprocatingKg,
  })
  if (!loads.ok) return loads
  const reversal = reversalOf(loads.value.map((load) => load.pinN))
  if (!reversal.ok) return reversal
  const found = { gas: gas.value, reversal: reversal.value, dischargeK: stage.dischargeK }
  return { ok: true, value: { stage: number, cylinder: cylinder.name, ...found } }
}

function faultOf(
  check: CylinderCheck,
  grade: SettingFault['grade'],
  about: SettingFault['about'],
  words: string,
): SettingFault {
  const { stage, cylinder } = check
  return { grade, about, stage, cylinder, say: `Stage ${stage}, cylinder ${cylinder}: ${words}` }
}

function loadFaults({ cylinder }: CylinderPoint, check: CylinderCheck): SettingFault[] {
  const { compressionN, tensionN } = check.gas
  const faults: SettingFault[] = []
  if (!(compressionN <= cylinder.compressionLimitN))
    faults.push(faultOf(check, 'hold', 'rod-load', 'the gas rod load in compression is above its limit.'))
  if (!(tensionN <= cylinder.tensionLimitN))
    faults.push(faultOf(check, 'hold', 'rod-load', 'the gas rod load in tension is above its limit.'))
  const peak = Math.max(check.reversal.compressionPeakN, check.reversal.tensionPeakN)
  if (cylinder.pinLimitN === undefined)
    faults.push(
      faultOf(check, 'warn', 'pin-load', 'no limit of gas plus inertia at the pin is on record: not judged.'),
    )
  else if (!(peak <= cylinder.pinLimitN))
    faults.push(faultOf(check, 'hold', 'pin-load', 'gas plus inertia at the pin is above its limit.'))
  return faults
}

function reversalFaults(met: boolean, check: CylinderCheck): SettingFault[] {
  if (met) return []
  const words = 'the load at the crosshead pin does not reverse as the criterion asks.'
  return [faultOf(check, 'hold', 'reversal', words)]
}

function stageFaults(stage: StagePoint, check: CylinderCheck): SettingFault[] {
  if (stage.dischargeK <= stage.stage.temperatureLimitK) return []
  const words = 'the ideal discharge temperature is above its limit, and the real one is higher still.'
  return [faultOf(check, 'hold', 'discharge-temperature', words)]
}

function efficiencyFaults(
  machine: MachineModel,
  { head, crank }: CylinderPoint,
  check: CylinderCheck,
): SettingFault[] {
  const ends = [
    ['head', head.efficiency],
    ['crank', crank.efficiency],
  ] as const
  return ends.flatMap(([end, efficiency]) => {
    if (efficiency === null || efficiency >= machine.leastVe) return []
    const words =
      efficiency > 0
        ? `the ${end} end draws little: its volumetric efficiency is below the least wanted.`
        : `the ${end} end draws nothing: the gas in its clearance fills the stroke and heats up.`
    // One that draws nothing churns and heats its own gas, which no figure here follows: no setting to run at.
    return [faultOf(check, efficiency > 0 ? 'warn' : 'hold', 'volumetric-efficiency', words)]
  })
}
