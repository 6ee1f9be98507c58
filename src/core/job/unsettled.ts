// Places that came to HOLD because as many readings were taken as are allowed and they never agreed.
import { asKind, type Definitions } from './definitions.ts'
import { type Place, placeResult, placesOf } from './places.ts'
import type { State } from './state.ts'

export interface Unsettled {
  readonly step: string
  readonly place: Place
  /** Readings that stand. */
  readonly count: number
}

/** In the order of the procedure. */
export function unsettledPlaces(defs: Definitions, state: State): Unsettled[] {
  return defs.steps.flatMap((step) => {
    if (step.step.kind !== 'read') return []
    const placed = asKind(step, 'read')
    return placesOf(placed).flatMap((place) => {
      const { state: is, readings } = placeResult(placed, place, state)
      return is === 'unsettled' ? [{ step: step.id, place, count: readings.length }] : []
    })
  })
}
