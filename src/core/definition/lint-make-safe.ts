// What the make-safe sheet needs: work that can hurt says how it is made safe, and its site has a rescue plan.
import { quote } from '../lib/wording.ts'
import { type Finding, finding } from './lint-common.ts'
import { type JobFinding, type JobParts, usedProcedures, within } from './lint-job-shape.ts'
import type { Procedure } from './procedure.ts'

/**
 * Codes of what older files could not know of. A job opened before keeps its files for good, so these hold back no job that
 * is taken up or shown, only new ones.
 */
export const SINCE_OPENED: readonly string[] = [
  'no-make-safe',
  'no-rescue',
  'same-name',
  'burns',
  'two-hazards',
  'late-gate',
]

/** Findings of one procedure, or of one that stands inside it. */
export function lintMakeSafe(procedure: Procedure): Finding[] {
  if (procedure.hazards.length === 0 || procedure.make_safe !== undefined) return []
  const message = `${quote(procedure.procedure)} has hazards and does not say how to make the work safe.`
  const hint = 'add make_safe: with a few lines on what to do at once, for the sheet under the Tab key'
  return [finding(['procedure'], 'no-make-safe', message, hint)]
}

/** A machine on which people face hazards has a rescue plan on record. */
export function lintRescue(job: JobParts): JobFinding[] {
  if (job.machine.site.rescue !== undefined) return []
  if (!usedProcedures(job).some(({ procedure }) => procedure.hazards.length > 0)) return []
  const message = `The site of ${quote(job.machine.machine)} has no rescue plan, and the work has hazards.`
  const hint = 'add rescue: with its lines, as on the site permit: who comes, from where, with what'
  return within({ kind: 'machine' }, [finding(['site', 'name'], 'no-rescue', message, hint)])
}
