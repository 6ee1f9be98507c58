// Which word stands on a blank sheet: the same that a job of these files would have.
import type { Definitions, RecordKind } from '../job/definitions.ts'
import { inventedFile } from '../job/open-job.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

/** `asked`: null for EXAMPLE where the machine is invented, and REAL elsewhere. Nothing REAL is made of an invented file. */
export function blankRecord(defs: Definitions, asked: RecordKind | null): Result<RecordKind> {
  const record = asked ?? (defs.machine.invented === true ? 'EXAMPLE' : 'REAL')
  const invented = inventedFile(defs)
  return record === 'REAL' && invented !== null
    ? refuse(
        'invented',
        `This ${invented} is marked invented, so its sheet can only be an EXAMPLE or PRACTICE.`,
      )
    : ok(record)
}
