// The places of a read step, in the order they are measured, and what the readings taken at each come to.
import type { Axis, Station, StepOf } from '../definition/procedure.ts'
import { oncePer, oncePerPair } from '../lib/once.ts'
import { combineRepeats } from '../metrology/repeats.ts'
import type { PlacedStep } from './definitions.ts'
import { type Reading, type State, standing } from './state.ts'

export interface Place {
  readonly key: string
  readonly station: Station
  readonly axis: Axis | null
  /** Number within the step, from 1. */
  readonly number: number
}

export interface PlaceResult {
  readonly state: 'more' | 'settled' | 'unsettled' | 'not-applicable'
  /** Combined value in SI; only when settled. */
  readonly si: number | null
  readonly spread: number | null
  readonly readings: readonly Reading[]
}

/** Why a place gives no figure, in words; one that is settled gives one, unless something else speaks against it. */
export const WHY_NOT: Readonly<Record<PlaceResult['state'], string>> = {
  more: 'not measured',
  unsettled: 'the repeats do not agree',
  'not-applicable': 'entered as not applicable',
  settled: 'cannot be judged',
}

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

export const placesOf = oncePer((placed: ReadStep): readonly Place[] => {
  const { stations, axes } = placed.step
  const along: readonly (Axis | null)[] = axes ?? [null]
  const pairs = stations.flatMap((station) => along.map((axis) => ({ station, axis })))
  return pairs.map(({ station, axis }, i) => ({
    key: [placed.id, station.id, ...(axis === null ? [] : [axis.id])].join('.'),
    station,
    axis,
    number: i + 1,
  }))
})

export function placeResult(placed: ReadStep, place: Place, state: State): PlaceResult {
  const readings = standing(state, place.key)
  if (state.notApplicable[place.key] !== undefined)
    return { state: 'not-applicable', si: null, spread: null, readings }
  return resultOf(placed.step.repeats, readings)
}

const resultOf = oncePerPair(
  ({ at_least, at_most, within }: ReadStep['step']['repeats'], readings: readonly Reading[]): PlaceResult => {
    const combined = combineRepeats(
      readings.map((r) => r.si),
      { atLeast: at_least, atMost: at_most, within: within.si },
    )
    return {
      state: combined.state,
      si: combined.state === 'settled' && combined.value !== undefined ? combined.value : null,
      spread: combined.spread,
      readings,
    }
  },
)

/** The first place that still wants a reading, or null when the step is complete. */
export function openPlace(placed: ReadStep, state: State): Place | null {
  return placesOf(placed).find((place) => placeResult(placed, place, state).state === 'more') ?? null
}
