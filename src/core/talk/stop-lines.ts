// What is told of a STOP to somebody in doubt: what it does, that one is open, and who lifts it.
import { neverReleased } from '../job/admit-stop.ts'
import type { Definitions } from '../job/definitions.ts'
import { openStop, type State } from '../job/state.ts'
import { barredFromRelease } from '../job/stop-causes.ts'
import { mayRelease, peopleText } from './may-sign.ts'

export const STOP_LINES = [
  'stop, or the key !, blocks this job at once, for everybody, and asks why only after.',
  'Every hold point falls with it: all come out, and all of it is shown anew before anybody goes near.',
  'It moves nothing on the machine: no driver stops and no valve shuts by it. Say STOP aloud as well.',
  'A lead who neither raised nor called it releases it. For some causes nobody does: the job is closed.',
  'What was measured stays on record.',
]

export function stopLine(state: State): string[] {
  return openStop(state) === null
    ? []
    : ['STOP is open: nobody goes in, and nothing goes on until it is released.']
}

export function releaseLines(defs: Definitions, state: State): string[] {
  const never = neverReleased(state)
  if (openStop(state) !== null && never !== null) return [never]
  const barred = [...barredFromRelease(state).people].map(([person, why]) => `Not ${person}, who ${why}.`)
  const leads = mayRelease(defs, state)
  const may = leads.length === 0 ? [] : [`May lift this one: ${peopleText(leads)}.`]
  return [
    'A lead releases a STOP, one who neither raised nor called it, with what was put right and their PIN.',
    ...(openStop(state) === null ? ['No STOP is open now.'] : [...may, ...barred]),
  ]
}
