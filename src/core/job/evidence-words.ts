// Words typed out in full, and initials of a second person.
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Body } from './entries.ts'
import { type AnyAsked, type Asked, given, spaced } from './evidence-asked.ts'
import { doersAt, type GateStep, gateState } from './gate.ts'
import { signer } from './signature.ts'
import type { State } from './state.ts'

export function wordsGiven(asked: AnyAsked, words: string): Result<readonly Body[]> {
  if (spaced(asked.typed) === words) return ok([given(asked, words)])
  return refuse('words', `That does not count as evidence: only if it is so, type ${words} in full.`)
}

/** Whether the person is at the keys, or gave or keyed anything of this gate. */
export function didThis(state: State, gate: GateStep, person: string): boolean {
  return person === state.doer || doersAt(gateState(state, gate.id)).has(person)
}

/** `proved`: the PIN of the witness fitted. */
export function witnessGiven(asked: Asked<'witness'>, proved: boolean): Result<readonly Body[]> {
  const { defs, state, gate, evidence, typed } = asked
  const named = typed.trim().toUpperCase()
  // Before any PIN is asked or looked at: whoever did it signs for nothing here, whatever they key.
  if (didThis(state, gate, named)) {
    return refuse(
      'self-witness',
      `${named} did this, and a witness is somebody else: key another person's initials.`,
    )
  }
  const who = signer(defs, state, { person: typed, proved })
  if (!who.ok) return who
  const { person, signed } = who.value
  if (!evidence.roles.some((role) => role === person.role)) {
    return refuse(
      'witness-role',
      `${person.id} is a ${person.role}, and this gate is witnessed by a ${evidence.roles.join(' or ')}.`,
    )
  }
  return ok([given(asked, person.id, { person: person.id, signed })])
}
