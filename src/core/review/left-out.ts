// What was left out, by what rule, and what the steps that the rule speaks of came to: nothing is left out without a word.
import type { Definitions } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { type Row, row } from '../sheet/block.ts'
import { foundBehind, leftOut, leftOutCount, numbersOf, ruleShort } from '../talk/left-out.ts'
import { count, named } from './look.ts'

export function leftOutRows(defs: Definitions, state: State): Row[] {
  const all = leftOut(defs, state)
  const gates = all.flatMap(({ steps }) => steps.filter(({ step }) => step.kind === 'gate'))
  return [
    row(`Left out by their own condition: ${count(leftOutCount(all), 'step')}`, 'strong'),
    ...(state.closed === null ? [row('The job is open: what is ahead of it is not counted here.')] : []),
    ...all.flatMap(({ by, steps }) => {
      return [
        row(`  ${numbersOf(steps)}  ${by.step.title}`),
        row(`    ${ruleShort(defs, by)}`),
        ...foundBehind(defs, state, by).map((told) => row(`    ${told}`)),
      ]
    }),
    row(
      gates.length === 0
        ? 'No hold point is among them.'
        : `Hold points among them, never complete: ${gates.map((gate) => named(gate)).join('; ')}.`,
    ),
  ]
}
