// Steps that a slice of the job has nothing to do with. While one gate is looked at, a run of steps that face nothing it holds,
// let nothing of it in, place nothing and are needed by no step that is kept, is only time going by with nobody behind the
// gate: the first and the last of the run stand for it, as things to be told. What happens at such steps themselves (doubts,
// verdicts, decisions, points) is searched without any gate, so many of them at a time, where those before and behind are
// time going by too.
import type { Step } from '../definition/procedure.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { applicability, isComplete } from '../job/next.ts'
import { pendingPoint } from '../job/point.ts'
import type { State } from '../job/state.ts'
import { refersTo } from '../job/values.ts'
import { oncePerPair } from '../lib/once.ts'
import { asLeftOut, freedJob, hasCondition } from './free.ts'

/** What is looked at together: a gate, or so many steps of the work itself, by id. */
export interface Slice {
  readonly gate: string | null
  readonly work: readonly string[]
}

export const NO_SLICE: Slice = { gate: null, work: [] }

export interface Quiet {
  /** Id of each step that stands for others, with all that it stands for, itself among them, in order. */
  readonly groups: ReadonlyMap<string, readonly PlacedStep[]>
  /** Ids of all quiet steps. */
  readonly ids: ReadonlySet<string>
}

/** What is quiet in this slice. */
export const quietFor = oncePerPair((whole: Definitions, { gate: gateId, work }: Slice): Quiet => {
  const gate = whole.steps.find((s) => s.id === gateId)?.step
  const own = new Set(gate?.kind === 'gate' ? gate.holds : [])
  const held = new Set(whole.steps.flatMap((s) => (s.step.kind === 'gate' ? s.step.holds : [])))
  const looked = new Set(work)
  const isKept = ({ id, step }: PlacedStep) =>
    looked.has(id) || (gateId === null && step.kind === 'gate') || !isApart(step, own, held, gateId !== null)
  const kept = new Set(whole.steps.filter(isKept).map((s) => s.id))
  // Rules are left open (free.ts), so what they name need not be known. Later steps only refer to earlier ones, so one pass
  // from the end finds all that must be.
  const free = freedJob(whole)
  for (const placed of [...free.steps].reverse())
    if (kept.has(placed.id)) for (const id of refersTo(free, placed)) kept.add(id)
  const ids = new Set(whole.steps.filter((s) => !kept.has(s.id)).map((s) => s.id))
  return { ids, groups: groupsOf(whole, ids) }
})

function isApart(step: Step, own: ReadonlySet<string>, held: ReadonlySet<string>, atGate: boolean): boolean {
  if (step.kind === 'gate' || step.kind === 'part') return false
  // A review may wait until all else is done.
  if ('point' in step && step.point?.kind === 'review') return false
  // What is placed strikes words of a gate that ask for a clear register.
  if (atGate && 'places' in step && step.places !== undefined) return false
  const looksAt = (hazard: string) => own.has(hazard) || !held.has(hazard)
  const letsIn = 'lets_in' in step ? (step.lets_in ?? []) : []
  return ![...(step.exposes ?? []), ...letsIn].some(looksAt)
}

/** Other gates do not break a run: where one of them is asked, this one sees only time going by. */
function groupsOf(whole: Definitions, ids: ReadonlySet<string>): Map<string, readonly PlacedStep[]> {
  const groups = new Map<string, readonly PlacedStep[]>()
  let run: PlacedStep[] = []
  const close = () => {
    // A judge gives its verdict by itself, so the job never stands at one.
    const stops = run.filter((s) => s.step.kind !== 'judge')
    const [first, last] = [stops[0], stops[stops.length - 1]]
    if (first !== undefined && last !== undefined) {
      const until = run.indexOf(first) + 1
      groups.set(first.id, first === last ? run : run.slice(0, until))
      if (first !== last) groups.set(last.id, run.slice(until))
    }
    run = []
  }
  for (const placed of whole.steps) {
    if (ids.has(placed.id)) run.push(placed)
    else if (placed.step.kind !== 'gate') close()
  }
  close()
  return groups
}

/** The step in the small job: one of those that stand for a run, or as it is; null for one that another stands for. */
export function quietened(whole: Definitions, quiet: Quiet, placed: PlacedStep): PlacedStep | null {
  if (!quiet.ids.has(placed.id)) return placed
  if (!quiet.groups.has(placed.id)) return null
  const { figures: _figures, ...rest } = placed
  const { id, title } = placed.step
  const told: PlacedStep = { ...rest, step: { kind: 'tell', id, title }, rule: null, inside: [] }
  // What was read there may fall, at any step, when an instrument is found unfit, and a test over time with it.
  const mayFall = (one: PlacedStep) =>
    hasCondition(one) || one.step.kind === 'read' || isOverTime(whole, one.id)
  return quiet.groups.get(placed.id)?.some(mayFall) === true ? asLeftOut(told) : told
}

function isOverTime({ overTime }: Definitions, id: string): boolean {
  return overTime.some(({ steps }) => steps.includes(id))
}

/** `done` of the small job for the steps that stand for runs: done when all that they stand for is, or is left out. */
export function quietDone(whole: Definitions, quiet: Quiet, state: State): State['done'] {
  const isOver = (placed: PlacedStep) =>
    applicability(whole, state, placed) === 'skip' ||
    (isComplete(state, placed) && pendingPoint(state, placed) === null)
  return Object.fromEntries(
    [...quiet.groups].flatMap(([id, group]) => (group.every(isOver) ? [[id, 'done']] : [])),
  )
}
