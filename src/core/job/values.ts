// The values that `when` rules and derived values may refer to: what earlier steps came to, readings that settled, facts
// of the machine, values worked out of these. No value means unknown; nothing is ever filled in.
import type { Value } from '../compute/computation.ts'
import { judgeReads } from '../definition/judge-reads.ts'
import { factsOf } from '../rules/machine-facts.ts'
import type { Values } from '../rules/types.ts'
import type { CompiledValue, ValueOutcome } from '../rules/value.ts'
import { fromSi } from '../units/index.ts'
import { asKind, type Definitions, type PlacedStep, type PlacedValue, stepsById } from './definitions.ts'
import { placeResult, placesOf } from './places.ts'
import { beyondItsScale } from './plausible.ts'
import type { State } from './state.ts'

/** Whether a step is to be done: one that was skipped has no value, whatever was read before it came to be skipped. */
export type Applies = (placed: PlacedStep) => boolean

interface Look {
  readonly defs: Definitions
  readonly state: State
  readonly applies: Applies
  /** Derived values worked out so far, so that each is worked out once. */
  readonly seen: Map<PlacedValue, Value | undefined>
  /** The figure to take for a place in place of its combined repeats; null where there is none. */
  readonly instead?: Instead
}

/** SI in, SI out. */
export type Instead = (placeKey: string, si: number) => number | null

/**
 * An expression of a judge step worked out on what is on record, with `instead` for sizes brought to 20 degC or moved to
 * see how far the figure moves with them.
 */
export function workFigure(
  defs: Definitions,
  state: State,
  scope: string,
  compiled: CompiledValue,
  applies: Applies,
  instead: Instead,
): ValueOutcome {
  return compiled.work(valuesOf({ defs, state, applies, seen: new Map(), instead }, scope, compiled.names))
}

/** Values of the names that the rule of `placed` refers to, as far as they are known. */
export function valuesForRules(
  defs: Definitions,
  state: State,
  placed: PlacedStep,
  applies: Applies,
): Values {
  return valuesOf({ defs, state, applies, seen: new Map() }, placed.scope, placed.rule?.names ?? [])
}

function valuesOf(look: Look, scope: string, names: readonly string[]): Values {
  const values = new Map<string, Value>()
  const facts = names.some((name) => name.startsWith('machine.')) ? factsOf(look.defs.machine) : values
  for (const name of names) {
    const value = facts.get(name) ?? stepValue(look, scope + name) ?? derivedValue(look, scope, name)
    if (value !== undefined) values.set(name, value)
  }
  return values
}

function derivedValue(look: Look, scope: string, id: string): Value | undefined {
  const placed = look.defs.values.find((value) => value.scope === scope && value.id === id)
  if (placed === undefined) return undefined
  if (!look.seen.has(placed)) {
    const outcome = placed.compiled.work(valuesOf(look, scope, placed.compiled.names))
    look.seen.set(placed, outcome.is === 'known' ? outcome.value : undefined)
  }
  return look.seen.get(placed)
}

function stepValue(look: Look, id: string): Value | undefined {
  const { defs, state, applies } = look
  const placed = stepsById(defs).get(id)
  if (placed === undefined || !applies(placed)) return undefined
  if (placed.step.kind === 'read') return readingValue(look, placed)
  const word = outcomeOf(state, placed)
  return word === undefined ? undefined : { is: 'word', word }
}

/** The combined repeats of every place; nothing as soon as one place is missing, unsettled or not applicable. */
function readingValue({ defs, state, instead }: Look, step: PlacedStep): Value | undefined {
  const placed = asKind(step, 'read')
  const all = placesOf(placed).map((place) => {
    const { si, readings } = placeResult(placed, place, state)
    // Kept beyond what its instrument shows: on record, and no measurement.
    if (readings.some((one) => beyondItsScale(defs, one) !== null)) return null
    return si === null || instead === undefined ? si : instead(place.key, si)
  })
  const quantities = all.flatMap((si) => (si === null ? [] : [fromSi(placed.step.quantity, si)]))
  const [first, ...others] = quantities
  if (first === undefined || quantities.length < all.length) return undefined
  return others.length === 0 ? { is: 'quantity', quantity: first } : { is: 'quantities', quantities }
}

/** A void verdict or disposition has no value. */
function outcomeOf(state: State, placed: PlacedStep): string | undefined {
  const verdict = state.verdicts[placed.id]
  if (verdict !== undefined) return verdict.void ? undefined : verdict.verdict.result.verdict
  // What was decided about a finding is not what was found.
  if (placed.step.kind !== 'decide') return state.done[placed.id]
  const disposition = state.dispositions[placed.id]
  return disposition === undefined || disposition.void ? undefined : disposition.choice
}

/** Judge and decide steps, and conditional steps, whose outcome rests on the given step: what a change there voids. */
export function hangsOn(defs: Definitions, stepId: string): string[] {
  const voided = new Set<string>([stepId])
  // Later steps only refer to earlier ones, so one pass in order finds the whole chain.
  for (const placed of defs.steps) {
    if (refersTo(defs, placed).some((id) => voided.has(id))) voided.add(placed.id)
  }
  voided.delete(stepId)
  return [...voided]
}

/** Steps whose outcome a step's own rests on, or that decide whether it is done at all. */
export function refersTo(defs: Definitions, placed: PlacedStep): string[] {
  const { step, scope } = placed
  // A part's own condition is a condition of every step in it.
  const names = [...placed.inside, placed].flatMap((p) => stepsBehind(defs, p.scope, p.rule?.names ?? []))
  if (step.kind === 'judge') {
    const { needed, optional, observed } = judgeReads(step)
    return [...needed, ...optional, ...observed]
      .map((id) => scope + id)
      .concat(figureReads(defs, placed), names)
  }
  return step.kind === 'decide' ? [scope + step.about, ...names] : names
}

/** Ids of the steps that the expressions of a figures judge rest on. */
export function figureReads(defs: Definitions, { figures = [], scope }: PlacedStep): string[] {
  return [...new Set(figures.flatMap(({ names }) => stepsBehind(defs, scope, names)))]
}

/** Steps behind the names of a rule, through derived values too. */
export function stepsBehind(defs: Definitions, scope: string, names: readonly string[]): string[] {
  return names.flatMap((name) => {
    const value = defs.values.find((one) => one.scope === scope && one.id === name)
    return value === undefined ? [scope + name] : value.steps
  })
}
