// Steps that are alike to a gate: behind the same hazards, letting in the same, measured or not, signed by the same. While a
// gate is looked at, the job stands at the first step like the current one (normal.ts), and what is done to an earlier step is
// tried on the first and on the last of those that are alike (moves.ts).
import type { Step } from '../definition/procedure.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { gatesOf } from '../job/gate.ts'
import { oncePerPair } from '../lib/once.ts'

/** Told, seen or looked at. */
export function isPlain({ step }: PlacedStep): boolean {
  return step.kind === 'tell' || step.kind === 'confirm' || step.kind === 'observe'
}

/** All that a gate can see of a step that is told, seen or looked at. */
export const workLike = oncePerPair((defs: Definitions, { step }: PlacedStep): string => {
  const places = 'places' in step && step.places !== undefined
  const point = 'point' in step ? step.point : null
  return JSON.stringify([step.kind, step.exposes ?? [], letIn(defs, step), places, point])
})

/** What the step lets in that a gate here holds. */
function letIn(defs: Definitions, step: Step): readonly string[] {
  const holds = new Set(gatesOf(defs).flatMap((gate) => gate.step.holds))
  return 'lets_in' in step ? (step.lets_in ?? []).filter((h) => holds.has(h)) : []
}

/** All that a gate can see of a step that is measured. */
export const readLike = oncePerPair((defs: Definitions, { step }: PlacedStep): string =>
  JSON.stringify([step.exposes ?? [], letIn(defs, step), 'point' in step ? (step.point ?? null) : null]),
)

/** The first and the last of each sort, in order. */
export function endsOfEachSort<T>(list: readonly T[], sortOf: (one: T) => string): T[] {
  const first = new Map<string, T>()
  const last = new Map<string, T>()
  for (const one of list) {
    const sort = sortOf(one)
    if (!first.has(sort)) first.set(sort, one)
    last.set(sort, one)
  }
  return list.filter((one) => first.get(sortOf(one)) === one || last.get(sortOf(one)) === one)
}
