// From the texts a job carries to its definitions. The same for a new job and for one taken up a year later.
import { SINCE_OPENED } from '../core/definition/lint-make-safe.ts'
import { assemble, type Definitions } from '../core/job/definitions.ts'
import type { FileCopy } from '../core/job/entries.ts'
import { checkJob, type JobFiles, type TextFile } from './check.ts'
import type { Diagnostic } from './diagnostic.ts'
import { withScenario } from './scenario.ts'

export type DefinitionsResult =
  | { readonly ok: true; readonly defs: Definitions; readonly warnings: readonly Diagnostic[] }
  | { readonly ok: false; readonly diagnostics: readonly Diagnostic[] }

/** A file of a job, by what it is and its text. */
export type JobCopy = Pick<FileCopy, 'role' | 'name' | 'text'>

/**
 * Checks the files together and assembles them. A missing file is a diagnostic like any other. `kept`: the files of a job
 * that was opened before; what files need only since then holds it back no more.
 */
export function definitionsFrom(files: readonly JobCopy[], of: 'new' | 'kept' = 'new'): DefinitionsResult {
  const only = (role: FileCopy['role']): TextFile =>
    asText(files.find((f) => f.role === role) ?? { role, name: `(no ${role} file)`, text: '' })
  const all = (role: FileCopy['role']): TextFile[] => files.filter((f) => f.role === role).map(asText)
  const job: JobFiles = {
    procedure: only('procedure'),
    parts: all('part'),
    machine: only('machine'),
    instruments: only('instruments'),
    crew: only('crew'),
    limitBooks: all('limit-book'),
  }
  const checked = checkJob(job, of === 'kept' ? SINCE_OPENED : [])
  if (!checked.ok) return checked
  const assembled = assemble(checked.job)
  const scenario = files.find((f) => f.role === 'scenario')
  if (assembled.ok && scenario !== undefined) {
    const taken = withScenario(assembled.value, asText(scenario), of)
    return taken.ok ? { ...taken, warnings: [...checked.warnings, ...taken.warnings] } : taken
  }
  if (assembled.ok) return { ok: true, defs: assembled.value, warnings: checked.warnings }
  const where = { file: job.procedure.path, line: 1, column: 1, endColumn: 2 }
  return {
    ok: false,
    diagnostics: [{ ...where, code: assembled.error.code, message: assembled.error.say, severity: 'error' }],
  }
}

function asText(copy: JobCopy): TextFile {
  return { path: copy.name, text: copy.text }
}
