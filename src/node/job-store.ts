// A job on disk: opening a new one, taking one up, reading one. Joins the journal file to the entries of the core.
import type { JournalPort } from '../app/ports.ts'
import type { Entry } from '../core/job/entries.ts'
import { readEntries } from '../core/job/entry-schema.ts'
import { createJournal, openJournal, readJournal } from './journal/journal-file.ts'
import type { Journal } from './journal/journal-writer.ts'
import { JournalProblem } from './journal/problem.ts'
import { UserError } from './user-error.ts'

export interface OpenJournal {
  readonly port: JournalPort
  readonly entries: readonly Entry[]
  readonly head: () => string
  readonly close: () => void
  /** One sentence about an unfinished end that was set aside, or null. */
  readonly torn: string | null
}

/** @throws UserError (exit 4) for anything about the file that a person can put right. */
export function createJob(path: string, first: Entry): OpenJournal {
  return orUserError(() => {
    const { seq: _seq, at, ...entry } = first
    const { journal } = createJournal(path, entry, at)
    return {
      port: portOf(journal),
      entries: [first],
      head: () => journal.head,
      close: () => journal.close(),
      torn: null,
    }
  })
}

/** Takes the writer's lock, sets a torn tail aside. */
export function openJob(path: string): OpenJournal {
  return orUserError(() => {
    const { journal, entries, torn } = openJournal(path)
    const read = readEntries(entries)
    if (!read.ok) {
      journal.close()
      throw new UserError(`${path}: ${read.error.say}`, 4)
    }
    return {
      port: portOf(journal),
      entries: read.value,
      head: () => journal.head,
      close: () => journal.close(),
      torn:
        torn === null
          ? null
          : `An unfinished last line of ${torn.bytes} bytes, never shown as saved, was set aside in ${torn.savedTo}.`,
    }
  })
}

export interface ReadJob {
  readonly entries: readonly Entry[]
  readonly head: string
  readonly bytes: Buffer
  readonly torn: boolean
}

/** Reads without a lock. @throws UserError naming the line when the journal is not as it was written. */
export function readJob(path: string): ReadJob {
  return orUserError(() => {
    const seen = readJournal(path)
    if (seen.fault !== null)
      throw new UserError(
        `${path}: ${seen.fault.what}`,
        4,
        `barover verify ${path} says what could be checked.`,
      )
    const read = readEntries(seen.lines)
    if (!read.ok) throw new UserError(`${path}: ${read.error.say}`, 4)
    return { entries: read.value, head: seen.head, bytes: seen.bytes, torn: seen.torn !== null }
  })
}

export function journalBytes(path: string): Buffer {
  return orUserError(() => readJournal(path).bytes)
}

function portOf(journal: Journal): JournalPort {
  return {
    head: () => journal.head,
    append: async (entries) => {
      const additions = entries.map(({ seq: _seq, at, ...entry }) => ({ entry, at }))
      const stored = await journal.append(additions).catch((error: unknown) => {
        throw error instanceof JournalProblem ? new UserError(error.message, 4) : error
      })
      const off = stored.find((line, i) => line.seq !== entries[i]?.seq)
      if (off !== undefined) throw new Error(`entry ${off.seq} is out of step with the job`)
    },
  }
}

function orUserError<T>(work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (error instanceof JournalProblem) throw new UserError(error.message, 4)
    throw error
  }
}
