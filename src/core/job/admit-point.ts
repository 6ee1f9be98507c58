// Signing an inspection point; and, for a witness point alone, going on unattended once notice was given and has run out.
import { readStamp } from '../lib/instant.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { next, type Prompt } from './next.ts'
import { awaitingNotice, doersOf, noticeRunsOutMs, pendingPoint } from './point.ts'
import { notAsked, words } from './refusals.ts'
import { signer } from './signature.ts'
import type { State } from './state.ts'

type Of<K extends Input['do']> = Extract<Input, { do: K }>

export function admitPoint(
  defs: Definitions,
  state: State,
  input: Of<'sign-point'> | Of<'not-attended'> | Of<'give-notice'>,
): Result<readonly Body[]> {
  if (input.do === 'give-notice') return notice(defs, state, input)
  const prompt = next(defs, state)
  if ((prompt.kind !== 'point' && prompt.kind !== 'review') || prompt.step.id !== input.step)
    return notAsked()
  return input.do === 'sign-point' ? signed(defs, state, prompt, input) : notAttended(state, prompt)
}

type PointPrompt = Extract<Prompt, { kind: 'point' | 'review' }>

function signed(
  defs: Definitions,
  state: State,
  { step: placed }: PointPrompt,
  input: Of<'sign-point'>,
): Result<readonly Body[]> {
  const point = pendingPoint(state, placed)
  if (point === null) return notAsked()
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  if (doersOf(state, placed).has(person.id)) {
    return refuse(
      'own-work',
      `${person.id} did this or is doing the work, and somebody else signs: key another person's initials.`,
    )
  }
  if (!point.roles.some((role) => role === person.role))
    return refuse(
      'point-role',
      `${person.id} is a ${person.role}, and this is signed by a ${point.roles.join(' or ')}.`,
    )
  return ok([{ type: 'point.signed', step: placed.id, point: point.kind, person: person.id, signed }])
}

/** Time is the record's own: a notice counts from its entry, and a clock that moved has voided it by now. */
function notAttended(state: State, { step: placed }: PointPrompt): Result<readonly Body[]> {
  if (pendingPoint(state, placed)?.kind !== 'witness')
    return refuse(
      'not-witness',
      'Only a witness point goes on unattended: this one waits until it is signed.',
    )
  const given = state.notices[placed.id]
  const due = noticeRunsOutMs(state, placed)
  if (given === undefined || due === null)
    return refuse('no-notice', 'No notice is on record for this point: type notice and say whom you told.')
  const now = readStamp(state.lastAt)?.ms ?? Number.NaN
  if (!(now >= due)) {
    const left = Number.isFinite(now) ? `${Math.ceil((due - now) / 60_000)} min` : 'its time'
    return refuse('notice-runs', `The notice to ${given.whom} still has ${left} to run.`)
  }
  return ok([{ type: 'point.not-attended', step: placed.id, whom: given.whom, notice: given.seq }])
}

function notice(defs: Definitions, state: State, input: Of<'give-notice'>): Result<readonly Body[]> {
  if (state.doer === null) return notAsked()
  if (!awaitingNotice(defs, state).some((placed) => placed.id === input.step))
    return refuse('no-witness-point', 'There is no witness point there that waits for a notice.')
  const whom = words(input.whom, 'Whom you told')
  return whom.ok ? ok([{ type: 'point.notice-given', step: input.step, whom: whom.value }]) : whom
}
