// Evidence for a gate. It fails closed: what is blank, wrong, out of its limit or measured by a method that is not valid
// there never counts. What each kind takes is in evidence-*.ts.
import { ok, type Result, refuse } from '../lib/result.ts'
import { asKind, type Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import { spaced } from './evidence-asked.ts'
import { gasGiven, measuredGiven } from './evidence-instrument.ts'
import { liftGiven } from './evidence-lift.ts'
import { lockGiven, numberGiven } from './evidence-numbers.ts'
import { waitGiven } from './evidence-wait.ts'
import { witnessGiven, wordsGiven } from './evidence-words.ts'
import { fallsWithItems } from './falls-with.ts'
import { evidenceByKey, type GateStep, gateState } from './gate.ts'
import { closedByNoting } from './held-to.ts'
import type { Input } from './input.ts'
import { fallsWith } from './lapse.ts'
import { next } from './next.ts'
import { undecided } from './nonconformance.ts'
import { notAsked } from './refusals.ts'
import { openThings, registerClear, thingText } from './register.ts'
import type { State } from './state.ts'

type Of<K extends Input['do']> = Extract<Input, { do: K }>

export function admitEvidence(
  defs: Definitions,
  state: State,
  input: Of<'evidence'>,
): Result<readonly Body[]> {
  const prompt = next(defs, state)
  if (prompt.kind !== 'evidence' || prompt.gate.id !== input.step || prompt.item.key !== input.item)
    return notAsked()
  const { gate, item } = prompt
  const { evidence } = item
  const asked = { defs, state, gate, item, typed: input.typed, why: input.why }
  switch (evidence.kind) {
    case 'locks':
      return noted(defs, state, gate, lockGiven({ ...asked, evidence }))
    case 'words':
      if (evidence.register === 'clear' && !registerClear(state)) return registerOpen(state)
      return findingOpen(defs, state, evidence) ?? wordsGiven(asked, evidence.words)
    case 'gas':
      return gasGiven({ ...asked, evidence })
    case 'measured':
      return measuredGiven({ ...asked, evidence })
    case 'numbers':
      return noted(defs, state, gate, numberGiven({ ...asked, evidence }))
    case 'wait':
      return waitGiven({ ...asked, evidence })
    case 'lift':
      return liftGiven({ ...asked, evidence })
    case 'witness':
      return witnessGiven({ ...asked, evidence }, input.proved ?? false)
  }
}

/** With another number in the place of one that was noted, what was held against that one falls before it. */
function noted(
  defs: Definitions,
  state: State,
  gate: GateStep,
  given: Result<readonly Body[]>,
): Result<readonly Body[]> {
  if (!given.ok) return given
  return ok(
    given.value.flatMap((body) =>
      body.type === 'evidence.given' && body.notes !== undefined
        ? [...closedByNoting(defs, state, { gate, key: body.item }, body.shown), body]
        : [body],
    ),
  )
}

/** Nobody's word stands against the register: what was placed is still there until two people say that it is not. */
function registerOpen(state: State): Result<never> {
  const open = openThings(state)
  const more = open.length > 1 ? `, and ${open.length - 1} more` : ''
  const first = open.map(thingText)[0] ?? ''
  return refuse(
    'register-open',
    `Still in the register: ${first}${more}. Key the word taken once for each, two people sign, and then these words count.`,
  )
}

/** Nor against what was found: the prompt asks for a lead's word on it first (next.ts), and here nothing passes it by. */
function findingOpen(
  defs: Definitions,
  state: State,
  { findings }: { readonly findings?: 'decided' | undefined },
): Result<never> | null {
  if (findings !== 'decided' || defs.loose === true) return null
  const [open] = undecided(defs, state)
  return open === undefined
    ? null
    : refuse('finding-open', `${open.name} stands, and no lead has decided on it so that it can go on.`)
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

/** The line that was shown or begun last at the gate; null where there is none. */
export function lastKey(state: State, gate: GateStep): string | null {
  const { given, begun } = gateState(state, gate.id)
  return Object.entries({ ...begun, ...given }).sort(([, a], [, b]) => b.seq - a.seq)[0]?.[0] ?? null
}

/** What going back at a gate that is being asked would strike: what was given last; gas whole, as it is read in an order. */
export function lastGiven(defs: Definitions, state: State, gate: GateStep): readonly string[] {
  const last = lastKey(state, gate)
  if (last === null) return []
  return evidenceByKey(gate, last)?.kind === 'gas' ? fallsWith(defs, state, gate, [last]) : [last]
}

/**
 * Takes it back: striking evidence can only shut a gate, never open one. A wait that is running begins again.
 */
export function admitAskAgain(
  defs: Definitions,
  state: State,
  input: Of<'ask-again'>,
): Result<readonly Body[]> {
  const gate = gateBeingAsked(defs, state)
  if (gate === null || gate.id !== input.step) return notAsked()
  const items = lastGiven(defs, state, gate)
  if (items.length === 0) return refuse('nothing-given', 'Nothing was given at this hold point yet.')
  return ok(
    fallsWithItems(defs, state, gate.id, items).map((at) => ({
      type: 'gate.closed',
      step: at.gate.id,
      cause: 'again',
      items: at.items,
    })),
  )
}

/** The gate whose evidence is asked for now, also while its instrument is picked. */
export function gateBeingAsked(defs: Definitions, state: State): GateStep | null {
  const prompt = next(defs, state)
  if (prompt.kind === 'evidence') return prompt.gate
  return prompt.kind === 'pick' && prompt.step.step.kind === 'gate' ? asKind(prompt.step, 'gate') : null
}
