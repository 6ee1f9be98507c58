// The answer to a question in plain words: passages of this job's papers, word for word, each with where it stands. Nothing
// is made up, and nothing of it goes on record.
import type { Definitions } from '../job/definitions.ts'
import { current } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { findPassages } from '../papers/find.ts'
import type { Passage } from '../papers/passages.ts'

export const NOTHING_FOUND =
  "Nothing in this job's papers answers that. Ask a lead, or look in the machine's own book."

export const WORD_FOR_WORD = "From this job's papers, word for word:"

/** Null where nothing fits. */
export function quotedLines(defs: Definitions, state: State, question: string): string[] | null {
  const at = current(defs, state)?.placed.number ?? null
  const found = findPassages(defs, question, at).filter((passage) => mayBeShown(defs, state, passage))
  if (found.length === 0) return null
  return [
    WORD_FOR_WORD,
    ...found.flatMap((passage) => [`${passage.from}${notYet(passage, at)}:`, `  "${passage.text}"`]),
    ...(found.some(({ fallback }) => fallback) ? ['Fall-back limits: the maker’s manual comes first.'] : []),
  ]
}

export function answerLines(defs: Definitions, state: State, question: string): string[] {
  return quotedLines(defs, state, question) ?? [NOTHING_FOUND]
}

/** What is read of a later step is not to be done yet. */
function notYet({ step }: Passage, at: number | null): string {
  return step !== null && at !== null && step > at ? ' (not yet to be done)' : ''
}

/** Until the plate was read, its tag is nowhere on screen, so that it cannot be copied from here. */
function mayBeShown({ machine }: Definitions, { machineNamed }: State, { text, from }: Passage): boolean {
  return machineNamed || !`${from} ${text}`.toLowerCase().includes(machine.machine.toLowerCase())
}
