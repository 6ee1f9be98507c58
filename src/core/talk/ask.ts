// Questions that take more than one line. `back` leaves any of them; `stop` was heard before they are.
import { findReading } from '../job/admit-change.ts'
import type { Definitions } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { hearRegisterAnswer, isRegisterAsk, type RegisterAsk, registerQuestion } from './ask-register.ts'
import { hearStopAnswer, isStopAsk, STOP_QUESTIONS, type StopAsk } from './ask-stop.ts'
import { ask, type Heard, input, QUIET, type SignedInput, signing, voidWarning } from './heard.ts'

export type Ask =
  | { readonly kind: 'note' }
  | { readonly kind: 'object'; readonly step: string }
  | { readonly kind: 'finding-note'; readonly step: string; readonly condition: string }
  | { readonly kind: 'keep-why' }
  | { readonly kind: 'not-applicable-why'; readonly place: string }
  | { readonly kind: 'correct-which'; readonly seqs: readonly number[] }
  | { readonly kind: 'correct-value'; readonly of: number }
  | { readonly kind: 'correct-why'; readonly of: number; readonly typed: string }
  | { readonly kind: 'reopen-why'; readonly step: string }
  | { readonly kind: 'dispose-who'; readonly step: string; readonly choice: string }
  | { readonly kind: 'dispose-why'; readonly step: string; readonly choice: string; readonly person: string }
  | StopAsk
  | RegisterAsk
  | { readonly kind: 'release-who' }
  | { readonly kind: 'release-answer'; readonly person: string }
  | { readonly kind: 'pin'; readonly person: string; readonly what: SignedInput }

/** What each question says on screen. */
const QUESTIONS: Readonly<Record<Exclude<Ask, RegisterAsk>['kind'], string>> = {
  note: 'The note, on one line',
  object: 'What do you see instead?',
  'finding-note': 'What and where, in a few words',
  'keep-why': 'Why is it right although it looks wrong?',
  'not-applicable-why': 'Why can it not be measured?',
  'correct-which': 'Which one? Its number',
  'correct-value': 'The right figure, in full',
  'correct-why': 'Why is it changed?',
  'reopen-why': 'Why go back?',
  'dispose-who': 'Initials of the lead who decides',
  'dispose-why': 'The reason',
  ...STOP_QUESTIONS,
  'release-who': 'Initials of the lead who releases it',
  'release-answer': 'What was put right?',
  pin: 'PIN',
}

const AT_ANY_PROMPT: readonly Ask['kind'][] = [
  ...(['note', 'correct-which', 'correct-value', 'correct-why'] as const),
  ...(['place-what', 'place-where', 'place-number', 'account-which', 'account-who'] as const),
]

/** The question that still stands. When a gate fell under it, coming out is asked first and the question is gone. */
export function standingAsk(prompt: Prompt, question: Ask | null): Ask | null {
  if (question === null || prompt.kind !== 'clear') return question
  if (question.kind === 'pin') return question.what.do === 'account' ? question : null
  return AT_ANY_PROMPT.includes(question.kind) ? question : null
}

/** What the question says, with the name of the one whose PIN is asked. */
export function questionText(question: Ask): string {
  if (isRegisterAsk(question)) return registerQuestion(question)
  return question.kind === 'pin'
    ? `PIN of ${question.person}. It is not shown while it is keyed.`
    : QUESTIONS[question.kind]
}

/** What is keyed now is never shown, printed or kept. */
export function isSecret(prompt: Prompt, question: Ask | null): boolean {
  return standingAsk(prompt, question)?.kind === 'pin'
}

export function hearAnswer(defs: Definitions, state: State, question: Ask, line: string): Heard {
  if (line.trim().toLowerCase() === 'back') return { talk: QUIET, input: null, say: ['Left as it was.'] }
  if (isRegisterAsk(question)) return hearRegisterAnswer(defs, state, question, line)
  if (isStopAsk(question)) return hearStopAnswer(defs, state, question, line)
  if (line.trim() === '')
    return { talk: { ask: question }, input: null, say: ['Nothing was keyed; back leaves this question.'] }
  switch (question.kind) {
    case 'note':
      return input({ do: 'note', text: line })
    case 'object':
      return input({ do: 'object', step: question.step, remark: line })
    case 'finding-note':
      return input({ do: 'observe', step: question.step, condition: question.condition, note: line })
    case 'keep-why':
      return input({ do: 'settle-doubt', choice: 'kept', why: line })
    case 'not-applicable-why':
      return input({ do: 'not-applicable', place: question.place, why: line })
    case 'correct-which': {
      const of = /^\d{1,3}$/.test(line.trim()) ? question.seqs[Number(line.trim()) - 1] : undefined
      if (of === undefined) return ask(question, `Key a number, 1 to ${question.seqs.length}, or back.`)
      const reading = findReading(state, of)
      return ask(
        { kind: 'correct-value', of },
        ...(reading === null ? [] : voidWarning(defs, state, reading.step)),
      )
    }
    case 'correct-value':
      return ask({ kind: 'correct-why', of: question.of, typed: line })
    case 'correct-why':
      return input({ do: 'correct', of: question.of, typed: question.typed, why: line })
    case 'reopen-why':
      return input({ do: 'reopen', step: question.step, why: line })
    case 'dispose-who':
      return ask({ kind: 'dispose-why', step: question.step, choice: question.choice, person: line })
    case 'dispose-why':
      return signing(defs, question.person, {
        do: 'dispose',
        step: question.step,
        choice: question.choice,
        person: question.person,
        why: line,
      })
    case 'release-who':
      return ask({ kind: 'release-answer', person: line })
    case 'release-answer':
      return signing(defs, question.person, { do: 'release-stop', person: question.person, answer: line })
    case 'pin':
      return {
        talk: QUIET,
        input: null,
        say: [],
        pin: { person: question.person, pin: line.trim(), what: question.what },
      }
  }
}
