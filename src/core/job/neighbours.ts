// A size that its window lets through, and that lies far from all others of the same step: a slip, or the worst place of
// all. It is asked about and never put right.
import type { StepOf } from '../definition/procedure.ts'
import type { PlacedStep } from './definitions.ts'
import { placeResult, placesOf } from './places.ts'
import { NOISE } from './plausible.ts'
import type { State } from './state.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

/** Further off than this many times the spread of the others is far. Common practice, no source. */
const FAR = 4
/** With fewer other places than this nothing can be told. Common practice, no source. */
const OTHERS_NEEDED = 4

export interface Far {
  /** How far beyond the nearest of the others, SI; below zero where it is smaller than all of them. */
  readonly beyond: number
  /** Greatest less least of the others, SI. */
  readonly spread: number
  readonly others: number
}

/**
 * Null where the figure is among its neighbours, or cannot be told to be far. The others count with what their repeats
 * came to, where these agree. Their spread counts as `repeats.within` at least: two figures so close are the same
 * figure, so that a bore that is very even doubts nothing that is less than four times as far off. Lengths only: stages
 * of a machine have their own pressures and temperatures.
 */
export function farFromOthers(state: State, placed: ReadStep, place: string, si: number): Far | null {
  if (placed.step.quantity !== 'length') return null
  const others = placesOf(placed).flatMap((other) => {
    const figure = other.key === place ? null : placeResult(placed, other, state).si
    return figure === null ? [] : [figure]
  })
  if (others.length < OTHERS_NEEDED) return null
  const [least, most] = [Math.min(...others), Math.max(...others)]
  const far = FAR * Math.max(most - least, placed.step.repeats.within.si) + NOISE
  if (si >= least - far && si <= most + far) return null
  return { beyond: si > most ? si - most : si - least, spread: most - least, others: others.length }
}
