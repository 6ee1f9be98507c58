// Changing one's mind, in the open: a correction adds, gives a reason and voids by name what hung on the old value.
import { ok, type Result, refuse } from '../lib/result.ts'
import { readingFrom } from './admit-reading.ts'
import { condition } from './admit-step.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from './definitions.ts'
import { doubtOfCorrection } from './doubtful.ts'
import type { Body } from './entries.ts'
import { fallsWithItems } from './falls-with.ts'
import { gateState } from './gate.ts'
import type { Input } from './input.ts'
import { keyLabel } from './item-label.ts'
import { applicability } from './next.ts'
import { nobodyIn } from './nobody-in.ts'
import { implausible } from './plausible.ts'
import { notAsked, reason } from './refusals.ts'
import { allOf, seenAt } from './seen.ts'
import { type Reading, type State, stands } from './state.ts'
import { closedByGoingBack } from './voiding.ts'
import { wouldVoid } from './voids.ts'

type Of<K extends Input['do']> = Extract<Input, { do: K }>

export function findReading(state: State, seq: number): Reading | null {
  for (const list of Object.values(state.readings)) {
    const found = list.find((r) => r.seq === seq)
    if (found !== undefined) return found
  }
  return null
}

export function isPending(state: State): boolean {
  return state.doubt !== null || state.late !== null
}

/** A reading that waits is settled behind the gates of its own step, so the job stays at that step until it is. */
function settleFirst(): Result<never> {
  return refuse('pending', 'A reading waits to be settled: say first what becomes of it, then change others.')
}

export function admitCorrection(
  defs: Definitions,
  state: State,
  input: Of<'correct'>,
): Result<readonly Body[]> {
  if (state.doer === null) return notAsked()
  if (isPending(state)) return settleFirst()
  const old = findReading(state, input.of)
  if (old === null) return refuse('no-reading', 'There is no such reading to correct.')
  if (old.correctedBy !== null)
    return refuse('corrected', 'That reading was corrected before; correct the one that replaced it.')
  if (!stands(old))
    return refuse('void', 'That reading is void: it is asked again where it is needed, not corrected.')
  const placed = asKind(stepById(defs, old.step), 'read')
  const reading = readingFrom(defs, state, placed, old.place, old.instrument, input.typed)
  if (!reading.ok) return reading
  const doubt = implausible(defs, placed, reading.value)
  if (doubt !== null)
    return refuse(
      'implausible',
      `${input.typed.trim()} is ${doubt}: a correction has to be believable, so look again at what was read.`,
    )
  const why = reason(input.why, 'A correction')
  if (!why.ok) return why
  const beside = doubtOfCorrection(defs, state, placed, reading.value)
  return ok([
    {
      type: 'reading.corrected',
      ...reading.value,
      of: old.seq,
      why: why.value,
      ...(beside === null ? {} : { doubt: beside.why }),
      voids: wouldVoid(defs, state, old.step),
    },
  ])
}

/** What speaks against a figure that is to stand in place of another, before it is taken; null where nothing does. */
export function doubtedCorrection(
  defs: Definitions,
  state: State,
  input: Pick<Of<'correct'>, 'of' | 'typed'>,
): string | null {
  const old = findReading(state, input.of)
  if (old === null) return null
  const placed = asKind(stepById(defs, old.step), 'read')
  const reading = readingFrom(defs, state, placed, old.place, old.instrument, input.typed)
  if (!reading.ok || implausible(defs, placed, reading.value) !== null) return null
  const doubt = doubtOfCorrection(defs, state, placed, reading.value)
  if (doubt === null) return null
  const shown = doubt.shown === undefined ? '' : ` ${doubt.shown}`
  return `${input.typed.trim()} is doubted: it is ${doubt.why}.${shown} If it is right, say why; else back.`
}

/** The last answered step that can be gone back to; gates and readings have their own ways. */
export function lastReopenable(defs: Definitions, state: State): PlacedStep | null {
  const answered = defs.steps.filter(
    (s) =>
      (s.step.kind === 'tell' || s.step.kind === 'confirm' || s.step.kind === 'observe') &&
      state.done[s.id] !== undefined &&
      applicability(defs, state, s) === 'do',
  )
  return answered[answered.length - 1] ?? null
}

export function admitReopening(
  defs: Definitions,
  state: State,
  input: Of<'reopen'>,
): Result<readonly Body[]> {
  if (state.doer === null || state.done[input.step] === undefined) return notAsked()
  if (isPending(state)) return settleFirst()
  const why = reason(input.why, 'Going back')
  if (!why.ok) return why
  const voids = wouldVoid(defs, state, input.step)
  return ok([
    { type: 'step.reopened', step: input.step, why: why.value, voids },
    ...closedByGoingBack(defs, state, [input.step, ...voids]),
  ])
}

/** An observation put right on paper: the first one stays in the log, and what hung on it is void by name. */
export function admitCorrectedFinding(
  defs: Definitions,
  state: State,
  input: Of<'correct-finding'>,
): Result<readonly Body[]> {
  const was = state.done[input.step]
  const placed = defs.steps.find((s) => s.id === input.step)
  if (state.doer === null || was === undefined || placed?.step.kind !== 'observe') return notAsked()
  const found = condition(defs, input)
  if (!found.ok) return found
  const [, ...wasAlso] = seenAt(state, input.step)
  const isSame = allOf(found.value).join() === [was, ...wasAlso].join()
  if (isSame && found.value.note === state.findings[input.step])
    return refuse('no-change', 'That is what stands there already: nothing was changed.')
  const why = reason(input.why, 'A correction')
  if (!why.ok) return why
  const voids = wouldVoid(defs, state, input.step)
  const before = wasAlso.length === 0 ? { was } : { was, was_also: wasAlso }
  return ok([
    { type: 'finding.corrected', step: input.step, ...before, ...found.value, why: why.value, voids },
  ])
}

/** A place entered as n/a is to be measured after all: its reading is asked again. */
export function admitTakenBackNotApplicable(
  defs: Definitions,
  state: State,
  input: Of<'take-back-not-applicable'>,
): Result<readonly Body[]> {
  if (state.doer === null || state.notApplicable[input.place] === undefined) return notAsked()
  const why = reason(input.why, 'Taking back an n/a')
  if (!why.ok) return why
  const step = input.place.split('.')[0] ?? ''
  return ok([
    {
      type: 'not-applicable.taken-back',
      step,
      place: input.place,
      why: why.value,
      voids: wouldVoid(defs, state, step),
    },
  ])
}

/** Striking evidence can only shut a gate, never open one. Whoever may be in comes out first. */
export function admitTakenBackEvidence(
  defs: Definitions,
  state: State,
  input: Of<'take-back-evidence'>,
): Result<readonly Body[]> {
  const gate = defs.steps.find((s) => s.id === input.step)
  if (state.doer === null || gate?.step.kind !== 'gate') return notAsked()
  const falling = fallsWithItems(defs, state, input.step, [input.item])
  if (falling.length === 0) return refuse('not-given', 'That was not shown, or has fallen already.')
  const why = reason(input.why, 'Taking back what was shown')
  if (!why.ok) return why
  const shown = gateState(state, input.step).given[input.item]?.shown ?? 'what was shown'
  const said = `${shown}, ${keyLabel(defs, asKind(gate, 'gate'), input.item)}, is taken back: ${why.value}`
  const nobody = nobodyIn(defs, state) ? { nobody_in: true as const } : {}
  return ok(
    falling.map(({ gate: { id }, items }) => ({
      type: 'gate.closed',
      step: id,
      cause: 'corrected',
      items,
      why: said,
      ...nobody,
    })),
  )
}
