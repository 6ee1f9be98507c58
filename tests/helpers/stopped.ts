// Parts of a day that went wrong, for tests of what a lead asks of it afterwards.
import { Walk } from './example.ts'

/** A set-check that reads off its standard, kept with this reason; at the first reading of the bore. */
export function keptOff(why: string): Walk {
  return new Walk().throughGate().keys('1', '1', '71.2', '70.4', '1', '9.5006', '3', why)
}

/** STOP, called by RO for a reason, and released by KH with an answer. */
export function stopReleased(walk: Walk, why: string, answer: string): Walk {
  walk.bring({ do: 'stop' })
  walk.bring({ do: 'explain-stop', of: walk.last.seq, cause: 'other', calledBy: 'RO', why })
  walk.bring({ do: 'release-stop', person: 'KH', answer })
  return walk
}
