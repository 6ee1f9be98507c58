// The machine of a pocket problem as a list of inputs: one value for each stage, in order, one cylinder a stage.

import { type EndRecord, FRICTION_WORDS, type MachineRecord } from '../cycle/machine-model.ts'
import { POCKET_ENDS, type PocketChoice } from '../cycle/pocket-choice.ts'
import { VE_FORMS } from '../cycle/volumetric-efficiency.ts'
import type { Result } from '../lib/result.ts'
import { ok, refuse } from '../lib/result.ts'
import type { Parameter } from './computation.ts'
import {
  absoluteOf,
  BAROMETER,
  barometerOf,
  CON_ROD,
  SPEED,
  STROKE,
  take,
  takeList,
  takeNumber,
  takeWord,
} from './cycle-common-inputs.ts'
import type { Given } from './cycle-given.ts'

const each = (name: string, says: string, kind: Parameters<typeof takeList>[2], unit: string) =>
  takeList(name, `${says}, each stage in order`, kind, unit, 0)

const STAGE_LISTS: readonly Parameter[] = [
  each('bores', 'bore', 'length', 'in'),
  each('rods', 'piston rod diameter', 'length', 'in'),
  each('clearance_head', 'head-end clearance, pocket shut', 'ratio', '%'),
  each('clearance_crank', 'crank-end clearance, pocket shut', 'ratio', '%'),
  each('suction_temperatures', 'gas temperature at the cylinder suction', 'temperature', 'degF'),
  each('ks', 'exponent k', 'ratio', '1'),
  each('z_suctions', 'compressibility at suction', 'ratio', '1'),
  each('z_discharges', 'compressibility at discharge', 'ratio', '1'),
  each('losses', 'loss L; only for the forms that have one', 'ratio', '%'),
  each('compression_efficiencies', 'ideal over actual indicated power', 'ratio', '%'),
  each('suction_drops', 'pressure lost in the suction valves', 'ratio', '%'),
  each('discharge_rises', 'pressure lost in the discharge valves', 'ratio', '%'),
  each('masses', 'piston, rod and crosshead', 'mass', 'lb'),
  each('compression_limits', 'gas rod load limit in compression', 'force', 'lbf'),
  each('tension_limits', 'gas rod load limit in tension', 'force', 'lbf'),
  each('pin_limits', 'limit of gas plus inertia at the pin', 'force', 'lbf'),
  each('temperature_limits', 'discharge temperature limit', 'temperature', 'degF'),
]

const GAP_LISTS: readonly Parameter[] = [
  takeList('cooler_drops', 'pressure lost between stages, of absolute discharge pressure', 'ratio', '%', 0),
  takeList('passed_on', 'gas passed on between stages', 'ratio', '%', 0),
]

export const MACHINE_INPUTS: readonly Parameter[] = [
  takeNumber('stages', 'number of stages', 1, 8, true),
  ...[STROKE, CON_ROD, SPEED, BAROMETER],
  take('suction', 'suction of the first stage', 'pressure-gauge', 'psig', { signed: true }),
  take('discharge', 'discharge of the last stage', 'pressure-gauge', 'psig', { signed: true }),
  takeWord('form', 'form of volumetric efficiency', VE_FORMS),
  take('mechanical_efficiency', 'indicated over shaft power', 'ratio', '%'),
  takeWord('friction', 'friction constant while the pocket opens, or in proportion to load', FRICTION_WORDS),
  ...STAGE_LISTS,
  ...GAP_LISTS,
  take('driver_rating', 'rating of the driver', 'power', 'hp'),
  take('margin', 'part of the rating to keep free', 'ratio', '%'),
  take('measured_load', 'driver load as measured now', 'power', 'hp'),
  take('agreement', 'by how much computed and measured load may differ', 'ratio', '%'),
  take('least_angle', 'least reversal, degrees of the turn', 'angle', 'deg', { optional: true }),
  take('least_share', 'least peak in the lesser direction, % of the other', 'ratio', '%', { optional: true }),
  take('least_efficiency', 'volumetric efficiency below which to warn', 'ratio', '%'),
  takeNumber('pocket_stage', 'stage whose pocket is turned', 1, 8, true),
  takeWord('pocket_ends', 'end or ends with the pocket; both: one alike at each', POCKET_ENDS),
  takeWord('pocket_kind', 'hand-wheel, or open or shut', ['variable', 'open-or-shut']),
  take(
    'pocket_volume',
    'volume per turn of the hand-wheel, or the whole of one open or shut',
    'volume',
    'in3',
  ),
  take('pocket_opening', 'present setting, of full travel', 'ratio', '%'),
  { ...takeNumber('pocket_turns', 'turns from shut to full open (hand-wheel)', 0.01, 1000), optional: true },
  {
    ...takeNumber('pocket_step', 'least part of a turn it is set to (hand-wheel)', 0.001, 10),
    optional: true,
  },
]

/**
 * The record and the pocket chosen. What a list lacks stays missing in the record, so that HOLD can name the stage.
 * Refuses: a list longer than the stages, a pressure at or below vacuum, a barometer out of range.
 */
export function machineOf(given: Given): Result<{ record: MachineRecord; choice: PocketChoice }> {
  const count = given.si('stages')
  const tooLong = [...STAGE_LISTS, ...GAP_LISTS].find(({ name }) => {
    const most = GAP_LISTS.some((gap) => gap.name === name) ? count - 1 : count
    return given.list(name).length > most
  })
  if (tooLong !== undefined)
    return refuse(
      'too-many',
      `${tooLong.name} holds more values than this machine of ${count} has places for.`,
    )
  const barometer = barometerOf(given)
  if (!barometer.ok) return barometer
  const suctionPa = absoluteOf(given, 'suction', barometer.value)
  if (!suctionPa.ok) return suctionPa
  const dischargePa = absoluteOf(given, 'discharge', barometer.value)
  if (!dischargePa.ok) return dischargePa
  const choice = {
    stage: given.si('pocket_stage'),
    cylinder: 1,
    ends: given.word('pocket_ends', POCKET_ENDS),
  }
  const record: MachineRecord = {
    ...siteOf(given),
    barometerPa: barometer.value,
    suctionPa: suctionPa.value,
    dischargePa: dischargePa.value,
    stages: Array.from({ length: count }, (_, i) => stageOf(given, i, choice)),
    between: Array.from({ length: count - 1 }, (_, i) => ({
      drop: given.list('cooler_drops')[i],
      passedOn: given.list('passed_on')[i],
    })),
  }
  return ok({ record, choice })
}

function siteOf(given: Given): MachineRecord {
  return {
    strokeM: given.si('stroke'),
    conRodM: given.si('con_rod'),
    speedPerS: given.si('speed'),
    veForm: given.word('form', VE_FORMS),
    mechanicalEfficiency: given.si('mechanical_efficiency'),
    friction: given.word('friction', FRICTION_WORDS),
    driverRatingW: given.si('driver_rating'),
    margin: given.si('margin'),
    measuredLoadW: given.si('measured_load'),
    agreement: given.si('agreement'),
    reversal: { leastAngle: given.maybe('least_angle'), leastShare: given.maybe('least_share') },
    leastVe: given.si('least_efficiency'),
  }
}

function stageOf(given: Given, i: number, choice: PocketChoice) {
  const at = (name: string) => given.list(name)[i]
  const pocketed = (end: 'head' | 'crank'): EndRecord => {
    const has = choice.stage === i + 1 && (choice.ends === 'both' || choice.ends === end)
    const clearance = at(end === 'head' ? 'clearance_head' : 'clearance_crank')
    return { acts: true, clearance, ...(has ? pocketOf(given) : {}) }
  }
  return {
    name: `stage ${i + 1}`,
    suctionK: at('suction_temperatures'),
    k: at('ks'),
    zSuction: at('z_suctions'),
    zDischarge: at('z_discharges'),
    loss: at('losses'),
    compressionEfficiency: at('compression_efficiencies'),
    suctionDrop: at('suction_drops'),
    dischargeRise: at('discharge_rises'),
    temperatureLimitK: at('temperature_limits'),
    cylinders: [
      {
        name: `${i + 1}`,
        boreM: at('bores'),
        rodM: at('rods'),
        reciprocatingKg: at('masses'),
        compressionLimitN: at('compression_limits'),
        tensionLimitN: at('tension_limits'),
        pinLimitN: at('pin_limits'),
        head: pocketed('head'),
        crank: pocketed('crank'),
      },
    ],
  }
}

function pocketOf(given: Given): EndRecord {
  const volume = given.si('pocket_volume')
  const opening = given.si('pocket_opening')
  if (given.word('pocket_kind', ['variable', 'open-or-shut']) === 'open-or-shut')
    return { pocket: { is: 'open-or-shut', volumeM3: volume }, opening }
  const pocket = {
    is: 'variable' as const,
    volumePerTurnM3: volume,
    turns: given.maybe('pocket_turns'),
    turnStep: given.maybe('pocket_step'),
  }
  return { pocket, opening }
}
