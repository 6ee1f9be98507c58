// Pieces of a proof that were found sound before, kept by a hash of all they rest on: the program's own bytes, the files and
// the small job itself. A byte that differs makes another name, so nothing old is ever taken for what is there now. It lies
// where the system has caches for one person (XDG Base Directory Specification 0.8, XDG_CACHE_HOME); whoever can write there
// can change the program too, and a folder that others can write to is not used at all.
import { createHash, type Hash } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs'
import { homedir } from 'node:os'
import { isAbsolute, join } from 'node:path'
import process from 'node:process'
import type { Definitions, PlacedStep } from '../core/job/definitions.ts'
import type { FileCopy } from '../core/job/entries.ts'

/** What was counted when a piece was searched. */
export interface KeptPiece {
  readonly states: number
  readonly moves: number
}

export interface KeptProofs {
  /** Null when nothing is known of it. */
  readonly find: (name: string) => KeptPiece | null
  /** A disk that takes nothing is no fault: it is searched again next time. */
  readonly keep: (name: string, piece: KeptPiece) => void
}

const FORMAT = 'barover proof 1'

/** Keeps nothing and knows nothing. */
export const NONE_KEPT: KeptProofs = { find: () => null, keep: () => undefined }

/** `cache`: the folder for caches of whoever runs the program. */
export function keptProofs(cache: string | null = cacheFolder()): KeptProofs {
  if (cache === null) return NONE_KEPT
  const folder = join(cache, 'barover', 'proofs')
  const file = (name: string) => join(folder, `${name}.json`)
  return {
    find: (name) => {
      try {
        return isOwn(folder) ? read(readFileSync(file(name), 'utf8'), name) : null
      } catch {
        return null
      }
    },
    keep: (name, { states, moves }) => {
      try {
        mkdirSync(folder, { recursive: true, mode: 0o700 })
        if (!isOwn(folder)) return
        const half = join(folder, `${name}.${process.pid}.part`)
        writeFileSync(half, `${JSON.stringify({ format: FORMAT, name, states, moves })}\n`, { mode: 0o600 })
        renameSync(half, file(name))
      } catch {
        // Searched again next time.
      }
    },
  }
}

function read(text: string, name: string): KeptPiece | null {
  const value: unknown = JSON.parse(text)
  if (typeof value !== 'object' || value === null) return null
  const { format, name: named, states, moves } = value as Record<string, unknown>
  if (format !== FORMAT || named !== name || !isCount(states) || !isCount(moves)) return null
  return { states, moves }
}

function isCount(value: unknown): value is number {
  return Number.isSafeInteger(value) && (value as number) >= 0
}

/** Nobody else may put anything into it. Where files have no owners, that it is the folder of the person has to do. */
function isOwn(folder: string): boolean {
  const { uid, mode } = statSync(folder)
  return process.getuid === undefined || (uid === process.getuid() && (mode & 0o022) === 0)
}

function cacheFolder(): string | null {
  const named = process.env.XDG_CACHE_HOME
  if (named !== undefined && isAbsolute(named)) return named
  if (process.platform === 'win32') return process.env.LOCALAPPDATA ?? null
  const home = homedir()
  if (!isAbsolute(home)) return null
  return process.platform === 'darwin' ? join(home, 'Library', 'Caches') : join(home, '.cache')
}

/** A hash of the program that is running, all files of it that lie in `folder`; null where there are none. */
export function programHash(folder: string): string | null {
  const names = readdirSync(folder)
    .filter((name) => name.endsWith('.mjs'))
    .sort()
  if (names.length === 0) return null
  const hash = createHash('sha256')
  for (const name of names) add(add(hash, name), readFileSync(join(folder, name)))
  return hash.digest('hex')
}

/**
 * The name of a piece: of the program, of the texts that say what is done and within what, of who and what there is as far as
 * the search looks at it, and of the small job. People and gauges change by the week and stand in the small job as they are
 * looked at there; so of their files only that counts.
 */
export function pieceName(
  program: string,
  files: readonly Pick<FileCopy, 'role' | 'text'>[],
  small: Definitions,
): string {
  const hash = add(add(createHash('sha256'), FORMAT), program)
  const texts = files.filter(({ role }) => role !== 'crew' && role !== 'instruments')
  const each = texts.map(
    ({ role, text }) => `${role} ${createHash('sha256').update(text, 'utf8').digest('hex')}`,
  )
  for (const one of each.sort()) add(hash, one)
  const { steps, values, ruled: _, ...data } = small
  const plainSteps = steps.map(({ inside, rule, figures, ...step }) => [
    step,
    inside.map(idOf),
    rule?.text ?? null,
    figures?.map(({ text }) => text),
  ])
  const plainValues = values.map(({ scope, id, compiled }) => [scope, id, compiled.text])
  add(hash, JSON.stringify([data, plainSteps, plainValues], onlyPlain))
  return hash.digest('hex')
}

/** What JSON would leave out or change without a word is no part of a name. @throws Error */
function onlyPlain(key: string, value: unknown): unknown {
  const isOdd =
    (typeof value === 'number' && !Number.isFinite(value)) ||
    ['function', 'symbol', 'bigint'].includes(typeof value) ||
    value instanceof Map ||
    value instanceof Set
  if (isOdd) throw new Error(`${key} cannot be part of the name of a piece`)
  return value
}

function idOf({ id }: PlacedStep): string {
  return id
}

/** Framed by its length, so that no two lists of pieces come to the same bytes. */
function add(hash: Hash, bytes: string | Buffer): Hash {
  const buffer = typeof bytes === 'string' ? Buffer.from(bytes, 'utf8') : bytes
  return hash.update(`${buffer.length}:`).update(buffer)
}
