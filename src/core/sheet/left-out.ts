// What was not done because its rule said so, at the close: nothing is left out without a word. A part that was left out as a
// whole is one line.
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { applicability } from '../job/next.ts'
import { ruleWords } from '../job/rule-words.ts'
import type { State } from '../job/state.ts'
import { type Row, row } from './block.ts'

export function leftOutRows(defs: Definitions, state: State): Row[] {
  const groups = new Map<PlacedStep, PlacedStep[]>()
  for (const placed of defs.steps) {
    if (applicability(defs, state, placed) !== 'skip') continue
    // The outermost part that its rule leaves out, or the step itself.
    const by = placed.inside.find((part) => applicability(defs, state, part) === 'skip') ?? placed
    groups.set(by, [...(groups.get(by) ?? []), placed])
  }
  return [...groups].map(([by, steps]) => {
    const [first, last] = [steps[0]?.number, steps.at(-1)?.number]
    const numbers = first === last ? `${first}` : `${first} to ${last}`
    return row(`  left out: ${numbers} ${by.step.title} (only if ${ruleWords(defs, by)})`)
  })
}
