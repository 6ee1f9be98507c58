// What hearing a line gives: perhaps an input for the job, perhaps a further question, perhaps only something said.
import { type Definitions, personById } from '../job/definitions.ts'
import type { Input } from '../job/input.ts'
import { pointOf } from '../job/point.ts'
import type { State } from '../job/state.ts'
import { mayLeave, wouldVoid } from '../job/voids.ts'
import type { Ask } from './ask.ts'
import type { FileWork } from './ask-file.ts'

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
  /** Something to do with a file outside, which takes its time. */
  readonly file?: FileWork
  /** The sheet is read aloud from now on, or not any more. */
  readonly aloud?: 'on' | 'off'
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

/** The title of the step; of one with an inspection point, that its signature goes too. */
export function voidName(defs: Definitions, id: string): string {
  const placed = defs.steps.find((s) => s.id === id)
  if (placed === undefined) return id
  return pointOf(placed) === null ? placed.step.title : `${placed.step.title} with its inspection point`
}

/** What would become void, said before it happens. */
export function voidWarning(defs: Definitions, state: State, ...stepIds: readonly string[]): string[] {
  const names = (ids: readonly string[]) => ids.map((id) => voidName(defs, id)).join('; ')
  const lost = wouldVoid(defs, state, ...stepIds)
  const branch = [...new Set(stepIds.flatMap((id) => mayLeave(defs, state, id)))]
  return [
    ...(lost.length === 0 ? [] : [`This would make void: ${names(lost)}.`]),
    ...(branch.length === 0
      ? []
      : [`If it is not needed then, void too, with its readings: ${names(branch)}.`]),
  ]
}
