// Opening a job: what may be opened at all, and as what kind of record.
import { misfit } from '../definition/lint-job.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Definitions, RecordKind } from './definitions.ts'
import { type FileCopy, FORMAT, type OpenedBody } from './entries.ts'

export interface Opening {
  readonly record: RecordKind
  readonly job: string
  readonly version: string
  readonly zone: string
  readonly clock: 'system' | 'set'
  readonly answers: 'person' | 'script'
  readonly files: readonly FileCopy[]
}

/** Refuses REAL jobs (until gates are proved), scripted or clock-set REAL jobs ever, and machines the procedure is not for. */
export function openJob(defs: Definitions, opening: Opening): Result<OpenedBody> {
  if (opening.record === 'REAL') return refuse(...realRefusal(defs, opening))
  const wrong = misfit(defs.procedure, defs.machine)
  if (wrong !== undefined) return refuse('not-for', wrong)
  const { version, ...rest } = opening
  return ok({ type: 'job.opened', format: FORMAT, ...rest, program: { name: 'barover', version } })
}

/** Why this may not be a REAL job. The last reason falls away once the gates are proved; the others never do. */
function realRefusal(defs: Definitions, opening: Opening): [string, string] {
  if (defs.machine.invented === true) {
    return ['invented', 'This machine record is marked invented, so it can only be an EXAMPLE or PRACTICE.']
  }
  if (opening.clock === 'set')
    return ['clock', 'A REAL job runs on the clock of this computer, not on one set by hand.']
  if (opening.answers === 'script') {
    return ['answers', 'A REAL job takes its answers from a person at a terminal, not from a file or a pipe.']
  }
  return [
    'real',
    'Barover takes no REAL jobs yet, because its gates are not proved: run it as practice with --as practice.',
  ]
}
