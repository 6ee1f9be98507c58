// A wait that runs at a hold point whose people were called out by another one: nobody watched it to its end, and what they
// shut or opened for it may have been changed by whoever came in since. It begins anew, also where people stand clear of it on
// purpose: no procedure says that it may go on unwatched, and none is asked.
import type { Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import { gateState, gatesBefore, gatesOf } from './gate.ts'
import { fallsWith } from './lapse.ts'
import type { State } from './state.ts'

/** The first hold point, in order, whose wait falls with one that is not open and stands before it. */
export function waitLeft(defs: Definitions, state: State): Extract<Body, { type: 'gate.closed' }> | null {
  for (const gate of gatesOf(defs)) {
    const { given, begun } = gateState(state, gate.id)
    const running = Object.keys(begun).filter((key) => given[key] === undefined)
    if (running.length === 0) continue
    const shut = gatesBefore(defs, gate).find(({ id }) => gateState(state, id).status !== 'open')
    if (shut === undefined) continue
    const why = `it ran while the hold point "${shut.step.title}" was shut`
    return {
      type: 'gate.closed',
      step: gate.id,
      cause: 'again',
      items: fallsWith(defs, state, gate, running),
      why,
    }
  }
  return null
}
