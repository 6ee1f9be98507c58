// What hearing a line gives: perhaps an input for the job, perhaps a further question, perhaps only something said.
import { wouldVoid } from '../job/admit-change.ts'
import { type Definitions, personById } from '../job/definitions.ts'
import type { Input } from '../job/input.ts'
import type { State } from '../job/state.ts'
import type { Ask } from './ask.ts'

export interface Talk {
  readonly ask: Ask | null
}

export const QUIET: Talk = { ask: null }

/** An input that somebody signs; it is brought once their PIN is held against their key, which the shell does. */
export type SignedInput = Extract<Input, { readonly proved?: boolean }>

/** A PIN that was keyed. It never leaves the line it was keyed on: it is in no input, no entry and nothing said. */
export interface PinKeyed {
  readonly person: string
  readonly pin: string
  readonly what: SignedInput
}

export interface Heard {
  readonly talk: Talk
  readonly input: Input | null
  /** Lines to say that are not on record. */
  readonly say: readonly string[]
  readonly pin?: PinKeyed
  /** The head of the log is said under the lines: on paper it proves the log up to there. */
  readonly withHead?: true
}

export function input(what: Input): Heard {
  return { talk: QUIET, input: what, say: [] }
}

export function say(...lines: string[]): Heard {
  return { talk: QUIET, input: null, say: lines }
}

export function ask(what: Ask, ...lines: string[]): Heard {
  return { talk: { ask: what }, input: null, say: lines }
}

/** What a person signs: their PIN is asked first, if the crew file holds a key for them. */
export function signing(defs: Definitions, typed: string, what: SignedInput): Heard {
  const person = personById(defs, typed.trim().toUpperCase())
  return person?.pin === undefined ? input(what) : ask({ kind: 'pin', person: person.id, what })
}

export function voidWarning(defs: Definitions, state: State, stepId: string): string[] {
  const lost = wouldVoid(defs, state, stepId)
  if (lost.length === 0) return []
  const names = lost.map((id) => defs.steps.find((s) => s.id === id)?.step.title ?? id)
  return [`This would make void: ${names.join('; ')}.`]
}
