// Evidence read on an instrument: gas, and measured values. A failure goes on record and everybody is called clear; an
// instrument that may not be used or can say nothing here is put back.
import { READS } from '../definition/instruments.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { parseEntry } from '../units/index.ts'
import { unfitness } from './admit-people.ts'
import { instrumentById } from './definitions.ts'
import type { Body, Typed } from './entries.ts'
import { type Asked, failed, given } from './evidence-asked.ts'
import { judgeGas } from './evidence-gas.ts'
import { evidenceByKey, gateState, provesAt } from './gate.ts'
import { fallsWith } from './lapse.ts'
import { judgeMeasured, type MeasuredOutcome, type Measuring } from './measured-limit.ts'
import { gasMeterIn } from './seats.ts'
import { voidMeasuredWith } from './voiding.ts'

type Read = Asked<'gas'> | Asked<'measured'>

export function gasGiven(asked: Asked<'gas'>): Result<readonly Body[]> {
  const { defs, state, gate, evidence, typed } = asked
  const meter = gasMeterIn(defs, state, evidence.with)
  if (meter === null) return refuse('no-meter', 'No gas meter is picked for this test.')
  const unfit = unfitness(defs, meter, state.lastAt)
  if (unfit !== null) return ok(foundUnfit(asked, meter.id, unfit))
  const oxygen =
    evidence.oxygen === undefined ? null : (gateState(state, gate.id).given[evidence.oxygen]?.si ?? null)
  const judged = judgeGas(defs, evidence, meter, oxygen, typed)
  if (!judged.ok) return judged
  return ok(judgedAs(asked, judged.value.outcome, judged.value.reading, meter.id))
}

export function measuredGiven(asked: Asked<'measured'>): Result<readonly Body[]> {
  const { defs, state, evidence, typed } = asked
  const instrument = instrumentById(defs, state.seats[evidence.with] ?? '')
  if (
    instrument === undefined ||
    instrument.kind === 'gas_meter' ||
    !READS[evidence.quantity].includes(instrument.kind)
  )
    return refuse('no-instrument', 'No instrument is picked that measures this.')
  const unfit = unfitness(defs, instrument, state.lastAt)
  if (unfit !== null) return ok(foundUnfit(asked, instrument.id, unfit))
  const entry = parseEntry(typed, {
    kind: evidence.quantity,
    unit: instrument.unit,
    signed: evidence.quantity !== 'length',
    decimalComma: defs.machine.decimal_comma ?? false,
    what: evidence.place,
  })
  if (!entry.ok) return entry
  const { value, unit, si } = entry.value
  const outcome = judgeMeasured(evidence, instrument satisfies Measuring, si)
  return ok(judgedAs(asked, outcome, { typed, value, unit, si }, instrument.id))
}

/** What it measured so far falls with it, here and in every other gate. */
function foundUnfit({ defs, state, evidence }: Read, instrument: string, why: string): Body[] {
  return [
    { type: 'instrument.put-back', seat: evidence.with, why },
    ...voidMeasuredWith(defs, state, instrument, why),
  ]
}

function judgedAs(asked: Read, outcome: MeasuredOutcome, reading: Typed, instrument: string): Body[] {
  const { defs, state, gate, item, evidence } = asked
  const shown = `${reading.value} ${reading.unit}`
  if (outcome.kind === 'passes') return [given(asked, shown, { reading, instrument })]
  // A figure outside the limit is not asked about first, as one of a bore is, however much it looks like a slip. A meter over its
  // range is keyed as 1000 too, and whoever reads it stands where it was read: coming out for a slip costs a walk, and waiting
  // at the prompt for the answer may cost more. It can only shut: keyed anew, the figure is judged like any other.
  const failure = failed(asked, shown, outcome.why, { reading, instrument })
  // Put back because it can say nothing at this place: what it said at another place stands.
  if (outcome.kind === 'not-valid')
    return [failure, { type: 'instrument.put-back', seat: evidence.with, why: outcome.why }]
  const why = evidence.kind === 'gas' ? {} : { why: `${evidence.place} is at ${shown}, ${outcome.why}` }
  const items = fallsWith(defs, state, gate, [item.key, ...contradicted(asked)])
  return [failure, { type: 'gate.closed', step: gate.id, cause: 'failed', items, ...why }]
}

/**
 * What a value outside its limit shows to be so no more: a wait over the same hazard, wherever it stands, as a space that is
 * found under pressure has risen since nobody saw a rise; and what was read or said after it about that hazard. Common
 * practice, no source.
 */
function contradicted({ state, gate, evidence }: Read): string[] {
  if (evidence.kind !== 'measured') return []
  const hazards = provesAt(gate, evidence)
  const at = (id: string) => gate.step.evidence.findIndex((one) => one.id === id)
  return Object.keys(gateState(state, gate.id).given).filter((key) => {
    const other = evidenceByKey(gate, key)
    if (other === null || !provesAt(gate, other).some((hazard) => hazards.includes(hazard))) return false
    const isLater = at(other.id) > at(evidence.id)
    return other.kind === 'wait' || (isLater && (other.kind === 'words' || other.kind === 'measured'))
  })
}
