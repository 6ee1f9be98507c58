// The part of the fold that takes back: what an entry voids by name no longer stands, and stays in the log.
import type { Entry } from './entries.ts'
import { seenAnew } from './fold-register.ts'
import { type Pending, type Reading, type State, stands } from './state.ts'

/** Verdicts, dispositions and answers of the steps named no longer stand. */
export function voided(state: State, voids: readonly string[]): State {
  return {
    ...seenAnew(state, voids),
    verdicts: changed(state.verdicts, voids, (v) => ({ ...v, void: true })),
    dispositions: changed(state.dispositions, voids, (d) => ({ ...d, void: true })),
    done: without(state.done, voids),
    raised: raisedVoid(state, voids),
    points: changed(state.points, voids, (p) => ({ ...p, void: true })),
    // A notice was for the inspection of what has changed since.
    notices: without(state.notices, voids),
  }
}

/** A verdict or finding is entered; the one before it, of the same step, no longer stands. */
export function raise(state: State, step: string, ...words: readonly string[]): State {
  const raised = words.map((word) => ({ seq: state.seq, step, word, voidBy: null, voidWith: null }))
  return { ...state, raised: [...raisedVoid(state, [step]), ...raised] }
}

function raisedVoid(state: State, steps: readonly string[]): State['raised'] {
  return state.raised.map((r) =>
    r.voidBy === null && steps.includes(r.step) ? { ...r, voidBy: state.seq } : r,
  )
}

/** Nothing the instrument read stands, whatever it was read for; and it lies in no seat any more. */
export function instrumentDoubted(
  state: State,
  entry: Extract<Entry, { type: 'instrument.doubted' }>,
): State {
  const { instrument, seq, temperatures = [] } = entry
  const falling = (r: Pending) => r.instrument === instrument || temperatures.includes(r.seq)
  const after = voided(state, entry.voids)
  // STOP is worse than HOLD already.
  const falls =
    state.closed !== null &&
    state.closed !== 'STOP' &&
    entry.voids.some((id) => state.verdicts[id] !== undefined)
  return {
    ...after,
    doubted: { ...state.doubted, [instrument]: seq },
    seats: Object.fromEntries(Object.entries(state.seats).filter(([, id]) => id !== instrument)),
    readings: voidReadings(state, falling, seq),
    doubt: state.doubt !== null && falling(state.doubt) ? null : state.doubt,
    late: state.late !== null && falling(state.late) ? null : state.late,
    adopted:
      state.adopted !== null && entry.readings.length > 0 ? { ...state.adopted, void: true } : state.adopted,
    closed: falls ? 'HOLD' : state.closed,
    fellFrom: falls ? (state.fellFrom ?? state.closed) : state.fellFrom,
    fellBy: falls ? [...state.fellBy, instrument] : state.fellBy,
  }
}

export function branchLeft(state: State, entry: Extract<Entry, { type: 'branch.left' }>): State {
  const inside = (step: string) => entry.voids.includes(step)
  const places = Object.keys(state.notApplicable).filter((place) => inside(place.split('.')[0] ?? ''))
  return {
    ...voided(state, entry.voids),
    readings: voidReadings(state, (r) => inside(r.step), entry.seq),
    notApplicable: without(state.notApplicable, places),
    doubt: state.doubt !== null && inside(state.doubt.step) ? null : state.doubt,
    late: state.late !== null && inside(state.late.step) ? null : state.late,
  }
}

function voidReadings(state: State, which: (r: Reading) => boolean, seq: number): State['readings'] {
  return Object.fromEntries(
    Object.entries(state.readings).map(([place, list]) => [
      place,
      list.map((r) => (stands(r) && which(r) ? { ...r, voidBy: seq } : r)),
    ]),
  )
}

function changed<T>(
  record: Readonly<Record<string, T>>,
  ids: readonly string[],
  change: (value: T) => T,
): Record<string, T> {
  return Object.fromEntries(
    Object.entries(record).map(([id, value]) => [id, ids.includes(id) ? change(value) : value]),
  )
}

export function without<T>(record: Readonly<Record<string, T>>, keys: readonly string[]): Record<string, T> {
  return Object.fromEntries(Object.entries(record).filter(([key]) => !keys.includes(key)))
}
