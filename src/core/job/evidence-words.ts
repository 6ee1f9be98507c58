// Words typed out in full, and initials of a second person.
import type { Person } from '../definition/crew.ts'
import type { EvidenceOf } from '../definition/evidence.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { list } from '../lib/wording.ts'
import type { Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import { type AnyAsked, type Asked, given, spaced } from './evidence-asked.ts'
import { doersAt, type GateStep, gateState } from './gate.ts'
import { hasPinBehind, signer } from './signature.ts'
import type { State } from './state.ts'

/** What is keyed of a panel at which nothing can be started. */
const DEAD =
  /\b(?:dead|(?:no|without|lost|has no|not any) (?:control )?(?:power|current|voltage)|not powered|unpowered|powerless|power(?:ed)?(?: is|'s)? (?:off|down|out|gone)|(?:lamps?|lights?)(?: is| are)? (?:out|off|dark)|dark|(?:button|switch|panel) (?:does|did|do) nothing)\b/i

/** It takes a start that could have come: with no lock on at all nothing would move there either. */
const DEAD_SAYS =
  'A panel without power proves nothing: nothing would move at it with every lock off. HOLD: no words are typed. Tell a lead, who finds out why it is dead; then the start is tried with power on the panel.'

function isOfStart({ item: { evidence } }: AnyAsked): boolean {
  return evidence.kind === 'words' && /\bstart\b/i.test(evidence.ask)
}

export function wordsGiven(asked: AnyAsked, words: string): Result<readonly Body[]> {
  if (spaced(asked.typed) === words) return ok([given(asked, words)])
  if (isOfStart(asked) && DEAD.test(asked.typed)) return refuse('words', DEAD_SAYS)
  return refuse('words', `That does not count as evidence: only if it is so, type ${words} in full.`)
}

/** Whether the person is at the keys, or gave or keyed anything of this gate. */
export function didThis(state: State, gate: GateStep, person: string): boolean {
  return person === state.doer || doersAt(gateState(state, gate.id)).has(person)
}

/** Who of the crew file may witness as it stands now: of the roles that this hold point asks for, and none who did anything of it. */
export function mayWitness(
  { crew }: Definitions,
  state: State,
  gate: GateStep,
  { roles }: EvidenceOf<'witness'>,
): Person[] {
  return crew.crew.filter(({ id, role }) => roles.some((one) => one === role) && !didThis(state, gate, id))
}

/** `proved`: the PIN of the witness fitted. */
export function witnessGiven(asked: Asked<'witness'>, proved: boolean): Result<readonly Body[]> {
  const { defs, state, gate, evidence, typed } = asked
  const named = typed.trim().toUpperCase()
  // Whoever is refused reads who may, and nobody who may not is named beside them.
  const those = mayWitness(defs, state, gate, evidence).map(({ id }) => id)
  const may = those.length === 0 ? 'nobody else may, so it stays shut.' : `key ${list(those, 'or')}.`
  // Before any PIN is asked or looked at: whoever did it signs for nothing here, whatever they key.
  if (named === '') return refuse('unknown-person', `Nothing was keyed: ${may}`)
  if (didThis(state, gate, named))
    return refuse('self-witness', `${named} did this and may not witness it: ${may}`)
  const signed = signer(defs, state, { person: typed, proved })
  if (!signed.ok) {
    const isNobody = signed.error.code === 'unknown-person' && /\p{L}/u.test(typed) && !hasPinBehind(typed)
    return isNobody
      ? refuse('unknown-person', `"${typed.trim().slice(0, 12)}" is nobody in the crew file: ${may}`)
      : signed
  }
  const { person } = signed.value
  if (!evidence.roles.some((role) => role === person.role))
    return refuse('witness-role', `${person.id} is a ${person.role}, who may not witness here: ${may}`)
  return ok([given(asked, person.id, { person: person.id, signed: signed.value.signed })])
}

/** Where each hangs a lock of their own, whether that keeps them from witnessing. */
export function ownLockLines({ step }: GateStep): string[] {
  const isAsked = step.evidence.some((one) => one.kind === 'numbers' && one.per === 'person')
  return isAsked
    ? ['A lock of their own on the box keeps nobody from it, as another read its number off and keyed it.']
    : []
}
