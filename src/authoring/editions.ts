// From a log to the definitions it was made by: those of its opening, and those of each machine record taken in since.
import { bundlesOf, type Edition, type Editions } from '../core/job/editions.ts'
import type { Entry, FileCopy } from '../core/job/entries.ts'
import { definitionsFrom } from './definitions.ts'
import type { Diagnostic } from './diagnostic.ts'

export type EditionsResult =
  | { readonly ok: true; readonly editions: Editions }
  | {
      readonly ok: false
      readonly diagnostics: readonly Diagnostic[]
      readonly files: readonly FileCopy[]
      /** The entry that brought the files that do not hold; 0 is the opening. */
      readonly from: number
    }

/** `of`: as `definitionsFrom` has it. Stops at the first bundle of files that does not hold together. */
export function editionsFrom(entries: readonly Entry[], of: 'new' | 'kept' = 'kept'): EditionsResult {
  const found: Edition[] = []
  for (const { from, files } of bundlesOf(entries)) {
    const result = definitionsFrom(files, of)
    if (!result.ok) return { ok: false, diagnostics: result.diagnostics, files, from }
    found.push({ from, defs: result.defs })
  }
  const [first, ...rest] = found
  if (first === undefined) throw new Error('a log has the files it was opened with')
  return { ok: true, editions: [first, ...rest] }
}
