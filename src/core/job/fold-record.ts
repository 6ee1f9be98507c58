// The part of the fold that takes a changed machine record in. Nothing that was proved, judged or decided by the old one stands
// after it, whatever the entry names: the names are for people, and no list can leave anything standing.
import type { Entry } from './entries.ts'
import { strikeWhole } from './fold-gate.ts'
import { voided, without } from './fold-void.ts'
import type { State } from './state.ts'

export function recordTakenIn(state: State, entry: Extract<Entry, { type: 'record.taken-in' }>): State {
  const { seq, at, person, why, anew } = entry
  const judged = [...Object.keys(state.verdicts), ...entry.voids]
  const after = voided(strikeWhole(state, 'record'), judged)
  return {
    ...after,
    done: without(
      after.done,
      anew.filter((id) => after.points[id] === undefined),
    ),
    points: { ...after.points, ...all(only(after.points, anew), (point) => ({ ...point, void: true })) },
    dispositions: all(after.dispositions, (one) => ({ ...one, void: true })),
    // Whether an instrument suits the machine is asked of the new record, when it is picked.
    seats: {},
    // Both were held against the old record, and a place without a reading is asked again.
    doubt: null,
    late: null,
    left: true,
    doer: null,
    people: [],
    records: [...state.records, { seq, at, person, why, changed: entry.changed.map(({ field }) => field) }],
  }
}

function all<T>(record: Readonly<Record<string, T>>, change: (value: T) => T): Record<string, T> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]))
}

function only<T>(record: Readonly<Record<string, T>>, keys: readonly string[]): Record<string, T> {
  return Object.fromEntries(Object.entries(record).filter(([key]) => keys.includes(key)))
}
