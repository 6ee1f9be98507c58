// The words by which people come, go and hand over. Abandoned half-way, none of them changes anything.
import { barsTakingOver } from '../job/admit-crew.ts'
import { type Definitions, personById } from '../job/definitions.ts'
import { handOverLines } from '../job/hand-over.ts'
import type { Prompt } from '../job/next.ts'
import { openStop, type State } from '../job/state.ts'
import type { Ask } from './ask.ts'
import { ask, type Heard, input, type SignedInput, say, signing } from './heard.ts'

export type CrewAsk =
  | { readonly kind: 'come-on' }
  | { readonly kind: 'sign-off' }
  | { readonly kind: 'hand-over-to'; readonly from: string; readonly fromProved: boolean }

export const CREW_QUESTIONS: Readonly<Record<CrewAsk['kind'], string>> = {
  'come-on': 'Initials of who comes onto the job',
  'sign-off': 'Initials of who goes off the job',
  'hand-over-to': 'Initials of who takes over',
}

export function hearCrew(defs: Definitions, state: State, question: CrewAsk, line: string): Heard {
  return question.kind === 'hand-over-to'
    ? handOverTo(defs, state, question, line)
    : signing(defs, state, line, { do: question.kind, person: line }, question)
}

/** Why people may not come, go, hand over or countersign at this prompt, in one sentence, or null. */
export function notNow(state: State, prompt: Prompt): string | null {
  if (openStop(state) !== null) return 'The job is under STOP: that waits until it is released.'
  if (state.doer === null) return 'Somebody signs on at the keyboard first: key your initials.'
  return prompt.kind === 'clear'
    ? 'Come out and stand clear first, and say so in words; this waits until then.'
    : null
}

export function peopleWord(state: State, prompt: Prompt, what: 'come-on' | 'sign-off'): Heard {
  const wait = notNow(state, prompt)
  return wait === null ? ask({ kind: what }) : say(wait)
}

/** The summary first, on one sheet with the head of the log; then who goes signs, then who comes. */
export function handOver(defs: Definitions, state: State, prompt: Prompt): Heard {
  const wait = notNow(state, prompt)
  const from = state.doer
  if (wait !== null || from === null) return say(wait ?? '')
  const lines = ['HAND-OVER', ...handOverLines(defs, state)]
  const keyless = personById(defs, from)?.pin === undefined
  const question: Ask = keyless
    ? { kind: 'hand-over-to', from, fromProved: false }
    : { kind: 'pin', person: from, what: { do: 'hand-over', from, fromProved: false, person: '' } }
  return { ...ask(question, ...lines), withHead: true }
}

function handOverTo(
  defs: Definitions,
  state: State,
  question: Extract<Ask, { kind: 'hand-over-to' }>,
  line: string,
): Heard {
  const barred = barsTakingOver(defs, state, line)
  if (barred !== null) return ask(question, barred.say)
  const { from, fromProved } = question
  return signing(defs, state, line, { do: 'hand-over', from, fromProved, person: line }, question)
}

/** What comes of a PIN that fitted: the input is brought, or, of a hand-over, the other one is asked. */
export function proven(what: SignedInput): Heard {
  return what.do === 'hand-over' && what.person === ''
    ? ask({ kind: 'hand-over-to', from: what.from, fromProved: true })
    : input({ ...what, proved: true })
}
