// An instrument that was picked by mistake goes back plainly, as long as nothing rests on the pick: nobody doubts it, nothing falls, and it
// stays in the list. It can only empty a seat, never fill one. Once it has read anything at all, also a figure that failed or fell since,
// it is no mispick any more: else a meter whose figure is not liked could be changed for another without a word (`admit-instrument.ts`).
import { ok, type Result, refuse } from '../lib/result.ts'
import { asKind, type Definitions } from './definitions.ts'
import type { Body, Entry } from './entries.ts'
import { evidenceByKey, gateState, gatesOf, seatOf } from './gate.ts'
import type { Input } from './input.ts'
import { next, type Prompt } from './next.ts'
import { notAsked } from './refusals.ts'
import type { State } from './state.ts'

export interface Picked {
  readonly seat: string
  readonly instrument: string
}

/** The seat that the prompt makes use of; null where nothing is measured there. */
export function seatInUse(prompt: Prompt): string | null {
  if (prompt.kind === 'read') return asKind(prompt.step, 'read').step.with
  return prompt.kind === 'evidence' ? seatOf(prompt.item.evidence) : null
}

/** What lies in that seat; null where nothing is measured there, or nothing is picked yet. */
export function pickedHere(defs: Definitions, state: State): Picked | null {
  const seat = seatInUse(next(defs, state))
  const instrument = seat === null ? undefined : state.seats[seat]
  return seat === null || instrument === undefined ? null : { seat, instrument }
}

/** The same where it may go back as picked by mistake: it has read nothing on this job, and nothing that stands was said of it. */
export function mispick(defs: Definitions, state: State): Picked | null {
  const here = pickedHere(defs, state)
  if (state.doer === null || here === null || state.used.includes(here.instrument)) return null
  const isSaid = gatesOf(defs).some((gate) =>
    Object.keys(gateState(state, gate.id).given).some((key) => {
      const evidence = evidenceByKey(gate, key)
      return evidence?.kind === 'words' && evidence.seat === here.seat
    }),
  )
  return isSaid ? null : here
}

export function admitMispick(
  defs: Definitions,
  state: State,
  { seat }: Extract<Input, { do: 'put-back' }>,
): Result<readonly Body[]> {
  if (state.doer === null || pickedHere(defs, state)?.seat !== seat) return notAsked()
  const wrong = mispick(defs, state)
  if (wrong === null)
    return refuse(
      'in-use',
      'It was used since it was picked, so it does not go back as picked by mistake: the word instrument takes it off.',
    )
  return ok([
    {
      type: 'instrument.put-back',
      seat,
      why: 'picked by mistake, had read nothing',
      mispicked: wrong.instrument,
    },
  ])
}

/** Instruments that a figure was keyed of, whatever became of it, after this entry. */
export function usedAfter(before: State, entry: Entry): State['used'] {
  const id = 'instrument' in entry && ('typed' in entry || 'reading' in entry) ? entry.instrument : undefined
  return id === undefined || before.used.includes(id) ? before.used : [...before.used, id]
}

/** Put back; one picked by mistake is as if it had never been picked, but in the log. */
export function putBack(state: State, entry: Extract<Entry, { type: 'instrument.put-back' }>): State {
  const seats = Object.fromEntries(Object.entries(state.seats).filter(([seat]) => seat !== entry.seat))
  const gone = entry.mispicked
  const isElsewhere = gone === undefined || Object.values(seats).includes(gone)
  return { ...state, seats, picked: isElsewhere ? state.picked : state.picked.filter((id) => id !== gone) }
}
