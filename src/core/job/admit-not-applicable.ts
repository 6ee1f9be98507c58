// A place that cannot be measured. It needs a reason, and where the step says so a lead; a judge that needs it gives HOLD.
import { ok, type Result, refuse } from '../lib/result.ts'
import { asKind, type Definitions, stepById } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { next } from './next.ts'
import { placesOf } from './places.ts'
import { notAsked, reason } from './refusals.ts'
import { type Signer, signer } from './signature.ts'
import type { State } from './state.ts'

type NotApplicable = Extract<Input, { do: 'not-applicable' }>

export function admitNotApplicable(
  defs: Definitions,
  state: State,
  input: NotApplicable,
): Result<readonly Body[]> {
  const prompt = next(defs, state)
  const place =
    prompt.kind === 'read' ? prompt.place.key : prompt.kind === 'doubt' ? prompt.doubt.place : null
  if (place === null || place !== input.place) return notAsked()
  const placed = asKind(stepById(defs, place.split('.')[0] ?? ''), 'read')
  if (!placesOf(placed).some((p) => p.key === place)) return notAsked()
  const rule = placed.step.not_applicable ?? 'reason'
  if (rule === 'never')
    return refuse('never', 'This reading has no n/a: measure it, or leave the job here with a note.')
  const why = reason(input.why, 'Why it cannot be measured')
  if (!why.ok) return why
  const entered = { type: 'reading.not-applicable', step: placed.id, place, why: why.value } as const
  if (rule === 'reason') return ok([entered])
  const who = leadFor(defs, state, input)
  return who.ok ? ok([{ ...entered, person: who.value.person.id, signed: who.value.signed }]) : who
}

function leadFor(defs: Definitions, state: State, input: NotApplicable): Result<Signer> {
  const who = signer(defs, state, { person: input.person ?? '', proved: input.proved ?? false })
  if (!who.ok) return who
  const { person } = who.value
  if (person.role !== 'lead')
    return refuse('not-lead', `${person.id} is a ${person.role}, and a lead signs for this n/a.`)
  if (person.id === state.doer)
    return refuse('own-work', `${person.id} is doing the work, so another lead signs for this n/a.`)
  return who
}
