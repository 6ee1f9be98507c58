// How another instrument is taken than the one that was picked. There is one way, the word instrument, and what falls by it is told here.
import { readBy } from '../job/admit-instrument.ts'
import type { Definitions } from '../job/definitions.ts'
import { seatOf } from '../job/gate.ts'
import { next } from '../job/next.ts'
import { type State, standing } from '../job/state.ts'

/** What was picked for what is asked now; null: nothing is measured here, or nothing is picked yet. */
function pickedHere(defs: Definitions, state: State): string | null {
  const prompt = next(defs, state)
  if (prompt.kind === 'read') return prompt.instrument
  if (prompt.kind === 'doubt') return state.doubt?.instrument ?? null
  const seat = prompt.kind === 'evidence' ? seatOf(prompt.item.evidence) : null
  return seat === null ? null : (state.seats[seat] ?? null)
}

export function anotherLines(defs: Definitions, state: State): string[] {
  if (next(defs, state).kind === 'pick')
    return ['It is picked here: key the number in the list, or what stands on its tag.']
  const id = pickedHere(defs, state)
  if (id === null)
    return [
      'No instrument is in use at this sheet. The word instrument takes one off the job that was picked: which, why, and who says so. Then another is asked for.',
    ]
  const { seqs } = readBy(state, id)
  return [
    `${id} is in use here. Another is taken by the word instrument, whatever ${id} does not serve by: which, why, and who says so. Then it is picked anew.`,
    seqs.length === 0
      ? `${id} has read nothing so far, so nothing falls; it is not offered again on this job.`
      : `What ${id} has read falls with it, ${seqs.length} ${seqs.length === 1 ? 'reading' : 'readings'}; it is not offered again on this job.`,
  ]
}

/** Said at `back` where nothing was read yet with what was just picked: it goes to what was answered before, and not to the pick. */
export function pickTold(defs: Definitions, state: State): string[] {
  const prompt = next(defs, state)
  if (prompt.kind !== 'read' || standing(state, prompt.place.key).length > 0) return []
  const hasRead = readBy(state, prompt.instrument).seqs.length > 0
  return hasRead
    ? []
    : [`Another instrument than ${prompt.instrument} is taken by the word instrument, not by back.`]
}
