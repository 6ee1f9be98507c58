// A reading as keyed: parsed knowingly, looked at for plausibility, doubted or taken. Nothing keyed is lost.
import { READS } from '../definition/instruments.ts'
import type { StepOf } from '../definition/procedure.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { parseEntry } from '../units/index.ts'
import { seatUnfitness, unfitness } from './admit-people.ts'
import { asKind, type Definitions, instrumentById, type PlacedStep, stepById } from './definitions.ts'
import { doubtOf } from './doubtful.ts'
import type { Body, ReadingAt } from './entries.ts'
import { noGaugeAt } from './gauge-at.ts'
import type { Input } from './input.ts'
import { next, readingCutShort } from './next.ts'
import { notSettled } from './over-time.ts'
import { notAsked, reason } from './refusals.ts'
import type { State } from './state.ts'

type Of<K extends Input['do']> = Extract<Input, { do: K }>

export function admitReading(defs: Definitions, state: State, input: Of<'read'>): Result<readonly Body[]> {
  const prompt = next(defs, state)
  if (prompt.kind !== 'read' || prompt.place.key !== input.place) return notAsked()
  const unfit = seatUnfitness(defs, prompt.instrument, state.lastAt)
  // Put back, so that another can be picked: a seat with an instrument that may not be used leads nowhere.
  if (unfit !== null) {
    const seat = asKind(prompt.step, 'read').step.with
    return ok([{ type: 'instrument.put-back', seat, why: unfit }])
  }
  const none = noGaugeAt(defs, state, prompt.step)
  if (none !== null) return refuse('no-gauge', none)
  const reading = readingFrom(defs, state, prompt.step, input.place, prompt.instrument, input.typed)
  if (!reading.ok) return reading
  const doubt = doubtOf(defs, state, asKind(prompt.step, 'read'), reading.value)
  return ok([
    doubt === null
      ? { type: 'reading.taken', ...reading.value }
      : { type: 'reading.doubted', ...reading.value, ...doubt },
  ])
}

/**
 * A reading asked for while its gate was open, keyed after time closed it: with this very line, or while the prompt
 * waited. Null when that is not what happened.
 */
export function admitLate(
  defs: Definitions,
  before: State,
  state: State,
  input: Of<'read'>,
): Result<readonly Body[]> | null {
  if (next(defs, state).kind === 'read') return null
  const shown = next(defs, before)
  const asked = shown.kind === 'read' ? shown : readingCutShort(defs, state)
  if (asked === null || asked.place.key !== input.place) return null
  const reading = readingFrom(defs, state, asked.step, input.place, asked.instrument, input.typed)
  return reading.ok ? ok([{ type: 'reading.late', ...reading.value }]) : reading
}

export function readingFrom(
  defs: Definitions,
  state: State,
  placed: PlacedStep,
  place: string,
  instrumentId: string,
  typed: string,
): Result<ReadingAt> {
  const { step } = asKind(placed, 'read')
  const instrument = instrumentById(defs, instrumentId)
  if (
    instrument === undefined ||
    instrument.kind === 'gas_meter' ||
    !READS[step.quantity].includes(instrument.kind)
  )
    return refuse('no-instrument', 'No instrument is picked that measures this.')
  if (state.doubted[instrument.id] !== undefined)
    return refuse('doubted', `${instrument.id} was found out of calibration: pick another.`)
  const unfit = unfitness(defs, instrument, state.lastAt)
  if (unfit !== null) return refuse('unfit', `${instrument.id} cannot be used: ${unfit}.`)
  const early = notSettled(defs, state, placed)
  if (early !== null) return early
  const entry = parseEntry(typed, {
    kind: step.quantity,
    unit: instrument.unit,
    signed: mayBeBelowZero(step),
    decimalComma: defs.machine.decimal_comma ?? false,
    what: `${step.of}`,
  })
  if (!entry.ok) return entry
  const { value, unit, si } = entry.value
  return ok({ step: placed.id, place, instrument: instrument.id, typed, value, unit, si })
}

/** Temperatures, and whatever the procedure believes below zero. */
function mayBeBelowZero({ quantity, plausible }: StepOf<'read'>): boolean {
  return quantity === 'temperature' || (plausible.from === 'range' && plausible.least.si < 0)
}

export function admitSettledDoubt(
  defs: Definitions,
  state: State,
  input: Of<'settle-doubt'>,
): Result<readonly Body[]> {
  if (next(defs, state).kind !== 'doubt') return notAsked()
  if (input.choice !== 'kept') return ok([{ type: 'doubt.settled', choice: input.choice }])
  const why = reason(input.why ?? '', 'Keeping a doubtful reading')
  return why.ok ? ok([{ type: 'doubt.settled', choice: 'kept', why: why.value }]) : why
}

export function admitSettledLate(
  defs: Definitions,
  state: State,
  input: Of<'settle-late'>,
): Result<readonly Body[]> {
  if (next(defs, state).kind !== 'late' || state.late === null) return notAsked()
  const { late } = state
  const settled: Body = { type: 'late.settled', kept: input.kept }
  if (!input.kept) return ok([settled])
  const placed = asKind(stepById(defs, late.step), 'read')
  const doubt = doubtOf(defs, state, placed, late)
  // Confirming that it was taken in time says nothing about its size: a doubtful one is still asked about.
  if (doubt === null) return ok([settled])
  const { step, place, instrument, typed, value, unit, si } = late
  return ok([
    { type: 'late.settled', kept: false },
    { type: 'reading.doubted', step, place, instrument, typed, value, unit, si, ...doubt },
  ])
}
