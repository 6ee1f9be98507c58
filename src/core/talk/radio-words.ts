// A lead's word by radio, question by question, and the countersignature.
import { barsRadio } from '../job/admit-radio.ts'
import { type Definitions, stepById } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import { type OpenWord, openWords } from '../job/open-words.ts'
import type { State } from '../job/state.ts'
import type { Ask } from './ask.ts'
import { notNow } from './crew-words.ts'
import { ask, type Heard, say, signing } from './heard.ts'

type RadioAsk = Extract<Ask, { kind: 'radio-lead' | 'radio-said' | 'radio-by' }>

export function radioAnswer(defs: Definitions, state: State, question: RadioAsk, line: string): Heard {
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
      return signing(defs, line, { do: 'radio', step, choice, lead, said, person: line })
    }
  }
}

/** `16 What is to be done: accept, by radio from KH, keyed by ML: read again at the next opening`. */
export function wordLine(defs: Definitions, { step, choice, lead, said, by }: OpenWord): string {
  const { number, step: decide } = stepById(defs, step)
  return `${number} ${decide.title}: ${choice}, by radio from ${lead}, keyed by ${by}: ${said}`
}

export function countersignWord(state: State, prompt: Prompt): Heard {
  const wait = notNow(state, prompt)
  if (wait !== null) return say(wait)
  return openWords(state).length === 0
    ? say('Nothing that was said by radio is open.')
    : ask({ kind: 'countersign-who' })
}

/** What is signed for is shown before the answer is asked. */
export function countersignWho(defs: Definitions, state: State, line: string): Heard {
  const person = line.trim().toUpperCase()
  const mine = openWords(state).filter((word) => word.lead === person)
  if (mine.length === 0) {
    const leads = [...new Set(openWords(state).map((word) => word.lead))].join(', ')
    return say(`Only the lead who said it signs for it: ${leads}.`)
  }
  return ask({ kind: 'countersign-answer', person }, ...mine.map((word) => wordLine(defs, word)))
}

export function countersignAnswer(
  defs: Definitions,
  question: Extract<Ask, { kind: 'countersign-answer' }>,
  line: string,
): Heard {
  const answer = line.trim()
  if (answer !== '1' && answer !== '2') return ask(question, 'Key 1 or 2.')
  const { person } = question
  return signing(defs, person, { do: 'countersign', person, agrees: answer === '1' })
}
