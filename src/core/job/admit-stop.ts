// A STOP: its cause, its release, and the job that ends in it. Every gate has fallen by then. It fails closed: whoever is not
// known to be somebody else counts as the one who called it, and what was once said against a release is never taken back.
import { ok, type Result, refuse } from '../lib/result.ts'
import { type Definitions, personById } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { notAsked, reason, words } from './refusals.ts'
import { type Signature, type Signer, signer, unknownPerson } from './signature.ts'
import { openStop, type State } from './state.ts'
import {
  barredFromRelease,
  causeWords,
  isSofter,
  lastingStop,
  openStops,
  unexplainedStop,
} from './stop-causes.ts'

type Of<K extends Input['do']> = Extract<Input, { do: K }>

/** The three answers. Of a STOP already explained they put its cause right, which can only make it stricter. */
export function admitStopCause(
  defs: Definitions,
  state: State,
  input: Of<'explain-stop'>,
): Result<readonly Body[]> {
  const stop = openStops(state).find((s) => s.seq === input.of)
  if (stop === undefined) return notAsked()
  if (stop.cause !== null && isSofter(input.cause, stop.cause)) {
    return refuse(
      'softer',
      `The cause on record is "${causeWords(stop.cause).says}", and it may be put right only to one as strict.`,
    )
  }
  const why = words(input.why, 'The cause of a STOP')
  if (!why.ok) return why
  const explained = { type: 'stop.explained', of: stop.seq, cause: input.cause, why: why.value } as const
  if (input.calledBy === null) return ok([explained])
  const caller = personById(defs, input.calledBy.trim().toUpperCase())
  if (caller === undefined) return refuse('unknown-person', unknownPerson(defs, input.calledBy))
  if (stop.by !== null) return ok([{ ...explained, called_by: caller.id }])
  // Nobody was signed on: a lead alone could name another for their own STOP, and lift it. So the one who is named signs.
  const who = signer(defs, state, { person: caller.id, proved: input.proved ?? false })
  if (!who.ok) return who
  return ok([{ ...explained, called_by: caller.id, signed: who.value.signed }])
}

export function admitRelease(
  defs: Definitions,
  state: State,
  input: Of<'release-stop'>,
): Result<readonly Body[]> {
  if (openStop(state) === null || unexplainedStop(state) !== null) return notAsked()
  const lasting = neverReleased(state)
  if (lasting !== null) return refuse('never-released', lasting)
  const who = lead(defs, state, input, 'releases a STOP')
  if (!who.ok) return who
  const { person, signed } = who.value
  const why = barredFromRelease(state).people.get(person.id)
  if (why !== undefined) return refuse('own-stop', `${person.id} ${why}, so another lead has to release it.`)
  const answer = reason(input.answer, 'What was put right')
  return answer.ok ? ok([{ type: 'stop.released', person: person.id, answer: answer.value, signed }]) : answer
}

/** Why nobody at all may release what is open, in one sentence; null when a lead may. */
export function neverReleased(state: State): string | null {
  const lasting = lastingStop(state)
  if (lasting?.cause != null)
    return `A STOP for "${causeWords(lasting.cause).says}" is never released: a lead closes this job, and the work is opened anew.`
  return barredFromRelease(state).everybody
    ? 'Nobody knows who raised or called this STOP, so no lead can be told from them: a lead closes this job, and the work is opened anew.'
    : null
}

/** The job ends in its STOP. Any lead may sign that, as nothing goes on by it. */
export function admitStopStands(
  defs: Definitions,
  state: State,
  input: Of<'close-stopped'>,
): Result<readonly Body[]> {
  if (openStop(state) === null || unexplainedStop(state) !== null) return notAsked()
  const who = lead(defs, state, input, 'closes a job under STOP')
  if (!who.ok) return who
  const { person, signed } = who.value
  const first = reason(input.first, 'What has to be done first')
  if (!first.ok) return first
  return ok([
    { type: 'stop.stands', person: person.id, first: first.value, signed },
    { type: 'job.closed', outcome: 'STOP' },
  ])
}

function lead(defs: Definitions, state: State, signature: Signature, what: string): Result<Signer> {
  const who = signer(defs, state, signature)
  if (!who.ok) return who
  const { person } = who.value
  return person.role === 'lead'
    ? who
    : refuse('not-lead', `${person.id} is a ${person.role}, and only a lead ${what}.`)
}
