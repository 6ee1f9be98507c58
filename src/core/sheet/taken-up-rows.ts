// A job that is taken up, on one sheet: what was done, what fell while nobody watched, and what comes first now.
import type { Definitions } from '../job/definitions.ts'
import { type GateStep, gateState, gatesBefore, gatesOf } from '../job/gate.ts'
import { current } from '../job/next.ts'
import { openStop, type State } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { takenLines } from '../talk/last-taken.ts'
import { doneLine, timeLines } from '../talk/where.ts'
import { type Row, row } from './block.ts'

/** Hold points that are named; of the rest it is said how many there are. */
const MOST_NAMED = 3

/** `state` is the one after the entry. */
export function takenUpRows(defs: Definitions, state: State): Row[] {
  return [
    ...[doneLine(defs, state), ...takenLines(defs, state)].map((text) => row(`  ${text}`)),
    row(`  ${voidText(defs, state)}`, 'caution'),
    row(`  ${nextText(defs, state)}`, 'strong'),
    ...timeLines(defs, state).map((text) => row(`  ${text}`, 'faint')),
  ]
}

function voidText(defs: Definitions, state: State): string {
  const all = gatesOf(defs).filter(({ id }) => gateState(state, id).struck.length > 0)
  if (all.length === 0) return 'Void: nothing; no hold point had anything shown.'
  const named = all.slice(0, MOST_NAMED).map(({ number, step }) => `hold point ${number}, ${step.title}`)
  const more = all.length - MOST_NAMED
  return `Void: all that was shown at ${named.join('; ')}${more > 0 ? `; and ${more} more` : ''}.`
}

function nextText(defs: Definitions, state: State): string {
  const at = current(defs, state)?.placed
  const shut = at === undefined ? [] : gatesBefore(defs, at).filter((gate) => !isOpen(state, gate))
  const gates =
    shut.length === 0 ? '' : `; then hold point ${list(shut.map(({ number }) => String(number)))}, shown anew`
  const step = at === undefined ? '' : `${gates}; then sheet ${at.number}, ${at.step.title}`
  const stop = openStop(state) === null ? '' : ' The job is under STOP, and stays so.'
  return `Next: initials of whoever goes on${step}.${stop}`
}

function isOpen(state: State, { id }: GateStep): boolean {
  return gateState(state, id).status === 'open'
}
