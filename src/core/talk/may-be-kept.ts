// A line keyed while sides are still to be turned over: kept until the question is up, where nothing hangs on its being read first.
import type { Definitions } from '../job/definitions.ts'
import { next, type Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { secrecyOf, standingAsk } from './ask.ts'
import { takesOf } from './asked.ts'
import type { Talk } from './heard.ts'

/** What is measured and looked at. Of a hold point, a STOP or a plate nothing is ever kept: each is answered with all of it read. */
const KEPT: readonly Prompt['kind'][] = ['read', 'observe', 'pick', 'confirm', 'decide']

/**
 * `wasAsked`: the question had been up before, and only an answer to one in plain words is being turned over. Else a figure to be read
 * and words are kept, and no number of a choice that nobody has seen. Figures that may be a PIN never are.
 */
export function mayBeKept(
  defs: Definitions,
  state: State,
  { ask }: Talk,
  line: string,
  wasAsked: boolean,
): boolean {
  const prompt = next(defs, state)
  if (!KEPT.includes(prompt.kind) || secrecyOf(prompt, ask) !== 'open') return false
  if (line.trim() === '' || /^\d{4,}$/.test(line.trim())) return false
  const question = standingAsk(prompt, ask)
  if (wasAsked) return true
  return question === null ? prompt.kind === 'read' : takesOf(question) === 'words'
}
