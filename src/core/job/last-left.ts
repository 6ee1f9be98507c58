// A reading against what the last overhaul left at the same place: wear goes one way, and a fine gauge finds no figure twice.
import { isSetOnStandard } from '../definition/instruments.ts'
import type { StepOf } from '../definition/procedure.ts'
import { recorded, statedU } from './changes.ts'
import { type Definitions, instrumentById, type PlacedStep } from './definitions.ts'
import type { ReadingAt } from './entries.ts'
import { placesOf } from './places.ts'
import { NOISE } from './plausible.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

interface Told {
  /** What it was left at, SI, and the day, YYYY-MM-DD. */
  readonly si: number
  readonly on: string
  /** Reading less what was left, SI. */
  readonly change: number
}

/** `same`: the very figure. `unworn`: wear, which makes it larger or smaller, went backwards by more than both errors. */
export type LastLeft = Told &
  ({ readonly is: 'same' } | { readonly is: 'unworn'; readonly wears: 'larger' | 'smaller' })

/**
 * Null where there is nothing to ask. The very figure is told of gauges that are set on a standard: feelers and dials do come
 * out alike. Wear going backwards is told only where the record says which way wear goes, and both
 * errors (U at k = 2, of the record and of the instrument) are stated: it has to be more than the two of them together.
 * As left nothing is compared: what goes back may have been cut or made new on this very job.
 */
export function againstLast(defs: Definitions, step: ReadStep, reading: ReadingAt): LastLeft | null {
  const place = placesOf(step).find((one) => one.key === reading.place)
  if (place === undefined || step.step.stage === 'as_left') return null
  const last = (defs.machine.overhauls ?? []).flatMap((one) => recorded(one, { step, place })).at(-1)
  if (last === undefined) return null
  const change = reading.si - last.si
  const told = { si: last.si, on: last.on, change }
  if (Math.abs(change) <= NOISE) {
    const gauge = instrumentById(defs, reading.instrument)
    return gauge !== undefined && isSetOnStandard(gauge) ? { is: 'same', ...told } : null
  }
  const u = statedU(defs, reading.instrument)
  if (last.wears === null || last.u === null || u === null) return null
  const back = last.wears === 'larger' ? -change : change
  return back <= last.u + u + NOISE ? null : { is: 'unworn', wears: last.wears, ...told }
}
