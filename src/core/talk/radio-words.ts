// A lead's word by radio, question by question, and the countersignature.
import { barsRadio, couldKeyRadio, mayKeyRadio } from '../job/admit-radio.ts'
import { type Definitions, stepById } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import { type OpenWord, openWords } from '../job/open-words.ts'
import type { State } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import type { Ask } from './ask.ts'
import { notNow } from './crew-words.ts'
import { ask, type Heard, say, signing } from './heard.ts'

interface Spoken {
  readonly step: string
  readonly choice: string
  readonly lead: string
  readonly said: string
}

type SpeakAsk =
  | ({ readonly kind: 'radio-lead' } & Pick<Spoken, 'step' | 'choice'>)
  | ({ readonly kind: 'radio-said' } & Omit<Spoken, 'said'>)
  | ({ readonly kind: 'radio-by' } & Spoken)
type AnswerAsk = { readonly kind: 'countersign-answer'; readonly person: string }
export type RadioAsk = SpeakAsk | AnswerAsk | { readonly kind: 'countersign-who' }

export const RADIO_QUESTIONS: Readonly<Record<RadioAsk['kind'], string>> = {
  'radio-lead': 'Initials of the lead who speaks',
  'radio-said': 'What was said, word for word',
  'radio-by': 'Initials of who heard it and keys it: on the job, and not who did the work',
  'countersign-who': 'Initials of the lead who said it',
  'countersign-answer': '1 I said so    2 It was not so',
}

export function hearRadio(defs: Definitions, state: State, question: RadioAsk, line: string): Heard {
  if (question.kind === 'countersign-who') return countersignWho(defs, state, line, question)
  if (question.kind === 'countersign-answer') return countersignAnswer(defs, state, question, line)
  return radioAnswer(defs, state, question, line)
}

/** What it takes is told before any of it is keyed; where nobody fits, `within` stands for another answer. */
export function radioWord(
  defs: Definitions,
  state: State,
  { step, choice }: Pick<Spoken, 'step' | 'choice'>,
  within: Ask,
): Heard {
  if (choice === 'concession')
    return ask(within, 'A concession is never given by radio: its lead signs here.')
  const keyers = mayKeyRadio(defs, state, { step, choice })
  return keyers.length === 0
    ? ask(
        within,
        `Not by radio yet: ${radioNeeds(defs, state, { step, choice })}`,
        'Or a lead comes and signs here. leave keeps the job until then.',
      )
    : ask(
        { kind: 'radio-lead', step, choice },
        `It needs ${list(keyers, 'or')}, on this job and not at the work: whoever of them heard it keys it at the end.`,
        'The job does not close before that lead has signed for it.',
      )
}

/** Who may key a lead's word, while nobody on the job may. */
export function radioNeeds(defs: Definitions, state: State, about: Pick<Spoken, 'step' | 'choice'>): string {
  const who = couldKeyRadio(defs, state, about)
  return who.length === 0
    ? 'nobody in the crew file may key it. Whoever keys it did not measure, is not at the keyboard and heard the lead say it.'
    : `${list(who, 'or')} may key what the lead says, having measured nothing. Whoever does comes onto the job first: back, then sign on.`
}

function radioAnswer(defs: Definitions, state: State, question: SpeakAsk, line: string): Heard {
  const { step, choice } = question
  switch (question.kind) {
    case 'radio-lead': {
      const barred = barsRadio(defs, state, { step, choice, lead: line })
      return barred === null
        ? ask({ kind: 'radio-said', step, choice, lead: line.trim().toUpperCase() })
        : ask(question, barred.say)
    }
    case 'radio-said':
      return ask({ ...question, kind: 'radio-by', said: line })
    case 'radio-by': {
      const { lead, said } = question
      return signing(defs, state, line, { do: 'radio', step, choice, lead, said, person: line }, question)
    }
  }
}

/** `16 What is to be done: accept, by radio from KH, keyed by ML: read again at the next opening`. */
export function wordLine(
  defs: Definitions,
  state: State,
  { step, choice, lead, said, by }: OpenWord,
): string {
  const { number, step: decide } = stepById(defs, step)
  const found = state.findings[step]
  const noted = found === undefined ? '' : ` (found: ${found})`
  return `${number} ${decide.title}${noted}: ${choice}, by radio from ${lead}, keyed by ${by}: ${said}`
}

export function countersignWord(state: State, prompt: Prompt): Heard {
  const wait = notNow(state, prompt)
  if (wait !== null) return say(wait)
  return openWords(state).length === 0
    ? say('Nothing that was said by radio is open.')
    : ask({ kind: 'countersign-who' })
}

/** What is signed for is shown before the answer is asked. */
export function countersignWho(defs: Definitions, state: State, line: string, within?: Ask): Heard {
  const person = line.trim().toUpperCase()
  const mine = openWords(state).filter((word) => word.lead === person)
  if (mine.length === 0) {
    const leads = [...new Set(openWords(state).map((word) => word.lead))].join(', ')
    const only = `Only the lead who said it signs for it: ${leads}.`
    return within === undefined ? say(only) : ask(within, only)
  }
  return ask({ kind: 'countersign-answer', person }, ...mine.map((word) => wordLine(defs, state, word)))
}

function countersignAnswer(defs: Definitions, state: State, question: AnswerAsk, line: string): Heard {
  const answer = line.trim()
  if (answer !== '1' && answer !== '2') return ask(question, 'Key 1 or 2.')
  const { person } = question
  return signing(defs, state, person, { do: 'countersign', person, agrees: answer === '1' }, question)
}
