// Questions that take more than one line. `back` leaves any of them; `stop` was heard before they are.
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import { hasPinBehind } from '../job/signature.ts'
import type { State } from '../job/state.ts'
import { FILE_QUESTIONS, type FileAsk, hearFileAnswer, isFileAsk } from './ask-file.ts'
import { hearRegisterAnswer, isRegisterAsk, type RegisterAsk, registerQuestion } from './ask-register.ts'
import { hearStopAnswer, isStopAsk, STOP_QUESTIONS, type StopAsk } from './ask-stop.ts'
import { type CorrectAsk, hearCorrection } from './correct.ts'
import { CREW_QUESTIONS, type CrewAsk, hearCrew } from './crew-words.ts'
import { DECIDE_QUESTIONS, type DecideAsk, hearDecision } from './decide.ts'
import { type DoubtAsk, hearDoubt } from './doubt.ts'
import { type FigureSureAsk, figureSureText, hearFigureSure } from './figure-sure.ts'
import { ask, barredHere, type Heard, input, QUIET, type SignedInput, signing } from './heard.ts'
import { hearLeaveSure, LEAVE_SURE, type LeaveAsk } from './leave-sure.ts'
import { hearNumber, isNumberAsk, type NumberAsk, numberText } from './number-sure.ts'
import { backDoes, questionBefore } from './one-back.ts'
import { hearPlacesSure, type PlacesSureAsk, placesSureText } from './places-sure.ts'
import { hearNotice, POINT_QUESTIONS, type PointAsk } from './points.ts'
import { hearRadio, RADIO_QUESTIONS, type RadioAsk } from './radio-words.ts'
import { isReason } from './read-again.ts'
import { hearSheetAnswer, isSheetAsk, SHEET_QUESTIONS, type SheetAsk } from './sheet-words.ts'
import { hearTagSure, TAG_SURE, type TagSureAsk } from './tag-sure.ts'
import { wordIn } from './words.ts'

type EvidenceInput = Extract<SignedInput, { readonly do: 'evidence' }>

/** What is asked in a line of its own, but for what a word keyed there means. */
export type PlainAsk =
  | { readonly kind: 'note' }
  | { readonly kind: 'object'; readonly step: string }
  | {
      readonly kind: 'finding-note'
      readonly step: string
      readonly condition: string
      readonly also?: readonly string[]
    }
  | { readonly kind: 'keep-why' }
  | { readonly kind: 'not-applicable-why'; readonly place: string }
  | { readonly kind: 'not-applicable-who'; readonly place: string; readonly why: string }
  | CorrectAsk
  | DoubtAsk
  | { readonly kind: 'reopen-why'; readonly step: string }
  | DecideAsk
  | PointAsk
  | StopAsk
  | RegisterAsk
  | FileAsk
  | { readonly kind: 'ask-again-sure'; readonly step: string }
  | LeaveAsk
  | FigureSureAsk
  | NumberAsk
  | PlacesSureAsk
  | TagSureAsk
  | { readonly kind: 'release-who' }
  | { readonly kind: 'release-answer'; readonly person: string }
  | RadioAsk
  | SheetAsk
  | CrewAsk
  | {
      readonly kind: 'pin'
      readonly person: string
      readonly what: SignedInput
      /** The last question before it; left out where initials at a prompt were all. */
      readonly of?: PlainAsk
    }

/** `line` is a word that works at any prompt, or reads like a question, keyed where `of` asks for words. */
export interface WordMeant {
  readonly kind: 'word-meant'
  readonly line: string
  readonly of: PlainAsk
}

export type Ask = PlainAsk | WordMeant

/** What each question says on screen. */
const QUESTIONS: Readonly<
  Record<Exclude<PlainAsk, RegisterAsk | FigureSureAsk | NumberAsk | PlacesSureAsk>['kind'], string>
> = {
  note: 'The note, on one line',
  object: 'What do you see instead?',
  'finding-note': 'What and where, in a few words',
  'keep-why': 'Why is it right although it looks wrong?',
  'not-applicable-why': 'Why can it not be measured?',
  'not-applicable-who': 'Initials of the lead who signs for it',
  'correct-which': 'Which one? Its number',
  'correct-why': 'Why was it wrong? In words; what is right is asked after',
  'correct-value': 'The right figure, in full',
  'correct-kept': 'Why is it right although it looks wrong?',
  'take-back-why': 'Why can it be measured after all?',
  'finding-why': 'Why was it wrong? In words; what is right is asked after',
  'finding-which': 'What is right? Its number',
  'finding-changed-note': 'What and where, in a few words',
  'evidence-why': 'Why was it wrong? In words; what is right is asked after',
  'doubt-which': 'Which instrument is out of calibration? Its number in the list',
  'doubt-why': 'What was found wrong with it?',
  'doubt-says': 'Who says so? Initials or a name, a laboratory or a paper',
  'reopen-why': 'Why go back?',
  ...RADIO_QUESTIONS,
  ...SHEET_QUESTIONS,
  ...CREW_QUESTIONS,
  ...DECIDE_QUESTIONS,
  ...POINT_QUESTIONS,
  'ask-again-sure': 'Take it back? 1 or 2',
  'tag-sure': TAG_SURE,
  'leave-sure': LEAVE_SURE,
  ...STOP_QUESTIONS,
  ...FILE_QUESTIONS,
  'release-who': 'Initials of the lead who releases it',
  'release-answer': 'What was put right, or looked at to be sure?',
  pin: 'PIN',
}

const NO_PIN =
  'A PIN is 4 to 12 figures: this was none, and counts as no try. back, as far as the initials, for another.'

const AT_ANY_PROMPT: readonly Ask['kind'][] = [
  'note',
  ...([
    'correct-which',
    'correct-why',
    'correct-value',
    'correct-kept',
    'take-back-why',
    'evidence-why',
  ] as const),
  ...(['finding-which', 'finding-changed-note', 'finding-why'] as const),
  ...(['doubt-which', 'doubt-why', 'doubt-says'] as const),
  ...(['sheet-which', 'sheet-again', 'sheet-why'] as const),
  ...(['place-what', 'place-where', 'place-number', 'account-which', 'account-who'] as const),
]

/** The question that still stands. When a gate fell under it, coming out is asked first and the question is gone. */
export function standingAsk(prompt: Prompt, question: Ask | null): Ask | null {
  if (question?.kind === 'word-meant') return standingAsk(prompt, question.of) === null ? null : question
  if (question === null || AT_ANY_PROMPT.includes(question.kind)) return question
  if (question.kind === 'pin' && question.what.do === 'account') return question
  if (prompt.kind === 'clear') return null
  if (question.kind === 'tag-sure') return prompt.kind === 'tag' ? question : null
  if (question.kind === 'places-sure')
    return prompt.kind === 'read' && prompt.place.key === question.place ? question : null
  const isFigure = question.kind === 'figure-sure' || isNumberAsk(question)
  if (!isFigure && (question.kind !== 'pin' || question.what.do !== 'evidence')) return question
  // A witness signs for what is shown at that moment: when any of it fell, there is nothing to sign. A figure is of its own line only.
  const { step, item } = isFigure ? question : (question.what as EvidenceInput)
  const isAsked = prompt.kind === 'evidence' && prompt.gate.id === step && prompt.item.key === item
  return isAsked ? question : null
}

/** What the question says, with the name of the one whose PIN is asked. */
export function questionText(question: Ask): string {
  if (isRegisterAsk(question)) return registerQuestion(question)
  if (question.kind === 'word-meant')
    return wordIn(question.line) === null
      ? 'That reads like a question, and words were asked for. Is it what is to be put down?'
      : `${question.line.trim()} is a word here, and words were asked for. Is it what is to be put down?`
  if (question.kind === 'figure-sure') return figureSureText(question)
  if (question.kind === 'places-sure') return placesSureText(question)
  if (isNumberAsk(question)) return numberText(question)
  if (question.kind === 'sheet-sure') return `${question.why} ${QUESTIONS[question.kind]}`
  if (question.kind === 'dispose-why' && question.why !== undefined) return 'By when is it to be read again?'
  if (question.kind === 'evidence-why')
    return `Why was ${question.shown} wrong? In words; what is right is asked after`
  return question.kind === 'pin'
    ? `PIN of ${question.person}. It is not shown while it is keyed.`
    : QUESTIONS[question.kind]
}

/**
 * What of the line being keyed may be seen, printed or kept: `open` all of it, `hidden` nothing, `digits` nothing as long
 * as it is only figures: where the question for a PIN fell under the one who keys it, eyes on the keys. `initials` is where those are
 * asked: figures alone are none, and more likely a PIN keyed too soon; nor is a PIN seen that was keyed behind them.
 */
export type Secrecy = 'open' | 'hidden' | 'digits' | 'initials'

export function secrecyOf(prompt: Prompt, question: Ask | null): Secrecy {
  if (question?.kind !== 'pin')
    return wantsInitials(prompt, standingAsk(prompt, question)) ? 'initials' : 'open'
  return standingAsk(prompt, question) === null ? 'digits' : 'hidden'
}

/** Where initials are asked a PIN is keyed too soon: after a job is taken up, or one line ahead. */
function wantsInitials(prompt: Prompt, question: Ask | null): boolean {
  if (question !== null) return INITIALS.includes(question.kind)
  if (prompt.kind === 'evidence') return prompt.item.evidence.kind === 'witness'
  return ['sign-on', 'point', 'review', 'countersign', 'sheet-sign'].includes(prompt.kind)
}

const INITIALS: readonly Ask['kind'][] = [
  ...(['not-applicable-who', 'release-who', 'dispose-who', 'deviation-who', 'account-who'] as const),
  ...(['radio-lead', 'radio-by', 'countersign-who', 'come-on', 'sign-off', 'hand-over-to'] as const),
]

/** Whether a line is hidden at this degree; a PIN is figures and nothing else. */
export function isHidden(secrecy: Secrecy, line: string): boolean {
  if (secrecy === 'open' || secrecy === 'hidden') return secrecy === 'hidden'
  return /^[\d\s]*$/.test(line) || (secrecy === 'initials' && hasPinBehind(line))
}

const LEFT: Heard = { talk: QUIET, input: null, say: ['Left as it was.'] }

export function hearAnswer(defs: Definitions, state: State, question: PlainAsk, line: string): Heard {
  if (line.trim().toLowerCase() === 'back') {
    const before = questionBefore(question)
    return before === null ? LEFT : ask(before)
  }
  if (isRegisterAsk(question)) return hearRegisterAnswer(defs, state, question, line)
  if (isStopAsk(question)) return hearStopAnswer(defs, state, question, line)
  if (isFileAsk(question)) return hearFileAnswer(question, line)
  if (line.trim() === '')
    return { talk: { ask: question }, input: null, say: [`Nothing was keyed; ${backDoes(question)}.`] }
  if (isSheetAsk(question)) return hearSheetAnswer(defs, state, question, line)
  switch (question.kind) {
    case 'note':
      return input({ do: 'note', text: line })
    case 'object':
      return input({ do: 'object', step: question.step, remark: line })
    case 'finding-note': {
      const { kind: _kind, ...found } = question
      return input({ do: 'observe', ...found, note: line })
    }
    case 'keep-why':
      return input({ do: 'settle-doubt', choice: 'kept', why: line })
    case 'not-applicable-why':
      return asKind(stepById(defs, question.place.split('.')[0] ?? ''), 'read').step.not_applicable === 'lead'
        ? ask({ kind: 'not-applicable-who', place: question.place, why: line })
        : input({ do: 'not-applicable', place: question.place, why: line })
    case 'not-applicable-who': {
      const { place, why } = question
      return signing(defs, state, line, { do: 'not-applicable', place, why, person: line }, question)
    }
    case 'correct-which':
    case 'correct-why':
    case 'correct-value':
    case 'correct-kept':
    case 'take-back-why':
    case 'finding-which':
    case 'finding-changed-note':
    case 'finding-why':
    case 'evidence-why':
      return hearCorrection(defs, state, question, line)
    case 'doubt-which':
    case 'doubt-why':
    case 'doubt-says':
      return hearDoubt(defs, state, question, line)
    case 'reopen-why':
      return isReason(line)
        ? input({ do: 'reopen', step: question.step, why: line })
        : ask(question, 'Going back needs words: type a short sentence.')
    case 'finding-choice':
    case 'dispose-who':
    case 'dispose-why':
    case 'concession-authority':
    case 'concession-until':
    case 'concession-from':
    case 'concession-far':
    case 'deviation-which':
    case 'deviation-what':
    case 'deviation-why':
    case 'deviation-authority':
    case 'deviation-until':
    case 'deviation-who':
      return hearDecision(defs, state, question, line)
    case 'notice-which':
    case 'notice-whom':
      return hearNotice(defs, question, line)
    case 'ask-again-sure':
      if (/^(?:1|yes)$/i.test(line.trim())) return input({ do: 'ask-again', step: question.step })
      return line.trim() === '2' ? LEFT : ask(question, 'Key 1 to take it back, 2 to leave it as it is.')
    case 'leave-sure':
      return hearLeaveSure(defs, state, question, line)
    case 'tag-sure':
      return hearTagSure(defs, question, line)
    case 'places-sure':
      return hearPlacesSure(question, line)
    case 'figure-sure':
      return hearFigureSure(question, line)
    case 'number-sure':
    case 'number-why':
    case 'number-again':
      return hearNumber(question, line)
    case 'release-who':
      return (
        barredHere(defs, state, { do: 'release-stop', person: line, answer: '' }, question) ??
        ask({ kind: 'release-answer', person: line })
      )
    case 'release-answer': {
      const { person } = question
      return signing(defs, state, person, { do: 'release-stop', person, answer: line }, question)
    }
    case 'radio-lead':
    case 'radio-said':
    case 'radio-by':
    case 'countersign-who':
    case 'countersign-answer':
      return hearRadio(defs, state, question, line)
    case 'come-on':
    case 'sign-off':
    case 'hand-over-to':
      return hearCrew(defs, state, question, line)
    case 'pin':
      // Nothing else can be one, so it is no wrong one either: more likely the initials of somebody else.
      if (!/^\d{4,12}$/.test(line.trim())) return ask(question, NO_PIN)
      return {
        talk: QUIET,
        input: null,
        say: [],
        pin: { person: question.person, pin: line.trim(), what: question.what, asked: question },
      }
  }
}
