// What can go wrong with a journal, as one error class. The command line turns `code` into an exit code and a way out.

export type JournalProblemCode = 'exists' | 'missing' | 'locked' | 'fault' | 'newer' | 'disk' | 'dead'

/**
 * A journal could not be made, opened or written. The message is one sentence for the person.
 *
 * - `exists` there is already a file of that name; `missing` there is none
 * - `locked` another program may be writing to it
 * - `fault` the content is not what was written, `line` (from 1) says where if that is known
 * - `newer` kept for callers: the first entry names a format this version does not know
 * - `disk` the operating system refused; `dead` an earlier failure closed this journal for writing
 */
export class JournalProblem extends Error {
  readonly code: JournalProblemCode
  readonly line?: number

  constructor(code: JournalProblemCode, sentence: string, more: { line?: number; cause?: unknown } = {}) {
    super(sentence, more.cause === undefined ? undefined : { cause: more.cause })
    this.name = 'JournalProblem'
    this.code = code
    if (more.line !== undefined) this.line = more.line
  }
}

const PLAIN_WORDS: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EACCES: 'permission was denied',
  EPERM: 'permission was denied',
  EROFS: 'the disk is read-only',
  EIO: 'the disk reported an error',
  ENOENT: 'the file or its folder is not there',
  ENOTDIR: 'part of the path is not a folder',
  EISDIR: 'it is a folder, not a file',
}

/** The operating system's error code (`ENOSPC`), or an empty text for anything else. */
export function errorCode(error: unknown): string {
  if (typeof error !== 'object' || error === null || !('code' in error)) return ''
  return typeof error.code === 'string' ? error.code : ''
}

/** The reason of a failed file call in plain words, with the system's own code for whoever looks it up. */
export function plainReason(error: unknown): string {
  const code = errorCode(error)
  const words = PLAIN_WORDS[code]
  if (words !== undefined) return `${words} (${code})`
  if (code !== '') return `the system answered ${code}`
  return error instanceof Error ? error.message : String(error)
}

/** Passes a JournalProblem on as it is and turns any failed file call into a `disk` problem. Bugs stay bugs. */
export function asDiskProblem(error: unknown, doing: string): unknown {
  const code = errorCode(error)
  // ERR_... are Node's codes for a wrong call, so for a bug of ours.
  if (error instanceof JournalProblem || code === '' || code.startsWith('ERR_')) return error
  return new JournalProblem('disk', `${doing} failed: ${plainReason(error)}.`, { cause: error })
}
