// A deviation permit: a lead says beforehand what may differ in one measurement or judgement. It changes no verdict, no
// limit and no gate; it is shown beside the verdict, for whoever decides on it.
import type { StepOf } from '../definition/procedure.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { authorityFrom } from './authority.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { applicability } from './next.ts'
import { notAsked, reason } from './refusals.ts'
import { signer } from './signature.ts'
import type { State } from './state.ts'
import { validityFrom } from './validity.ts'
import { hangsOn } from './values.ts'

/** What a permit may be about. A gate is none of these, and a step that exposes people to a hazard is left out below. */
export type Deviable = PlacedStep & { readonly step: StepOf<'judge'> | StepOf<'read'> }

/** Measurements and judgements that expose nobody, let no hazard in, and of which nothing is on record yet. */
export function deviable(defs: Definitions, state: State): Deviable[] {
  return defs.steps.filter(
    (placed): placed is Deviable =>
      (placed.step.kind === 'judge' || placed.step.kind === 'read') &&
      (placed.step.exposes ?? []).length === 0 &&
      !('lets_in' in placed.step && (placed.step.lets_in ?? []).length > 0) &&
      !hasBegun(state, placed.id) &&
      applicability(defs, state, placed) !== 'skip',
  )
}

/** Also what has become void since was seen: a permit given after it would not be beforehand. */
function hasBegun(state: State, id: string): boolean {
  const within = (place: string) => place.startsWith(`${id}.`)
  return (
    state.verdicts[id] !== undefined ||
    [...Object.keys(state.readings), ...Object.keys(state.notApplicable)].some(within) ||
    state.doubt?.step === id ||
    state.late?.step === id
  )
}

export function admitDeviation(
  defs: Definitions,
  state: State,
  input: Extract<Input, { do: 'permit-deviation' }>,
): Result<readonly Body[]> {
  if (state.doer === null) return notAsked()
  if (!deviable(defs, state).some((placed) => placed.id === input.step)) {
    return refuse(
      'not-deviable',
      'A deviation is permitted beforehand, for a measurement or judgement that exposes nobody: never for a hold point.',
    )
  }
  const what = reason(input.what, 'What may differ')
  if (!what.ok) return what
  const why = reason(input.why, 'The reason')
  if (!why.ok) return why
  const own = new Set([state.doer, input.person.trim().toUpperCase()])
  const authority = authorityFrom(defs, input.authority, own, 'a deviation')
  if (!authority.ok) return authority
  const valid = validityFrom(input.until, state.lastAt)
  if (!valid.ok) return valid
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  if (person.role !== 'lead')
    return refuse('not-lead', `${person.id} is a ${person.role}, and only a lead permits a deviation.`)
  if (person.id === state.doer)
    return refuse('own-work', `${person.id} is doing the work, so another lead permits a deviation in it.`)
  return ok([
    {
      type: 'deviation.permitted',
      step: input.step,
      what: what.value,
      why: why.value,
      authority: authority.value,
      valid: valid.value,
      person: person.id,
      signed,
    },
  ])
}

export interface Permit {
  /** `DP-1`. */
  readonly name: string
  readonly permit: State['deviations'][number]
}

/** Permits about a judge step or about anything that goes into it. */
export function permitsFor(defs: Definitions, state: State, judge: string): Permit[] {
  return state.deviations
    .map((permit, i) => ({ name: `DP-${i + 1}`, permit }))
    .filter(({ permit }) => permit.step === judge || hangsOn(defs, permit.step).includes(judge))
}
