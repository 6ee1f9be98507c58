// The verdict of a judge of the pocket setting. Readings and findings on record are gathered and laid beside the machine record;
// what is missing goes in as missing and is judged HOLD, never filled in.
import { judgePocket } from '../cycle/pocket-judge.ts'
import type { PocketJudgeInput } from '../cycle/pocket-judge-input.ts'
import type { Machine } from '../definition/machine.ts'
import type { PocketJudge } from '../definition/procedure.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import { pocketChoice, pocketRecord, recordHolds } from './pocket-record.ts'
import { fittedHolds, settingNow } from './pocket-setting-read.ts'
import { type OneRead, readOnce } from './read-once.ts'
import type { State } from './state.ts'
import type { PocketVerdictRecord } from './verdict-record.ts'

export type PocketJudgeStep = PlacedStep & { readonly step: PocketJudge }

export function pocketVerdict(
  defs: Definitions,
  state: State,
  judge: PocketJudgeStep,
  version: string,
  readings: readonly number[],
): PocketVerdictRecord {
  const inputs = pocketInput(defs, state, judge)
  return { compute: 'pocket_setting', version, inputs, result: judgePocket(inputs), readings }
}

export function pocketInput(defs: Definitions, state: State, judge: PocketJudgeStep): PocketJudgeInput {
  const { inputs } = judge.step
  const { machine } = defs
  const whole = machine.whole_compressor
  const read = (id: string) => readOnce(defs, state, judge, id)
  const [suction, discharge, load] = [read(inputs.suction), read(inputs.discharge), read(inputs.driver_load)]
  const inAll = whole?.stages_in_all ?? 1
  const temperatures = Array.from({ length: inAll }, (_, i): OneRead => {
    const id = inputs.suction_temperatures[i]
    return id === undefined
      ? { why: `Stage ${i + 1}: this procedure does not read its gas temperature.` }
      : read(id)
  })
  const setting = settingNow(defs, state, judge)
  const all = [suction, discharge, ...temperatures, load, setting]
  const readings = {
    suctionPa: absolute(machine, suction),
    dischargePa: absolute(machine, discharge),
    suctionK: temperatures.map(si),
    loadW: si(load),
    opening: si(setting),
  }
  return {
    record: whole === undefined ? {} : pocketRecord(machine, whole, readings),
    choice: whole === undefined ? { stage: 0, cylinder: 0, ends: 'head' } : pocketChoice(machine, whole),
    turns: machine.pocket?.kind === 'hand_wheel' ? (machine.pocket.turns ?? null) : null,
    holds: [
      ...(whole === undefined ? ['The machine record says nothing of the whole compressor.'] : []),
      ...fittedHolds(defs, state, judge),
      ...all.flatMap((one) => ('why' in one ? [one.why] : [])),
      ...(whole === undefined ? [] : recordHolds(machine, whole)),
    ],
    errors: {
      suctionPa: u(suction),
      dischargePa: u(discharge),
      suctionK: temperatures.map(u),
      loadW: u(load),
      opening: u(setting),
    },
    k: 2,
    simpleAcceptance: machine.simple_acceptance === undefined ? null : { by: machine.simple_acceptance.by },
  }
}

function si(one: OneRead): number | null {
  return 'why' in one ? null : one.si
}

/** What was not read holds by itself, so nothing is asked of its error besides. */
function u(one: OneRead): number | null {
  return 'why' in one ? 0 : one.u
}

function absolute(machine: Machine, one: OneRead): number | null {
  return 'why' in one ? null : one.si + machine.site.barometer.si
}
