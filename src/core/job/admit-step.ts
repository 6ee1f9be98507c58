// Ordinary steps: told and done, seen, observed.
import { ok, type Result, refuse } from '../lib/result.ts'
import { admitStepPlaces } from './admit-register.ts'
import { asKind, type Definitions, stepById } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { next } from './next.ts'
import { notAsked, reason } from './refusals.ts'
import type { State } from './state.ts'

type Of<K extends Input['do']> = Extract<Input, { do: K }>

export function admitStep(
  defs: Definitions,
  state: State,
  input: Of<'done'> | Of<'confirm'> | Of<'object'> | Of<'observe'>,
): Result<readonly Body[]> {
  const prompt = next(defs, state)
  const asked = input.do === 'done' ? 'tell' : input.do === 'observe' ? 'observe' : 'confirm'
  if (prompt.kind !== asked || prompt.step.id !== input.step) return notAsked()
  switch (input.do) {
    case 'done':
    case 'confirm': {
      const places = admitStepPlaces(state, prompt.step, input.placed ?? [])
      const type = input.do === 'done' ? 'step.done' : 'step.confirmed'
      // What it placed stands in the register before the step counts as done.
      return places.ok ? ok([...places.value, { type, step: input.step }]) : places
    }
    case 'object': {
      const remark = reason(input.remark, 'What you see')
      return remark.ok ? ok([{ type: 'step.objected', step: input.step, remark: remark.value }]) : remark
    }
    case 'observe':
      return observe(defs, input)
  }
}

function observe(defs: Definitions, input: Of<'observe'>): Result<readonly Body[]> {
  const found = condition(defs, input)
  return found.ok ? ok([{ type: 'finding.observed', step: input.step, ...found.value }]) : found
}

/** The condition of the list that is meant, with the note that it needs. */
export function condition(
  defs: Definitions,
  input: {
    readonly step: string
    readonly condition: string
    readonly also?: readonly string[]
    readonly note?: string
  },
): Result<{ readonly condition: string; readonly also?: readonly string[]; readonly note?: string }> {
  const { step } = asKind(stepById(defs, input.step), 'observe')
  const listed = step.conditions.find((c) => c.id === input.condition)
  if (listed === undefined)
    return refuse('unknown-condition', 'That is not one of the conditions listed: key its number.')
  const { also: ids = [] } = input
  const others = step.conditions.filter(({ id }) => id !== listed.id && ids.includes(id))
  if (others.length !== ids.length)
    return refuse('unknown-condition', 'Each is one of the conditions listed, and once: key their numbers.')
  const all = [listed, ...others]
  if (others.length > 0 && step.several !== true)
    return refuse('one-condition', 'Only one of these can be: key one number.')
  const sound = all.find(({ finding }) => finding !== true)
  if (others.length > 0 && sound !== undefined)
    return refuse(
      'one-condition',
      `"${sound.label}" goes with no other: key it alone, or the others without it.`,
    )
  const found = { condition: listed.id, ...(others.length === 0 ? {} : { also: others.map(({ id }) => id) }) }
  if (input.note === undefined) {
    return all.some(({ note }) => note === true)
      ? refuse('no-words', 'This condition needs a note: say what you see and where.')
      : ok(found)
  }
  const note = reason(input.note, 'The note')
  return note.ok ? ok({ ...found, note: note.value }) : note
}
