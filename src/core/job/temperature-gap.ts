// A temperature far from the others of the same measuring: keyed in the other unit, with two figures changed round, or a part
// that has not come to the warmth of its gauge. Each passes its window; held against each other they show.
import type { StepOf } from '../definition/procedure.ts'
import { at20Of } from '../definition/step-judge.ts'
import { oncePer } from '../lib/once.ts'
import { companion, quantity } from '../units/index.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from './definitions.ts'
import type { ReadingAt } from './entries.ts'
import { placeResult, placesOf } from './places.ts'
import { NOISE } from './plausible.ts'
import type { State } from './state.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

/**
 * Part and instrument that have lain together differ by less than this, K (18 degF). From the freezing point up the two units
 * of one warmth are further apart than that. Common practice, no source.
 */
export const APART_K = 10

export interface TemperatureGap {
  /** The temperature it is held against: its step, and the last reading there. */
  readonly other: { readonly step: ReadStep; readonly reading: ReadingAt }
  /** Reading less the other, K. */
  readonly apart: number
  /** Whose unit it would be: of the figure keyed now, or of the one that stands. Null where no other unit brings them together. */
  readonly whose: 'this' | 'other' | null
}

/**
 * Null where some other temperature of the same part and instrument is near, or where there is none. Part and instrument are held
 * against each other, and each against itself before: whichever is keyed first is held against whichever comes second, and a
 * corrected one against all that stand beside it.
 */
export function temperatureGap(
  defs: Definitions,
  state: State,
  placed: ReadStep,
  reading: ReadingAt,
): TemperatureGap | null {
  if (placed.step.quantity !== 'temperature') return null
  const others = takenWith(defs, placed.id).flatMap((id) => {
    const step = asKind(stepById(defs, id), 'read')
    return placesOf(step).flatMap((place) => {
      const { si, readings } = place.key === reading.place ? NONE : placeResult(step, place, state)
      const last = readings.at(-1)
      return si === null || last === undefined ? [] : [{ step, reading: last, si }]
    })
  })
  const [nearest] = [...others].sort((a, b) => Math.abs(a.si - reading.si) - Math.abs(b.si - reading.si))
  if (nearest === undefined || isNear(nearest.si, reading.si)) return null
  const swapped = inOtherUnit(reading)
  const mine = others.find(({ si }) => swapped !== null && isNear(si, swapped))
  if (mine !== undefined) return { other: mine, apart: reading.si - mine.si, whose: 'this' }
  const theirs = others.find((one) => {
    const si = inOtherUnit(one.reading)
    return si !== null && isNear(si, reading.si)
  })
  const far = theirs ?? nearest
  return { other: far, apart: reading.si - far.si, whose: theirs === undefined ? null : 'other' }
}

/** Near enough to be of one measuring. */
export function isNear(one: number, two: number): boolean {
  return Math.abs(one - two) <= APART_K + NOISE
}

const NONE = { si: null, readings: [] as readonly ReadingAt[] }

/** The same figure in the other unit, SI; null where a unit was keyed with it, as then it is no slip. */
function inOtherUnit({ typed, value, unit }: ReadingAt): number | null {
  const other = companion(unit)
  return other === undefined || /\p{L}/u.test(typed) ? null : quantity(value, other).si
}

/** Read steps whose temperatures belong together: those that one judge takes as part and instrument of the same sizes. */
function takenWith(defs: Definitions, id: string): readonly string[] {
  return groupsOf(defs).find((group) => group.includes(id)) ?? []
}

const groupsOf = oncePer((defs: Definitions): readonly (readonly string[])[] =>
  defs.steps.flatMap(({ step, scope }): string[][] => {
    if (step.kind !== 'judge') return []
    const under = (ids: readonly string[]) => ids.map((id) => scope + id)
    if (step.compute === 'bore_form')
      return [under([...step.inputs.part_temperature, ...step.inputs.instrument_temperature])]
    return step.compute === 'figures' ? at20Of(step).map((at) => under([...at.part, ...at.instrument])) : []
  }),
)
