// Which definitions count at which entry of a log: those a job was opened with, until a lead takes a changed machine record in.
// From that entry on everything is worked out, asked and shown by the new ones; what lies before it keeps those it was made by.
import type { Definitions } from './definitions.ts'
import type { Entry, FileCopy } from './entries.ts'

export interface Edition {
  /** The entry that brought them, from which they count. */
  readonly from: number
  readonly defs: Definitions
}

/** In the order of the log. The first is what the job was opened with. */
export type Editions = readonly [Edition, ...Edition[]]

/** Of a job that has taken nothing in. */
export function asOpened(defs: Definitions): Editions {
  return [{ from: 0, defs }]
}

export function defsNow(editions: Editions): Definitions {
  return (editions.at(-1) ?? editions[0]).defs
}

/** The definitions that the entry of this number is read by; one that takes a record in, by the new ones. */
export function defsAt(editions: Editions, seq: number): Definitions {
  return (editions.findLast(({ from }) => from <= seq) ?? editions[0]).defs
}

export interface Bundle {
  readonly from: number
  readonly files: readonly FileCopy[]
}

/** The files of a job with another machine record in the place of its own. */
export function withRecord(files: readonly FileCopy[], record: FileCopy): FileCopy[] {
  return files.map((file) => (file.role === 'machine' ? record : file))
}

/** The files that a log holds, and from which entry on each bundle of them counts. A log begins with job.opened. */
export function bundlesOf(entries: readonly Entry[]): [Bundle, ...Bundle[]] {
  const [first] = entries
  if (first === undefined || first.type !== 'job.opened') throw new Error('a job begins with job.opened')
  let files: readonly FileCopy[] = first.files
  const taken = entries.flatMap((entry): Bundle[] => {
    if (entry.type !== 'record.taken-in') return []
    files = withRecord(files, entry.file)
    return [{ from: entry.seq, files }]
  })
  return [{ from: 0, files: first.files }, ...taken]
}
