// What is drawn at a step where nothing is measured: its own picture, or the readings of the step measured last along a part, so that nobody
// has to remember them.
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import { placesOf } from '../job/places.ts'
import { type State, standing } from '../job/state.ts'
import type { SheetStyle } from './block.ts'
import { figureForms, type Pictures, profileForms } from './drawing-rows.ts'

export function pictureOf(
  defs: Definitions,
  state: State,
  placed: PlacedStep,
  style: SheetStyle,
): Partial<Pictures> {
  const { step } = placed
  if (step.kind !== 'tell' && step.kind !== 'observe') return {}
  if (step.drawing !== 'readings') return figureForms(step.drawing, style)
  const read = defs.steps
    .slice(0, defs.steps.indexOf(placed))
    .findLast((one) => isMeasured(state, one) && profileForms(defs, state, one.id, style).length > 0)
  return read === undefined ? {} : { drawings: profileForms(defs, state, read.id, style) }
}

function isMeasured(state: State, placed: PlacedStep): boolean {
  if (placed.step.kind !== 'read' || placed.step.stations.length < 2) return false
  return placesOf(asKind(placed, 'read')).some(({ key }) => standing(state, key).length > 0)
}
