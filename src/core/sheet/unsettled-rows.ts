// Places left on HOLD when the job closes: each by name, so that no end reads as if all had been measured.
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { unsettledPlaces } from '../job/unsettled.ts'
import { alikeWithin } from '../talk/alike-within.ts'
import { placeName, placeNumber } from '../talk/names.ts'
import { type Row, row } from './block.ts'

export function unsettledRows(defs: Definitions, state: State): Row[] {
  return unsettledPlaces(defs, state).map(({ step, place, count }) => {
    const { within } = asKind(stepById(defs, step), 'read').step.repeats
    const where = `${placeNumber(defs, step, place.key)} ${placeName(defs, step, place.key)}`
    return row(
      `  HOLD: ${where}: ${count} readings never agreed within ${alikeWithin(defs, within)}`,
      'caution',
    )
  })
}
