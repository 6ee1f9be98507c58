// The writing end of an open journal. An entry counts only after its bytes were written and synced; after any doubt
// the writer is dead, and only opening the file afresh, which examines every byte, may go on.
import { buildLine, type Entry, lineHash, readLine, type StoredEntry } from './chain.ts'
import { type FileFacts, type JournalFs, writeAll } from './fs-port.ts'
import { errorCode, JournalProblem, type JournalProblemCode, plainReason } from './problem.ts'
import type { WriterLock } from './writer-lock.ts'

export interface Addition {
  readonly entry: Entry
  /** ISO time text with its offset. */
  readonly at: string
}

export interface Journal {
  readonly path: string
  /** Hash of the last saved line: note it elsewhere, and it proves the whole journal up to here. */
  readonly head: string
  /** Saved entries. */
  readonly count: number
  /**
   * Saves the entries with one write and one sync, and resolves with them as they are on disk; fold those, not the
   * originals. Rejects with JournalProblem `disk`, `fault` or `locked` the first time something is wrong, and `dead`
   * ever after. An entry that cannot be stored at all is a bug: it rejects with a plain Error and nothing is written.
   */
  append(additions: readonly Addition[]): Promise<readonly StoredEntry[]>
  /** Closes the file and gives up the lock; further calls do nothing. */
  close(): void
}

export interface WriterStart {
  readonly path: string
  readonly fd: number
  readonly port: JournalFs
  readonly lock: WriterLock
  readonly head: string
  readonly count: number
  /** Length of the file in bytes. */
  readonly size: number
}

export class JournalWriter implements Journal {
  readonly path: string
  readonly #fd: number
  readonly #port: JournalFs
  readonly #lock: WriterLock
  #head: string
  #count: number
  #size: number
  #deadBecause: string | null = null
  #isClosed = false

  constructor(start: WriterStart) {
    this.path = start.path
    this.#fd = start.fd
    this.#port = start.port
    this.#lock = start.lock
    this.#head = start.head
    this.#count = start.count
    this.#size = start.size
  }

  get head(): string {
    return this.#head
  }

  get count(): number {
    return this.#count
  }

  async append(additions: readonly Addition[]): Promise<readonly StoredEntry[]> {
    return this.appendNow(additions)
  }

  /** The same at once, throwing instead of rejecting. */
  appendNow(additions: readonly Addition[]): readonly StoredEntry[] {
    if (this.#deadBecause !== null) {
      throw new JournalProblem(
        'dead',
        `Nothing was saved: "${this.path}" is shut for writing because ${this.#deadBecause}.`,
      )
    }
    const { bytes, entries, head } = this.#build(additions)
    if (entries.length === 0) return entries
    this.#assertUntouched()
    this.#writeAndSync(bytes)
    this.#size += bytes.length
    this.#count += entries.length
    this.#head = head
    return entries
  }

  close(): void {
    if (this.#isClosed) return
    this.#isClosed = true
    this.#deadBecause ??= 'it was closed'
    try {
      this.#port.closeSync(this.#fd)
    } finally {
      this.#lock.release()
    }
  }

  #build(additions: readonly Addition[]): { bytes: Buffer; entries: StoredEntry[]; head: string } {
    let head = this.#head
    let text = ''
    const entries: StoredEntry[] = []
    for (const { entry, at } of additions) {
      const line = buildLine(entry, { seq: this.#count + entries.length, prev: head, at })
      const read = readLine(line)
      if (!read.ok)
        throw new Error(`a journal line that was just built does not read back: ${read.error.say}`)
      entries.push(read.value)
      head = lineHash(line)
      text += `${line}\n`
    }
    return { bytes: Buffer.from(text, 'utf8'), entries, head }
  }

  /** Nobody else may have written to the file, cut it, put another in its place or taken the lock. */
  #assertUntouched(): void {
    const own = this.#facts(() => this.#port.fstatSync(this.#fd))
    if (own.size !== this.#size) {
      this.#die(
        'fault',
        `the file is ${own.size} bytes long where ${this.#size} were left, so something else changed it`,
      )
    }
    const named = this.#facts(() => this.#port.statSync(this.path))
    if (named.ino !== own.ino || named.dev !== own.dev) {
      this.#die('fault', 'another file has been put in its place')
    }
    if (!this.#lock.isOurs()) {
      this.#die('locked', `its lock ${this.#lock.path} was deleted or taken by another program`)
    }
  }

  #facts(ask: () => FileFacts): FileFacts {
    try {
      return ask()
    } catch (error) {
      if (errorCode(error) === 'ENOENT') this.#die('fault', 'the file was removed or renamed', error)
      return this.#die('disk', `the file cannot be looked at: ${plainReason(error)}`, error)
    }
  }

  #writeAndSync(bytes: Buffer): void {
    let written = 0
    try {
      writeAll(this.#port, this.#fd, bytes, (done) => {
        written = done
      })
      // A sync that failed must not be tried again: Linux file systems mark the pages clean all the same, so the
      // second try succeeds with nothing on disk (Rebello et al., "Can Applications Recover from fsync Failures?",
      // USENIX Annual Technical Conference 2020).
      this.#port.fdatasyncSync(this.#fd)
    } catch (error) {
      const undone = this.#cutBack(written)
        ? 'the file was cut back to the last saved entry'
        : 'the file could not be cut back to the last saved entry'
      this.#die('disk', `writing failed: ${plainReason(error)}, and ${undone}`, error)
    }
    const { size } = this.#facts(() => this.#port.fstatSync(this.#fd))
    if (size !== this.#size + bytes.length)
      this.#die('fault', 'something else wrote to the file at the same time')
  }

  /** Not synced, as the disk is in doubt: what it really holds shows when the file is opened again. */
  #cutBack(written: number): boolean {
    try {
      // A different length means that somebody else's bytes are there too, which are not ours to cut.
      if (this.#port.fstatSync(this.#fd).size !== this.#size + written) return false
      cutTo(this.#port, this.path, this.#size)
      return this.#port.fstatSync(this.#fd).size === this.#size
    } catch {
      return false
    }
  }

  #die(code: JournalProblemCode, because: string, cause?: unknown): never {
    this.#deadBecause = because
    throw new JournalProblem(
      code,
      `Nothing was saved to "${this.path}": ${because}; open it again to go on.`,
      { cause },
    )
  }
}

/** Cuts the file to `length` bytes. By its own handle: Windows refuses to cut through one opened for appending. */
export function cutTo(port: JournalFs, path: string, length: number): void {
  const fd = port.openSync(path, 'r+')
  try {
    port.ftruncateSync(fd, length)
  } finally {
    port.closeSync(fd)
  }
}
