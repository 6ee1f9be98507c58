// Puts a body in its place: number, time, and who was at the keyboard.
import { type Instant, stamp } from '../lib/instant.ts'
import type { Body, Entry } from './entries.ts'
import type { State } from './state.ts'

export function stampEntry(state: State, body: Body, now: Instant): Entry {
  // Whoever takes a job up has not said who they are yet.
  const by = body.type === 'person.signed-on' ? body.person : body.type === 'job.taken-up' ? null : state.doer
  return { ...body, seq: state.seq + 1, at: stamp(now), ...(by === null ? {} : { by }) }
}
