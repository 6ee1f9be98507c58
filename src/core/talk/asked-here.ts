// Whether a line is a question wherever the job stands: what is folded on a low screen is answered by none of it, so it is heard there too.
import type { Definitions } from '../job/definitions.ts'
import { next } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { secrecyOf, standingAsk } from './ask.ts'
import { askedAt, askedWithin } from './asked.ts'
import type { Talk } from './heard.ts'

/** Asked of the hidden machine, and no answer: the foot offers them on every side. */
const OF_PRACTICE = /^\s*(?:(?:look|measure)(?:\s+quick(?:ly)?)?|hint)\s*$/i

/** False where it could be an answer, or any of a PIN. */
export function isAskedHere(defs: Definitions, state: State, { ask }: Talk, line: string): boolean {
  const prompt = next(defs, state)
  const question = standingAsk(prompt, ask)
  if (question !== null) return askedWithin(defs, question, line) !== null
  if (ask !== null && secrecyOf(prompt, ask) !== 'open') return false
  if (state.practice !== null && OF_PRACTICE.test(line)) return true
  return askedAt(defs, state, prompt, line) !== null
}
