// The crew file of the last job before a given one on the same machine: a file that was changed since lets others sign.
import { openedOf } from '../app/replay.ts'
import { definitionsFrom } from '../authoring/definitions.ts'
import type { Crew } from '../core/definition/crew.ts'
import { type JobFile, listJobs } from '../node/job-folder.ts'
import { readJob } from '../node/job-store.ts'

/** Logs that are read at most: the names tell machine and time, so that it is the first nearly always. */
const MOST_READ = 5

/** Null where there is none that can be read. Only records of the same kind are held against each other. */
export function crewBefore(
  folder: string,
  job: JobFile,
  opened: { readonly at: string; readonly machine: string },
): { readonly job: string; readonly crew: Crew } | null {
  const tag = opened.machine.replace(/[^A-Za-z0-9.-]+/g, '-')
  const earlier = listJobs(folder)
    .filter(
      (one) =>
        one.record === job.record && one.id !== job.id && one.id.includes(`-${tag}-`) && one.id < job.id,
    )
    .sort((a, b) => (a.id < b.id ? 1 : -1))
  for (const one of earlier.slice(0, MOST_READ)) {
    const found = crewOf(one.path)
    if (found !== null && found.machine === opened.machine && found.at <= opened.at)
      return { job: one.id, crew: found.crew }
  }
  return null
}

/** A log that cannot be read has its own place to say so; here the one before it counts. */
function crewOf(path: string): { readonly at: string; readonly machine: string; readonly crew: Crew } | null {
  try {
    const opened = openedOf(readJob(path).entries)
    const defs = definitionsFrom(opened.files, 'kept')
    return defs.ok ? { at: opened.at, machine: defs.defs.machine.machine, crew: defs.defs.crew } : null
  } catch {
    return null
  }
}
