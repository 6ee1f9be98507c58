// Where the measuring error of a verdict comes from, said beside it where the repeats of one place are most of it.
import { type Definitions, stepById } from '../job/definitions.ts'
import { dominantRepeats } from '../job/repeats-error.ts'
import type { State } from '../job/state.ts'
import type { VerdictRecord } from '../job/verdict-record.ts'
import { placeNumber, spreadText } from '../talk/names.ts'
import { type Row, row } from './block.ts'

/** `Most of the measuring error is from 7.3: its repeats lie 0.0047 in apart.` Nothing where no one place makes most of it. */
export function errorRows(defs: Definitions, state: State, judgeId: string, record: VerdictRecord): Row[] {
  const wide = dominantRepeats(defs, state, stepById(defs, judgeId), record)
  if (wide === null) return []
  const where = placeNumber(defs, wide.read.id, wide.place.key)
  const apart = spreadText(defs, state, wide.place.key, wide.spread)
  return [
    row(
      `Most of the measuring error is from ${where}: its repeats lie ${apart} apart. If one was a slip: correct.`,
      'caution',
    ),
  ]
}
