// Who signs, and whether it was they: the one place that says when a signature counts. The PIN itself never comes here;
// the shell holds it against the key in the crew file and brings only whether it fitted.

import type { Person } from '../definition/crew.ts'
import { readStamp } from '../lib/instant.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { type Definitions, personById } from './definitions.ts'
import type { State } from './state.ts'

/** How a person signed: with a PIN that fitted, or, where the crew file holds no key for them, by initials alone. */
export type Signed = 'pin' | 'initials'

export interface Signature {
  /** Initials as keyed. */
  readonly person: string
  /** The PIN keyed with them fitted. */
  readonly proved?: boolean
}

export interface Signer {
  readonly person: Person
  readonly signed: Signed
}

/** Wrong PINs in a row after which a person has to wait. Common practice, no source. */
export const MISSES_ALLOWED = 3
/** How long, counted from the last wrong PIN. Common practice, no source. */
export const WAIT_AFTER_MISSES_MS = 5 * 60_000

/** Refuses: unknown initials, a PIN that is still to be waited for, a missing proof, and initials alone on a REAL record. */
export function signer(defs: Definitions, state: State, signature: Signature): Result<Signer> {
  const person = personById(defs, signature.person.trim().toUpperCase())
  if (person === undefined) return refuse('unknown-person', unknownPerson(defs, signature.person))
  const wait = waitAfterMisses(state, person.id, readStamp(state.lastAt)?.ms ?? Number.NaN)
  if (wait !== null) {
    return refuse(
      'pin-wait',
      `${MISSES_ALLOWED} wrong PINs for ${person.id}: no other counts for ${Math.ceil(wait / 60_000)} min. STOP and coming out need none.`,
    )
  }
  if (person.pin === undefined) {
    return state.record === 'REAL'
      ? refuse(
          'no-pin',
          `The crew file holds no key for ${person.id}, and a REAL record takes no initials alone.`,
        )
      : ok({ person, signed: 'initials' })
  }
  if (signature.proved !== true) return refuse('pin-needed', `${person.id} signs with a PIN.`)
  return ok({ person, signed: 'pin' })
}

/** Milliseconds until another PIN of this person is looked at, or null. A time that cannot be told waits in full. */
export function waitAfterMisses(state: State, person: string, nowMs: number): number | null {
  const missed = state.pinMisses[person]
  if (missed === undefined || missed.count < MISSES_ALLOWED) return null
  const left = missed.lastMs + WAIT_AFTER_MISSES_MS - nowMs
  if (left <= 0) return null
  return Number.isFinite(left) ? left : WAIT_AFTER_MISSES_MS
}

/** Initials and a PIN in one line, as `RO 4071`: no initials are so long in figures. */
export function hasPinBehind(line: string): boolean {
  return /^\s*\p{L}{1,6}[\s/.,:;]+\d[\d\s]*$|^\s*(?:\p{L}{2,6}\d{3}|\p{L}\d{4})[\d\s]*$/u.test(line)
}

/** Initials of the crew with what could be a PIN behind them; `since 2024` is words, and so is `KH 12`. */
export function isSigned(defs: Definitions, line: string): boolean {
  const [id = ''] = line
    .trim()
    .toUpperCase()
    .split(/[\s/.,:;\d]/)
  return hasPinBehind(line) && line.replace(/\D/g, '').length >= 4 && personById(defs, id) !== undefined
}

export function unknownPerson(defs: Definitions, typed: string): string {
  // A PIN keyed where initials are asked is not shown back.
  if (/^\d{4,}$/.test(typed.trim())) return 'Key initials here; the PIN is asked after them.'
  if (hasPinBehind(typed)) return 'Key the initials alone; the PIN is asked after them, and was not shown.'
  const ids = `one of ${defs.crew.crew.map((p) => p.id).join(', ')}`
  if (typed.trim() === '') return `Nothing was keyed. Asked are initials, ${ids}.`
  return `"${typed.trim().slice(0, 12)}" is nobody in the crew file: key initials, ${ids}.`
}
