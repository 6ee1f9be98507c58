// What was taken last, and how a slip in it is put right: told from the job itself, and changed by neither.
import { gateBeingAsked, lastGiven } from '../job/admit-gate.ts'
import type { Definitions } from '../job/definitions.ts'
import { gateState, gatesOf } from '../job/gate.ts'
import { keyLabel } from '../job/item-label.ts'
import { next } from '../job/next.ts'
import { type State, standing } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { standingReadings, whyNoChange, whySettleFirst } from './correct.ts'
import { placeName, placeNumber } from './names.ts'

/** The newest figure or evidence that stands, and one that waits and counts for nothing. */
export function takenLines(defs: Definitions, state: State): string[] {
  const readings = standingReadings(defs, state).map(({ seq, text }) => ({ seq, text }))
  const shown = gatesOf(defs).flatMap((gate) =>
    Object.entries(gateState(state, gate.id).given).map(([item, { seq, shown: figure }]) => ({
      seq,
      text: `${gate.number} ${keyLabel(defs, gate, item)}: ${figure}`,
    })),
  )
  const last = [...readings, ...shown].reduce<{ seq: number; text: string } | null>(
    (newest, one) => (newest === null || one.seq > newest.seq ? one : newest),
    null,
  )
  return [
    ...waitingLines(defs, state),
    ...(last === null ? ['No figure is on record yet.'] : [`Taken last, and on record: ${last.text}.`]),
    ...repeatLine(defs, state),
  ]
}

function waitingLines(defs: Definitions, state: State): string[] {
  return [state.doubt, state.late].flatMap((one) =>
    one === null
      ? []
      : [
          `${placeNumber(defs, one.step, one.place)} ${placeName(defs, one.step, one.place)}: ${one.typed.trim()} waits, and counts for nothing until its question is answered.`,
        ],
  )
}

/** Why the same place is asked again. */
function repeatLine(defs: Definitions, state: State): string[] {
  const prompt = next(defs, state)
  if (prompt.kind !== 'read') return []
  const taken = standing(state, prompt.place.key).length
  return taken === 0
    ? []
    : [`Of this place ${taken} ${taken === 1 ? 'is' : 'are'} taken; it is read again, afresh.`]
}

/** Which word does it here. Whatever it makes void is said before anything happens. */
export function mendLines(defs: Definitions, state: State): string[] {
  const no = whyNoChange(state)
  if (no !== null) return [no]
  const settle = whySettleFirst(state)
  const gate = gateBeingAsked(defs, state)
  const last = gate === null ? [] : lastGiven(defs, state, gate).map((key) => keyLabel(defs, gate, key))
  const back =
    last.length === 0
      ? 'back goes to the last answer, and it is asked again.'
      : `back takes back what was given last here: ${list(last)}. It is asked again.`
  return [
    ...(settle === null ? [back] : [settle]),
    'The word correct lists readings, findings and what was shown at hold points. Key its number there.',
    'A step that was done or confirmed is in no list: back goes to the last of them. What cannot be reached so: come out, say STOP or note it, and tell a lead.',
    'What would become void is said before anything is changed; the first answer stays in the log.',
  ]
}
