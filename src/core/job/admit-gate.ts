// Evidence for a gate. It fails closed: what is blank, wrong, out of its limit or measured by a method that is not valid
// there never counts. A gas reading outside its limit goes on record as a failure and everybody is called clear.
import type { Evidence } from '../definition/procedure.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { unfitness } from './admit-people.ts'
import { asKind, type Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import { judgeGas } from './gas.ts'
import { fallsWithGas, type GateStep, gateState, type Item, itemsOf } from './gate.ts'
import type { Input } from './input.ts'
import { next } from './next.ts'
import { notAsked } from './refusals.ts'
import { gasMeterIn } from './seats.ts'
import { signer } from './signature.ts'
import type { State } from './state.ts'

type Of<K extends Input['do']> = Extract<Input, { do: K }>

const spaced = (text: string) => text.trim().toUpperCase().replace(/\s+/g, ' ')

/** L-101 and L101 are one lock. */
const undashed = (number: string) => number.replaceAll('-', '')

export function admitEvidence(
  defs: Definitions,
  state: State,
  input: Of<'evidence'>,
): Result<readonly Body[]> {
  const prompt = next(defs, state)
  if (prompt.kind !== 'evidence' || prompt.gate.id !== input.step || prompt.item.key !== input.item)
    return notAsked()
  const { gate, item } = prompt
  switch (item.evidence.kind) {
    case 'locks':
      return lock(state, gate, item, input.typed)
    case 'words':
      return exactWords(gate, item, item.evidence, input.typed)
    case 'gas':
      return gas(defs, state, gate, item, item.evidence, input.typed)
    case 'witness':
      return witness(defs, state, gate, item, item.evidence, input)
  }
}

function given(
  gate: GateStep,
  item: Item,
  shown: string,
  more: Partial<Extract<Body, { type: 'evidence.given' }>> = {},
): Body {
  return { type: 'evidence.given', step: gate.id, item: item.key, shown, ...more }
}

function lock(state: State, gate: GateStep, item: Item, typed: string): Result<readonly Body[]> {
  const number = spaced(typed)
  if (!/^[A-Z0-9][A-Z0-9-]{0,15}$/.test(number) || !/\d/.test(number)) {
    return refuse(
      'lock-number',
      `Key the number on the lock at ${item.point?.name ?? 'this point'}: letters, digits and dashes, with at least one digit.`,
    )
  }
  const twice = Object.entries(gateState(state, gate.id).given).find(
    ([key, g]) => key.startsWith(`${item.evidence.id}.`) && undashed(g.shown) === undashed(number),
  )
  if (twice !== undefined) {
    return refuse(
      'lock-twice',
      `Lock ${number} is already down for another point, and one lock cannot hang in two places.`,
    )
  }
  return ok([given(gate, item, number)])
}

function exactWords(
  gate: GateStep,
  item: Item,
  evidence: Extract<Evidence, { kind: 'words' }>,
  typed: string,
): Result<readonly Body[]> {
  if (spaced(typed) === evidence.words) return ok([given(gate, item, evidence.words)])
  return refuse('words', `That does not count as evidence: only if it is so, type ${evidence.words} in full.`)
}

function gas(
  defs: Definitions,
  state: State,
  gate: GateStep,
  item: Item,
  evidence: Extract<Evidence, { kind: 'gas' }>,
  typed: string,
): Result<readonly Body[]> {
  const meter = gasMeterIn(defs, state, evidence.with)
  if (meter === null) return refuse('no-meter', 'No gas meter is picked for this test.')
  const unfit = unfitness(defs, meter, state.lastAt)
  const putBack = (why: string): Body[] => [{ type: 'instrument.put-back', seat: evidence.with, why }]
  if (unfit !== null) return ok(putBack(unfit))
  const oxygen =
    evidence.oxygen === undefined ? null : (gateState(state, gate.id).given[evidence.oxygen]?.si ?? null)
  const judged = judgeGas(defs, evidence, meter, oxygen, typed)
  if (!judged.ok) return judged
  const { shown, reading, outcome } = judged.value
  if (outcome.kind === 'passes') return ok([given(gate, item, shown, { reading, instrument: meter.id })])
  const failed: Body = {
    type: 'evidence.failed',
    step: gate.id,
    item: item.key,
    shown,
    reading,
    instrument: meter.id,
    why: outcome.why,
  }
  if (outcome.kind === 'not-valid') return ok([failed, ...putBack(outcome.why)])
  return ok([
    failed,
    { type: 'gate.closed', step: gate.id, cause: 'failed', items: fallsWithGas(defs, state, gate) },
  ])
}

function witness(
  defs: Definitions,
  state: State,
  gate: GateStep,
  item: Item,
  evidence: Extract<Evidence, { kind: 'witness' }>,
  input: Of<'evidence'>,
): Result<readonly Body[]> {
  const who = signer(defs, state, { person: input.typed, proved: input.proved ?? false })
  if (!who.ok) return who
  const { person, signed } = who.value
  const doers = new Set(Object.values(gateState(state, gate.id).given).map((g) => g.by))
  if (person.id === state.doer || doers.has(person.id)) {
    return refuse(
      'self-witness',
      `${person.id} did this, and a witness is somebody else: key another person's initials.`,
    )
  }
  if (!evidence.roles.some((role) => role === person.role)) {
    return refuse(
      'witness-role',
      `${person.id} is a ${person.role}, and this gate is witnessed by a ${evidence.roles.join(' or ')}.`,
    )
  }
  return ok([given(gate, item, person.id, { person: person.id, signed })])
}

/** After a gate fell with people let in: everybody out first, in words, before anything is asked again. */
export function admitClear(defs: Definitions, state: State, input: Of<'clear'>): Result<readonly Body[]> {
  const prompt = next(defs, state)
  if (prompt.kind !== 'clear' || prompt.gate.id !== input.step) return notAsked()
  const { clear_words } = prompt.gate.step
  if (spaced(input.typed) !== clear_words) {
    return refuse('words', `Come out and stand clear first; when everybody has, type ${clear_words}.`)
  }
  return ok([{ type: 'people.clear', step: input.step, words: clear_words }])
}

/**
 * Takes back what was given last at a gate that is being asked: striking evidence can only shut a gate, never open one.
 * Gas is taken back whole, since it is read in an order.
 */
export function admitAskAgain(
  defs: Definitions,
  state: State,
  input: Of<'ask-again'>,
): Result<readonly Body[]> {
  const gate = gateBeingAsked(defs, state)
  if (gate === null || gate.id !== input.step) return notAsked()
  const items = itemsOf(defs, gate)
  const { given } = gateState(state, gate.id)
  const last = items
    .filter((item) => given[item.key] !== undefined)
    .sort((a, b) => (given[b.key]?.seq ?? 0) - (given[a.key]?.seq ?? 0))[0]
  if (last === undefined) return refuse('nothing-given', 'Nothing was given at this hold point yet.')
  const falls = last.evidence.kind === 'gas' ? fallsWithGas(defs, state, gate) : [last.key]
  return ok([{ type: 'gate.closed', step: gate.id, cause: 'again', items: falls }])
}

/** The gate whose evidence is asked for now, also while its instrument is picked. */
export function gateBeingAsked(defs: Definitions, state: State): GateStep | null {
  const prompt = next(defs, state)
  if (prompt.kind === 'evidence') return prompt.gate
  return prompt.kind === 'pick' && prompt.step.step.kind === 'gate' ? asKind(prompt.step, 'gate') : null
}
