// Readings that were doubted and kept, in the answers of a review: such a figure is never told as one that merely stands.
import { keptDoubts } from '../job/kept-doubts.ts'
import type { Reading } from '../job/state.ts'
import { readingText } from '../talk/names.ts'
import { type OnRecord, placeOf } from './asked-entries.ts'
import { byWhom, clause } from './look.ts'

type Kept = Pick<Reading, 'seq' | 'corrects'>

/** Where it was said that it stands: the answer to the doubt, or the correction that was made in spite of one. */
function saidAt({ entries }: OnRecord, { seq, corrects }: Kept): number {
  if (corrects !== null) return seq
  return (
    entries.find((e) => e.seq > seq && (e.type === 'doubt.settled' || e.type === 'late.settled'))?.seq ?? seq
  )
}

const headOf = ({ entries }: OnRecord, { seq }: Kept) =>
  entries[seq]?.type === 'reading.late' ? 'KEYED LATE AND KEPT' : 'DOUBTED AND KEPT'

/** `, DOUBTED AND KEPT at entry 88`; empty for one that nobody doubted. */
export function keptText(record: OnRecord, one: Kept): string {
  const isKept = keptDoubts(record.defs, record.state).some(({ seq }) => seq === one.seq)
  return isKept ? `, ${headOf(record, one)} at entry ${saidAt(record, one)}` : ''
}

/** A sentence for each that stands, with who kept it and why. `among`: of these entries only; left out, of the whole log. */
export function keptWhy(record: OnRecord, among?: readonly number[]): string[] {
  const { defs, state, entries } = record
  return keptDoubts(defs, state, among).map((one) => {
    const at = saidAt(record, one)
    const entry = entries[at]
    const by = entry === undefined ? '' : `, by ${byWhom(record, entry)}`
    const why = clause(one.keptBecause ?? '')
    const because = why === '' ? 'no reason is on record' : `because: ${why}`
    return `${headOf(record, one)}: ${placeOf(defs, one)}, ${readingText(defs, one).replace(/\s+/g, ' ')} (entry ${one.seq})${by} (entry ${at}), ${because}.`
  })
}
