// Whether an instrument stands in a register of jobs: a name that is in none is a slip, and no all-clear.
import { readDefinition } from '../authoring/definition-file.ts'
import type { Entry } from '../core/job/entries.ts'
import { list, nearest, quote } from '../core/lib/wording.ts'
import type { JobFile } from '../node/job-folder.ts'
import { readSound } from '../node/job-store.ts'
import { UserError } from '../node/user-error.ts'
import { EXIT } from './exit.ts'

/** The id as it was given. @throws UserError (exit 2) where no register of these jobs has it; with the nearest that one has. */
export function knownInstrument(files: readonly JobFile[], wanted: string): string {
  const ids = idsIn(files)
  // Of no register at all nothing can be said.
  if (ids.length === 0 || ids.includes(wanted)) return wanted
  const near = nearest(wanted, ids)
  throw new UserError(
    `${quote(wanted)} is in no register of ${files.length === 1 ? 'this job' : 'these jobs'}.`,
    EXIT.wrongUse,
    near === undefined ? `There are: ${list(ids)}.` : `Did you mean ${near}?`,
  )
}

function idsIn(files: readonly JobFile[]): string[] {
  const ids = new Set<string>()
  const seen = new Set<string>()
  for (const file of files) {
    for (const { sha256, text, name } of registersOf(file.path)) {
      if (seen.has(sha256)) continue
      seen.add(sha256)
      const read = readDefinition(text, name)
      if (read.ok && read.kind === 'instruments') for (const { id } of read.value.instruments) ids.add(id)
    }
  }
  return [...ids].sort()
}

/** By the first line of a log, which stands also where a later one is damaged. */
function registersOf(path: string) {
  try {
    const [first] = readSound(path).entries as readonly Entry[]
    return first?.type === 'job.opened' ? first.files.filter(({ role }) => role === 'instruments') : []
  } catch (error) {
    if (!(error instanceof UserError)) throw error
    return []
  }
}
