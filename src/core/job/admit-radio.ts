// A lead's word by radio. It opens no gate and releases no STOP; of a verdict it decides, keyed by somebody who has nothing
// to gain by it, and the job does not close until that same lead has signed for it.
import { ok, type Refusal, type Result, refuse } from '../lib/result.ts'
import { barsDeciding, disposable } from './admit-disposition.ts'
import { type Definitions, personById } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { openWords } from './open-words.ts'
import { notAsked, reason } from './refusals.ts'
import { signer, unknownPerson } from './signature.ts'
import type { State } from './state.ts'
import { wouldVoid } from './voids.ts'

type Of<K extends Input['do']> = Extract<Input, { do: K }>

/** Why this lead's word by radio cannot decide here, or null; also for asking before the rest is keyed. */
export function barsRadio(
  defs: Definitions,
  state: State,
  asked: { readonly step: string; readonly choice: string; readonly lead: string },
): Refusal | null {
  const found = disposable(defs, state, asked)
  if (!found.ok) return found.error
  if (asked.choice === 'concession') {
    return { code: 'radio-concession', say: 'A concession is signed by its lead, and never given by radio.' }
  }
  const lead = personById(defs, asked.lead.trim().toUpperCase())
  if (lead === undefined) return { code: 'unknown-person', say: unknownPerson(defs, asked.lead) }
  return barsDeciding(lead, found.value)
}

/**
 * Who on the job may key such a word, before it is spoken: they did none of the work, and a lead other than they may decide. A lead may
 * key that of another lead. Empty where nobody fits.
 */
export function mayKeyRadio(
  defs: Definitions,
  state: State,
  asked: { readonly step: string; readonly choice: string },
): string[] {
  const fit = fitForRadio(defs, state, asked)
  return state.people.filter((id) => fit.includes(id))
}

/** Who of the crew file could, if they were on the job: no trainee, who comes onto none but practice; and a lead, who would decide then, only where there is nobody else. */
export function couldKeyRadio(
  defs: Definitions,
  state: State,
  asked: { readonly step: string; readonly choice: string },
): string[] {
  const fit = fitForRadio(defs, state, asked)
  const could = defs.crew.crew.filter(({ id, role }) => role !== 'trainee' && fit.includes(id))
  const others = could.filter(({ id }) => barsRadio(defs, state, { ...asked, lead: id }) !== null)
  return (others.length === 0 ? could : others).map(({ id }) => id)
}

function fitForRadio(
  defs: Definitions,
  state: State,
  asked: { readonly step: string; readonly choice: string },
): string[] {
  const found = disposable(defs, state, asked)
  if (!found.ok) return []
  const leads = defs.crew.crew.filter(({ id }) => barsRadio(defs, state, { ...asked, lead: id }) === null)
  const ids = new Set([...defs.crew.crew.map(({ id }) => id), ...state.people])
  return [...ids].filter(
    (id) => id !== state.doer && !found.value.doers.has(id) && leads.some((lead) => lead.id !== id),
  )
}

export function admitRadio(defs: Definitions, state: State, input: Of<'radio'>): Result<readonly Body[]> {
  const found = disposable(defs, state, input)
  if (!found.ok) return found
  const barred = barsRadio(defs, state, input)
  if (barred !== null) return { ok: false, error: barred }
  const said = reason(input.said, 'What was said')
  if (!said.ok) return said
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  const lead = input.lead.trim().toUpperCase()
  if (person.id === lead)
    return refuse('lead-here', `${lead} is here, and decides and signs instead of being heard by radio.`)
  if (!state.people.includes(person.id))
    return refuse('not-on', `${person.id} is not on this job: somebody who is and heard it keys it.`)
  if (person.id === state.doer || found.value.doers.has(person.id)) {
    const did = found.value.worked.has(person.id) ? 'did the work' : 'is at the keyboard'
    return refuse('own-word', `${person.id} ${did}, so somebody else who heard it signs for it.`)
  }
  return ok([
    {
      type: 'disposition.set',
      step: input.step,
      about: found.value.about,
      choice: input.choice,
      why: said.value,
      person: lead,
      signed,
      radio: { by: person.id },
    },
  ])
}

/** All that this lead said and has not signed for. "Not so" voids it, and what hung on it, so that it is asked again. */
export function admitCountersign(
  defs: Definitions,
  state: State,
  input: Of<'countersign'>,
): Result<readonly Body[]> {
  if (state.doer === null) return notAsked()
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  const mine = openWords(state).filter((word) => word.lead === person.id)
  if (mine.length === 0)
    return refuse('nothing-open', `${person.id} said nothing by radio that is open: another lead may have.`)
  return ok(
    mine.map(
      ({ step }): Body => ({
        type: 'disposition.countersigned',
        step,
        person: person.id,
        agrees: input.agrees,
        voids: input.agrees ? [] : wouldVoid(defs, state, step),
        signed,
      }),
    ),
  )
}
