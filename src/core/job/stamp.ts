// Puts a body in its place: number, time, and who was at the keyboard.
import { type Instant, stamp } from '../lib/instant.ts'
import type { Body, Entry } from './entries.ts'
import type { State } from './state.ts'

export function stampEntry(state: State, body: Body, now: Instant): Entry {
  // Whoever takes a job up has not said who they are yet.
  const by = keyedBy(state, body)
  return { ...body, seq: state.seq + 1, at: stamp(now), ...(by === null ? {} : { by }) }
}

/** What is added to a closed job by whoever signs for it; of a wrong PIN nobody knows who keyed it. */
const LATE: readonly Body['type'][] = ['instrument.doubted', 'pin.fitted', 'left.adopted', 'remark.made']

function keyedBy(state: State, body: Body): string | null {
  if (body.type === 'person.signed-on') return body.person
  // Nobody is on the job then: whoever signs is who keyed it.
  if (body.type === 'record.taken-in') return body.person
  if (state.closed !== null)
    return LATE.includes(body.type) && 'person' in body ? (body.person ?? null) : null
  // What others did is nobody's doing here, and nobody chose that a reading is dropped.
  const isOfNobody =
    body.type === 'elsewhere.seen' || body.type === 'elsewhere.gone' || body.type === 'reading.dropped'
  // Everybody has left: a STOP keyed then, as from a review, is not of whoever was at the keyboard last.
  if (body.type === 'stop.raised' && state.left) return null
  return body.type === 'job.taken-up' || isOfNobody ? null : state.doer
}
