// Placing temporary things and accounting for them. Always possible, under STOP too: it sends nobody anywhere, and what
// stands about is to be known most of all when things went wrong.
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input, PlacedAt } from './input.ts'
import { next } from './next.ts'
import { notAsked, words } from './refusals.ts'
import { holdsUpClosing, openThings, placesAsked } from './register.ts'
import { signer } from './signature.ts'
import type { State } from './state.ts'

type Of<K extends Input['do']> = Extract<Input, { do: K }>

export function admitPlaced(input: Of<'place'>, step: string | null): Result<readonly Body[]> {
  const what = words(input.what, 'What was placed')
  if (!what.ok) return what
  return placed({ ...input, what: what.value }, step)
}

function placed(
  { what, where, number, place }: Omit<Of<'place'>, 'do'> & { readonly place?: string },
  step: string | null,
): Result<readonly Body[]> {
  const at = words(where, 'Where it was placed')
  if (!at.ok) return at
  const tag = number?.trim() ?? ''
  if (!/^(?:[\p{L}\d][\p{L}\d ./-]{0,23})?$/u.test(tag))
    return refuse(
      'thing-number',
      'A number or tag is at most 24 letters, digits and dashes; Enter alone: it has none.',
    )
  return ok([
    {
      type: 'thing.placed',
      what,
      where: at.value,
      step,
      ...(tag === '' ? {} : { number: tag.toUpperCase() }),
      ...(place === undefined ? {} : { place }),
    },
  ])
}

/** With a step that places things: each of them, or the step is not done. */
export function admitStepPlaces(
  state: State,
  step: PlacedStep,
  given: readonly PlacedAt[],
): Result<readonly Body[]> {
  const bodies: Body[] = []
  for (const { id, what } of placesAsked(state, step)) {
    const one = given.find((g) => g.id === id)
    if (one === undefined)
      return refuse('not-placed', `This step places something: say where it is, the ${what}.`)
    const entry = placed({ what, where: one.where, number: one.number, place: id }, step.id)
    if (!entry.ok) return entry
    bodies.push(...entry.value)
  }
  return ok(bodies)
}

/** One signature for a thing that was looked at; the second, of somebody else, accounts for it. */
export function admitAccount(defs: Definitions, state: State, input: Of<'account'>): Result<readonly Body[]> {
  const thing = openThings(state).find((t) => t.seq === input.of)
  if (thing === undefined) return refuse('no-thing', 'There is no such thing open in the register.')
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  if (person.role === 'trainee' && state.record !== 'PRACTICE')
    return refuse('trainee', `${person.id} is a trainee, and a trainee signs in PRACTICE only.`)
  if (thing.seenBy === null) return ok([{ type: 'thing.seen', of: thing.seq, person: person.id, signed }])
  if (thing.seenBy === person.id)
    return refuse(
      'same-person',
      `${person.id} signed for it already: a second, different person has to look at it too.`,
    )
  return ok([
    { type: 'thing.accounted', of: thing.seq, people: [thing.seenBy, person.id], person: person.id, signed },
  ])
}

/** A lead signs for what stays open when the job ends; not the one who worked, who would be handing on their own. */
export function admitHandOn(defs: Definitions, state: State, input: Of<'hand-on'>): Result<readonly Body[]> {
  if (next(defs, state).kind !== 'open-things') return notAsked()
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  if (person.role !== 'lead')
    return refuse('not-lead', `${person.id} is a ${person.role}, and only a lead hands on what stays open.`)
  if (person.id === state.doer)
    return refuse('own-work', `${person.id} is at the keyboard, so another lead has to hand it on.`)
  const to = words(input.to, 'To whom it is handed on')
  if (!to.ok) return to
  const of = holdsUpClosing(defs, state).map((thing) => thing.seq)
  return ok([{ type: 'things.handed-on', of, to: to.value, person: person.id, signed }])
}
