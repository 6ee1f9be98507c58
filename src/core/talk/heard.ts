// What hearing a line gives: perhaps an input for the job, perhaps a further question, perhaps only something said.
import { wouldVoid } from '../job/admit-change.ts'
import type { Definitions } from '../job/definitions.ts'
import type { Input } from '../job/input.ts'
import type { State } from '../job/state.ts'
import type { Ask } from './ask.ts'

export interface Talk {
  readonly ask: Ask | null
}

export const QUIET: Talk = { ask: null }

export interface Heard {
  readonly talk: Talk
  readonly input: Input | null
  /** Lines to say that are not on record. */
  readonly say: readonly string[]
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

export function voidWarning(defs: Definitions, state: State, stepId: string): string[] {
  const lost = wouldVoid(defs, state, stepId)
  if (lost.length === 0) return []
  const names = lost.map((id) => defs.steps.find((s) => s.id === id)?.step.title ?? id)
  return [`This would make void: ${names.join('; ')}.`]
}
