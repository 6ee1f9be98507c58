// What is asked before the plate where a job was taken up again.
import type { Definitions } from '../job/definitions.ts'
import { gateState, gatesOf } from '../job/gate.ts'
import type { State } from '../job/state.ts'
import { type Row, row } from './block.ts'

/** Whoever is still in comes out before the plate is read; that they are out is said of the machine that was read. */
export function takenUpAsk(defs: Definitions, state: State): Row[] {
  const isOut = gatesOf(defs).some(({ id }) => gateState(state, id).mustClear)
  return [...(isOut ? [row('COME OUT AND STAND CLEAR.', 'caution')] : []), row(TAKEN_UP)]
}

const TAKEN_UP = 'The job was taken up again, perhaps at another machine: its plate is read once more.'
