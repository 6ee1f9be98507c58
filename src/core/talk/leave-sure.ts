// Leaving in the middle of the work fells the hold points behind which it goes on. What that costs is told before, and then it is left as asked.
// Answers out of a file are asked nothing: nobody would read it.
import type { Definitions } from '../job/definitions.ts'
import { type GateStep, gateState, gatesBefore, gatesOf } from '../job/gate.ts'
import { lapsesOf } from '../job/lapse.ts'
import { applicability, isComplete } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { clockOf, readStamp } from '../lib/instant.ts'
import { ask, type Heard, input, QUIET } from './heard.ts'
import { leaveLines } from './make-safe.ts'

export interface LeaveAsk {
  readonly kind: 'leave-sure'
}

export const LEAVE_SURE = 'Leave now? 1 or 2'

export function leaveWord(defs: Definitions, state: State): Heard {
  return state.scripted || neededOpen(defs, state).length === 0
    ? leaving(defs, state)
    : ask({ kind: 'leave-sure' })
}

export function hearLeaveSure(defs: Definitions, state: State, question: LeaveAsk, line: string): Heard {
  const text = line.trim().toLowerCase()
  if (/^(?:1\.?|leave|yes|y)$/.test(text)) return leaving(defs, state)
  if (/^(?:2\.?|no|n|stay)$/.test(text)) return { talk: QUIET, input: null, say: ['Not left.'] }
  return ask(question, 'Key 1 to leave, 2 to stay.')
}

const leaving = (defs: Definitions, state: State): Heard => ({
  ...input({ do: 'leave' }),
  say: leaveLines(defs, state),
})

/** Complete now, with something still to be done behind it. */
function neededOpen(defs: Definitions, state: State): GateStep[] {
  return gatesOf(defs).filter(
    (gate) =>
      gateState(state, gate.id).status === 'open' &&
      defs.steps.some(
        (placed) =>
          !isComplete(state, placed) &&
          applicability(defs, state, placed) !== 'skip' &&
          gatesBefore(defs, placed).includes(gate),
      ),
  )
}

/** What stands over the question: what falls, until when its gas would stand, and what stays. */
export function leaveSureLines(defs: Definitions, state: State): string[] {
  const offsetMin = readStamp(state.lastAt)?.offsetMin ?? 0
  return [
    ...neededOpen(defs, state).flatMap((gate) => {
      const gas = lapsesOf(defs, state, gate).filter(({ evidence }) => evidence.kind === 'gas')
      const until = Math.min(...gas.map(({ atMs }) => atMs))
      const stands = Number.isFinite(until)
        ? ` Whoever stays has its gas figures until ${clockOf({ ms: until, offsetMin })}.`
        : ''
      return [
        `Hold point ${gate.number} falls when you leave. On return all of it is proved again, its gas and its witness too.${stands}`,
      ]
    }),
    'What was read and answered stays on record.',
  ]
}
