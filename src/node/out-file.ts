// A file that somebody asked for by name: whole or not at all, and never in the place of another unasked.
import {
  closeSync,
  fsyncSync,
  linkSync,
  lstatSync,
  openSync,
  renameSync,
  statSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs'
import { basename, dirname, join } from 'node:path'
import process from 'node:process'
import { UserError } from './user-error.ts'

const FILE_PROBLEM = 4

export interface OutFile {
  readonly path: string
  readonly bytes: Uint8Array
  /** Somebody said that another of this name may be replaced. */
  readonly replace: boolean
  /** How that is said. */
  readonly replaceHint: string
}

/** Refuses a name that is taken, or cannot be written to, before anything is worked out for it. @throws UserError (exit 4) */
export function checkOutFile({ path, replace, replaceHint }: Omit<OutFile, 'bytes'>): void {
  const there = entryAt(path)
  if (there === 'other') throw new UserError(`${path} is there and is no file.`, FILE_PROBLEM)
  if (there === 'file' && !replace)
    throw new UserError(`${path} is there already and was left as it is.`, FILE_PROBLEM, replaceHint)
  if (!isFolder(dirname(path))) throw new UserError(`There is no folder ${dirname(path)}.`, FILE_PROBLEM)
}

/** A file that is on disk whole and has no name of its own yet. */
export interface Staged {
  /** It takes its name in one move. @throws UserError (exit 4) */
  readonly name: () => void
  /** It is taken away; nothing once it has its name. */
  readonly drop: () => void
}

/** @throws UserError (exit 4) where the name is taken or nothing can be written there. */
export function writeOutFile(out: OutFile): void {
  stageOutFile(out).name()
}

/** The bytes are on disk under another name, for what must not have its own before somebody signed. @throws UserError (exit 4) */
export function stageOutFile(out: OutFile): Staged {
  checkOutFile(out)
  const half = join(dirname(out.path), `.${basename(out.path)}.${process.pid}.part`)
  const orGone = (act: () => void) => {
    try {
      act()
    } catch (error) {
      remove(half)
      if (error instanceof UserError) throw error
      throw new UserError(`${out.path} cannot be written: ${reasonOf(error)}.`, FILE_PROBLEM)
    }
  }
  orGone(() => {
    const fd = openSync(half, 'wx', 0o666)
    try {
      writeFileSync(fd, out.bytes)
      fsyncSync(fd)
    } finally {
      closeSync(fd)
    }
  })
  return {
    name: () => orGone(() => (out.replace ? renameSync(half, out.path) : takeName(half, out))),
    drop: () => remove(half),
  }
}

/** A second name fails where the name is taken, also by a program that took it this very moment; a move would not. */
function takeName(half: string, out: OutFile): void {
  try {
    linkSync(half, out.path)
    remove(half)
  } catch (error) {
    if (codeOf(error) === 'EEXIST')
      throw new UserError(
        `${out.path} is there already and was left as it is.`,
        FILE_PROBLEM,
        out.replaceHint,
      )
    // Sticks and cards have no second names: there it is looked once more, and moved.
    checkOutFile(out)
    renameSync(half, out.path)
  }
}

function entryAt(path: string): 'none' | 'file' | 'other' {
  try {
    return lstatSync(path).isFile() ? 'file' : 'other'
  } catch {
    return 'none'
  }
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory()
  } catch {
    return false
  }
}

function remove(path: string): void {
  try {
    unlinkSync(path)
  } catch {
    // It was never made, or has its name by now.
  }
}

function codeOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error ? String(error.code) : undefined
}

function reasonOf(error: unknown): string {
  const code = codeOf(error)
  if (code === 'ENOSPC' || code === 'EDQUOT') return 'the disk is full'
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') return 'nobody may write there'
  return code ?? (error instanceof Error ? error.message : String(error))
}
