// Makes, opens and reads journal files. Opening examines every byte, and changes nothing but a torn tail, which is
// copied beside the file first.
import { constants } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { type Entry, GENESIS, type StoredEntry } from './chain.ts'
import { behindText, type Examination, examine, type TornTail } from './examine.ts'
import { type JournalFs, nodeFs, syncFolderOf, writeAll } from './fs-port.ts'
import { cutTo, type Journal, JournalWriter } from './journal-writer.ts'
import { asDiskProblem, errorCode, JournalProblem, plainReason } from './problem.ts'
import { type ProcessView, thisComputer } from './process-view.ts'
import { takeWriterLock, type WriterLock } from './writer-lock.ts'

export interface JournalSystem {
  readonly port: JournalFs
  readonly view: ProcessView
}

export interface OpenedJournal {
  readonly journal: Journal
  readonly entries: readonly StoredEntry[]
  /** The unfinished end that was set aside, and the file that now holds it (one piece a line, raw bytes). */
  readonly torn: (TornTail & { readonly savedTo: string }) | null
}

const REAL_SYSTEM: JournalSystem = { port: nodeFs, view: thisComputer }

// Appending by the system's own rule: should two writers ever meet, neither can write over the other's bytes.
const READ_AND_APPEND = constants.O_RDWR | constants.O_APPEND

/**
 * Makes a new journal holding its first entry, on disk before this returns, and opens it.
 * @throws JournalProblem `exists` (never overwrites), `locked` or `disk`; after those no file of ours is left.
 */
export function createJournal(
  path: string,
  firstEntry: Entry,
  at: string,
  system = REAL_SYSTEM,
): OpenedJournal {
  const { port, view } = system
  return orDiskProblem(`Making "${path}"`, () => {
    if (isThere(port, path)) throw alreadyThere(path)
    const real = join(port.realpathSync(dirname(path)), basename(path))
    return holdingLock(takeWriterLock(real, port, view), (lock) => {
      const fd = makeFile(port, real, path)
      const journal = new JournalWriter({ path: real, fd, port, lock, head: GENESIS, count: 0, size: 0 })
      try {
        const entries = journal.appendNow([{ entry: firstEntry, at }])
        port.fsyncSync(fd)
        syncFolderOf(port, real)
        return { journal, entries, torn: null }
      } catch (error) {
        throw unmake(port, real, fd, error)
      }
    })
  })
}

/**
 * Opens a journal for writing: takes the lock, examines every line, sets a torn tail aside in `<file>.torn`.
 * @throws JournalProblem `missing`, `locked`, `fault` (with its line; nothing was changed) or `disk`.
 */
export function openJournal(path: string, system = REAL_SYSTEM): OpenedJournal {
  const { port, view } = system
  return orDiskProblem(`Opening "${path}"`, () => {
    const real = findFile(port, path)
    return holdingLock(takeWriterLock(real, port, view), (lock) => {
      const fd = port.openSync(real, READ_AND_APPEND)
      try {
        const bytes = port.readFileSync(fd)
        const seen = examine(bytes)
        refuseUnsound(path, seen)
        const torn = seen.torn === null ? null : setTornAside(port, real, bytes, seen.soundBytes, seen.torn)
        // A killed writer's last lines may so far be in memory only; what we show as saved must be on disk.
        port.fsyncSync(fd)
        syncFolderOf(port, real)
        const start = {
          path: real,
          fd,
          port,
          lock,
          head: seen.head,
          count: seen.lines.length,
          size: seen.soundBytes,
        }
        return { journal: new JournalWriter(start), entries: seen.lines, torn }
      } catch (error) {
        closeQuietly(port, fd)
        throw error
      }
    })
  })
}

/**
 * Reads a journal as it stands, without a lock, for showing and verifying. Faults are returned, not thrown. While
 * somebody is writing, `torn` may be no more than a write under way.
 * @throws JournalProblem `missing` or `disk`.
 */
export function readJournal(path: string, port = nodeFs): Examination & { readonly bytes: Buffer } {
  return orDiskProblem(`Reading "${path}"`, () => {
    const bytes = port.readFileSync(findFile(port, path))
    return { bytes, ...examine(bytes) }
  })
}

function refuseUnsound(path: string, { fault, lines }: Examination): void {
  if (fault !== null) {
    throw new JournalProblem(
      'fault',
      `"${path}" is not as it was written: ${uncapital(fault.what)} ${behindText(fault.behind)}`,
      { line: fault.line },
    )
  }
  if (lines.length === 0) {
    const why = 'either it was never finished being made, or it was emptied'
    throw new JournalProblem('fault', `"${path}" holds no complete entry: ${why}.`, { line: 1 })
  }
}

/** The copy is on disk before the cut, so at every moment the bytes are in at least one of the two files. */
function setTornAside(port: JournalFs, real: string, bytes: Buffer, soundBytes: number, torn: TornTail) {
  const savedTo = `${real}.torn`
  const fd = port.openSync(savedTo, 'a')
  try {
    writeAll(port, fd, Buffer.concat([bytes.subarray(soundBytes), Buffer.from('\n')]))
    port.fsyncSync(fd)
  } finally {
    port.closeSync(fd)
  }
  syncFolderOf(port, savedTo)
  if (port.statSync(real).size !== bytes.length) {
    throw new JournalProblem(
      'locked',
      `"${real}" changed while it was being opened; something else is writing to it.`,
    )
  }
  cutTo(port, real, soundBytes)
  return { ...torn, savedTo }
}

function holdingLock<T>(lock: WriterLock, work: (lock: WriterLock) => T): T {
  try {
    return work(lock)
  } catch (error) {
    lock.release()
    throw error
  }
}

/** Takes a half-made journal away again; nothing in it was ever acknowledged. Returns what is to be thrown. */
function unmake(port: JournalFs, real: string, fd: number, error: unknown): unknown {
  closeQuietly(port, fd)
  const isBug = !(error instanceof JournalProblem) && errorCode(error) === ''
  let left = 'and nothing of it was left'
  try {
    port.unlinkSync(real)
  } catch {
    left = 'and the unfinished file could not be removed'
  }
  if (isBug) return error
  const cause = error instanceof JournalProblem && error.cause !== undefined ? error.cause : error
  return new JournalProblem('disk', `Making "${real}" failed: ${plainReason(cause)}, ${left}.`, { cause })
}

/** For a way out that already has an error to report. */
function closeQuietly(port: JournalFs, fd: number): void {
  try {
    port.closeSync(fd)
  } catch {
    // The first error is the one to tell.
  }
}

function makeFile(port: JournalFs, real: string, path: string): number {
  try {
    return port.openSync(real, READ_AND_APPEND | constants.O_CREAT | constants.O_EXCL)
  } catch (error) {
    throw errorCode(error) === 'EEXIST' ? alreadyThere(path) : error
  }
}

/** The real path: two names for one file by way of a link must come to one lock. */
function findFile(port: JournalFs, path: string): string {
  if (!isThere(port, path)) throw new JournalProblem('missing', `There is no journal "${path}".`)
  const real = port.realpathSync(path)
  if (!port.statSync(real).isFile()) throw new JournalProblem('missing', `"${path}" is not a file.`)
  return real
}

function isThere(port: JournalFs, path: string): boolean {
  try {
    port.statSync(path)
    return true
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return false
    throw error
  }
}

function alreadyThere(path: string): JournalProblem {
  return new JournalProblem('exists', `"${path}" is already there, and a journal is never written over.`)
}

function orDiskProblem<T>(doing: string, work: () => T): T {
  try {
    return work()
  } catch (error) {
    throw asDiskProblem(error, doing)
  }
}

function uncapital(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1)
}
