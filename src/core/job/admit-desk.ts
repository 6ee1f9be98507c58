// A lead at a desk decides and signs. What was read, seen or shown at the machine is changed at the machine alone, by whoever stands there.
import type { Refusal } from '../lib/result.ts'
import type { Definitions } from './definitions.ts'
import type { Input } from './input.ts'
import type { State } from './state.ts'

const OF_THE_MACHINE: readonly Input['do'][] = [
  ...(['correct', 'correct-finding', 'not-applicable', 'take-back-not-applicable'] as const),
  ...([
    'take-back-evidence',
    'put-back',
    'reopen',
    'read',
    'observe',
    'evidence',
    'settle-doubt',
    'settle-late',
  ] as const),
]

/** Taken up at a desk. A sheet of paper is keyed in at one, and put right there. */
export const isBarredAtDesk = ({ atDesk, paper }: State): boolean => atDesk && paper === null

export const notAtDesk = ({ job }: State): string =>
  `What was read, seen or shown is not changed at a desk: whoever is at the machine does it there, by barover resume ${job}.`

/** Null where it may come from a desk, or comes from none. Going back to a decision is a lead's. */
export function barredAtDesk(defs: Definitions, state: State, input: Input): Refusal | null {
  if (!isBarredAtDesk(state) || !OF_THE_MACHINE.includes(input.do)) return null
  const isDecision =
    input.do === 'reopen' && defs.steps.find(({ id }) => id === input.step)?.step.kind === 'decide'
  return isDecision ? null : { code: 'at-desk', say: notAtDesk(state) }
}
