// The part of the fold that keeps readings. Nothing keyed is ever dropped; a correction adds and points back.
import type { Entry } from './entries.ts'
import { without } from './fold-void.ts'
import type { Pending, Reading, State } from './state.ts'

type ReadingEntry = Extract<
  Entry,
  {
    type:
      | 'reading.taken'
      | 'reading.doubted'
      | 'reading.late'
      | 'reading.corrected'
      | 'reading.not-applicable'
      | 'not-applicable.taken-back'
      | 'doubt.settled'
      | 'late.settled'
      | 'reading.dropped'
  }
>

export function foldReading(state: State, entry: ReadingEntry): State {
  switch (entry.type) {
    case 'reading.taken':
      return add(state, {
        ...pending(entry),
        keptBecause: null,
        correctedBy: null,
        corrects: null,
        voidBy: null,
      })
    case 'reading.doubted':
      return {
        ...state,
        doubt: {
          ...pending(entry),
          why: entry.why,
          ...(entry.shown === undefined ? {} : { shown: entry.shown }),
        },
      }
    case 'reading.late':
      return { ...state, late: pending(entry) }
    case 'doubt.settled': {
      const doubt = state.doubt
      const settled = { ...state, doubt: null }
      if (doubt === null || entry.choice !== 'kept') return settled
      return add(settled, {
        ...strip(doubt),
        keptBecause: entry.why ?? '',
        correctedBy: null,
        corrects: null,
        voidBy: null,
      })
    }
    case 'late.settled': {
      const late = state.late
      const settled = { ...state, late: null }
      if (late === null || !entry.kept) return settled
      return add(settled, {
        ...strip(late),
        keptBecause: 'keyed after the gate had closed, confirmed since',
        correctedBy: null,
        corrects: null,
        voidBy: null,
      })
    }
    case 'reading.dropped':
      return { ...state, doubt: null, late: null }
    case 'reading.corrected': {
      const list = (state.readings[entry.place] ?? []).map((r) =>
        r.seq === entry.of ? { ...r, correctedBy: entry.seq } : r,
      )
      const corrected = {
        ...pending(entry),
        keptBecause: entry.doubt === undefined ? null : entry.why,
        correctedBy: null,
        corrects: entry.of,
        voidBy: null,
      }
      return { ...state, readings: { ...state.readings, [entry.place]: [...list, corrected] } }
    }
    case 'reading.not-applicable':
      return { ...state, doubt: null, notApplicable: { ...state.notApplicable, [entry.place]: entry.why } }
    case 'not-applicable.taken-back':
      return { ...state, notApplicable: without(state.notApplicable, [entry.place]) }
  }
}

function pending(entry: Extract<ReadingEntry, { typed: string }>): Pending {
  const { step, place, instrument, typed, value, unit, si, seq, at } = entry
  return { step, place, instrument, typed, value, unit, si, seq, at, by: entry.by ?? null, ...sheetOf(entry) }
}

function strip(p: Pending): Pending {
  const { step, place, instrument, typed, value, unit, si, seq, at, by } = p
  return { step, place, instrument, typed, value, unit, si, seq, at, by, ...sheetOf(p) }
}

/** What stands beside it on paper, where it came from there. */
function sheetOf({ paper }: Pick<Pending, 'paper'>): Pick<Pending, 'paper'> {
  return paper === undefined ? {} : { paper }
}

function add(state: State, reading: Reading): State {
  const list = state.readings[reading.place] ?? []
  return { ...state, readings: { ...state.readings, [reading.place]: [...list, reading] } }
}
