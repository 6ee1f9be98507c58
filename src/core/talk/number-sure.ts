// The number of a lock, a blind or a tag that is another than was keyed for the same person or point before the hold point fell. It is a
// slip, or somebody changed what hangs there; nobody here can say which, so it is asked, and what is kept has its reason on record.
import { wouldRefuse } from '../job/admit.ts'
import type { Definitions } from '../job/definitions.ts'
import { keyedBefore } from '../job/evidence-numbers.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { ask, type Heard, input } from './heard.ts'

interface Doubted {
  readonly step: string
  readonly item: string
  readonly typed: string
  /** The number before. */
  readonly was: string
}

export type NumberAsk =
  | ({ readonly kind: 'number-sure' } & Doubted)
  | ({ readonly kind: 'number-why' } & Doubted)

export function isNumberAsk(question: { readonly kind: string }): question is NumberAsk {
  return question.kind === 'number-sure' || question.kind === 'number-why'
}

/** Null where the line is taken, or refused, as it stands. */
export function sureOfNumber(defs: Definitions, state: State, prompt: Prompt, line: string): Heard | null {
  if (prompt.kind !== 'evidence') return null
  const given = { do: 'evidence', step: prompt.gate.id, item: prompt.item.key, typed: line } as const
  if (wouldRefuse(defs, state, given)?.code !== 'other-number') return null
  const was = keyedBefore(state, prompt.gate.id, prompt.item.key) ?? ''
  return ask({ kind: 'number-sure', step: prompt.gate.id, item: prompt.item.key, typed: line.trim(), was })
}

export function numberText(question: NumberAsk): string {
  return question.kind === 'number-sure' ? 'Which is it? 1, 2 or 3' : 'Why is it another one? Who changed it?'
}

/** What can be keyed, a line each. */
export const NUMBER_CHOICES = [
  '1  look again at what hangs there',
  '2  mistyped: key it again in full',
  '3  it is another one: say why',
]

export function hearNumber(question: NumberAsk, line: string): Heard {
  const { step, item, typed } = question
  if (question.kind === 'number-why') return input({ do: 'evidence', step, item, typed, why: line })
  const choice = line.trim()
  if (choice === '3') return ask({ ...question, kind: 'number-why' })
  return choice === '1' || choice === '2'
    ? {
        talk: { ask: null },
        input: null,
        say: [`${typed} was not taken: key the number as it is read there.`],
      }
    : ask(question, 'Key 1, 2 or 3: nothing was taken.')
}
