// The unswept strip held against the bore beside it: rings only take metal away, so where none ever ran is never the wider place.
import { datumsOf } from '../definition/judge-reads.ts'
import type { StepOf } from '../definition/procedure.ts'
import { type Definitions, type PlacedStep, stepById } from './definitions.ts'
import type { ReadingAt } from './entries.ts'
import { type Place, placeResult, placesOf } from './places.ts'
import { NOISE } from './plausible.ts'
import type { State } from './state.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

export interface WiderStrip {
  /** How much wider than the narrowest worn place on its axis, SI. */
  readonly by: number
  readonly at: ReadStep
  readonly place: Place
  readonly si: number
}

/**
 * Null where it is no strip, nothing was read on its axis, or it is not wider than the narrowest worn place there by more than two
 * readings of one place may lie apart.
 */
export function widerStrip(
  defs: Definitions,
  state: State,
  placed: ReadStep,
  reading: ReadingAt,
): WiderStrip | null {
  const axis = placesOf(placed).find(({ key }) => key === reading.place)?.axis?.id
  const worn = wornBeside(defs, placed).flatMap((at) =>
    placesOf(at).flatMap((place) => {
      const { si } = placeResult(at, place, state)
      return si === null || place.axis?.id !== axis ? [] : [{ at, place, si }]
    }),
  )
  const [least] = worn.sort((a, b) => a.si - b.si)
  if (least === undefined || reading.si <= least.si + placed.step.repeats.within.si + NOISE) return null
  return { ...least, by: reading.si - least.si }
}

/** The steps at which the bore is read whose judge takes this one for its strip. */
function wornBeside(defs: Definitions, placed: ReadStep): ReadStep[] {
  return defs.steps.flatMap(({ step, scope }) => {
    if (step.kind !== 'judge' || step.compute !== 'bore_form') return []
    if (!datumsOf(step.inputs).some((id) => scope + id === placed.id)) return []
    const bore = stepById(defs, scope + step.inputs.diameters)
    return bore.step.kind === 'read' ? [{ ...bore, step: bore.step }] : []
  })
}
