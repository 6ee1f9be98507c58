// The number of a lock, a blind or a tag that is another than was keyed for the same person or point before the hold point fell. It is a
// slip, or somebody changed what hangs there; nobody here can say which, so it is asked, and what is kept has its reason on record. So
// is the number of a lock that looks like none, or like none of the others there.
import { wouldRefuse } from '../job/admit.ts'
import type { Definitions } from '../job/definitions.ts'
import { isSpelledAlike, keyedBefore, oddNumber } from '../job/evidence-numbers.ts'
import { KEYED_WRONG } from '../job/fold-gate.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { ask, type Heard, input } from './heard.ts'

interface Doubted {
  readonly step: string
  readonly item: string
  readonly typed: string
  /** The number before; null where nothing but its looks is doubted. */
  readonly was: string | null
  /** What is wrong with it. */
  readonly doubt: string
}

export type NumberAsk =
  | ({ readonly kind: 'number-sure' } & Doubted)
  | ({ readonly kind: 'number-why' } & Doubted)
  /** The one before was a slip: the number is read once more, so that no key of habit lets another lock pass for it. */
  | ({ readonly kind: 'number-again' } & Doubted)

export function isNumberAsk(question: { readonly kind: string }): question is NumberAsk {
  return ['number-sure', 'number-why', 'number-again'].includes(question.kind)
}

/** Null where the line is taken, or refused, as it stands. */
export function sureOfNumber(defs: Definitions, state: State, prompt: Prompt, line: string): Heard | null {
  if (prompt.kind !== 'evidence') return null
  const given = { do: 'evidence', step: prompt.gate.id, item: prompt.item.key, typed: line } as const
  const refused = wouldRefuse(defs, state, given)
  const typed = line.trim()
  const about = { kind: 'number-sure', step: prompt.gate.id, item: prompt.item.key, typed } as const
  if (refused?.code === 'other-number') {
    const was = keyedBefore(state, prompt.gate.id, prompt.item.key) ?? ''
    return ask({ ...about, was, doubt: `${was} was keyed here before` })
  }
  const doubt = refused === null ? oddNumber(state, prompt.gate, prompt.item, line) : null
  return doubt === null ? null : ask({ ...about, was: null, doubt })
}

export function numberText(question: NumberAsk): string {
  if (question.kind === 'number-sure')
    return question.was === null ? 'Which is it? 1, 2 or 3' : 'Which is it? 1, 2, 3 or 4'
  if (question.kind === 'number-again') return 'Its number once more, in full, as it is read there'
  return question.was === null
    ? 'Why is it right? What stands on it?'
    : 'Why is it another one? Who changed it?'
}

/** What can be keyed, a line each. */
export function numberChoices({ was }: NumberAsk): string[] {
  return [
    '1  look again at what hangs there',
    '2  mistyped: key it again in full',
    ...(was === null
      ? ['3  it is what stands there: say why']
      : ['3  it is another one: say why', `4  it is the same one: ${was} was keyed wrong`]),
  ]
}

export function hearNumber(question: NumberAsk, line: string): Heard {
  const { step, item, typed } = question
  if (question.kind === 'number-why') return input({ do: 'evidence', step, item, typed, why: line })
  const choice = line.trim()
  if (question.kind === 'number-again') {
    return isSpelledAlike(choice, typed)
      ? input({ do: 'evidence', step, item, typed, why: KEYED_WRONG })
      : ask({ ...question, kind: 'number-sure' }, `${choice} is not ${typed}: nothing was taken.`)
  }
  if (choice === '4' && question.was !== null) return ask({ ...question, kind: 'number-again' })
  if (choice === '3') return ask({ ...question, kind: 'number-why' })
  return choice === '1' || choice === '2'
    ? {
        talk: { ask: null },
        input: null,
        say: [`${typed} was not taken: key the number as it is read there.`],
      }
    : ask(question, `Key ${question.was === null ? '1, 2 or 3' : '1, 2, 3 or 4'}: nothing was taken.`)
}
