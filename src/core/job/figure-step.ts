// Gathers what a judge by figures needs from the readings on record, works each figure out, and how far it may be off. What is
// missing stays missing and is judged HOLD; nothing is filled in.
import type { CharacteristicId } from '../definition/characteristics.ts'
import type { FiguresJudge, StepOf } from '../definition/procedure.ts'
import { at20Of } from '../definition/step-judge.ts'
import { type Figure, type FigureJudgeInput, judgeFigures } from '../metrology/figure-judge.ts'
import { propagate, type Source } from '../metrology/propagate.ts'
import type { CompiledValue } from '../rules/value.ts'
import { asKind, type Definitions, type PlacedStep } from './definitions.ts'
import { type At20, at20Facts } from './figure-at-20.ts'
import { type Read, readsAt } from './figure-reads.ts'
import { limitsFor } from './limits.ts'
import { applicability } from './next.ts'
import { testHolds } from './paper-test.ts'
import { placeResult, placesOf } from './places.ts'
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

export function figureInput(defs: Definitions, state: State, judge: FiguresJudgeStep): FigureJudgeInput {
  const { step, figures = [] } = judge
  const brackets = at20Facts(defs, state, judge)
  const { places } = readsOf(defs, state, judge, brackets)
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
    holds: [
      ...new Set([...brackets.flatMap(({ holds }) => holds), ...faults, ...testHolds(defs, state, judge)]),
    ],
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

/** What the figures rest on, each with its error, and how far apart each instrument read the same place. */
export function readsOf(
  defs: Definitions,
  state: State,
  judge: FiguresJudgeStep,
  brackets: readonly At20[] = at20Facts(defs, state, judge),
) {
  return readsAt(defs, state, readsBehind(defs, judge), brackets)
}

/** The read steps that the figures rest on, in the order of the job. */
function readsBehind(defs: Definitions, judge: PlacedStep): ReadStep[] {
  const ids = new Set(figureReads(defs, judge))
  return defs.steps
    .filter((one) => one.step.kind === 'read' && ids.has(one.id))
    .map((one) => asKind(one, 'read'))
}

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
