// The part of the fold that keeps STOPs: raised, explained, released. What was said of one is only ever added to.
import type { Entry } from './entries.ts'
import { strikeAll } from './fold-gate.ts'
import { peopleOnJob } from './people-on.ts'
import type { State, StopState } from './state.ts'

type StopEntry = Extract<Entry, { type: 'stop.raised' | 'stop.explained' | 'stop.released' | 'stop.stands' }>

export function foldStop(state: State, entry: StopEntry): State {
  switch (entry.type) {
    case 'stop.raised':
      return { ...strikeAll(state, 'stop'), stops: [...state.stops, raised(state, entry)] }
    case 'stop.explained': {
      const of = entry.of ?? state.stops[state.stops.length - 1]?.seq
      return { ...state, stops: state.stops.map((s) => (s.seq === of ? explained(s, entry) : s)) }
    }
    case 'stop.released':
      return {
        ...state,
        // Two numbers for one thing, or one that was none: a lead has looked, and what is keyed next is noted anew.
        noted: Object.fromEntries(
          Object.entries(state.noted).filter(([, one]) => !one.differs && !one.takenBack),
        ),
        stops: state.stops.map((s) => (s.releasedBy === null ? { ...s, releasedBy: entry.person } : s)),
      }
    case 'stop.stands':
      // It stays open: the job is closed under it.
      return state
  }
}

function raised(state: State, entry: Extract<StopEntry, { type: 'stop.raised' }>): StopState {
  const witnesses = Object.values(state.gates).flatMap((gate) =>
    Object.values(gate.given).flatMap((given) => given.person ?? []),
  )
  return {
    seq: entry.seq,
    by: entry.by ?? null,
    // Also those who have left since: who shouts is not always who is signed on, and nobody knows who it was.
    on: [...new Set([...state.everOn, ...peopleOnJob(state), ...witnesses])],
    cause: null,
    why: null,
    calledBy: [],
    callerUnknown: false,
    releasedBy: null,
  }
}

function explained(stop: StopState, entry: Extract<StopEntry, { type: 'stop.explained' }>): StopState {
  const named = entry.called_by
  return {
    ...stop,
    cause: entry.cause ?? stop.cause,
    why: entry.why,
    calledBy: named === undefined ? stop.calledBy : [...new Set([...stop.calledBy, named])],
    // Said the first time and left open; in a cause put right later it only means that nobody is added. Initials that somebody
    // keyed who was not signed on, for another who signed for none of it, are no name.
    callerUnknown:
      stop.callerUnknown ||
      (stop.cause === null && (named === undefined || (stop.by === null && entry.signed === undefined))),
  }
}
