// Several people on one job: somebody comes on, somebody goes, the keyboard is handed over.
import type { Person } from '../definition/crew.ts'
import type { Evidence } from '../definition/evidence.ts'
import { ok, type Refusal, type Result, refuse } from '../lib/result.ts'
import { type Definitions, personById } from './definitions.ts'
import type { Body } from './entries.ts'
import { gateState, gatesOf, itemByKey } from './gate.ts'
import { handOverLines } from './hand-over.ts'
import type { Input } from './input.ts'
import { fallsWith } from './lapse.ts'
import { notAsked } from './refusals.ts'
import { signer, unknownPerson } from './signature.ts'
import type { State } from './state.ts'

/** Kinds of evidence that speak of who was there at that moment. */
const NOT_THERE_FOR: readonly Evidence['kind'][] = ['gas', 'words']

type Of<K extends Input['do']> = Extract<Input, { do: K }>

/** A trainee works on PRACTICE only; the one rule for signing on, coming on and taking over. */
export function barsTrainee(state: State, person: Person): Refusal | null {
  if (person.role !== 'trainee' || state.record === 'PRACTICE') return null
  return {
    code: 'trainee',
    say: `${person.id} is a trainee, and a trainee signs on to PRACTICE only: leave, then choose practice where jobs are chosen, or run the job with --as practice.`,
  }
}

/** The same by what was keyed: said before any PIN is asked or looked at, lest it be keyed for nothing. */
export function barsInitials(defs: Definitions, state: State, typed: string): Refusal | null {
  const person = personById(defs, typed.trim().toUpperCase())
  return person === undefined ? null : barsTrainee(state, person)
}

/**
 * Who comes on was not there when the gas was tested and when everybody was counted clear, and nobody has told them to stay
 * out: every gas test and all that was said in words falls with its witness, and whoever is inside comes out first. Common
 * practice, no source: a new person, a new count and a new test. What hangs on the machine and what a gauge read stands. And
 * who was on before took their own lock along when they went: the number of then falls, and is asked again.
 */
export function admitComingOn(
  defs: Definitions,
  state: State,
  input: Of<'come-on'>,
): Result<readonly Body[]> {
  if (state.doer === null) return notAsked()
  const barred = barsInitials(defs, state, input.person)
  if (barred !== null) return { ok: false, error: barred }
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  if (state.people.includes(person.id)) return refuse('already-on', `${person.id} is on this job already.`)
  const falls = gatesOf(defs).flatMap((gate): Body[] => {
    const old = Object.keys(gateState(state, gate.id).given).filter((key) => {
      const item = itemByKey(defs, gate, key)
      return item === null || NOT_THERE_FOR.includes(item.evidence.kind) || item.person === person.id
    })
    if (old.length === 0) return []
    const items = fallsWith(defs, state, gate, old)
    const why = `${person.id} came onto the job after this was shown`
    return [{ type: 'gate.closed', step: gate.id, cause: 'people', items, why }]
  })
  return ok([{ type: 'person.came-on', person: person.id, signed }, ...falls])
}

export function admitSigningOff(
  state: State,
  defs: Definitions,
  input: Of<'sign-off'>,
): Result<readonly Body[]> {
  if (state.doer === null) return notAsked()
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  if (person.id === state.doer) {
    return refuse('at-keyboard', `${person.id} has the keyboard: hand over to somebody, or leave the job.`)
  }
  if (!state.people.includes(person.id)) return refuse('not-on', `${person.id} is not on this job.`)
  return ok([{ type: 'person.signed-off', person: person.id, signed }])
}

/** Why these initials cannot take over, or null; said before a PIN is asked, and asked again when it counts. */
export function barsTakingOver(defs: Definitions, state: State, typed: string): Refusal | null {
  const person = personById(defs, typed.trim().toUpperCase())
  if (person === undefined) return { code: 'unknown-person', say: unknownPerson(defs, typed) }
  if (person.id === state.doer)
    return { code: 'same-person', say: `${person.id} has the keyboard: key the initials of who takes over.` }
  return barsTrainee(state, person)
}

/** The summary is made here anew: what both sign for is what is on record, not what a screen says. */
export function admitHandOver(
  defs: Definitions,
  state: State,
  input: Of<'hand-over'>,
): Result<readonly Body[]> {
  if (state.doer === null || input.from !== state.doer) return notAsked()
  const from = signer(defs, state, { person: input.from, proved: input.fromProved })
  if (!from.ok) return from
  const barred = barsTakingOver(defs, state, input.person)
  if (barred !== null) return { ok: false, error: barred }
  const to = signer(defs, state, input)
  if (!to.ok) return to
  return ok([
    {
      type: 'job.handed-over',
      from: from.value.person.id,
      to: to.value.person.id,
      signedFrom: from.value.signed,
      signedTo: to.value.signed,
      summary: handOverLines(defs, state),
    },
  ])
}
