// Two figures changed round in the check after the readings. A drift goes on record as it is keyed, or it would be mended out of sight;
// but a figure that comes to the very check before with two figures changed round may be a slip, and is asked about as any reading is.
import type { StepOf } from '../definition/procedure.ts'
import { asKind, type Definitions, type PlacedStep } from './definitions.ts'
import type { ReadingAt } from './entries.ts'
import { likely, type Written } from './likely.ts'
import { checkBefore, isSetCheck } from './off-standard.ts'
import { placeResult, placesOf } from './places.ts'
import { NOISE } from './plausible.ts'
import type { State } from './state.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

/**
 * How far the check before it is away (SI, with its sign), where changing two figures round brings it within what its repeats may
 * differ by; null where it does not, where it is so near already, and where the check before was made with another gauge or is not there.
 */
export function swappedCheck(
  defs: Definitions,
  state: State,
  placed: ReadStep,
  reading: ReadingAt,
  written: Written,
): number | null {
  const earlier = isSetCheck(placed) ? checkBefore(defs, placed) : undefined
  if (earlier === undefined) return null
  const step = asKind(earlier, 'read')
  const [place] = placesOf(step)
  if (place === undefined) return null
  const { si: before, readings } = placeResult(step, place, state)
  if (before === null || readings.some(({ instrument }) => instrument !== reading.instrument)) return null
  const isNear = (si: number) => Math.abs(si - before) <= placed.step.repeats.within.si + NOISE
  if (isNear(reading.si)) return null
  return likely(reading, written, isNear).some(({ slip }) => slip === 'swapped') ? reading.si - before : null
}
