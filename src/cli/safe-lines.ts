// What jobs on disk add to the make-safe sheet. Reads without taking a lock, so that it works beside a running job.

import { replay } from '../app/replay.ts'
import { jobLines, SAFE_ALWAYS, siteLines } from '../core/talk/make-safe.ts'
import type { JobFile } from '../node/job-folder.ts'
import { readJob } from '../node/job-store.ts'
import { asCalled } from './called.ts'
import { definitionsOf } from './open.ts'

/** More would push the first lines off the screen. */
const MOST_JOBS = 3

/** @throws UserError when the log cannot be read. */
export function linesOfJob(job: JobFile): string[] {
  const { entries } = readJob(job.path)
  return jobLines(definitionsOf(job.path, entries), replay(entries).state)
}

/** The sheet where no job is open yet: what always holds, then what each open job in the folder adds. */
export function linesWithoutJob(open: readonly JobFile[]): string[] {
  if (open.length === 0)
    return [
      ...SAFE_ALWAYS,
      ...siteLines({}),
      asCalled('barover safe --machine FILE shows the contacts of a machine record.'),
    ]
  const more =
    open.length > MOST_JOBS
      ? [asCalled(`and ${open.length - MOST_JOBS} more open jobs: barover safe JOB`)]
      : []
  return [
    ...SAFE_ALWAYS,
    ...open.slice(0, MOST_JOBS).flatMap((job) => [`OPEN JOB ${job.id}`, ...linesOrFault(job)]),
    ...more,
  ]
}

function linesOrFault(job: JobFile): string[] {
  try {
    return linesOfJob(job)
  } catch {
    return ['Its log cannot be read: the site permit names the contacts.']
  }
}
