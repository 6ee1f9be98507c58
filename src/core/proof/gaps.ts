// No verdict but HOLD where anything it needs is missing. Each place and finding that a judge step rests on is taken away in
// turn from a job that has everything, in each way in which it can be missing, and the judge of the engine is asked.
import { judgeReads } from '../definition/judge-reads.ts'
import type { Engine } from '../job/admit.ts'
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import { judgeStep } from '../job/judge-step.ts'
import { applicability } from '../job/next.ts'
import { type Place, placesOf } from '../job/places.ts'
import type { State } from '../job/state.ts'
import { figureReads, hangsOn } from '../job/values.ts'
import type { Breach } from './explore.ts'
import { made } from './made.ts'

/** The first judge step that says something else than HOLD on a gap, or null. */
export function unheldVerdict(engine: Engine, fresh: State): Breach | null {
  const { defs } = engine
  const read = { ...fresh, doer: '', readings: allRead(defs, fresh) }
  for (const judge of defs.steps) {
    if (judge.step.kind !== 'judge') continue
    for (const whole of findings(defs, read, judge)) {
      for (const { step, says, state } of allGaps(defs, whole, judge)) {
        const judged = (engine.judge ?? judgeStep)(defs, state, asKind(judge, 'judge'), engine.version)
        const word = judged.result.verdict
        if (word === 'HOLD') continue
        const say = `${judge.id} comes to ${word} with ${says}`
        return { rule: 'verdict', say, step: judge.id, path: [{ says, step }] }
      }
    }
  }
  return null
}

interface Gap {
  readonly step: string
  readonly says: string
  readonly state: State
}

function allGaps(defs: Definitions, whole: State, judge: PlacedStep): Gap[] {
  const unseen = observedBy(defs, judge)
    .filter((one) => applicability(defs, whole, one) === 'do')
    .map(({ id }): Gap => {
      const { [id]: _seen, ...done } = whole.done
      return { step: id, says: `${id} not seen`, state: { ...whole, done } }
    })
  const unread = needed(defs, whole, judge).flatMap(({ step, place }) =>
    gaps(defs, whole, step, place).map(
      ([says, state]): Gap => ({ step: step.id, says: `${place.key} ${says}`, state }),
    ),
  )
  return [...unseen, ...unread]
}

function observedBy(defs: Definitions, judge: PlacedStep): PlacedStep[] {
  const { observed } = judgeReads(asKind(judge, 'judge').step)
  return observed.flatMap((id) => defs.steps.find((step) => step.id === judge.scope + id) ?? [])
}

/** The job with every finding that the steps the judge rests on can have, each with each. */
function findings(defs: Definitions, read: State, judge: PlacedStep): State[] {
  return observedBy(defs, judge).reduce(
    (states: State[], placed) =>
      states.flatMap((state) =>
        asKind(placed, 'observe').step.conditions.map(({ id }) => ({
          ...state,
          done: { ...state.done, [placed.id]: id },
        })),
      ),
    [read],
  )
}

function allRead(defs: Definitions, state: State): State['readings'] {
  return Object.fromEntries(
    defs.steps.flatMap((placed) =>
      placed.step.kind !== 'read'
        ? []
        : placesOf(asKind(placed, 'read')).map((place) => [place.key, repeatsAt(defs, state, placed, place)]),
    ),
  )
}

function repeatsAt(defs: Definitions, state: State, placed: PlacedStep, place: Place) {
  const { at_least } = asKind(placed, 'read').step.repeats
  return Array.from({ length: at_least }, (_, n) => made(defs, state, placed, place, n))
}

/** Places of the read steps that the judge cannot do without. A step that may be skipped by its rule is none of them. */
function needed(
  defs: Definitions,
  state: State,
  judge: PlacedStep,
): { readonly step: PlacedStep; readonly place: Place }[] {
  const behind = defs.steps.filter((s) => s.step.kind === 'read' && hangsOn(defs, s.id).includes(judge.id))
  const named = judgeReads(asKind(judge, 'judge').step).needed.map((id) => judge.scope + id)
  const own = new Set([...named, ...figureReads(defs, judge)])
  return behind
    .filter((s) => own.has(s.id) && applicability(defs, state, s) === 'do')
    .flatMap((step) => placesOf(asKind(step, 'read')).map((place) => ({ step, place })))
}

/** The place not measured, measured too seldom, with repeats that do not agree, and entered as not applicable. */
function gaps(defs: Definitions, whole: State, step: PlacedStep, place: Place): [string, State][] {
  const { repeats } = asKind(step, 'read').step
  const full = whole.readings[place.key] ?? []
  const having = (readings: typeof full): State => ({
    ...whole,
    readings: { ...whole.readings, [place.key]: readings },
  })
  const apart = Array.from({ length: Math.max(2, repeats.at_most) }, (_, n) => {
    const one = made(defs, whole, step, place, n)
    return { ...one, si: one.si + n * 3 * repeats.within.si }
  })
  return [
    ['not measured', having([])],
    ['not applicable', { ...having([]), notApplicable: { [place.key]: 'so' } }],
    ['not applicable, though read', { ...whole, notApplicable: { [place.key]: 'so' } }],
    ...(repeats.at_least > 1 ? ([['read too seldom', having(full.slice(0, -1))]] as [string, State][]) : []),
    ...(repeats.at_most > 1 ? ([['read apart', having(apart)]] as [string, State][]) : []),
    ['corrected away', having(full.map((r) => ({ ...r, correctedBy: 1 })))],
  ]
}
