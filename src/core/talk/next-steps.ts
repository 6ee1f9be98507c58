// The word `next`: what comes after the sheet that is asked now, to be read only. Each line says that it is not yet to be
// done, as a step behind a hold point is nobody's to begin.
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { gatesBefore } from '../job/gate.ts'
import { applicability, current, isComplete } from '../job/next.ts'
import { pointOf } from '../job/point.ts'
import { openStop, type State } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { POINT_NAMES } from './points.ts'

const HOW_MANY = 3

export function nextLines(defs: Definitions, state: State): string[] {
  const coming = stepsAhead(defs, state)
  const at = current(defs, state)
  if (state.closed !== null || at === null || coming.length === 0) return ['No step comes after this one.']
  return [
    ...(openStop(state) === null ? [] : ['STOP is open: none of this until it is released.']),
    `After sheet ${at.placed.number}, to be read only. NOT YET TO BE DONE:`,
    ...coming.flatMap((placed) => stepLines(defs, state, placed)),
  ]
}

/** Steps behind the current one that are not done; of those a rule leaves out none, of those it may leave out all. */
export function stepsAhead(defs: Definitions, state: State): PlacedStep[] {
  const at = current(defs, state)
  if (at === null) return []
  return defs.steps
    .filter(
      (placed) =>
        placed.number > at.placed.number &&
        !isComplete(state, placed) &&
        applicability(defs, state, placed) !== 'skip',
    )
    .slice(0, HOW_MANY)
}

function stepLines(defs: Definitions, state: State, placed: PlacedStep): string[] {
  const { step, number } = placed
  const point = pointOf(placed)
  const perhaps = applicability(defs, state, placed) === 'hold' ? ' (if it is needed)' : ''
  return [
    `NOT YET  ${number}  ${step.title}${perhaps}`,
    ...(step.hazard === undefined ? [] : [`  Hazard: ${step.hazard}`]),
    ...(step.kind === 'gate' ? ['  It is a hold point itself.'] : []),
    ...behind(defs, placed),
    ...(point === null ? [] : [`  ${POINT_NAMES[point.kind]}`]),
  ]
}

function behind(defs: Definitions, placed: PlacedStep): string[] {
  const gates = gatesBefore(defs, placed).map((gate) => String(gate.number))
  return gates.length === 0 ? [] : [`  Behind hold point${gates.length === 1 ? '' : 's'} ${list(gates)}`]
}
