// Last look at assembled definitions before anybody works from them: names that would make two things one, or none.
// The checks of the files say all this better; here it is refused even if they were passed by.
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Definitions, PlacedTest } from './definitions.ts'
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
  const loose = defs.overTime.find((test) => !isTied(defs, test))
  return loose === undefined
    ? ok(defs)
    : refuse('test-order', `The test ${loose.id} names what is not there, or not in its order.`)
}

/** Every step it names is among those that it runs through, and its stand is a gate. */
function isTied(defs: Definitions, { steps, from, start, stand, end, until }: PlacedTest): boolean {
  const named = [from, ...start, ...end, ...(until === null ? [] : [until])]
  return named.every((id) => steps.includes(id)) && gatesOf(defs).some(({ id }) => id === stand)
}

function keysOf(defs: Definitions, gate: ReturnType<typeof gatesOf>[number]): string[] {
  return itemsFor(defs, gate, []).map((item) => item.key)
}
