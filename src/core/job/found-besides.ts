// What was found by eye beside a verdict on figures: a crack has no size, and sizes inside their limits say nothing of it.
import { type Definitions, stepById } from './definitions.ts'
import { type Nonconformance, nonconformances } from './nonconformance.ts'
import type { State } from './state.ts'

/** Findings that stand, of the same part of the procedure as the judge step, in the order they were made. */
export function foundBesides(defs: Definitions, state: State, judge: string): Nonconformance[] {
  const { scope } = stepById(defs, judge)
  return nonconformances(defs, state).filter(({ step: id, stands }) => {
    const { step, scope: own } = stepById(defs, id)
    return stands && step.kind === 'observe' && own === scope
  })
}
