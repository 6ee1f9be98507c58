// What was wrong in a practice session and may be put right since: of a reading by that one reading, as two of a place can both be wrong, and of
// all else by the line or the step it was keyed at.
import type { Entry } from '../job/entries.ts'
import { type State, stands } from '../job/state.ts'
import type { Skill } from './marks.ts'

export interface Slip {
  /** Place, line or step. */
  readonly of: string
  /** The reading that it made, by its entry; null where it is none. */
  readonly reading: number | null
  /** Marks that are let off once it is put right; none: it is only told that it was. */
  readonly skills: readonly Skill[]
}

/** The reading that an entry made, by the entry that stands for it; null where it made none. */
export function readingMade(state: State, { type }: Entry, of: string | null): number | null {
  const makes = ['reading.taken', 'reading.corrected', 'doubt.settled', 'late.settled'].includes(type)
  return makes && of !== null ? (state.readings[of]?.at(-1)?.seq ?? null) : null
}

export interface SlipsNow {
  readonly open: readonly Slip[]
  /** Put right by this entry. */
  readonly mended: readonly Slip[]
}

/** `slip`: what is wrong in this entry; null where nothing is. */
export function slipsAfter(
  open: readonly Slip[],
  state: State,
  entry: Entry,
  of: string | null,
  slip: Slip | null,
): SlipsNow {
  if (of === null) return { open, mended: [] }
  const isPutRight = (one: Slip) =>
    one.of === of && (one.reading === null || isReplaced(state, entry, one.reading))
  const [met, others] = [open.filter(isPutRight), open.filter((one) => !isPutRight(one))]
  if (slip === null) return { open: others, mended: met }
  // Put right by another that is wrong: what was let off before may be so still, by the reading that stands now.
  const carried = met.map((one) => ({ ...one, reading: slip.reading }))
  return { open: [...others, ...(slip.skills.length > 0 ? [slip] : [slip, ...carried])], mended: [] }
}

/** Corrected by this entry; or taken back before, and this one is taken in its place. */
function isReplaced(state: State, entry: Entry, seq: number): boolean {
  if (entry.type === 'reading.corrected') return entry.of === seq
  const made = ['reading.taken', 'doubt.settled', 'late.settled'].includes(entry.type)
  const one = Object.values(state.readings)
    .flat()
    .find((reading) => reading.seq === seq)
  return made && (one === undefined || (!stands(one) && one.correctedBy === null))
}
