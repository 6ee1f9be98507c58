// Which look an answer rests on. A thing that was looked at was looked at, also after a slip of the keys: until something changes there.
import { type Asked, EVERY_LINE, PLATE, type PracticeState } from '../job/practice.ts'

/** The last look at a thing before the entry `before`; null: nobody looked, or something has changed there since. */
export function lookedAt(practice: PracticeState, of: string, before: number): Asked | null {
  const over = Math.max(-1, ...endsOf(practice, of).filter((seq) => seq < before))
  return practice.asked.findLast((one) => one.of === of && one.seq < before && one.seq > over) ?? null
}

/** What was measured for a reading since the one before it was keyed: each repeat is measured anew. */
export function measuredFor(practice: PracticeState, of: string, before: number): Asked | null {
  const earlier = Math.max(-1, ...(practice.answered[of] ?? []).filter((seq) => seq < before))
  return practice.asked.findLast((one) => one.of === of && one.seq < before && one.seq > earlier) ?? null
}

/** A part that lies there stays as it is; plate and hold points are asked anew whenever all of them fell. */
function endsOf({ over }: PracticeState, of: string): readonly number[] {
  const own = over[of] ?? []
  return of === PLATE || of.includes('/') ? [...own, ...(over[EVERY_LINE] ?? [])] : own
}
