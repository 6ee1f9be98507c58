// What a machine on load comes to by the sums, for who has to decide it: the figures of three settings, and no word of what they mean.
import type { PocketRow } from '../cycle/pocket-judge-input.ts'
import { asKind, type Definitions } from '../job/definitions.ts'
import { judgeStep } from '../job/judge-step.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import type { PocketVerdictRecord } from '../job/verdict-record.ts'
import { usedAt } from '../practice/pocket-governs.ts'
import {
  degrees,
  figureIn,
  percent,
  powerText,
  powerUnit,
  settingText,
  temperatureUnit,
} from './pocket-words.ts'

/** Null: no load is judged at this prompt. */
export function loadSums(
  defs: Definitions,
  state: State,
  prompt: Extract<Prompt, { kind: 'judge' }>,
): readonly string[] | null {
  const record = judgeStep(defs, state, asKind(prompt.step, 'judge'), '')
  if (record.compute !== 'pocket_setting') return null
  const { present, table, computedW } = record.result
  const { rating } = defs.machine.driver ?? {}
  const margin = defs.machine.whole_compressor?.site_rules?.margin
  const { measuredLoadW } = record.inputs.record
  const measured = typeof measuredLoadW === 'number' ? powerText(defs, measuredLoadW) : 'no figure'
  const worked = computedW === null ? 'not worked out' : powerText(defs, computedW)
  const shown = table.filter(({ opening }) => opening === 0 || opening === present || opening === 1)
  return [
    `Driver ${measured} by the meter, ${worked} by the sums for these pressures and temperatures.`,
    'A verdict judges the driver load as it may be with the errors of meter and sums, which is more than either.',
    `Rating ${rating?.text ?? 'not on record'}, of which ${margin?.text ?? 'an unknown share'} is kept free.`,
    ...shown.map((row) => settingSums(defs, record, row, row.opening === present)),
    ...(shown.length === 0
      ? ['No setting was worked out. Wheel, stem, plate and meter: do they tell the same machine?']
      : []),
  ]
}

function settingSums(defs: Definitions, record: PocketVerdictRecord, row: PocketRow, isNow: boolean): string {
  const share = (limit: string) => usedAt(record, row).find((one) => one.limit === limit)?.share
  const told = (limit: string) => percent(share(limit) ?? Number.NaN, 0)
  const hottest = Math.max(...row.cylinders.map(({ dischargeK }) => dischargeK))
  const least = Math.min(...row.cylinders.map(({ reversalAngle }) => reversalAngle))
  const degree = temperatureUnit(defs)
  return [
    `${settingText(row)}${isNow ? ', as it stands' : ''}: driver ${figureIn('power', row.loadW, powerUnit(defs), 1)} ${powerUnit(defs)} with the errors`,
    `rod load ${told('rod-load')} of its limit`,
    ...(share('pin-load') === undefined ? [] : [`at the pin ${told('pin-load')}`]),
    `reversed over ${degrees(least)}`,
    `hottest ${figureIn('temperature', hottest, degree, 0)} ${degree}, ${told('discharge-temperature')} of the rise its limit allows`,
  ]
    .join(', ')
    .replaceAll(' %', '\u00a0%')
}
