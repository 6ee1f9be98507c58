// Who is needed, on the first sheet of the job and before anything of it is answered.
import type { Definitions } from '../job/definitions.ts'
import { gateState } from '../job/gate.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { neededText, ONE_NEEDED } from '../kit/needed.ts'
import { type Row, row } from './block.ts'

export function neededRows(defs: Definitions, state: State, prompt: Prompt): Row[] {
  const placed = 'step' in prompt ? prompt.step : 'gate' in prompt ? prompt.gate : null
  if (placed === null || placed.id !== defs.steps[0]?.id || state.paper !== null) return []
  const isOf = (place: string) => place.startsWith(`${placed.id}.`)
  const isBegun =
    Object.keys(gateState(state, placed.id).given).length > 0 ||
    state.done[placed.id] !== undefined ||
    ('place' in prompt && [...Object.keys(state.readings), ...Object.keys(state.notApplicable)].some(isOf))
  const text = neededText(defs)
  // Whoever measures is there, and the drawing needs the room.
  const isPlain = prompt.kind === 'read' && text === ONE_NEEDED
  return isBegun || isPlain ? [] : [row(text)]
}
