// What the repeats of one place do to the measuring error of a verdict: whether they count in it, and where most of it is theirs.
import type { StepOf } from '../definition/procedure.ts'
import { expandedOfReading } from '../metrology/uncertainty.ts'
import { asBoreJudge, boreFacts, type JudgeStep } from './bore-facts.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from './definitions.ts'
import { type Place, placeResult, placesOf } from './places.ts'
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
    if (bore !== null) return bore.scope + bore.step.inputs.diameters === read.id
    const { step } = judge
    return step.kind === 'judge' && step.compute === 'figures' && figureReads(defs, judge).includes(read.id)
  })
}

/** More than this share of the variance of a verdict's error, for one place, is most of it. */
const MOST = 0.5

/**
 * The place whose repeats make most of the measuring error of this verdict; null where none does. `state` is one in which the
 * verdict stands.
 */
export function dominantRepeats(
  defs: Definitions,
  state: State,
  judge: PlacedStep,
  record: VerdictRecord,
): WideRepeats | null {
  const bore = asBoreJudge(judge)
  if (bore !== null) return dominantInBore(defs, state, bore)
  return record.compute === 'figures' ? dominantInFigures(defs, state, record) : null
}

/** One spread counts for all diameters, the greatest: it is most of the error where the next one would leave less than half. */
function dominantInBore(defs: Definitions, state: State, judge: JudgeStep): WideRepeats | null {
  const { error } = boreFacts(defs, state, judge)
  const wide = widest(defs, state, judge)
  const [first, second] = wide
  if (error === null || first === undefined) return null
  const all = expandedOfReading({ ...error, repeatsSpread: first.spread })
  const without = expandedOfReading({ ...error, repeatsSpread: second?.spread ?? 0 })
  if (!all.ok || !without.ok || all.value === 0) return null
  return 1 - (without.value / all.value) ** 2 > MOST ? first : null
}

/** Every diameter that has a figure, the one whose repeats lie furthest apart first. */
export function widest(defs: Definitions, state: State, judge: JudgeStep): WideRepeats[] {
  const read = asKind(stepById(defs, judge.scope + judge.step.inputs.diameters), 'read')
  return placesOf(read)
    .flatMap((place) => {
      const { si, spread } = placeResult(read, place, state)
      return si === null || spread === null ? [] : [{ read, place, spread }]
    })
    .sort((a, b) => b.spread - a.spread)
}

/** Spread of repeats to its expanded uncertainty, k = 2, as metrology/uncertainty.ts counts it. */
const expandedOfSpread = (spread: number) => (2 * spread) / (1.128 * Math.SQRT2)

function dominantInFigures(
  defs: Definitions,
  state: State,
  { inputs }: Extract<VerdictRecord, { compute: 'figures' }>,
): WideRepeats | null {
  for (const { expandedU, parts } of inputs.figures) {
    if (expandedU === null || expandedU === 0) continue
    for (const { place: key, expandedU: own, moves } of parts) {
      const found = placeAt(defs, state, key)
      if (found === null || own === null || own === 0 || moves === null) continue
      const ofRepeats = (moves / expandedU) * (expandedOfSpread(found.spread) / own)
      if (ofRepeats ** 2 > MOST) return found
    }
  }
  return null
}

function placeAt(defs: Definitions, state: State, key: string): WideRepeats | null {
  const placed = stepById(defs, key.slice(0, key.indexOf('.')))
  if (placed.step.kind !== 'read') return null
  const read = asKind(placed, 'read')
  const place = placesOf(read).find((one) => one.key === key)
  const spread = place === undefined ? null : placeResult(read, place, state).spread
  return place === undefined || spread === null ? null : { read, place, spread }
}
