// Moves of the search that nobody makes, for what the small jobs leave open: tests over time, and words that every finding is
// decided. In a small job neither ties anything (`loose`), so that more can happen there; that a test begins anew, that its stand
// falls and that such words fall are moves of their own. That the real ones do tie has tests of its own (tests/core/job/over-time.test.ts).
import type { Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { fold } from '../job/fold.ts'
import { type GateStep, gateState, gatesOf } from '../job/gate.ts'
import { fallsWith } from '../job/lapse.ts'
import { standsOf } from '../job/over-time.ts'
import { stampEntry } from '../job/stamp.ts'
import type { State } from '../job/state.ts'
import { findingWords } from '../job/voiding.ts'
import type { Had } from './before.ts'
import { isPaused } from './normal.ts'

/** What was answered of a test over time falls, from any of its steps on. */
export function testsAnew(defs: Definitions, state: State): Had[] {
  if (isPaused(state)) return []
  return defs.overTime.flatMap(({ steps }) =>
    steps.flatMap((id, n): Had[] => {
      if (!isAnswered(state, id)) return []
      const fallen = new Set(steps.slice(n))
      const done = Object.entries(state.done).filter(([one]) => !fallen.has(one))
      const points = Object.entries(state.points).filter(([one]) => !fallen.has(one))
      const readings = Object.entries(state.readings).filter(([, list]) => !fallen.has(list[0]?.step ?? ''))
      const after = {
        ...state,
        done: Object.fromEntries(done),
        points: Object.fromEntries(points),
        readings: Object.fromEntries(readings),
        doubt: fallen.has(state.doubt?.step ?? '') ? null : state.doubt,
        late: fallen.has(state.late?.step ?? '') ? null : state.late,
      }
      return [{ says: `(${id}: done anew)`, state: after }]
    }),
  )
}

function isAnswered(state: State, id: string): boolean {
  return state.done[id] !== undefined || Object.values(state.readings).some((list) => list[0]?.step === id)
}

/** A wait of a gate falls, as its test begins anew or what it was watched from does; or words that all is decided do. */
export function tiesFell(defs: Definitions, state: State, now: number): Had[] {
  if (isPaused(state)) return []
  return gatesOf(defs).flatMap((gate) => {
    const waits = isTied(defs, gate) ? standsOf(state, gate) : []
    const words = findingWords(state, gate)
    return [
      ...fell(defs, state, gate, waits, 'again', now),
      ...fell(defs, state, gate, waits, 'corrected', now),
      ...fell(defs, state, gate, words, 'again', now),
    ]
  })
}

function isTied({ overTime }: Definitions, gate: GateStep): boolean {
  return (
    overTime.some(({ stand }) => stand === gate.id) || gate.step.evidence.some((e) => e.kind === 'measured')
  )
}

function fell(
  defs: Definitions,
  state: State,
  gate: GateStep,
  keys: readonly string[],
  cause: 'again' | 'corrected',
  now: number,
): Had[] {
  if (keys.length === 0) return []
  const { status } = gateState(state, gate.id)
  const body = {
    type: 'gate.closed',
    step: gate.id,
    cause,
    items: fallsWith(defs, state, gate, keys),
  } as const
  const entry: Entry = stampEntry(state, body, { ms: now, offsetMin: 0 })
  return [
    {
      says: `(${keys.join(' and ')} of ${gate.id} fell, ${status})`,
      state: fold(state, entry),
      entries: [entry],
    },
  ]
}
