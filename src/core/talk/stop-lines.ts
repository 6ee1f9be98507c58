// What is told of a STOP to somebody in doubt: what it does, that one is open, and who lifts it.
import { neverReleased } from '../job/admit-stop.ts'
import type { Definitions } from '../job/definitions.ts'
import { openStop, type State } from '../job/state.ts'
import { barredFromRelease } from '../job/stop-causes.ts'
import { list } from '../lib/wording.ts'
import { mayRelease, peopleText } from './may-sign.ts'

export const STOP_LINES = [
  'stop, or the key !, blocks this job at once, for everybody, and asks why only after.',
  'Every hold point falls with it: all come out, and all of it is shown anew before anybody goes near.',
  'It moves nothing on the machine: no driver stops and no valve shuts by it. Say STOP aloud as well.',
  'A lead who neither raised nor called it releases it. For some causes nobody does: the job is closed.',
  'What was measured stays on record.',
]

export function stopLine(state: State): string[] {
  return openStop(state) === null ? [] : [OPEN]
}

/** Said beside danger, where nothing is blocked yet. */
export const SHEET =
  'The word safe shows the whole make-safe sheet; the word stop, or the key !, blocks the job.'
export const COME_OUT = 'FIRST: come out, everybody, and stand clear. Say STOP.'

const STOPPED_SHEET = 'The word safe shows the whole make-safe sheet.'
const STOPPED_OUT =
  'FIRST: come out, everybody, and stand clear. STOP is on record already: say it aloud as well.'

/** The same lines where a STOP is open. `isDanger`: that it is, who keyed and called it, and who may release it, behind whom to call. */
export function underStop(
  defs: Definitions,
  state: State,
  lines: readonly string[],
  isDanger: boolean,
): string[] {
  const stop = openStop(state)
  if (stop === null) return [...lines]
  if (!isDanger) return lines.map((line) => (line === SHEET ? STOPPED_SHEET : line))
  const called = stop.calledBy.length === 0 ? '' : `, called by ${list(stop.calledBy)}`
  const never = neverReleased(state)
  const leads = mayRelease(defs, state)
  const may =
    never ??
    (leads.length === 0
      ? 'No lead of the crew file may release it.'
      : `May release it: ${peopleText(leads)}.`)
  const told = [
    `The job is STOPPED: keyed by ${stop.by ?? 'nobody known'}${stop.callerUnknown ? ', its caller not known' : called}. ${may}`,
  ]
  const rest = lines.flatMap((line) => {
    if (line === COME_OUT) return [STOPPED_OUT]
    if (line === SHEET) return [STOPPED_SHEET]
    return line === OPEN ? [] : [line]
  })
  const call = rest.findIndex((line) => line.startsWith('Call:'))
  return [...rest.slice(0, call + 1), ...told, ...rest.slice(call + 1)]
}

const OPEN = 'STOP is open: nobody goes in, and nothing goes on until it is released.'

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
