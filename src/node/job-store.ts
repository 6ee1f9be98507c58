// A job on disk: opening a new one, taking one up, reading one. Joins the journal file to the entries of the core.
import type { JournalPort } from '../app/ports.ts'
import type { Entry } from '../core/job/entries.ts'
import { readEntries } from '../core/job/entry-schema.ts'
import { behindText, type Fault, tornText } from './journal/examine.ts'
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
      torn: torn === null ? null : `${tornText(torn)} It was set aside in ${torn.savedTo}.`,
    }
  })
}

export interface ReadJob {
  readonly entries: readonly Entry[]
  /** Hash of the last line that is sound; of a log with a break nothing to be written down. */
  readonly head: string
  /** In a sentence what is known of an unfinished end, or null. */
  readonly torn: string | null
}

export interface SoundJob extends ReadJob {
  /** Where the sound lines end because the next is not as it was written; null: all are sound. */
  readonly fault: Fault | null
}

/** Reads without a lock. @throws UserError naming the line when the journal is not as it was written. */
export function readJob(path: string): ReadJob {
  const { fault, ...read } = readSound(path)
  if (fault !== null)
    throw new UserError(
      `${path}: ${fault.what} ${behindText(fault.behind)}`,
      4,
      `barover verify ${path} says what could be checked.`,
    )
  return read
}

/** What the sound lines say, up to a break. @throws UserError when not even the first can be read. */
export function readSound(path: string): SoundJob {
  return orUserError(() => {
    const seen = readJournal(path)
    const { fault, lines } = seen
    const read = readEntries(lines)
    if (read.ok) {
      const torn = seen.torn === null || fault !== null ? null : tornText(seen.torn)
      return { entries: read.value, head: seen.head, torn, fault }
    }
    const why = fault === null ? read.error.say : `${fault.what} ${behindText(fault.behind)}`
    throw new UserError(`${path}: ${why}`, 4, `barover verify ${path} says what could be checked.`)
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
