// Questions that take more than one line. `back` leaves any of them; `stop` was heard before they are.
import { findReading } from '../job/admit-change.ts'
import type { Definitions } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { handOverTo } from './crew-words.ts'
import { ask, type Heard, input, QUIET, type SignedInput, signing, voidWarning } from './heard.ts'
import { countersignAnswer, countersignWho, radioAnswer } from './radio-words.ts'

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
  | { readonly kind: 'release-who' }
  | { readonly kind: 'release-answer'; readonly person: string }
  | { readonly kind: 'radio-lead'; readonly step: string; readonly choice: string }
  | { readonly kind: 'radio-said'; readonly step: string; readonly choice: string; readonly lead: string }
  | {
      readonly kind: 'radio-by'
      readonly step: string
      readonly choice: string
      readonly lead: string
      readonly said: string
    }
  | { readonly kind: 'countersign-who' }
  | { readonly kind: 'countersign-answer'; readonly person: string }
  | { readonly kind: 'come-on' }
  | { readonly kind: 'sign-off' }
  | { readonly kind: 'hand-over-to'; readonly from: string; readonly fromProved: boolean }
  | { readonly kind: 'pin'; readonly person: string; readonly what: SignedInput }

/** What each question says on screen. */
const QUESTIONS: Readonly<Record<Ask['kind'], string>> = {
  note: 'The note, on one line',
  object: 'What do you see instead?',
  'finding-note': 'What and where, in a few words',
  'keep-why': 'Why is it right although it looks wrong?',
  'not-applicable-why': 'Why can it not be measured?',
  'correct-which': 'Which one? Its number',
  'correct-value': 'The right figure, in full',
  'correct-why': 'Why is it changed?',
  'reopen-why': 'Why go back?',
  'dispose-who': 'Initials of the lead who decides; radio, if a lead only says it by radio',
  'radio-lead': 'Initials of the lead who speaks',
  'radio-said': 'What was said, word for word',
  'radio-by': 'Initials of who heard it and keys it: on the job, and not who did the work',
  'countersign-who': 'Initials of the lead who said it',
  'countersign-answer': '1 I said so    2 It was not so',
  'dispose-why': 'The reason',
  'release-who': 'Initials of the lead who releases it',
  'release-answer': 'What was put right?',
  'come-on': 'Initials of who comes onto the job',
  'sign-off': 'Initials of who goes off the job',
  'hand-over-to': 'Initials of who takes over',
  pin: 'PIN',
}

const AT_ANY_PROMPT: readonly Ask['kind'][] = ['note', 'correct-which', 'correct-value', 'correct-why']

/** The question that still stands. When a gate fell under it, coming out is asked first and the question is gone. */
export function standingAsk(prompt: Prompt, question: Ask | null): Ask | null {
  if (question === null || AT_ANY_PROMPT.includes(question.kind)) return question
  if (prompt.kind === 'clear') return null
  if (question.kind !== 'pin' || question.what.do !== 'evidence') return question
  // A witness signs for what is shown at that moment: when any of it fell, there is nothing to sign.
  const { step, item } = question.what
  const isAsked = prompt.kind === 'evidence' && prompt.gate.id === step && prompt.item.key === item
  return isAsked ? question : null
}

/** What the question says, with the name of the one whose PIN is asked. */
export function questionText(question: Ask): string {
  return question.kind === 'pin'
    ? `PIN of ${question.person}. It is not shown while it is keyed.`
    : QUESTIONS[question.kind]
}

/**
 * What of the line being keyed may be seen, printed or kept: `open` all of it, `hidden` nothing, `digits` nothing as long
 * as it is only figures. The last is where the question for a PIN fell under the one who keys it, eyes on the keys.
 */
export type Secrecy = 'open' | 'hidden' | 'digits'

export function secrecyOf(prompt: Prompt, question: Ask | null): Secrecy {
  if (question?.kind !== 'pin') return 'open'
  return standingAsk(prompt, question) === null ? 'digits' : 'hidden'
}

/** Whether a line is hidden at this degree; a PIN is figures and nothing else. */
export function isHidden(secrecy: Secrecy, line: string): boolean {
  return secrecy === 'hidden' || (secrecy === 'digits' && /^[\d\s]*$/.test(line))
}

export function hearAnswer(defs: Definitions, state: State, question: Ask, line: string): Heard {
  if (line.trim().toLowerCase() === 'back') return { talk: QUIET, input: null, say: ['Left as it was.'] }
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
      if (/^(by )?radio$/i.test(line.trim()))
        return ask({ kind: 'radio-lead', step: question.step, choice: question.choice })
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
    case 'radio-lead':
    case 'radio-said':
    case 'radio-by':
      return radioAnswer(defs, state, question, line)
    case 'countersign-who':
      return countersignWho(defs, state, line)
    case 'countersign-answer':
      return countersignAnswer(defs, question, line)
    case 'come-on':
      return signing(defs, line, { do: 'come-on', person: line })
    case 'sign-off':
      return signing(defs, line, { do: 'sign-off', person: line })
    case 'hand-over-to':
      return handOverTo(defs, state, question, line)
    case 'pin':
      return {
        talk: QUIET,
        input: null,
        say: [],
        pin: { person: question.person, pin: line.trim(), what: question.what },
      }
  }
}
