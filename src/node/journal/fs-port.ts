// The few synchronous file calls the journal needs, as a port so that tests can make a disk fail.
// Synchronous on purpose: nothing else of ours can run between the size check, the write and the sync.
import * as fs from 'node:fs'
import { dirname } from 'node:path'

export interface FileFacts {
  /** Length in bytes. */
  readonly size: number
  readonly dev: number
  readonly ino: number
  isFile(): boolean
}

export interface JournalFs {
  openSync(path: string, flags: string | number): number
  closeSync(fd: number): void
  readFileSync(pathOrFd: string | number): Buffer
  writeSync(fd: number, data: Uint8Array, offset: number, length: number): number
  fsyncSync(fd: number): void
  fdatasyncSync(fd: number): void
  ftruncateSync(fd: number, length: number): void
  fstatSync(fd: number): FileFacts
  statSync(path: string): FileFacts
  linkSync(existing: string, created: string): void
  renameSync(from: string, to: string): void
  unlinkSync(path: string): void
  realpathSync(path: string): string
}

export const nodeFs: JournalFs = {
  openSync: (path, flags) => fs.openSync(path, flags),
  closeSync: (fd) => fs.closeSync(fd),
  readFileSync: (pathOrFd) => fs.readFileSync(pathOrFd),
  writeSync: (fd, data, offset, length) => fs.writeSync(fd, data, offset, length),
  fsyncSync: (fd) => fs.fsyncSync(fd),
  fdatasyncSync: (fd) => fs.fdatasyncSync(fd),
  ftruncateSync: (fd, length) => fs.ftruncateSync(fd, length),
  fstatSync: (fd) => fs.fstatSync(fd),
  statSync: (path) => fs.statSync(path),
  linkSync: (existing, created) => fs.linkSync(existing, created),
  renameSync: (from, to) => fs.renameSync(from, to),
  unlinkSync: (path) => fs.unlinkSync(path),
  realpathSync: (path) => fs.realpathSync(path),
}

/**
 * Writes all of `data`, going on after short writes. `onProgress` hears the bytes written so far.
 * @throws what the file call throws, and an Error when a write moves nothing (it would never end).
 */
export function writeAll(
  port: JournalFs,
  fd: number,
  data: Uint8Array,
  onProgress?: (written: number) => void,
): void {
  let done = 0
  while (done < data.length) {
    const moved = port.writeSync(fd, data, done, data.length - done)
    if (moved <= 0) throw Object.assign(new Error('a write moved no bytes'), { code: 'EIO' })
    done += moved
    onProgress?.(done)
  }
}

/**
 * Makes a new name in the folder of `path` survive a power cut (fsync(2), Linux manual: syncing a file does not
 * sync the folder entry that names it).
 */
export function syncFolderOf(port: JournalFs, path: string): void {
  // Windows cannot open a folder for this; its file system journals names by itself.
  if (process.platform === 'win32') return
  const fd = port.openSync(dirname(path), 'r')
  try {
    port.fsyncSync(fd)
  } finally {
    port.closeSync(fd)
  }
}
