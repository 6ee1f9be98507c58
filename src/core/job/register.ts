// The register of everything temporary: blinds, plugs, blocks, pins, slings, open bleeds, jumpers. What was placed stands
// open until two different people have each signed that it is accounted for; a job does not end over it by itself.
import type { Step } from '../definition/procedure.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import type { State } from './state.ts'

export interface Thing {
  /** Entry it was placed with. */
  readonly seq: number
  readonly by: string | null
  readonly what: string
  readonly where: string
  /** Number or tag on it. */
  readonly number: string | null
  /** The step it was placed at; null: at none. */
  readonly step: string | null
  /** Id under which a step declares it, with the part's before it; null when somebody placed it of their own accord. */
  readonly place: string | null
  /** The first of the two who signed for it. */
  readonly seenBy: string | null
  readonly accountedBy: readonly string[] | null
  /** The lead who handed it on, still open, to those who come after the job. */
  readonly handedOnBy: string | null
}

/** Everything placed and not accounted for, also what was handed on. Oldest first. */
export function openThings(state: State): readonly Thing[] {
  return state.things.filter((thing) => thing.accountedBy === null)
}

/** Nothing temporary is open: what a gate before a start may ask for. */
export function registerClear(state: State): boolean {
  return openThings(state).length === 0
}

/** What holds up the end of the job: open, not handed on, and not left by the procedure's own word. */
export function holdsUpClosing(defs: Definitions, state: State): readonly Thing[] {
  const leaves = defs.procedure.leaves ?? []
  return openThings(state).filter(
    (thing) => thing.handedOnBy === null && !(thing.place !== null && leaves.includes(thing.place)),
  )
}

export interface PlaceAsked {
  readonly id: string
  readonly what: string
}

/** What the step places and is not in the register already, from when it was done before. */
export function placesAsked(state: State, placed: PlacedStep): readonly PlaceAsked[] {
  return placesOfStep(placed.step)
    .map(({ id, what }) => ({ id: placed.scope + id, what }))
    .filter(({ id }) => !openThings(state).some((thing) => thing.place === id))
}

export function placesOfStep(step: Step): readonly PlaceAsked[] {
  return step.kind === 'tell' || step.kind === 'confirm' ? (step.places ?? []) : []
}

/** `sling, on the hook, S-4`. */
export function thingText({ what, where, number }: Pick<Thing, 'what' | 'where' | 'number'>): string {
  return [what, where, ...(number === null ? [] : [number])].join(', ')
}
