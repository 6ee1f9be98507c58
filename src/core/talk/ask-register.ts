// Questions about temporary things: what was placed, where, its number; which one is accounted for and by whom.
import { type Definitions, stepById } from '../job/definitions.ts'
import type { Input, PlacedAt } from '../job/input.ts'
import { openThings, placesAsked, thingText } from '../job/register.ts'
import type { State } from '../job/state.ts'
import { ask, barredHere, type Heard, input, say, signing } from './heard.ts'
import { backDoes } from './one-back.ts'

interface OfStep {
  readonly step: string
  readonly do: 'done' | 'confirm'
  readonly placed: readonly PlacedAt[]
  /** What is asked about now. */
  readonly id: string
  readonly what: string
}

export type RegisterAsk =
  | { readonly kind: 'place-what' }
  | { readonly kind: 'place-where'; readonly what: string }
  | { readonly kind: 'place-number'; readonly what: string; readonly where: string }
  | ({ readonly kind: 'step-where' } & OfStep)
  | ({ readonly kind: 'step-number'; readonly where: string } & OfStep)
  | { readonly kind: 'account-which'; readonly seqs: readonly number[] }
  | { readonly kind: 'account-who'; readonly of: number; readonly first: string | null }
  | { readonly kind: 'hand-who' }
  | { readonly kind: 'hand-to'; readonly person: string }

const KINDS: Readonly<Record<RegisterAsk['kind'], null>> = {
  ...{ 'place-what': null, 'place-where': null, 'place-number': null, 'step-where': null },
  ...{ 'step-number': null, 'account-which': null, 'account-who': null, 'hand-who': null, 'hand-to': null },
}

export function isRegisterAsk(question: { readonly kind: string }): question is RegisterAsk {
  return Object.hasOwn(KINDS, question.kind)
}

export function registerQuestion(question: RegisterAsk): string {
  switch (question.kind) {
    case 'place-what':
      return 'What was placed: a blind, a plug, a block, a sling?'
    case 'place-where':
      return 'Where is it?'
    case 'step-where':
      return `Where is it now: ${question.what}?`
    case 'place-number':
    case 'step-number':
      return 'The number or tag on it; Enter: none'
    case 'account-which':
      return 'Which one was looked at? Its number'
    case 'account-who':
      return question.first === null
        ? 'Initials of the first who looked at it'
        : `Initials of a second person who looked at it, not ${question.first}`
    case 'hand-who':
      return 'Initials of the lead who hands on what stays open'
    case 'hand-to':
      return 'To whom, and what has to be done with it?'
  }
}

/** A step that is done: asks first for what it places. */
export function stepDone(
  defs: Definitions,
  state: State,
  step: string,
  what: 'done' | 'confirm',
  placed: readonly PlacedAt[] = [],
): Heard {
  const asked = placesAsked(state, stepById(defs, step)).find(({ id }) => !placed.some((p) => p.id === id))
  if (asked !== undefined) return ask({ kind: 'step-where', step, do: what, placed, ...asked })
  return input({ do: what, step, ...(placed.length === 0 ? {} : { placed }) })
}

export function askWhich(state: State): Heard {
  const open = openThings(state)
  if (open.length === 0) return say('Nothing that was placed is open.')
  return ask(
    { kind: 'account-which', seqs: open.map((t) => t.seq) },
    ...open.map((t, i) => `${i + 1} ${thingText(t)}${t.seenBy === null ? '' : `; looked at by ${t.seenBy}`}`),
  )
}

/** After the first signature for a thing the second is asked for at once. */
export function followUp(state: State, brought: Input): RegisterAsk | null {
  if (brought.do !== 'account') return null
  const thing = openThings(state).find((t) => t.seq === brought.of)
  return thing === undefined || thing.seenBy === null
    ? null
    : { kind: 'account-who', of: thing.seq, first: thing.seenBy }
}

export function hearRegisterAnswer(
  defs: Definitions,
  state: State,
  question: RegisterAsk,
  line: string,
): Heard {
  const text = line.trim()
  const isNumber = question.kind === 'place-number' || question.kind === 'step-number'
  if (text === '' && !isNumber) return ask(question, `Nothing was keyed; ${backDoes(question)}.`)
  // A driver of lines has no bare Enter: done stands for it, as at a step.
  const number = text === '' || /^done$/iu.test(text) ? null : text
  switch (question.kind) {
    case 'place-what':
      return ask({ kind: 'place-where', what: line })
    case 'place-where':
      return ask({ kind: 'place-number', what: question.what, where: line })
    case 'place-number':
      return input({ do: 'place', what: question.what, where: question.where, number })
    case 'step-where':
      return ask({ ...question, kind: 'step-number', where: line })
    case 'step-number': {
      const { id, where, step, do: what, placed } = question
      return stepDone(defs, state, step, what, [...placed, { id, where, number }])
    }
    case 'account-which': {
      const of = /^\d{1,3}$/.test(text) ? question.seqs[Number(text) - 1] : undefined
      const thing = openThings(state).find((t) => t.seq === of)
      return thing === undefined
        ? ask(question, `Key a number, 1 to ${question.seqs.length}, or back.`)
        : ask({ kind: 'account-who', of: thing.seq, first: thing.seenBy })
    }
    case 'account-who':
      return signing(defs, state, text, { do: 'account', of: question.of, person: text }, question)
    case 'hand-who':
      return (
        barredHere(defs, state, { do: 'hand-on', person: text, to: '' }, question) ??
        ask({ kind: 'hand-to', person: text })
      )
    case 'hand-to':
      return signing(
        defs,
        state,
        question.person,
        { do: 'hand-on', person: question.person, to: line },
        question,
      )
  }
}
