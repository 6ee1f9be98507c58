// A changed machine record for a walk: taken in by a lead, and the same job from there on by the new one.
import { admit } from '../../src/core/job/admit.ts'
import type { Definitions } from '../../src/core/job/definitions.ts'
import { NO_OTHERS } from '../../src/core/job/elsewhere.ts'
import type { Entry, FileCopy } from '../../src/core/job/entries.ts'
import type { Input } from '../../src/core/job/input.ts'
import { fileCopies, type Walk } from './example.ts'

export type TakeInInput = Extract<Input, { do: 'take-in' }>
type Machine = Definitions['machine']

/** The record of the walk as a file; engines of tests never read it. */
const FILE = fileCopies().find((file) => file.role === 'machine') as FileCopy & { role: 'machine' }

/** The definitions of the walk with its machine record changed, past the checks of files. */
export function changed(walk: Walk, change: Partial<Machine>): Definitions {
  const { defs } = walk.engine
  return { ...defs, machine: { ...defs.machine, ...change } }
}

export const inputFor = (to: Definitions, more: Partial<TakeInInput> = {}): TakeInInput => ({
  do: 'take-in',
  file: FILE,
  to,
  unproved: null,
  why: 'bored to the next size',
  person: 'KH',
  proved: true,
  ...more,
})

/** What the engine makes of it, with nothing of it in the walk. */
export function tried(walk: Walk, to: Definitions, more: Partial<TakeInInput> = {}) {
  return admit(walk.engine, walk.state, inputFor(to, more), walk.now, NO_OTHERS)
}

/** The job after it, by the new record; the walk it came from stays as it was. */
export function takenIn(walk: Walk, to: Definitions, more: Partial<TakeInInput> = {}): Walk {
  const { entries, state, refusal } = tried(walk, to, more)
  if (refusal !== null) throw new Error(refusal.say)
  const after = walk.copy()
  return Object.assign(after, {
    engine: { ...walk.engine, defs: to },
    entries: [...walk.entries, ...entries],
    state,
    talk: { ask: null },
  })
}

export function takenEntry(walk: Walk): Extract<Entry, { type: 'record.taken-in' }> {
  const { last } = walk
  if (last.type !== 'record.taken-in') throw new Error(`the last entry is ${last.type}`)
  return last
}
