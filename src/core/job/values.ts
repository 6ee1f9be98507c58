// The values that `when` rules may refer to: what earlier steps came to, as words. No value means unknown.
import type { Definitions, PlacedStep } from './definitions.ts'
import type { State } from './state.ts'

/** Values by the name they have in the scope of `placed`. A void verdict has no value. */
export function valuesForRules(defs: Definitions, state: State, placed: PlacedStep): Map<string, string> {
  const values = new Map<string, string>()
  for (const other of defs.steps) {
    if (other.scope !== placed.scope || other.number >= (placed.number || Number.POSITIVE_INFINITY)) continue
    const value = outcomeOf(state, other)
    if (value !== undefined) values.set(other.step.id, value)
  }
  return values
}

function outcomeOf(state: State, placed: PlacedStep): string | undefined {
  const verdict = state.verdicts[placed.id]
  if (verdict !== undefined) return verdict.void ? undefined : verdict.verdict.result.verdict
  const disposition = state.dispositions[placed.id]
  if (disposition !== undefined) return disposition.void ? undefined : disposition.choice
  return state.done[placed.id]
}

/** Judge and decide steps, and conditional steps, whose outcome rests on the given step: what a change there voids. */
export function hangsOn(defs: Definitions, stepId: string): string[] {
  const voided = new Set<string>([stepId])
  // Later steps only refer to earlier ones, so one pass in order finds the whole chain.
  for (const placed of defs.steps) {
    if (refersTo(placed).some((id) => voided.has(id))) voided.add(placed.id)
  }
  voided.delete(stepId)
  return [...voided]
}

function refersTo(placed: PlacedStep): string[] {
  const { step, scope } = placed
  const names = placed.rule?.names ?? []
  if (step.kind === 'judge') {
    const i = step.inputs
    const optional = [i.datum, i.counterbore].filter((x) => x !== undefined)
    const ids = [
      i.diameters,
      i.set_before,
      i.set_after,
      ...i.part_temperature,
      ...i.instrument_temperature,
      ...optional,
    ]
    return [...ids, ...names].map((id) => scope + id)
  }
  if (step.kind === 'decide') return [step.about, ...names].map((id) => scope + id)
  return names.map((id) => scope + id)
}
