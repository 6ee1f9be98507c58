// The folder of jobs: one file a job, real ones, practice and examples kept apart by folder and by name.
import { randomBytes } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, statSync } from 'node:fs'
import { basename, join } from 'node:path'
import type { RecordKind } from '../core/job/definitions.ts'
import { type Instant, stamp } from '../core/lib/instant.ts'
import { UserError } from './user-error.ts'

export const KINDS: readonly RecordKind[] = ['REAL', 'PRACTICE', 'EXAMPLE']

export function suffixOf(record: RecordKind): string {
  return `.${record.toLowerCase()}.jsonl`
}

/** A name for a new job: day, time, machine and procedure, and four letters so that two never meet. */
export function newJobId(tag: string, procedure: string, now: Instant): string {
  const at = stamp(now)
  const safe = (text: string) => text.replace(/[^A-Za-z0-9.-]+/g, '-')
  return `${at.slice(0, 10)}-${at.slice(11, 13)}${at.slice(14, 16)}-${safe(tag)}-${safe(procedure)}-${randomBytes(2).toString('hex')}`
}

export function jobPath(jobs: string, record: RecordKind, id: string): string {
  const folder = join(jobs, record.toLowerCase())
  try {
    mkdirSync(folder, { recursive: true })
  } catch {
    throw new UserError(`The folder ${folder} cannot be made: say where jobs are kept with --jobs.`, 4)
  }
  return join(folder, id + suffixOf(record))
}

export interface JobFile {
  readonly path: string
  readonly id: string
  readonly record: RecordKind
  readonly changedMs: number
}

/** Newest first. A folder that is not there has no jobs. */
export function listJobs(jobs: string): JobFile[] {
  const found = KINDS.flatMap((record) => {
    const folder = join(jobs, record.toLowerCase())
    if (!existsSync(folder)) return []
    return readdirSync(folder)
      .filter((name) => name.endsWith(suffixOf(record)))
      .map((name): JobFile => {
        const path = join(folder, name)
        return {
          path,
          id: name.slice(0, -suffixOf(record).length),
          record,
          changedMs: statSync(path).mtimeMs,
        }
      })
  })
  return found.sort((a, b) => b.changedMs - a.changedMs || (a.id < b.id ? 1 : -1))
}

/** A job by path, by the name of its file, by its id, or by any part of its id that only one job has. */
export function findJob(jobs: string, wanted: string): JobFile {
  const record = KINDS.find((kind) => wanted.endsWith(suffixOf(kind)))
  if (record !== undefined && existsSync(wanted)) {
    return {
      path: wanted,
      id: basename(wanted).slice(0, -suffixOf(record).length),
      record,
      changedMs: statSync(wanted).mtimeMs,
    }
  }
  const list = listJobs(jobs)
  const named = list.filter((job) => basename(job.path) === wanted || job.id === wanted)
  const matches = named.length > 0 ? named : list.filter((job) => job.id.includes(wanted))
  const [job] = matches
  if (job === undefined)
    throw new UserError(`There is no job "${wanted}" in ${jobs}.`, 4, 'barover jobs lists them.')
  if (matches.length > 1)
    throw new UserError(
      `"${wanted}" fits ${matches.length} jobs in ${jobs}: say more of its name.`,
      2,
      'barover jobs lists them.',
    )
  return job
}
