// What the choices of a lead mean, asked where one is to be made: the same words in capitals are verdicts, and mean another thing.
import type { Definitions } from '../job/definitions.ts'
import { next } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { stem } from '../papers/ask-words.ts'
import { watchedLines } from './answer-asked.ts'
import { DECISION_SAYS } from './decision-words.ts'
import { offersAt, verdictAt } from './offered.ts'
import { termLines } from './terms.ts'

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

/** Terms of the trade that say more of a choice. */
const IN_TERMS: ReadonlySet<string> = new Set(['repair', 'concession'])
const VERDICTS: readonly string[] = ['ACCEPT', 'MONITOR', 'REWORK', 'REPLACE', 'HOLD', 'STOP']

/** Two of them beside each other, where a lead is to decide: in small letters a choice, in capitals a verdict. Null: neither is a choice. */
export function choicesApart(defs: Definitions, state: State, one: string, other: string): string[] | null {
  const prompt = next(defs, state)
  if (prompt.kind !== 'decide' && prompt.kind !== 'findings') return null
  const words = [one, other].map((word) => word.trim().replace(/^(?:an? |the )/i, ''))
  const offers = prompt.kind === 'decide' ? offersAt(state, prompt.step) : []
  const told = words.map((word): { is: 'choice' | 'verdict'; lines: readonly string[] } | null => {
    const choice = word.toLowerCase()
    const barred = offers.find((offer) => offer.choice === choice)?.barred ?? null
    // monitor is no choice of anybody.
    if (word !== word.toUpperCase() && Object.hasOwn(DECISION_SAYS, choice))
      return {
        is: 'choice',
        lines: [
          `The choice ${choice}: ${DECISION_SAYS[choice] ?? ''}${barred === null ? '' : ` NOT OPEN here, ${barred}.`}`,
          ...(IN_TERMS.has(choice) ? termLines(choice) : []),
        ],
      }
    const verdict = VERDICTS.find((name) => name === word.toUpperCase())
    const lines = verdict === undefined ? [] : termLines(verdict)
    return verdict === undefined || lines.length === 0
      ? null
      : { is: 'verdict', lines: [`The verdict ${verdict}:`, ...lines.slice(1)] }
  })
  const [first = null, second = null] = told
  if (first === null || second === null || ![first, second].some(({ is }) => is === 'choice')) return null
  return [
    ...first.lines,
    ...second.lines,
    ...(words.some((word) => word.toUpperCase() === 'MONITOR')
      ? ['In capitals the other is a verdict too:', ...termLines('ACCEPT').slice(1), ...watchedLines(defs)]
      : []),
    ...(prompt.kind === 'decide'
      ? [
          `The verdict here is ${verdictAt(state, prompt.step)}; a decision stands beside it and changes none of it.`,
        ]
      : []),
    'A verdict is worked out from readings; a choice is the decision of a lead who did not measure.',
  ]
}
