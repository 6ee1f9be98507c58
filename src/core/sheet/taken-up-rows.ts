// A job that is taken up, on one sheet: what was done, what fell while nobody watched, and what comes first now.
import type { Definitions } from '../job/definitions.ts'
import { gateState, gatesOf } from '../job/gate.ts'
import { current } from '../job/next.ts'
import { openStop, type State } from '../job/state.ts'
import { takenLines } from '../talk/last-taken.ts'
import { doneLine, timeLines } from '../talk/where.ts'
import { type Row, row } from './block.ts'

/** Hold points that are named; of the rest it is said how many there are. */
const MOST_NAMED = 3

/** `state` is the one after the entry. */
export function takenUpRows(defs: Definitions, state: State): Row[] {
  return [
    row('Taken up again. Hold points will be asked again before the next step that needs them.'),
    ...[doneLine(defs, state), ...takenLines(defs, state)].map((text) => row(`  ${text}`)),
    row(`  ${voidText(defs, state)}`, 'caution'),
    row(`  ${nextText(defs, state)}`, 'strong'),
    ...timeLines(defs, state).map((text) => row(`  ${text}`, 'faint')),
  ]
}

function voidText(defs: Definitions, state: State): string {
  const fell = gatesOf(defs).filter(({ id }) => gateState(state, id).status === 'closed')
  const shown = gatesOf(defs).filter(({ id }) => gateState(state, id).struck.length > 0)
  const all = gatesOf(defs).filter((gate) => fell.includes(gate) || shown.includes(gate))
  if (all.length === 0) return 'Void: nothing; no hold point had anything shown.'
  const named = all.slice(0, MOST_NAMED).map(({ number, step }) => `hold point ${number}, ${step.title}`)
  const more = all.length - MOST_NAMED
  return `Void: all that was shown at ${named.join('; ')}${more > 0 ? `; and ${more} more` : ''}.`
}

function nextText(defs: Definitions, state: State): string {
  const at = current(defs, state)?.placed
  const step = at === undefined ? '' : `; then sheet ${at.number}, ${at.step.title}`
  const stop = openStop(state) === null ? '' : ' The job is under STOP, and stays so.'
  return `Next: initials of whoever goes on${step}.${stop}`
}
