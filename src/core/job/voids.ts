// What hangs on a step's outcome, and so would become void were it changed: reckoned before anything happens, to be said,
// and put by name into the entry that makes it so.
import { oncePer } from '../lib/once.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import { applicability } from './next.ts'
import { type State, standingVerdict, stands } from './state.ts'
import { hangsOn } from './values.ts'

/**
 * Ids of the steps that have something to lose when the outcome of the given steps changes, in the order of the job: what
 * hangs on them, and the inspection points signed for them.
 */
export function wouldVoid(defs: Definitions, state: State, ...stepIds: readonly string[]): string[] {
  const hanging = new Set(stepIds.flatMap((id) => hangsOn(defs, id)))
  const loses = (id: string) => hasOutcome(state, id) || hasPoint(state, id) || state.done[id] !== undefined
  return defs.steps
    .map((placed) => placed.id)
    .filter((id) => (hanging.has(id) && loses(id)) || (stepIds.includes(id) && hasPoint(state, id)))
}

/** Steps whose readings fall too, should their condition not be met any more once the given step is answered anew. */
export function mayLeave(defs: Definitions, state: State, stepId: string): string[] {
  const hanging = new Set(hangsOn(defs, stepId))
  return conditional(defs)
    .filter((placed) => hanging.has(placed.id) && hasReadings(state, placed.id))
    .map((placed) => placed.id)
}

/** Steps done under a condition that is not met any more, with what hangs on them; empty when there are none. */
export function branchLeft(defs: Definitions, state: State): string[] {
  const left = conditional(defs)
    .filter((placed) => placed.step.kind !== 'gate' && hasAnything(state, placed.id))
    .filter((placed) => applicability(defs, state, placed) === 'skip')
    .map((placed) => placed.id)
  if (left.length === 0) return []
  const all = new Set([...left, ...wouldVoid(defs, state, ...left)])
  return defs.steps.map((placed) => placed.id).filter((id) => all.has(id))
}

/** Whether it was done, or measured, and nothing of that stands any more. */
export function isVoidSince(state: State, { id }: PlacedStep): boolean {
  const read = Object.entries(state.readings).flatMap(([place, list]) =>
    place.startsWith(`${id}.`) ? list : [],
  )
  return (
    state.verdicts[id]?.void === true ||
    state.dispositions[id]?.void === true ||
    (read.length > 0 && !read.some(stands))
  )
}

const conditional = oncePer((defs: Definitions): readonly PlacedStep[] =>
  defs.steps.filter((placed) => [placed, ...placed.inside].some((p) => p.rule !== null)),
)

function hasAnything(state: State, id: string): boolean {
  return (
    state.done[id] !== undefined || hasOutcome(state, id) || hasReadings(state, id) || hasPoint(state, id)
  )
}

function hasOutcome(state: State, id: string): boolean {
  const disposition = state.dispositions[id]
  return standingVerdict(state, id) !== null || (disposition !== undefined && !disposition.void)
}

function hasPoint(state: State, id: string): boolean {
  const point = state.points[id]
  return (point !== undefined && !point.void) || state.notices[id] !== undefined
}

function hasReadings(state: State, id: string): boolean {
  return (
    stepsRead(state.readings).has(id) ||
    Object.keys(state.notApplicable).some((place) => stepOf(place) === id) ||
    state.late?.step === id ||
    state.doubt?.step === id
  )
}

/** Steps with a reading that stands. Asked of every step at every entry, so it is gone through once for each new reading. */
const stepsRead = oncePer(
  (readings: State['readings']): ReadonlySet<string> =>
    new Set(Object.entries(readings).flatMap(([place, list]) => (list.some(stands) ? [stepOf(place)] : []))),
)

/** A place begins with the id of its step, and ids have no point in them. */
function stepOf(place: string): string {
  return place.slice(0, place.indexOf('.'))
}
