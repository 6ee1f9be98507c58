// The practice sessions of a folder, as sheets, in the order they were worked last. What cannot be read is left out: it is no session.
import type { Definitions } from '../core/job/definitions.ts'
import { type Grade, gradeOf } from '../core/practice/grade.ts'
import { type JobFile, listJobs } from '../node/job-folder.ts'
import { readSound } from '../node/job-store.ts'
import { UserError } from '../node/user-error.ts'
import { keptDefinitions } from './job-folder-source.ts'

export function practiceSessions(folder: string): Grade[] {
  const kept = new Map<string, Definitions>()
  return listJobs(folder)
    .filter(({ record }) => record === 'PRACTICE')
    .reverse()
    .flatMap((file) => sheetOf(file, kept) ?? [])
}

function sheetOf(file: JobFile, kept: Map<string, Definitions>): Grade | null {
  try {
    const { entries, fault } = readSound(file.path)
    const [first] = entries
    if (fault !== null || first?.type !== 'job.opened' || first.practice === undefined) return null
    const defs = keptDefinitions(entries, kept)
    return defs === null ? null : gradeOf(defs, entries)
  } catch (error) {
    if (error instanceof UserError) return null
    throw error
  }
}
