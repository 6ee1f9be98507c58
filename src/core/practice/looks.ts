// Which look an answer rests on. A thing that was looked at was looked at, also after a slip of the keys: until something changes there.
import { findReading } from '../job/admit-change.ts'
import { type Asked, EVERY_LINE, PLATE, type PracticeState } from '../job/practice.ts'
import type { State } from '../job/state.ts'

/** The last look at a thing before the entry `before`; null: nobody looked, or something has changed there since. */
export function lookedAt(practice: PracticeState, of: string, before: number): Asked | null {
  const over = Math.max(-1, ...endsOf(practice, of).filter((seq) => seq < before))
  return practice.asked.findLast((one) => one.of === of && one.seq < before && one.seq > over) ?? null
}

/** What was measured for a reading since the one before it was keyed: each repeat is measured anew. */
export function measuredFor(practice: PracticeState, of: string, before: number): Asked | null {
  const earlier = Math.max(-1, ...(practice.answered[of] ?? []).filter((seq) => seq < before))
  const isFor = ({ of: what, seq, corrects }: Asked) =>
    what === of && corrects === null && seq < before && seq > earlier
  return practice.asked.findLast(isFor) ?? null
}

/** What a reading rests on that was put in the place of `corrects`: measured anew for it, else what that one rested on. */
export function measuredForCorrection(
  state: State,
  practice: PracticeState,
  { place, corrects, before }: { readonly place: string; readonly corrects: number; readonly before: number },
): { readonly asked: Asked | null; readonly isAnew: boolean } {
  const anew = practice.asked.findLast((one) => one.corrects === corrects && one.seq < before)
  if (anew !== undefined) return { asked: anew, isAnew: true }
  const first = findReading(state, corrects)?.corrects ?? null
  const asked =
    first === null
      ? measuredFor(practice, place, corrects)
      : measuredForCorrection(state, practice, { place, corrects: first, before: corrects }).asked
  return { asked, isAnew: false }
}

/** A part that lies there stays as it is; plate and hold points are asked anew whenever all of them fell. */
function endsOf({ over }: PracticeState, of: string): readonly number[] {
  const own = over[of] ?? []
  return of === PLATE || of.includes('/') ? [...own, ...(over[EVERY_LINE] ?? [])] : own
}
