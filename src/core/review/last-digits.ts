// Do the last digits of what was read with one gauge lean to 0 and 5? Digits of what was really measured fall evenly; figures
// that were rounded off, read coarser than the gauge shows, or made up do not. It asks and accuses nobody.
import { isSetOnStandard } from '../definition/instruments.ts'
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import { placesOf } from '../job/places.ts'
import { type Reading, type State, standing } from '../job/state.ts'
import { binomialAtLeast } from '../statistics/index.ts'

/** Two digits of ten. */
const SHARE = 0.2
/** Asked where chance alone would do it less often than this. Common practice, no source. */
export const ASKED_BELOW = 0.001
/** With fewer readings not even all of them ending so is that rare: 0.2^4 = 0.0016. Follows from the two above. */
export const LEAST_READINGS = 5
/**
 * The readings have to spread over so many steps of the gauge that the last digit went round at least twice; closer together
 * they share their last digit for good reason. Common practice, no source.
 */
export const LEAST_SPREAD = 20

export interface LastDigits {
  readonly instrument: string
  readonly readings: readonly Reading[]
  /** How many of them end in 0 or 5. */
  readonly ending: number
  /** Of so many or more by chance alone. */
  readonly chance: number
}

/**
 * One for each gauge that leans so. Only the first reading of a place that stands counts, as its repeats are no new draw; only
 * lengths by gauges that are set on a standard and step in ones; never their checks on the standard, whose size is round.
 * Last digits of fine measurements are even: D. A. Preece, Distributions of final digits in data, The Statistician 30 (1981)
 * 31-60 (read second-hand). The test: see binomialAtLeast.
 */
export function leaningDigits(defs: Definitions, state: State): LastDigits[] {
  const firsts = defs.steps.flatMap((placed) => firstReadings(state, placed))
  return defs.instruments.instruments.flatMap((gauge): LastDigits[] => {
    if (!isSetOnStandard(gauge)) return []
    const { unit, value: step } = gauge.resolution
    // Read in steps of 5 every figure ends in 0 or 5: of such a gauge this says nothing.
    if (!isPowerOfTen(step)) return []
    const read = firsts.flatMap((reading) => {
      if (reading.instrument !== gauge.id || reading.unit !== unit) return []
      const steps = reading.value / step
      const whole = Math.round(steps)
      // Keyed finer than the gauge steps: its last digit is somebody's estimate.
      return Math.abs(steps - whole) < 1e-6 ? [{ reading, whole }] : []
    })
    const wholes = read.map(({ whole }) => whole)
    if (read.length < LEAST_READINGS || !(Math.max(...wholes) - Math.min(...wholes) >= LEAST_SPREAD))
      return []
    const ending = wholes.filter((whole) => whole % 5 === 0).length
    const chance = binomialAtLeast(ending, read.length, SHARE)
    return chance < ASKED_BELOW
      ? [{ instrument: gauge.id, readings: read.map(({ reading }) => reading), ending, chance }]
      : []
  })
}

function firstReadings(state: State, placed: PlacedStep): Reading[] {
  if (
    placed.step.kind !== 'read' ||
    placed.step.quantity !== 'length' ||
    placed.step.plausible.from === 'standard'
  )
    return []
  return placesOf(asKind(placed, 'read')).flatMap(({ key }) => standing(state, key).slice(0, 1))
}

function isPowerOfTen(step: number): boolean {
  const power = Math.log10(step)
  return Number.isFinite(power) && Math.abs(power - Math.round(power)) < 1e-9
}
