// What the machine showed at the question that stands and waits to be keyed: on the screen it stays in sight until it is.
import type { Definitions } from '../job/definitions.ts'
import { gateState } from '../job/gate.ts'
import { lifeMs } from '../job/lapse.ts'
import { next } from '../job/next.ts'
import { type Asked, lineOf } from '../job/practice.ts'
import type { State } from '../job/state.ts'
import { readStamp } from '../lib/instant.ts'
import { lookedAt, measuredFor, measuredForCorrection } from './looks.ts'

export interface InHand {
  /** The entry by which it was shown. */
  readonly seq: number
  /** What the instrument shows, or what was seen, in a sentence. */
  readonly text: string
  readonly isFigure: boolean
}

/** @param of the reading that is being put right; null: none. Null where nothing was shown that is still to be keyed. */
export function inHand(defs: Definitions, state: State, of: number | null): InHand | null {
  const asked = of === null ? askedHere(defs, state) : askedFor(state, of)
  if (asked === null) return null
  const { seq, shown, instrument, figure } = asked
  const from = instrument === null ? -1 : shown.lastIndexOf(`${instrument} shows`)
  return { seq, text: from < 0 ? shown : shown.slice(from), isFigure: figure !== null }
}

function askedHere(defs: Definitions, state: State): Asked | null {
  const { practice } = state
  if (practice === null) return null
  const prompt = next(defs, state)
  const before = state.seq + 1
  switch (prompt.kind) {
    case 'read': {
      const asked = measuredFor(practice, prompt.place.key, before)
      return asked?.instrument === prompt.instrument ? asked : null
    }
    case 'doubt':
      return measuredFor(practice, prompt.doubt.place, prompt.doubt.seq)
    case 'evidence': {
      const { evidence, key } = prompt.item
      const asked = lookedAt(practice, lineOf(prompt.gate.id, key), before)
      const seat = 'with' in evidence ? state.seats[evidence.with] : undefined
      // A wait that lasts shows another thing at its end.
      if (asked === null || gateState(state, prompt.gate.id).begun[key] !== undefined) return null
      if (asked.instrument !== null && asked.instrument !== seat) return null
      const life = lifeMs(defs, evidence)
      const nowMs = readStamp(state.lastAt)?.ms ?? Number.NaN
      return life !== null && !(nowMs - asked.atMs < life) ? null : asked
    }
    default:
      return null
  }
}

/** Measured anew for it, else what was shown when it was keyed. */
function askedFor(state: State, of: number): Asked | null {
  const reading = Object.values(state.readings)
    .flat()
    .find(({ seq }) => seq === of)
  if (state.practice === null || reading === undefined) return null
  const { asked } = measuredForCorrection(state, state.practice, {
    place: reading.place,
    corrects: of,
    before: state.seq + 1,
  })
  return asked
}
