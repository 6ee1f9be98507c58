// The folder of a job's attached files, beside its log. A copy is written under a temporary name, synced and only then given a
// name of its own; a name that is there already is never written over. What the copy is, is told from the bytes that were
// written, so an entry never says more than what lies here.
import { createHash, randomBytes } from 'node:crypto'
import { constants } from 'node:fs'
import * as promises from 'node:fs/promises'
import { dirname, join } from 'node:path'
import type { FilesPort } from '../app/ports.ts'
import { type KeptFile, keptName, MOST_FILE_BYTES } from '../core/job/attachment.ts'
import { ok, type Result, refuse } from '../core/lib/result.ts'
import { quote } from '../core/lib/wording.ts'
import type { FoundFile } from '../core/talk/ask-file.ts'
import { fileFinder, unfit } from './find-files.ts'
import { errorCode, plainReason } from './journal/problem.ts'

/** The file calls of a copy, so that tests can make a disk fail. */
export type CopyFs = Pick<typeof promises, 'open' | 'mkdir' | 'rename' | 'unlink'>

export const TEMPORARY = '.part'
/** A mechanic's photo is nobody's program, and no hand changes it by mistake: everybody reads it, nobody writes it. */
const MODE = 0o444
const CHUNK = 1 << 20
/** More of one name than anybody attaches. */
const MOST_OF_A_NAME = 999

/** `job.example.jsonl` has its files in `job.example.files`. */
export function filesFolderOf(log: string): string {
  return log.replace(/\.jsonl$/, '.files')
}

export function jobFiles(log: string, fs: CopyFs = promises): FilesPort {
  const folder = filesFolderOf(log)
  return {
    ...fileFinder(),
    keep: (file) => keep(folder, file, fs),
    discard: (name) => fs.unlink(join(folder, name)).catch(() => undefined),
  }
}

async function keep(folder: string, file: FoundFile, fs: CopyFs): Promise<Result<KeptFile>> {
  const told = quote(file.given)
  const temporary = join(folder, `${randomBytes(6).toString('hex')}${TEMPORARY}`)
  let isDone = false
  try {
    await makeFolder(folder, fs)
    const copied = await copyTo(temporary, file, fs)
    if (!copied.ok) return copied
    const name = await giveName(folder, temporary, file.given, fs)
    if (name === null) return refuse('file-names', `There are too many files named like ${told} already.`)
    isDone = true
    await syncFolder(folder, fs)
    return ok({ name, given: file.given, ...copied.value })
  } catch (error) {
    return refuse('file-disk', `${told} could not be copied: ${plainReason(error)}.`)
  } finally {
    if (!isDone) await fs.unlink(temporary).catch(() => undefined)
  }
}

async function makeFolder(folder: string, fs: CopyFs): Promise<void> {
  const made = await fs.mkdir(folder, { recursive: true })
  if (made !== undefined) await syncFolder(dirname(folder), fs)
}

type Handle = Awaited<ReturnType<CopyFs['open']>>

/** The source is opened once and never by name again; no symlink is followed and no pipe waited for. */
async function copyTo(
  temporary: string,
  file: FoundFile,
  fs: CopyFs,
): Promise<Result<Pick<KeptFile, 'size' | 'sha256'>>> {
  const source = await openSource(file, fs)
  if (!source.ok) return source
  try {
    const before = await source.value.stat()
    const wrong = unfit(file.given, before)
    if (wrong !== null) return wrong
    const target = await fs.open(temporary, 'wx', MODE)
    try {
      const written = await pump(source.value, target)
      const after = await source.value.stat()
      if (written.size !== before.size || after.size !== before.size || after.mtimeMs !== before.mtimeMs)
        return refuse(
          'file-changing',
          `${quote(file.given)} changed while it was copied: wait until it is whole.`,
        )
      await target.sync()
      return ok(written)
    } finally {
      await target.close()
    }
  } finally {
    await source.value.close()
  }
}

async function openSource({ path, given }: FoundFile, fs: CopyFs): Promise<Result<Handle>> {
  // Systems without these flags have no such links or pipes either.
  const flags = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0)
  try {
    return ok(await fs.open(path, flags))
  } catch (error) {
    const code = errorCode(error)
    if (code === 'ENOENT') return refuse('file-gone', `${quote(given)} is not there any more.`)
    if (code === 'ELOOP' || code === 'EMLINK')
      return refuse('file-link', `${quote(given)} is a link: name the file itself.`)
    return refuse('file-unread', `${quote(given)} cannot be read: ${plainReason(error)}.`)
  }
}

/** Stops one byte past the largest file that is taken, however long the source has become. */
async function pump(source: Handle, target: Handle): Promise<Pick<KeptFile, 'size' | 'sha256'>> {
  const hash = createHash('sha256')
  const buffer = Buffer.allocUnsafe(CHUNK)
  let size = 0
  while (size <= MOST_FILE_BYTES) {
    const { bytesRead } = await source.read(buffer, 0, Math.min(CHUNK, MOST_FILE_BYTES + 1 - size), null)
    if (bytesRead === 0) break
    const piece = buffer.subarray(0, bytesRead)
    for (let done = 0; done < bytesRead; ) {
      const { bytesWritten } = await target.write(piece, done, bytesRead - done)
      if (bytesWritten <= 0) throw Object.assign(new Error('a write moved no bytes'), { code: 'EIO' })
      done += bytesWritten
    }
    hash.update(piece)
    size += bytesRead
  }
  return { size, sha256: hash.digest('hex') }
}

/** The name is taken by an empty file that only one can make; the copy then takes its place in one step. */
async function giveName(
  folder: string,
  temporary: string,
  given: string,
  fs: CopyFs,
): Promise<string | null> {
  for (let count = 1; count <= MOST_OF_A_NAME; count++) {
    const name = keptName(given, count)
    const path = join(folder, name)
    try {
      await (await fs.open(path, 'wx')).close()
    } catch (error) {
      if (errorCode(error) === 'EEXIST') continue
      throw error
    }
    try {
      await fs.rename(temporary, path)
    } catch (error) {
      await fs.unlink(path).catch(() => undefined)
      throw error
    }
    return name
  }
  return null
}

/** So that the new name survives a power cut; Windows has no such call and keeps names by itself. */
async function syncFolder(folder: string, fs: CopyFs): Promise<void> {
  if (process.platform === 'win32') return
  const handle = await fs.open(folder, 'r')
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}
