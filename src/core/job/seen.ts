// What was found at an observe step: one condition of its list, or several that go together.
import type { Definitions } from './definitions.ts'
import type { State } from './state.ts'

/** Ids of the conditions that stand, in the order they were keyed; empty where nothing does. */
export function seenAt(state: State, step: string): readonly string[] {
  return state.raised.filter((r) => r.step === step && r.voidBy === null).map(({ word }) => word)
}

/** Conditions as their list calls them: `A ridge at an end; scoring`. */
export function labelsOf(defs: Definitions, id: string, seen: readonly string[]): string {
  const step = defs.steps.find((s) => s.id === id)?.step
  const label = (word: string) =>
    (step?.kind === 'observe' ? step.conditions.find((c) => c.id === word)?.label : undefined) ?? word
  return seen.map(label).join('; ')
}

/** What an entry says was found: its condition and what goes with it. */
export function allOf({
  condition,
  also = [],
}: {
  readonly condition: string
  readonly also?: readonly string[] | undefined
}): readonly string[] {
  return [condition, ...also]
}
