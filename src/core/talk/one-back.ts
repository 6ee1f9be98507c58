// The question before one of several: `back` goes there, and what was keyed for those before it stays keyed. Where there is none, or the one
// before is the prompt itself with its choices, `back` leaves.
import type { Ask, PlainAsk } from './ask.ts'

/** Null: back leaves the question. */
export function questionBefore(question: Ask): PlainAsk | null {
  switch (question.kind) {
    case 'pin':
      return question.of ?? null
    case 'dispose-who': {
      const { step, among } = question
      return among === undefined ? null : { kind: 'finding-choice', step, offers: among }
    }
    case 'dispose-why': {
      const { why, person, kind: _, ...rest } = question
      return why === undefined ? { ...rest, kind: 'dispose-who' } : { ...rest, kind: 'dispose-why', person }
    }
    case 'concession-authority': {
      const { why: _, ...rest } = question
      return { ...rest, kind: 'dispose-why' }
    }
    case 'concession-until': {
      const { authority: _, ...rest } = question
      return { ...rest, kind: 'concession-authority' }
    }
    case 'concession-from':
    case 'concession-far': {
      const { step, choice, person, why, authority, among } = question
      return {
        kind: 'concession-until',
        step,
        choice,
        person,
        why,
        authority,
        ...(among === undefined ? {} : { among }),
      }
    }
    case 'deviation-why':
      return { kind: 'deviation-what', step: question.step }
    case 'deviation-authority':
      return { kind: 'deviation-why', step: question.step, what: question.what }
    case 'deviation-until': {
      const { authority: _, ...rest } = question
      return { ...rest, kind: 'deviation-authority' }
    }
    case 'deviation-who': {
      const { until: _, ...rest } = question
      return { ...rest, kind: 'deviation-until' }
    }
    case 'radio-lead':
      return { kind: 'dispose-who', step: question.step, choice: question.choice }
    case 'radio-said':
      return { kind: 'radio-lead', step: question.step, choice: question.choice }
    case 'radio-by': {
      const { said: _, ...rest } = question
      return { ...rest, kind: 'radio-said' }
    }
    case 'not-applicable-who':
      return { kind: 'not-applicable-why', place: question.place }
    case 'release-answer':
      return { kind: 'release-who' }
    case 'close-first':
      return { kind: 'close-who' }
    case 'stop-caller':
    case 'stop-caller-nobody':
    case 'stop-caller-too':
      return { kind: 'stop-why', of: question.of, cause: question.cause }
    case 'hand-to':
      return { kind: 'hand-who' }
    case 'place-where':
      return { kind: 'place-what' }
    case 'place-number':
      return { kind: 'place-where', what: question.what }
    case 'step-number': {
      const { where: _, ...rest } = question
      return { ...rest, kind: 'step-where' }
    }
    default:
      return null
  }
}

/** What the word does at this question, said beside it. */
export function backDoes(question: Ask): string {
  return questionBefore(question) === null ? 'back leaves this question' : 'back goes to the question before'
}
