// Steps that a gate has nothing to do with. While one gate is looked at, a run of steps that face nothing it holds, let nothing
// of it in, are no point of inspection, place nothing and are named by no rule of a step that is kept, is only time going by
// with nobody behind the gate: the first and the last of the run stand for it, as things to be told. What happens at such
// steps themselves (doubts, verdicts, decisions) is searched without any gate, where all of them are kept.
import type { Step } from '../definition/procedure.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { applicability, isComplete } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { refersTo } from '../job/values.ts'
import { oncePerPair } from '../lib/once.ts'

export interface Quiet {
  /** Id of each step that stands for others, with all that it stands for, itself among them, in order. */
  readonly groups: ReadonlyMap<string, readonly PlacedStep[]>
  /** Ids of all quiet steps. */
  readonly ids: ReadonlySet<string>
}

const NONE: Quiet = { groups: new Map(), ids: new Set() }

/** What is quiet for the gate of this id; nothing without a gate. */
export function quietFor(whole: Definitions, gateId: string | null): Quiet {
  return gateId === null ? NONE : found(whole, keyOf(gateId))
}

/** One object for each id, so that what was found is found again. */
const KEYS = new Map<string, { readonly gateId: string }>()
function keyOf(gateId: string): { readonly gateId: string } {
  const key = KEYS.get(gateId) ?? { gateId }
  KEYS.set(gateId, key)
  return key
}

const found = oncePerPair((whole: Definitions, { gateId }: { readonly gateId: string }): Quiet => {
  const gate = whole.steps.find((s) => s.id === gateId)?.step
  const own = new Set(gate?.kind === 'gate' ? gate.holds : [])
  const held = new Set(whole.steps.flatMap((s) => (s.step.kind === 'gate' ? s.step.holds : [])))
  const kept = new Set(whole.steps.filter((s) => !isApart(s.step, own, held)).map((s) => s.id))
  // Later steps only refer to earlier ones, so one pass from the end finds all that must be known.
  for (const placed of [...whole.steps].reverse())
    if (kept.has(placed.id)) for (const id of refersTo(whole, placed)) kept.add(id)
  const ids = new Set(whole.steps.filter((s) => !kept.has(s.id)).map((s) => s.id))
  return { ids, groups: groupsOf(whole, ids) }
})

function isApart(step: Step, own: ReadonlySet<string>, held: ReadonlySet<string>): boolean {
  if (step.kind === 'gate' || step.kind === 'part') return false
  if ('point' in step && step.point !== undefined) return false
  if ('places' in step && step.places !== undefined) return false
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
export function quietened(quiet: Quiet, placed: PlacedStep): PlacedStep | null {
  if (!quiet.ids.has(placed.id)) return placed
  if (!quiet.groups.has(placed.id)) return null
  const { figures: _figures, ...rest } = placed
  const { id, title } = placed.step
  return { ...rest, step: { kind: 'tell', id, title }, rule: null, inside: [] }
}

/** `done` of the small job for the steps that stand for runs: done when all that they stand for is, or is left out. */
export function quietDone(whole: Definitions, quiet: Quiet, state: State): State['done'] {
  const isOver = (placed: PlacedStep) =>
    applicability(whole, state, placed) === 'skip' || isComplete(state, placed)
  return Object.fromEntries(
    [...quiet.groups].flatMap(([id, group]) => (group.every(isOver) ? [[id, 'done']] : [])),
  )
}
