// One writer at a time: `<file>.lock` names the process that may write. A dead writer's lock is taken over.
import { createHash, randomUUID } from 'node:crypto'
import { type JournalFs, writeAll } from './fs-port.ts'
import { errorCode, JournalProblem } from './problem.ts'
import type { ProcessView } from './process-view.ts'

export interface WriterLock {
  readonly path: string
  /** False once the lock file is gone or names somebody else, for example after it was deleted by hand. */
  isOurs(): boolean
  /** Removes the lock file if it is still ours. Never throws: a lock left behind is taken over later. */
  release(): void
}

interface Holder {
  readonly pid: number
  readonly host: string
  readonly started: string | null
}

interface Attempt {
  readonly file: string
  readonly lockPath: string
  readonly depth: number
}

const MAX_TRIES = 20
const MAX_DEPTH = 4

/**
 * Takes the writer lock of `file` (a real path).
 * @throws JournalProblem `locked` in one sentence naming the process or the host; errors of the file calls as they are.
 */
export function takeWriterLock(file: string, port: JournalFs, view: ProcessView): WriterLock {
  return take({ file, lockPath: `${file}.lock`, depth: 0 }, port, view)
}

function take(attempt: Attempt, port: JournalFs, view: ProcessView): WriterLock {
  const { file, lockPath } = attempt
  // `mark` makes every lock text the only one of its kind, so "still the same text" means "still the same lock".
  const self = { pid: view.pid, host: view.host, started: view.startOf(view.pid), mark: randomUUID() }
  const mine = `${JSON.stringify(self)}\n`
  for (let tries = 0; tries < MAX_TRIES; tries++) {
    if (placeNew(lockPath, mine, port)) return heldLock(lockPath, mine, port)
    const found = readIfThere(lockPath, port)
    if (found === null) continue
    const holder = parseHolder(found)
    // Where links are missing, a lock is empty for an instant while it is made: look again before judging it.
    if (holder === null && tries < MAX_TRIES - 1) pause(10)
    else if (!isDead(holder, view)) throw refusal(file, lockPath, holder, view)
    else if (replaceDead(attempt, found, mine, port, view)) return heldLock(lockPath, mine, port)
  }
  throw new JournalProblem('locked', `The lock of "${file}" keeps changing hands; try again in a moment.`)
}

/**
 * Puts our text in place of a dead holder's. Two takers must not both win: each first takes a lock whose name comes
 * from the dead holder's text, so only one of them may replace that very text, and whoever comes later finds it
 * changed. A taker that dies half way leaves a dead lock of that second name, which is taken over the same way.
 */
function replaceDead(
  attempt: Attempt,
  dead: string,
  mine: string,
  port: JournalFs,
  view: ProcessView,
): boolean {
  const { file, lockPath, depth } = attempt
  if (depth >= MAX_DEPTH) {
    throw new JournalProblem(
      'locked',
      `The lock of "${file}" is stuck; delete ${lockPath} if nobody is writing.`,
    )
  }
  const tag = createHash('sha256').update(dead).digest('hex').slice(0, 12)
  const claim = take({ file, lockPath: `${lockPath}.${tag}`, depth: depth + 1 }, port, view)
  try {
    if (readIfThere(lockPath, port) !== dead) return false
    const draft = writeDraft(lockPath, mine, port)
    port.renameSync(draft, lockPath)
    return readIfThere(lockPath, port) === mine
  } finally {
    claim.release()
  }
}

/** Makes the lock with its text in it, or returns false if one is there. */
function placeNew(lockPath: string, text: string, port: JournalFs): boolean {
  const draft = writeDraft(lockPath, text, port)
  try {
    // A link appears whole and never replaces: the same promise as O_EXCL, without an instant of emptiness.
    port.linkSync(draft, lockPath)
    return true
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false
    return placeWithoutLinks(lockPath, text, port)
  } finally {
    removeQuietly(draft, port)
  }
}

/** For disks without hard links (memory sticks, some network folders). */
function placeWithoutLinks(lockPath: string, text: string, port: JournalFs): boolean {
  try {
    writeNewFile(lockPath, text, port)
    return true
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false
    throw error
  }
}

function writeDraft(lockPath: string, text: string, port: JournalFs): string {
  const draft = `${lockPath}.${randomUUID()}`
  writeNewFile(draft, text, port)
  return draft
}

function writeNewFile(path: string, text: string, port: JournalFs): void {
  const fd = port.openSync(path, 'wx')
  try {
    writeAll(port, fd, Buffer.from(text))
    // Without this a power cut can leave an empty lock, and nobody could tell whose it was.
    port.fsyncSync(fd)
  } catch (error) {
    removeQuietly(path, port)
    throw error
  } finally {
    port.closeSync(fd)
  }
}

function heldLock(path: string, mine: string, port: JournalFs): WriterLock {
  const isOurs = () => {
    try {
      return readIfThere(path, port) === mine
    } catch {
      return false
    }
  }
  return {
    path,
    isOurs,
    release: () => {
      if (isOurs()) removeQuietly(path, port)
    },
  }
}

function isDead(holder: Holder | null, view: ProcessView): boolean {
  if (holder === null || holder.host !== view.host) return false
  if (!view.isAlive(holder.pid)) return true
  const now = view.startOf(holder.pid)
  return holder.started !== null && now !== null && holder.started !== now
}

function refusal(file: string, lockPath: string, holder: Holder | null, view: ProcessView): JournalProblem {
  const byHand = `if you are sure nobody is writing, delete ${lockPath}`
  if (holder === null) return new JournalProblem('locked', `The lock of "${file}" cannot be read; ${byHand}.`)
  const { pid, host } = holder
  return host === view.host
    ? new JournalProblem(
        'locked',
        `"${file}" is being written by process ${pid} on this computer (${host}); close it there first.`,
      )
    : new JournalProblem(
        'locked',
        `"${file}" is being written by process ${pid} on computer ${host}; close it there first, or ${byHand}.`,
      )
}

function parseHolder(text: string): Holder | null {
  try {
    const value: unknown = JSON.parse(text)
    if (typeof value !== 'object' || value === null) return null
    const { pid, host, started } = value as Record<string, unknown>
    // pid 0 or below would ask about a whole process group instead of the writer.
    if (!Number.isSafeInteger(pid) || (pid as number) <= 0 || typeof host !== 'string') return null
    return { pid: pid as number, host, started: typeof started === 'string' ? started : null }
  } catch {
    return null
  }
}

function readIfThere(path: string, port: JournalFs): string | null {
  try {
    return port.readFileSync(path).toString('utf8')
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return null
    throw error
  }
}

function removeQuietly(path: string, port: JournalFs): void {
  try {
    port.unlinkSync(path)
  } catch {
    // Left behind it does no harm: a draft is never read, a lock of a dead process is taken over.
  }
}

function pause(milliseconds: number): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, milliseconds)
}
