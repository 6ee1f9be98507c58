// Releasing a STOP: a lead, not the one who raised it, with an answer to its cause. Every gate has fallen by then.
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { notAsked, words } from './refusals.ts'
import { signer } from './signature.ts'
import { openStop, type State } from './state.ts'

export function admitRelease(
  defs: Definitions,
  state: State,
  input: Extract<Input, { do: 'release-stop' }>,
): Result<readonly Body[]> {
  const stop = openStop(state)
  if (stop === null || stop.why === null) return notAsked()
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  if (person.role !== 'lead')
    return refuse('not-lead', `${person.id} is a ${person.role}, and only a lead releases a STOP.`)
  if (person.id === stop.by)
    return refuse('own-stop', `${person.id} raised this STOP, so another lead has to release it.`)
  const answer = words(input.answer, 'What was put right')
  return answer.ok ? ok([{ type: 'stop.released', person: person.id, answer: answer.value, signed }]) : answer
}
