// Jobs of a folder as a history wants them: each log read once, kept as a digest and let go. Procedures and records are the same in
// most jobs, so what was made of them is kept by the hashes of the files.
import { createHash } from 'node:crypto'
import { replay } from '../app/replay.ts'
import { editionsFrom } from '../authoring/editions.ts'
import { digestOf, type JobDigest } from '../core/history/digest.ts'
import type { JobSource, UnreadJob } from '../core/history/history.ts'
import type { Definitions, RecordKind } from '../core/job/definitions.ts'
import { defsNow } from '../core/job/editions.ts'
import type { Entry } from '../core/job/entries.ts'
import { type JobFile, listJobs } from '../node/job-folder.ts'
import { readSound } from '../node/job-store.ts'
import { UserError } from '../node/user-error.ts'

/** Definitions of so many different bundles of files are kept at a time. */
const KEPT = 32

export function folderSource(folder: string, record: RecordKind): JobSource {
  return {
    *jobs() {
      const kept = new Map<string, Definitions>()
      for (const file of listJobs(folder)) {
        const told = file.record === record ? digest(file, kept) : null
        if (told !== null) yield told
      }
    },
  }
}

/** Null for a session on a hidden machine: each has another under the same tag, and no wear leads from one to the next. */
function digest(file: JobFile, kept: Map<string, Definitions>): JobDigest | UnreadJob | null {
  try {
    const { entries, fault, torn } = readSound(file.path)
    if (fault !== null)
      return {
        job: file.id,
        unread: `damaged at line ${fault.line}, ${fault.behind} lines behind it not read`,
      }
    if (torn !== null) return { job: file.id, unread: 'its last line is unfinished; resume sets that aside' }
    const [first] = entries
    if (first?.type === 'job.opened' && first.practice !== undefined) return null
    const defs = keptDefinitions(entries, kept)
    if (defs === null) return { job: file.id, unread: 'its files do not hold together' }
    return digestOf(defs, entries, replay(entries).state)
  } catch (error) {
    if (!(error instanceof UserError)) throw error
    return { job: file.id, unread: error.message }
  }
}

/** `kept`: what was made of the same files before, by the caller's own map. Null: they do not hold together. */
export function keptDefinitions(
  entries: readonly Entry[],
  kept: Map<string, Definitions>,
): Definitions | null {
  const key = bundleKey(entries)
  const known = kept.get(key)
  if (known !== undefined) return known
  const found = editionsFrom(entries)
  if (!found.ok) return null
  const defs = defsNow(found.editions)
  const [oldest] = kept.keys()
  if (kept.size >= KEPT && oldest !== undefined) kept.delete(oldest)
  kept.set(key, defs)
  return defs
}

/** Of the bytes themselves: a hash that only stands in the log may be any. */
function bundleKey(entries: readonly Entry[]): string {
  const hash = createHash('sha256')
  for (const entry of entries) {
    const files =
      entry.type === 'job.opened' ? entry.files : entry.type === 'record.taken-in' ? [entry.file] : []
    for (const { role, name, text } of files) hash.update(`${role}\0${name}\0${text.length}\0${text}`)
  }
  return hash.digest('hex')
}
