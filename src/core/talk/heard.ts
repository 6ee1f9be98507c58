// What hearing a line gives: perhaps an input for the job, perhaps a further question, perhaps only something said.
import { wouldRefuse } from '../job/admit.ts'
import { type Definitions, personById } from '../job/definitions.ts'
import type { Input } from '../job/input.ts'
import { pointOf } from '../job/point.ts'
import type { State } from '../job/state.ts'
import { mayLeave, wouldVoid } from '../job/voids.ts'
import { type Instant, readStamp } from '../lib/instant.ts'
import type { Refusal } from '../lib/result.ts'
import type { Ask } from './ask.ts'
import type { FileWork } from './ask-file.ts'
import { NOT_NOTED } from './words.ts'

export interface Talk {
  readonly ask: Ask | null
  /** What was told in words of its own just now, and is on no record: note alone puts down these very words. */
  readonly told?: string
}

export const QUIET: Talk = { ask: null }

/** An input that somebody signs; it is brought once their PIN is held against their key, which the shell does. */
export type SignedInput = Exclude<Extract<Input, { readonly proved?: boolean }>, { do: 'take-in' }>

/** A PIN that was keyed. It never leaves the line it was keyed on: it is in no input, no entry and nothing said. */
export interface PinKeyed {
  readonly person: string
  readonly pin: string
  readonly what: SignedInput
  /** The question it was keyed at, asked anew after a wrong one; left out where no talk is. */
  readonly asked?: Ask
}

export interface Heard {
  readonly talk: Talk
  readonly input: Input | null
  /** Lines to say that are not on record. */
  readonly say: readonly string[]
  /** What is said only tells that the line answers nothing: told like a refusal, and gone once another line is taken. */
  readonly untaken?: true
  /** Why it was not taken, told like a refusal of the job itself. */
  readonly refusal?: Refusal
  readonly pin?: PinKeyed
  /** Something to do with a file outside, which takes its time. */
  readonly file?: FileWork
  /** The sheet is read aloud from now on, or not any more. */
  readonly aloud?: 'on' | 'off'
  /** The head of the log is said under the lines: on paper it proves the log up to there. */
  readonly withHead?: true
  /** So much time is to go by, ms: of a practice session alone. */
  readonly passMs?: number
}

export function input(what: Input): Heard {
  return { talk: QUIET, input: what, say: [] }
}

export function say(...lines: string[]): Heard {
  return { talk: QUIET, input: null, say: lines }
}

/** Answered, and on no record: where that was said the words are kept for a note until another line is keyed, but none with a PIN in it. */
export function told(line: string, ...lines: string[]): Heard {
  const isKept = lines.includes(NOT_NOTED) && !/\d{4}/.test(line)
  return isKept ? { ...say(...lines), talk: { ask: null, told: line.trim() } } : say(...lines)
}

/** Where nothing came of the line but words: they say that it answers nothing here. */
export function untaken(heard: Heard, standing: Ask | null = null): Heard {
  const isNothing =
    heard.input === null && heard.pin === undefined && heard.file === undefined && heard.talk.ask === standing
  return isNothing && heard.say.length > 0 ? { ...heard, untaken: true } : heard
}

export function ask(what: Ask, ...lines: string[]): Heard {
  return { talk: { ask: what }, input: null, say: lines }
}

/**
 * What a person signs: their PIN is asked, if the crew file holds a key for them. What would be refused with the right PIN is
 * refused before it is asked, and the question `within` stands for another answer.
 */
export function signing(
  defs: Definitions,
  state: State,
  typed: string,
  what: SignedInput,
  within: Ask | null = null,
): Heard {
  const refusal = refusalOf(defs, state, what)
  if (refusal !== null) return refused(refusal, refusal.code === 'not-asked' ? null : within)
  const person = personById(defs, typed.trim().toUpperCase())
  return person?.pin === undefined ? input(what) : ask(pinOf(person.id, what, within))
}

/** `within`: where `back` goes. */
export function pinOf(person: string, what: SignedInput, within: Ask | null): Ask {
  return within === null || within.kind === 'word-meant'
    ? { kind: 'pin', person, what }
    : { kind: 'pin', person, what, of: within }
}

/** Initials that open a question of several lines: who may not sign is told before the rest is keyed. Null: they may. */
export function barredHere(defs: Definitions, state: State, what: SignedInput, within: Ask): Heard | null {
  const refusal = refusalOf(defs, state, what)
  return refusal !== null && ABOUT_WHO.has(refusal.code) ? refused(refusal, within) : null
}

/** The question `within` stands for another answer. */
export function refused(refusal: Refusal, within: Ask | null): Heard {
  return { talk: { ask: within }, input: null, say: [], refusal }
}

/** Refusals that speak of who signs, and of nothing else that was keyed or is still to be. */
const ABOUT_WHO: ReadonlySet<string> = new Set([
  ...['unknown-person', 'no-pin', 'trainee', 'not-lead', 'own-work', 'own-stop', 'own-word', 'same-person'],
  ...['witness-role', 'self-witness', 'point-role', 'already-on', 'not-on', 'at-keyboard', 'lead-here'],
  'nothing-open',
])

/** A wait after wrong PINs hangs on the time, and is told where the PIN would be looked at. */
function refusalOf(defs: Definitions, state: State, what: SignedInput): Refusal | null {
  return wouldRefuse(defs, { ...state, pinMisses: {} }, { ...what, proved: true })
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

/** When the last entry was made: the moment of a line that no clock was asked for. */
export function momentOf(state: State): Instant {
  return readStamp(state.lastAt) ?? { ms: Number.NaN, offsetMin: 0 }
}
