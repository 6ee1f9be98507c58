// Last look at assembled definitions before anybody works from them: names that would make two things one, or none.
// The checks of the files say all this better; here it is refused even if they were passed by.
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Definitions } from './definitions.ts'
import { gatesOf, itemsFor } from './gate.ts'

/** Refuses ids that stand twice (one answer would count for both) and ids that every object has already (`constructor`). */
export function sound(defs: Definitions): Result<Definitions> {
  const steps = defs.steps.map((s) => s.id)
  const lists = [steps, defs.seats.map((s) => s.id), ...gatesOf(defs).map((g) => keysOf(defs, g))]
  for (const ids of lists) {
    const twice = ids.find((id, i) => ids.indexOf(id) !== i)
    if (twice !== undefined)
      return refuse('id-twice', `The id ${twice} stands twice, so one would count for both.`)
    const taken = ids.find((id) => id in {})
    if (taken !== undefined)
      return refuse('id-taken', `The id ${taken} is a word of the program: choose another.`)
  }
  return ok(defs)
}

function keysOf(defs: Definitions, gate: ReturnType<typeof gatesOf>[number]): string[] {
  return itemsFor(defs, gate, []).map((item) => item.key)
}
