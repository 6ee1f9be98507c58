// How another instrument is taken than the one that was picked: back, where nothing was read with it yet; else the word instrument,
// and what falls by it is told here.
import { readBy } from '../job/admit-instrument.ts'
import type { Definitions } from '../job/definitions.ts'
import { mispick, pickedHere } from '../job/mispick.ts'
import { next } from '../job/next.ts'
import { type State, standing } from '../job/state.ts'

const READ_ALREADY =
  'If one that has read already was not the right one, the word instrument takes it off: what it read falls, by name, and is read anew.'

/** What is in use at the prompt, also while a reading with it is doubted; null: nothing is measured here, or nothing is picked yet. */
function inUse(defs: Definitions, state: State): string | null {
  return next(defs, state).kind === 'doubt'
    ? (state.doubt?.instrument ?? null)
    : (pickedHere(defs, state)?.instrument ?? null)
}

export function anotherLines(defs: Definitions, state: State): string[] {
  if (next(defs, state).kind === 'pick')
    return [
      'It is picked here: key the number in the list, or what stands on its tag.',
      ...(state.used.length === 0 ? [] : [READ_ALREADY]),
    ]
  const id = inUse(defs, state)
  if (id === null)
    return [
      'No instrument is in use at this sheet. The word instrument takes one off the job that was picked: which, why, and who says so. Then another is asked for.',
      ...(state.used.length === 0 ? [] : [READ_ALREADY]),
      'A single figure that was keyed wrong is no matter of the instrument: correct puts that right.',
    ]
  if (mispick(defs, state) !== null)
    return [
      `${id} is in use here and has read nothing. Key back: it goes back as picked by mistake, nothing is doubted, and the list comes again.`,
      `If something is wrong with ${id} itself, the word instrument takes it off the job; then it is not offered again.`,
    ]
  const { seqs } = readBy(state, id)
  return [
    `${id} is in use here. Another is taken by the word instrument, whatever ${id} does not serve by: which, why, and who says so. Then it is picked anew.`,
    seqs.length === 0
      ? `Nothing that ${id} has read stands, so nothing falls; it is not offered again on this job.`
      : `What ${id} has read falls with it, ${seqs.length} ${seqs.length === 1 ? 'reading' : 'readings'}; it is not offered again on this job.`,
  ]
}

/** Said at `back` where nothing stands that was read here with what is in use: it goes to what was answered before, and not to the pick. */
export function pickTold(defs: Definitions, state: State): string[] {
  const prompt = next(defs, state)
  if (prompt.kind !== 'read' || standing(state, prompt.place.key).length > 0) return []
  const hasRead = readBy(state, prompt.instrument).seqs.length > 0
  return hasRead
    ? []
    : [`Another instrument than ${prompt.instrument} is taken by the word instrument, not by back.`]
}
