// A temperature over the time of measuring, from readings before and after: their mean, and how well it is known.
import type { StepOf } from '../definition/procedure.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import { placeResult, placesOf } from './places.ts'
import { beyondItsScale } from './plausible.ts'
import { thermometerById } from './seats.ts'
import type { State } from './state.ts'

export interface Temperature {
  readonly celsius: number
  /** Standard uncertainty, K: the thermometer's, and half the drift taken as evenly likely anywhere between. */
  readonly standardU: number
  /** The thermometer's alone, K. */
  readonly thermometerU: number
  /** Greatest less least of the readings, K: how far it moved while the sizes were read. */
  readonly driftK: number
}

/** Null as soon as any of the readings is missing, or beyond its thermometer: a temperature known only before is not known. Source: GUM 4.3.7. */
export function temperatureOver(
  defs: Definitions,
  state: State,
  steps: readonly (PlacedStep & { readonly step: StepOf<'read'> })[],
): Temperature | null {
  const values: number[] = []
  let thermometerU = 0
  for (const placed of steps) {
    const place = placesOf(placed)[0]
    if (place === undefined) return null
    const result = placeResult(placed, place, state)
    if (result.si === null) return null
    if (result.readings.some((one) => beyondItsScale(defs, one) !== null)) return null
    for (const { instrument } of result.readings) {
      const thermometer = thermometerById(defs, instrument)
      if (thermometer === null) return null
      thermometerU = Math.max(thermometerU, thermometer.uncertainty.expanded.si / thermometer.uncertainty.k)
    }
    values.push(result.si)
  }
  if (values.length === 0) return null
  const driftK = Math.max(...values) - Math.min(...values)
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length
  const standardU = Math.hypot(thermometerU, driftK / 2 / Math.sqrt(3))
  return { celsius: mean - 273.15, standardU, thermometerU, driftK }
}
