// Changing one's mind, in the open: a correction adds, gives a reason and voids by name what hung on the old value.
import { ok, type Result, refuse } from '../lib/result.ts'
import { readingFrom } from './admit-reading.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { applicability } from './next.ts'
import { implausible } from './plausible.ts'
import { notAsked, words } from './refusals.ts'
import type { Reading, State } from './state.ts'
import { hangsOn } from './values.ts'

type Of<K extends Input['do']> = Extract<Input, { do: K }>

export function findReading(state: State, seq: number): Reading | null {
  for (const list of Object.values(state.readings)) {
    const found = list.find((r) => r.seq === seq)
    if (found !== undefined) return found
  }
  return null
}

export function admitCorrection(
  defs: Definitions,
  state: State,
  input: Of<'correct'>,
): Result<readonly Body[]> {
  if (state.doer === null) return notAsked()
  const old = findReading(state, input.of)
  if (old === null) return refuse('no-reading', 'There is no such reading to correct.')
  if (old.correctedBy !== null)
    return refuse('corrected', 'That reading was corrected before; correct the one that replaced it.')
  const placed = asKind(stepById(defs, old.step), 'read')
  const reading = readingFrom(defs, state, placed, old.place, old.instrument, input.typed)
  if (!reading.ok) return reading
  const doubt = implausible(defs, placed, reading.value)
  if (doubt !== null)
    return refuse(
      'implausible',
      `${input.typed.trim()} is ${doubt}: a correction has to be believable, so look again at what was read.`,
    )
  const why = words(input.why, 'A correction')
  if (!why.ok) return why
  return ok([
    {
      type: 'reading.corrected',
      ...reading.value,
      of: old.seq,
      why: why.value,
      voids: wouldVoid(defs, state, old.step),
    },
  ])
}

/** Ids of the steps that have something to lose when the given step's outcome changes. */
export function wouldVoid(defs: Definitions, state: State, stepId: string): string[] {
  return hangsOn(defs, stepId).filter((id) => {
    const verdict = state.verdicts[id]
    const disposition = state.dispositions[id]
    return (
      (verdict !== undefined && !verdict.void) ||
      (disposition !== undefined && !disposition.void) ||
      state.done[id] !== undefined
    )
  })
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
  const why = words(input.why, 'Going back')
  if (!why.ok) return why
  return ok([
    { type: 'step.reopened', step: input.step, why: why.value, voids: wouldVoid(defs, state, input.step) },
  ])
}
