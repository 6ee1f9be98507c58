// What the choices of a lead mean, asked where one is to be made: the same words in capitals are verdicts, and mean another thing.
import type { Definitions } from '../job/definitions.ts'
import { next } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { stem } from '../papers/ask-words.ts'
import { DECISION_SAYS } from './decision-words.ts'
import { offersAt } from './offered.ts'

/** What it does, and not what the word means: that is a term of the trade. */
const ASKS = /^(?:what (?:does|do|happens|if|would|will)|if|when|how does|does)\b(?!.* mean)/i
const PICKED = /\b(?:pick|picks|choose|take|key|press|number|choice)s? (?:a |the |number )?(\d)\b/i

/** Null: none of the choices is asked about, or none is to be made here. */
export function decisionLines(defs: Definitions, state: State, text: string): string[] | null {
  const prompt = next(defs, state)
  if (prompt.kind !== 'decide' || !ASKS.test(text) || /\b(?:verdicts?|monitor)\b/i.test(text)) return null
  const offers = offersAt(state, prompt.step)
  const number = Number(PICKED.exec(text)?.[1] ?? 0)
  // Whoever writes ACCEPT as it is stamped means the verdict.
  const words = (text.match(/[A-Za-z]+/g) ?? []).filter((word) => word !== word.toUpperCase())
  const isNamed = (choice: string) => words.some((word) => stem(word.toLowerCase()) === stem(choice))
  const asked = offers.filter(({ choice }, n) => n + 1 === number || isNamed(choice))
  if (asked.length === 0) return null
  return [
    ...asked.map(
      ({ choice, barred }) =>
        `${choice}: ${DECISION_SAYS[choice] ?? ''}${barred === null ? '' : ` NOT OPEN here, ${barred}.`}`,
    ),
    'It is the decision of a lead who did not measure. In capitals the same words are verdicts.',
  ]
}
