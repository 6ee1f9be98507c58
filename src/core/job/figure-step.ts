// Gathers what a judge by figures needs from the readings on record, works each figure out, and how far it may be off. What is
// missing stays missing and is judged HOLD; nothing is filled in.
import type { CharacteristicId } from '../definition/characteristics.ts'
import { isSetOnStandard, type Reader } from '../definition/instruments.ts'
import type { FiguresJudge, StepOf } from '../definition/procedure.ts'
import { at20Of } from '../definition/step-judge.ts'
import { type Figure, type FigureJudgeInput, judgeFigures } from '../metrology/figure-judge.ts'
import { propagate, type Source } from '../metrology/propagate.ts'
import { expandedOfReading } from '../metrology/uncertainty.ts'
import type { CompiledValue } from '../rules/value.ts'
import { asKind, type Definitions, instrumentById, type PlacedStep } from './definitions.ts'
import { type At20, at20Facts } from './figure-at-20.ts'
import { limitsFor } from './limits.ts'
import { applicability } from './next.ts'
import { placeResult, placesOf } from './places.ts'
import { beyondItsScale, nowDoubted } from './plausible.ts'
import type { State } from './state.ts'
import { figureReads, type Instead, workFigure } from './values.ts'
import type { FigureVerdictRecord } from './verdict-record.ts'

export type FiguresJudgeStep = PlacedStep & { readonly step: FiguresJudge }
type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

export function figuresVerdict(
  defs: Definitions,
  state: State,
  judge: FiguresJudgeStep,
  version: string,
): FigureVerdictRecord {
  const inputs = figureInput(defs, state, judge)
  return {
    compute: 'figures',
    version,
    inputs,
    result: judgeFigures(inputs),
    readings: seqsBehind(defs, state, judge),
  }
}

/** A settled place that figures may rest on, with the value that goes in and what it was read on. */
interface Read {
  readonly place: string
  readonly si: number
  readonly expandedU: number | null
  readonly resolution: number
  readonly instruments: readonly string[]
}

export function figureInput(defs: Definitions, state: State, judge: FiguresJudgeStep): FigureJudgeInput {
  const { step, figures = [] } = judge
  const brackets = at20Facts(defs, state, judge)
  const places = new Map<string, Read | string>()
  for (const read of readsBehind(defs, judge))
    if (applicability(defs, state, read) === 'do')
      for (const [key, one] of readAt(defs, state, read, brackets)) places.set(key, one)
  const faults = [...places.values()].filter((one) => typeof one === 'string')
  const limits = limitsFor(
    defs,
    step.figures.map(({ characteristic }): CharacteristicId => characteristic),
  )
  return {
    figures: step.figures.map(({ characteristic, is }, n): Figure => {
      const compiled = figures[n]
      const worked = compiled === undefined ? NOTHING : workOut(defs, state, judge, compiled, places)
      return { characteristic, is, ...worked, limit: limits[characteristic] ?? null }
    }),
    holds: [...new Set([...brackets.flatMap(({ holds }) => holds), ...faults])],
    k: 2,
    simpleAcceptance:
      defs.machine.simple_acceptance === undefined ? null : { by: defs.machine.simple_acceptance.by },
  }
}

const NOTHING = {
  value: null,
  unknown: ['the figure does not hold'],
  expandedU: null,
  resolution: null,
  parts: [],
}

function workOut(
  defs: Definitions,
  state: State,
  judge: FiguresJudgeStep,
  compiled: CompiledValue,
  places: ReadonlyMap<string, Read | string>,
): Omit<Figure, 'characteristic' | 'is' | 'limit'> {
  const mine = new Set(
    figureReads(defs, { ...judge, figures: [compiled] }).flatMap((id) => {
      const placed = defs.steps.find((one) => one.id === id)
      return placed?.step.kind === 'read' ? placesOf(asKind(placed, 'read')).map(({ key }) => key) : []
    }),
  )
  const reads = [...places.values()].filter(
    (one): one is Read => typeof one !== 'string' && mine.has(one.place),
  )
  const applies = (placed: PlacedStep) => applicability(defs, state, placed) === 'do'
  const work = (values: readonly number[]): { value: number | null; because: readonly string[] } => {
    const moved = new Map(reads.map((read, n) => [read.place, values[n] ?? Number.NaN]))
    const instead: Instead = (key) => moved.get(key) ?? null
    const outcome = workFigure(defs, state, judge.scope, compiled, applies, instead)
    if (outcome.is === 'unknown') return { value: null, because: outcome.because }
    const { value } = outcome
    return {
      value: value.is === 'quantity' ? value.quantity.si : value.is === 'number' ? value.number : null,
      because: [],
    }
  }
  const base = work(reads.map(({ si }) => si))
  if (base.value === null)
    return { value: null, unknown: base.because.map(plain), expandedU: null, resolution: null, parts: [] }
  const sources = reads.map((read): Source => ({ ...read, group: read.instruments.join('+') }))
  const { expandedU, resolution, moves } = propagate(sources, base.value, (values) => work(values).value)
  // A figure that cannot be worked out for what the readings may really have been says nothing of the part.
  if (Number.isNaN(expandedU) || Number.isNaN(resolution))
    return { ...NOTHING, unknown: ['it cannot be worked out for readings as far off as these may be'] }
  return {
    value: base.value,
    unknown: [],
    expandedU,
    resolution,
    parts: reads.map(({ place, si, expandedU: u, instruments }, n) => ({
      place,
      si,
      expandedU: u,
      instruments,
      moves: moves[n] ?? null,
    })),
  }
}

function plain(clause: string): string {
  return clause.replaceAll('_', ' ')
}

/** The read steps that the figures rest on, in the order of the job. */
function readsBehind(defs: Definitions, judge: PlacedStep): ReadStep[] {
  const ids = new Set(figureReads(defs, judge))
  return defs.steps
    .filter((one) => one.step.kind === 'read' && ids.has(one.id))
    .map((one) => asKind(one, 'read'))
}

/**
 * Each settled place, or the reason why nothing read here can be trusted. A place without a settled value is left out: the
 * figure is then unknown, and says so itself.
 */
export function* readAt(
  defs: Definitions,
  state: State,
  read: ReadStep,
  brackets: readonly At20[],
): Generator<[string, Read | string]> {
  const at20 = brackets.find((one) => one.covers(read)) ?? null
  for (const place of placesOf(read)) {
    const { si, spread, readings } = placeResult(read, place, state)
    if (si === null) continue
    const instruments = [...new Set(readings.map((one) => one.instrument))].sort()
    const known = instruments.map((id) => instrumentById(defs, id))
    const used = known.filter((one): one is Reader => one !== undefined && one.kind !== 'gas_meter')
    if (used.length < known.length || used.length === 0) {
      yield [place.key, `${instruments.join(', ')} is not in the register, so what it read cannot be judged.`]
      continue
    }
    // It was doubted, and kept all the same: on record, and no measurement.
    const off = readings.map((one) => beyondItsScale(defs, one)).find((why) => why !== null)
    if (off !== undefined) {
      yield [place.key, `A reading at ${place.station.label} is ${off}, so it cannot be judged.`]
      continue
    }
    const doubt = readings.map((one) => nowDoubted(defs, read, one)).find((why) => why !== null)
    if (doubt !== undefined) {
      yield [
        place.key,
        `A reading at ${place.station.label} is by the record as it is now ${doubt}, so it cannot be judged.`,
      ]
      continue
    }
    const bare = used.find((one) => isSetOnStandard(one) && at20 === null)
    if (bare !== undefined) {
      yield [
        place.key,
        `${bare.id} measured here without a set-check before and after and without temperatures: its figures cannot be judged.`,
      ]
      continue
    }
    const reduced = at20 === null ? { ok: true as const, value: si } : at20.reduce(si)
    if (!reduced.ok) {
      yield [place.key, reduced.error.say]
      continue
    }
    const isHeld = at20 !== null && at20.holds.length > 0
    const errors = used.map((one) => (isHeld ? null : errorOf(one, reduced.value, spread ?? 0, at20)))
    yield [
      place.key,
      {
        place: place.key,
        si: reduced.value,
        expandedU: errors.includes(null) ? null : Math.max(...errors.map((u) => u ?? Number.NaN)),
        resolution: Math.max(...used.map((one) => one.resolution.si)),
        instruments,
      },
    ]
  }
}

/** Expanded uncertainty, k = 2, of one combined reading; null where nobody has stated any. Temperatures count where known. */
function errorOf(one: Reader, si: number, spread: number, at20: At20 | null): number | null {
  if (one.uncertainty === undefined) return null
  const { uncertainty } = one
  const warm = at20 === null ? COLD : at20.error(one)
  const u = expandedOfReading({
    instrumentU: uncertainty.expanded.si,
    instrumentK: uncertainty.k,
    // The size only matters with an expansion; any size above nought does without one.
    lengthM: at20 === null ? 1 : Math.abs(si),
    ...warm,
    repeatsSpread: spread,
    resolutionM: one.resolution.si,
    resolutionInsideU: 'includes_resolution' in uncertainty && uncertainty.includes_resolution,
  })
  return u.ok ? u.value : Number.NaN
}

/** Expanded uncertainty, k = 2, of one reading as good as it can be: no spread, no doubt in temperatures. Null: unstated. */
export function oneReadingU(one: Reader): number | null {
  return errorOf(one, 1, 0, null)
}

const COLD = { partAlpha: 0, instrumentAlpha: 0, partTempU: 0, instrumentTempU: 0 }

/** Readings that went in, by number of their entries. */
function seqsBehind(defs: Definitions, state: State, judge: FiguresJudgeStep): number[] {
  const named = at20Of(judge.step).flatMap((at) => [
    ...at.readings,
    at.set_before,
    at.set_after,
    ...at.part,
    ...at.instrument,
  ])
  const ids = new Set([...named.map((id) => judge.scope + id), ...figureReads(defs, judge)])
  return defs.steps
    .filter((one) => ids.has(one.id) && one.step.kind === 'read' && applicability(defs, state, one) === 'do')
    .flatMap((one) => {
      const read = asKind(one, 'read')
      return placesOf(read).flatMap((place) => placeResult(read, place, state).readings.map(({ seq }) => seq))
    })
    .sort((a, b) => a - b)
}
