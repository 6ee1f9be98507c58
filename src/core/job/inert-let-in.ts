// Whether this log tells of inert gas in the cylinder: the end of a purge was read on it.
import { type Definitions, gasLimitById } from './definitions.ts'
import type { State } from './state.ts'

/**
 * Number of the last sheet on which the end of a purge was read, whether that still stands or fell since: the gas that was let in
 * is not gone with it. Null where none was read, which does not tell that there is none.
 */
export function inertLetIn(defs: Definitions, state: State): number | null {
  const read = defs.steps.flatMap(({ id, number, step }) => {
    if (step.kind !== 'gate') return []
    const gate = state.gates[id]
    const shown = [...Object.keys(gate?.given ?? {}), ...(gate?.struck ?? []).map(({ item }) => item)]
    const ends = step.evidence.some(
      (one) =>
        one.kind === 'gas' &&
        shown.includes(one.id) &&
        gasLimitById(defs, one.limit)?.gas === 'flammable_in_inert',
    )
    return ends ? [number] : []
  })
  return read.at(-1) ?? null
}
