// The part of the fold that keeps the register of temporary things.
import type { Entry } from './entries.ts'
import type { Thing } from './register.ts'
import type { State } from './state.ts'

type ThingEntry = Extract<
  Entry,
  { type: 'thing.placed' | 'thing.seen' | 'thing.accounted' | 'things.handed-on' }
>

export function foldRegister(state: State, entry: ThingEntry): State {
  const change = (to: Partial<Thing>, isMeant: (seq: number) => boolean): State => ({
    ...state,
    things: state.things.map((thing) => (isMeant(thing.seq) ? { ...thing, ...to } : thing)),
  })
  switch (entry.type) {
    case 'thing.placed': {
      const { seq, what, where } = entry
      const open = { seenBy: null, accountedBy: null, handedOnBy: null }
      const { number = null, place = null, by = null, step } = entry
      return { ...state, things: [...state.things, { seq, by, what, where, number, step, place, ...open }] }
    }
    case 'thing.seen':
      return change({ seenBy: entry.person }, (seq) => seq === entry.of)
    case 'thing.accounted':
      return change({ accountedBy: entry.people }, (seq) => seq === entry.of)
    case 'things.handed-on':
      return change({ handedOnBy: entry.person }, (seq) => entry.of.includes(seq))
  }
}

/**
 * What these steps place and is not accounted for is put in again, or may be, when they are gone back to or done anew: the one who
 * signed that it is out signed for what it was before.
 */
export function seenAnew(state: State, steps: readonly string[]): State {
  const isMeant = ({ step, place, seenBy, accountedBy }: Thing) =>
    place !== null && step !== null && steps.includes(step) && seenBy !== null && accountedBy === null
  if (!state.things.some(isMeant)) return state
  return { ...state, things: state.things.map((one) => (isMeant(one) ? { ...one, seenBy: null } : one)) }
}
