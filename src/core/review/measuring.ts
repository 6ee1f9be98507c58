// What was measured with, and what the measuring error of each verdict is made of: a lead who was not there judges by it how
// far a figure can be trusted.
import { asBoreJudge, boreFacts } from '../job/bore-facts.ts'
import { type Definitions, instrumentById } from '../job/definitions.ts'
import { type State, stands } from '../job/state.ts'
import type { BoreVerdictRecord, VerdictRecord } from '../job/verdict-record.ts'
import { expandedOfTwo } from '../metrology/budget.ts'
import { type ErrorPart, statedOfReading } from '../metrology/uncertainty.ts'
import { type Row, row } from '../sheet/block.ts'
import { lengthText } from '../talk/names.ts'
import { BY_OTHER_RULE, isByOtherRule, kText, poolLines, sums } from '../talk/sums.ts'
import { shownNumber } from '../units/index.ts'
import { count, named } from './look.ts'

/** A line for each instrument, then one for each place of a verdict's error. */
export function measuringRows(defs: Definitions, state: State): Row[] {
  const judged = defs.steps.flatMap((placed) => {
    const verdict = state.verdicts[placed.id]
    return verdict === undefined || verdict.void ? [] : [{ placed, verdict }]
  })
  return [
    row(`Measured with ${count(instrumentsUsed(state).length, 'instrument')}`, 'strong'),
    ...instrumentsUsed(state).flatMap((id) => instrumentRows(defs, state, id)),
    row(`What each verdict allows for measuring error: ${count(judged.length, 'verdict')}`, 'strong'),
    ...judged.flatMap(({ placed, verdict }) => [
      row(`  ${named(placed)}: ${verdict.verdict.result.verdict}`),
      ...errorRows(defs, state, placed.id, verdict.verdict),
    ]),
  ]
}

/** Of readings that stand; gas meters and gauges at hold points are told there. */
export function instrumentsUsed(state: State): string[] {
  const used = Object.values(state.readings)
    .flat()
    .filter(stands)
    .map((r) => r.instrument)
  return [...new Set(used)].sort()
}

function instrumentRows(defs: Definitions, state: State, id: string): Row[] {
  const one = instrumentById(defs, id)
  const n = Object.values(state.readings)
    .flat()
    .filter((r) => stands(r) && r.instrument === id).length
  if (one === undefined)
    return [row(`  ${id}: in no register of this job; ${count(n, 'reading')}`, 'caution')]
  const stated =
    one.kind === 'gas_meter' || !('uncertainty' in one) || one.uncertainty === undefined
      ? 'nobody has stated its error'
      : `U ${one.uncertainty.expanded.text} (k = ${one.uncertainty.k}), ${one.uncertainty.source}`
  return [
    row(`  ${id}  ${one.title}; ${count(n, 'reading')}`),
    row(`    calibrated until ${one.calibration.due}, certificate ${one.calibration.certificate}`),
    row(`    ${stated}`),
  ]
}

/** Of the form of a bore, part by part with its share; of other figures how far each reading can have moved them. */
function errorRows(defs: Definitions, state: State, step: string, record: VerdictRecord): Row[] {
  if (record.compute === 'bore_form') return boreErrorRows(defs, state, step, record)
  const isFigures = record.compute === 'figures'
  return sums(defs, record, undefined, 'named')
    .filter((line) => /\bU\b/.test(line) || (isFigures ? /^\S/ : /^\S.* = /).test(line))
    .map((line) => row(`    ${line.trim()}`))
}

export function boreErrorRows(
  defs: Definitions,
  state: State,
  step: string,
  record?: BoreVerdictRecord,
): Row[] {
  const placed = defs.steps.find(({ id }) => id === step)
  const judge = placed === undefined ? null : asBoreJudge(placed)
  if (judge === null) return []
  const facts = boreFacts(defs, state, judge)
  const { error, gauge } = facts
  if (error === null || gauge === null)
    return [row('    Not known: the records or the temperatures do not say enough.', 'caution')]
  const found = statedOfReading(error)
  if (!found.ok) return [row(`    ${found.error.say}`, 'caution')]
  const { parts, uc, U } = found.value
  if (record !== undefined && isByOtherRule(record, U)) return [row(`    ${BY_OTHER_RULE}`, 'caution')]
  const of = (m: number) => lengthText(defs, m, defs.machine.shop_units.length === 'in' ? 5 : 4)
  return [
    row(
      `    U ${of(U)} of one diameter, ${of(expandedOfTwo(U, U))} of a difference of two (k = ${kText(found.value)}), with ${gauge.id}, calibrated until ${gauge.calibration.due}`,
    ),
    ...parts.filter(({ u }) => !(u <= 0)).map((part) => row(`    ${partText(part, uc * uc, of)}`)),
    ...poolLines(defs, facts).map((line) => row(`  ${line}`)),
  ]
}

/** `instrument: 0.00015 in at k = 1, 61 % of it`. */
function partText({ from, u }: ErrorPart, all: number, of: (m: number) => string): string {
  const share = all > 0 ? `, ${shownNumber((100 * u * u) / all, 0)} % of it` : ''
  return `${from}: ${of(u)} at k = 1${share}`
}
