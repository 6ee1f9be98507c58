// From a judge of the pocket setting to the instruments it rests on, and to what the record does not say of the compressor.
import { machineHolds } from '../cycle/machine-holds.ts'
import { type Instrument, READS } from '../definition/instruments.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import { oneReadingU } from '../job/figure-reads.ts'
import { pocketRecord, recordHolds } from '../job/pocket-record.ts'
import type { PocketJudgeStep } from '../job/pocket-step.ts'
import { formatQuantity } from '../units/index.ts'
import type { JudgeAsks } from './judge-asks.ts'
import type { SeatUse } from './seat-use.ts'

export function pocketAsks(defs: Definitions, judge: PocketJudgeStep): JudgeAsks {
  return { uses: usesOf(defs, judge), missing: missingOf(defs, judge) }
}

/** Readings as they might be, so that only what the record lacks is left to name. */
const STAND_IN = { suctionPa: 2e5, dischargePa: 1e6, kelvin: 300, loadW: 1e5 }

function missingOf({ machine }: Definitions, { step }: PocketJudgeStep): string[] {
  const whole = machine.whole_compressor
  if (whole === undefined) return ['the machine record says nothing of the whole compressor']
  const { suctionPa, dischargePa, kelvin, loadW } = STAND_IN
  const suctionK = Array.from({ length: whole.stages_in_all }, () => kelvin)
  const record = pocketRecord(machine, whole, { suctionPa, dischargePa, suctionK, loadW, opening: 0 })
  const unread = whole.stages_in_all - step.inputs.suction_temperatures.length
  return [
    ...recordHolds(machine, whole),
    ...machineHolds(record),
    ...(unread > 0 ? [`The gas temperature of ${unread} of its stages is not read by this procedure.`] : []),
  ].map(asClause)
}

/** A sentence as a clause behind a colon. */
function asClause(sentence: string): string {
  return sentence.replace(/(: give it)?\.$/, '').replace(/^The /, 'the ')
}

function usesOf(defs: Definitions, judge: PocketJudgeStep): SeatUse[] {
  const { inputs } = judge.step
  const whole = defs.machine.whole_compressor
  const turns = defs.machine.pocket?.turns
  const use = (id: string | undefined, asks: string, more: (one: Instrument) => string | null): SeatUse[] => {
    if (id === undefined) return []
    const read = asKind(stepById(defs, judge.scope + id), 'read')
    const fault = (one: Instrument) =>
      READS[read.step.quantity].some((kind) => kind === one.kind) ? (unstated(defs, one) ?? more(one)) : null
    return [{ seat: read.step.with, placed: judge, asks, fault }]
  }
  const none = () => null
  const isWheel = defs.machine.pocket?.kind === 'hand_wheel'
  return [
    ...use(isWheel ? inputs.wheel : undefined, 'the setting of the hand-wheel', (one) =>
      wheelFault(whole, turns, one),
    ),
    ...use(inputs.suction, 'first suction pressure of the load question', none),
    ...use(inputs.discharge, 'last discharge pressure of the load question', none),
    ...use(inputs.driver_load, 'driver load against its target', (one) => meterFault(defs, one)),
  ]
}

function unstated({ machine }: Definitions, one: Instrument): string | null {
  if (one.kind === 'gas_meter' || machine.simple_acceptance !== undefined) return null
  return oneReadingU(one) === null ? 'nobody has stated how far off it may be' : null
}

function wheelFault(
  whole: Definitions['machine']['whole_compressor'],
  turns: number | undefined,
  one: Instrument,
): string | null {
  const step = whole?.pocket?.least_step
  if (one.kind === 'gas_meter' || !('range' in one)) return null
  const travel = (turns ?? 0) * 2 * Math.PI
  if (!(one.range.to.si >= travel * (1 - 1e-9)))
    return `it reads up to ${one.range.to.text}, and the hand-wheel makes ${turns} turns`
  if (step === undefined || one.resolution.si <= step.si * (1 + 1e-9)) return null
  return `it shows steps of ${one.resolution.text}, and the hand-wheel is set in steps of ${step.text}`
}

/** A meter further off than the loads may be apart cannot tell that they agree, nor leave anything under the target. */
function meterFault({ machine }: Definitions, one: Instrument): string | null {
  if (one.kind === 'gas_meter') return null
  const u = oneReadingU(one)
  const agreement = machine.whole_compressor?.site_rules?.loads_agree_within
  if (u === null || machine.driver === undefined || agreement === undefined) return null
  if (u <= agreement.si * machine.driver.rating.si) return null
  const error = formatQuantity({ kind: 'power', si: u }, one.unit, 1)
  return `it may be off by ${error}, which is more than ${agreement.text} of the rating, and computed and measured load have to agree within that`
}
