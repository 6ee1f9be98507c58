// Holds the files of a job against its log: each as attached, changed or gone, and what lies with them that the log does not name.
import { createHash } from 'node:crypto'
import { closeSync, constants, fstatSync, lstatSync, openSync, readdirSync, readSync } from 'node:fs'
import { join } from 'node:path'
import type { AttachedFile } from '../core/job/attachment.ts'
import { filesFolderOf, TEMPORARY } from './job-files.ts'
import { errorCode, plainReason } from './journal/problem.ts'

export interface FileCheck {
  readonly seq: number
  readonly name: string
  readonly state: 'as-attached' | 'changed' | 'gone' | 'unread'
  /** One clause in words. */
  readonly what: string
}

export interface AttachedCheck {
  readonly files: readonly FileCheck[]
  /** Names that lie there and are on no record, in words. */
  readonly strays: readonly string[]
}

export function checkAttached(log: string, attached: readonly AttachedFile[]): AttachedCheck {
  const folder = filesFolderOf(log)
  const named = new Set(attached.map((file) => file.name))
  return {
    files: attached.map((file) => ({ seq: file.seq, name: file.name, ...standing(folder, file) })),
    strays: namesIn(folder)
      .filter((name) => !named.has(name))
      .map((name) =>
        name.endsWith(TEMPORARY)
          ? `${name}: a copy that was not finished; not in the log`
          : `${name}: not in the log; a copy never put on record, or laid there by somebody`,
      ),
  }
}

function standing(folder: string, { name, size, sha256 }: AttachedFile): Pick<FileCheck, 'state' | 'what'> {
  const path = join(folder, name)
  try {
    const facts = lstatSync(path)
    if (!facts.isFile()) return { state: 'changed', what: 'CHANGED: something else is in its place' }
    if (facts.size !== size)
      return { state: 'changed', what: `CHANGED: ${facts.size} bytes, attached with ${size}` }
    return hashOf(path) === sha256
      ? { state: 'as-attached', what: 'as attached' }
      : { state: 'changed', what: 'CHANGED: its SHA-256 is not that of the log' }
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes(errorCode(error))) return { state: 'gone', what: 'GONE' }
    return { state: 'unread', what: `CANNOT BE READ: ${plainReason(error)}` }
  }
}

function hashOf(path: string): string {
  const hash = createHash('sha256')
  const buffer = Buffer.allocUnsafe(1 << 20)
  const fd = openSync(path, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0))
  try {
    if (!fstatSync(fd).isFile()) return ''
    for (let n = readSync(fd, buffer); n > 0; n = readSync(fd, buffer)) hash.update(buffer.subarray(0, n))
    return hash.digest('hex')
  } finally {
    closeSync(fd)
  }
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder).sort()
  } catch {
    return []
  }
}
