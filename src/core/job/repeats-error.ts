// What the repeats of one place do to the measuring error of a verdict: whether they count in it, which place carries its own, and
// where most of the error of a figure is the repeats of one place.
import { datumsOf } from '../definition/judge-reads.ts'
import type { StepOf } from '../definition/procedure.ts'
import type { PlaceRepeats } from '../metrology/repeatability.ts'
import { partsOfReading, type ReadingUncertaintyInput } from '../metrology/uncertainty.ts'
import { asBoreJudge, type BoreFacts, boreFacts, errorAt, type JudgeStep } from './bore-facts.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from './definitions.ts'
import { readsOf } from './figure-step.ts'
import { type Place, placesOf } from './places.ts'
import type { State } from './state.ts'
import { figureReads } from './values.ts'
import type { VerdictRecord } from './verdict-record.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

export interface WideRepeats {
  readonly read: ReadStep
  readonly place: Place
  /** Greatest less least of its readings, SI. */
  readonly spread: number
}

/** Whether some verdict allows for the spread of repeats at this step. */
export function countsInError(defs: Definitions, read: PlacedStep): boolean {
  return defs.steps.some((judge) => {
    const bore = asBoreJudge(judge)
    if (bore !== null) {
      const { diameters, datum } = bore.step.inputs
      return [diameters, ...datumsOf({ datum })].some((id) => bore.scope + id === read.id)
    }
    const { step } = judge
    return step.kind === 'judge' && step.compute === 'figures' && figureReads(defs, judge).includes(read.id)
  })
}

/** More than this share of the variance of an error is most of it. */
export const MOST = 0.5

/**
 * The place whose repeats make most of a measuring error of this verdict: its own, where it stands out. Null where no place does.
 * `state` is one in which the verdict stands.
 */
export function dominantRepeats(
  defs: Definitions,
  state: State,
  judge: PlacedStep,
  record: VerdictRecord,
): WideRepeats | null {
  const bore = asBoreJudge(judge)
  if (bore !== null) return dominantInBore(defs, boreFacts(defs, state, bore), bore)
  return record.compute === 'figures' ? dominantInFigures(defs, state, judge, record) : null
}

function dominantInBore(defs: Definitions, facts: BoreFacts, judge: JudgeStep): WideRepeats | null {
  const { error } = facts
  if (error === null) return null
  const wide = standingOut(facts).find((one) => shareOfRepeats(errorAt(error, one)) > MOST)
  return wide === undefined ? null : placeAt(defs, judge, wide)
}

/** The places that carry their own repeats, the one furthest apart first. */
export function standingOut({ repeats }: Pick<BoreFacts, 'repeats'>): PlaceRepeats[] {
  return repeats.places.filter((one) => one.standsOut).sort((a, b) => b.spread - a.spread)
}

/** The part of the variance that the repeats make; 0 where the error cannot be reckoned with. */
export function shareOfRepeats(error: ReadingUncertaintyInput): number {
  const parts = partsOfReading(error)
  if (!parts.ok) return 0
  const all = parts.value.reduce((sum, { u }) => sum + u * u, 0)
  return all === 0 ? 0 : (parts.value.find(({ from }) => from === 'repeats')?.u ?? 0) ** 2 / all
}

/** By how far each reading moves its figure; a place in a pool is named only where its repeats are all there is of it. */
function dominantInFigures(
  defs: Definitions,
  state: State,
  judge: PlacedStep,
  { inputs }: Extract<VerdictRecord, { compute: 'figures' }>,
): WideRepeats | null {
  const { step } = judge
  if (step.kind !== 'judge' || step.compute !== 'figures') return null
  const { places, pools } = readsOf(defs, state, { ...judge, step })
  const own = new Map(
    pools.flatMap((pool) =>
      pool.places.filter((one) => one.standsOut || one.n - 1 === pool.dof).map((one) => [one.place, one]),
    ),
  )
  for (const { expandedU, parts } of inputs.figures) {
    if (expandedU === null || expandedU === 0) continue
    for (const { place: key, moves } of parts) {
      const [wide, read] = [own.get(key), places.get(key)]
      if (wide === undefined || read === undefined || typeof read === 'string' || moves === null) continue
      const share = Math.max(0, ...read.errors.map(shareOfRepeats))
      if (share * (moves / expandedU) ** 2 > MOST) return placeAt(defs, judge, wide)
    }
  }
  return null
}

/** A place by its key, for its number on the sheet. */
function placeAt(defs: Definitions, judge: PlacedStep, wide: PlaceRepeats): WideRepeats {
  const read = asKind(stepById(defs, wide.place.slice(0, wide.place.indexOf('.'))), 'read')
  const place = placesOf(read).find(({ key }) => key === wide.place)
  if (place === undefined) throw new Error(`${judge.id} rests on a place that its steps do not have`)
  return { read, place, spread: wide.spread }
}
