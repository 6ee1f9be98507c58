// Readings that were doubted and kept, said wherever a verdict rests on them: beside it, before a lead decides, at the close.
import type { Definitions } from '../job/definitions.ts'
import { keptDoubts } from '../job/kept-doubts.ts'
import type { Reading, State } from '../job/state.ts'
import type { VerdictRecord } from '../job/verdict-record.ts'
import { placeName, placeNumber, readingText } from '../talk/names.ts'
import { type Row, row } from './block.ts'

/** Places that are named; of more it is said how many there are. */
const MOST_NAMED = 6

/** `3 of these readings were doubted and kept: see 7.1, 7.3.` Nothing where none was. */
export function keptRows(defs: Definitions, state: State, record: VerdictRecord): Row[] {
  const kept = keptDoubts(defs, state, record.readings)
  if (kept.length === 0) return []
  const numbers = [...new Set(kept.map((r) => placeNumber(defs, r.step, r.place)))]
  const more = numbers.length - MOST_NAMED
  const named = numbers.slice(0, MOST_NAMED).join(', ')
  return [
    row(
      `${kept.length} of these readings ${wereKept(kept)}: see ${named}${more > 0 ? ` and ${more} more` : ''}.`,
      'caution',
    ),
  ]
}

/** At the close, each with the reason that was keyed for it. */
export function keptAtClose(defs: Definitions, state: State): Row[] {
  const kept = keptDoubts(defs, state)
  if (kept.length === 0) return []
  const count = kept.length === 1 ? '1 reading' : `${kept.length} readings`
  return [
    row(`${count} ${wereKept(kept)}:`, 'caution'),
    ...kept.map((r) =>
      row(
        `  ${placeNumber(defs, r.step, r.place)} ${placeName(defs, r.step, r.place)}, ${readingText(defs, r)}: ${r.keptBecause ?? ''}`,
      ),
    ),
  ]
}

function wereKept(kept: readonly Reading[]): string {
  return `${kept.length === 1 ? 'was' : 'were'} doubted and kept`
}
