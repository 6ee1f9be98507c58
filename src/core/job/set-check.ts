// A check of an instrument on its setting standard, as a judge takes it.
import type { SetCheck } from '../bore/bore-judge-input.ts'
import type { StepOf } from '../definition/procedure.ts'
import type { PlacedStep } from './definitions.ts'
import { placeResult, placesOf } from './places.ts'
import type { gaugeById } from './seats.ts'
import type { State } from './state.ts'

/** Null when the check was not made, or not with the gauge that measured. */
export function setCheckOf(
  state: State,
  placed: PlacedStep & { readonly step: StepOf<'read'> },
  gauge: ReturnType<typeof gaugeById>,
): (SetCheck & { readonly deviationM: number; readonly allowedM: number }) | null {
  const place = placesOf(placed)[0]
  if (place === undefined) return null
  const result = placeResult(placed, place, state)
  if (result.si === null || gauge === null) return null
  if (result.readings.some((r) => r.instrument !== gauge.id)) return null
  return { deviationM: result.si - gauge.set_check.size.si, allowedM: gauge.set_check.within.si }
}
