// One line of the journal: how it is built and how it proves itself. Pure: it hashes text, it touches no file.
import { createHash } from 'node:crypto'
import { ok, type Result, refuse } from '../../core/lib/result.ts'

export interface Entry {
  readonly type: string
  readonly [key: string]: unknown
}

export interface Place {
  /** Counts from 0, so line n of the file holds seq n - 1. */
  readonly seq: number
  /** Hash of the line before, or GENESIS. */
  readonly prev: string
  /** ISO time text with its offset, for example 2026-03-02T06:52:10-06:00. */
  readonly at: string
}

export type StoredEntry = Entry & Place & { readonly hash: string }

/** Stands for "no line before" in the first line: 64 zeros. */
export const GENESIS = '0'.repeat(64)

const OWN_KEYS = ['seq', 'prev', 'at', 'hash'] as const
const HASH_TEXT = /^[0-9a-f]{64}$/
const HASH_TAIL = /,"hash":"([0-9a-f]{64})"\}$/
const HASH_TAIL_LENGTH = ',"hash":""}'.length + 64
const TIME_WITH_OFFSET = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:\d\d)$/

/** True for 64 lower-case hexadecimal digits. */
export function isHashText(text: unknown): text is string {
  return typeof text === 'string' && HASH_TEXT.test(text)
}

/** SHA-256 (FIPS 180-4) of a line's exact bytes without its newline, as 64 lower-case hexadecimal digits. */
export function lineHash(line: string | Uint8Array): string {
  const hash = createHash('sha256')
  return (typeof line === 'string' ? hash.update(line, 'utf8') : hash.update(line)).digest('hex')
}

/**
 * The text of one journal line, without a newline.
 * @throws Error (a bug in the caller) for a key the journal owns, a value JSON cannot carry back unchanged
 *   (non-finite number, undefined, bigint, class instance), a bad seq or prev, or a time without an offset.
 */
export function buildLine(entry: Entry, place: Place): string {
  const { seq, prev, at } = place
  if (!Number.isSafeInteger(seq) || seq < 0) throw new Error(`journal seq must count from 0, not ${seq}`)
  if (!isHashText(prev)) throw new Error('journal prev must be the 64 hex digits of a line hash')
  if (!TIME_WITH_OFFSET.test(at)) throw new Error(`journal time must be ISO with an offset, not "${at}"`)
  if (typeof entry.type !== 'string' || entry.type === '') throw new Error('a journal entry must have a type')
  for (const key of OWN_KEYS) {
    if (Object.hasOwn(entry, key)) throw new Error(`a journal entry must not have its own "${key}"`)
  }
  assertCarriesBack(entry, 'entry')
  const body = JSON.stringify({ seq, prev, at, ...entry })
  return `${body.slice(0, -1)},"hash":"${lineHash(body)}"}`
}

/**
 * Reads one line (without its newline) and checks what it can prove alone: its own hash on the exact bytes, and
 * the shape of seq, prev, at and type. Its place is for `examine` to check. Refusals name the line as `called`.
 */
export function readLine(line: string, called = 'This line'): Result<StoredEntry> {
  const tail = HASH_TAIL.exec(line)
  if (tail === null) {
    return parse(line) === undefined
      ? refuse('not-json', `${called} is not a complete JSON line.`)
      : refuse('no-hash', `${called} does not end in its own hash.`)
  }
  const body = `${line.slice(0, -HASH_TAIL_LENGTH)}}`
  if (lineHash(body) !== tail[1]) {
    return refuse('own-hash', `${called} was changed: its content does not match its own hash.`)
  }
  const value = parse(line)
  if (value === undefined) return refuse('not-json', `${called} is not JSON, though its own hash matches.`)
  // Doubled keys, odd spacing and numbers too big to hold would read differently elsewhere, or read as Infinity.
  if (JSON.stringify(value) !== line)
    return refuse('not-ours', `${called} is not in the form this program writes.`)
  return isStored(value)
    ? ok(value)
    : refuse('bad-shape', `${called} lacks a proper seq, prev, at or type, though its own hash matches.`)
}

function isStored(value: unknown): value is StoredEntry {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false
  const { seq, prev, at, type } = value as Record<string, unknown>
  const counts = Number.isSafeInteger(seq) && (seq as number) >= 0
  return counts && isHashText(prev) && typeof at === 'string' && typeof type === 'string'
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

/** JSON turns NaN into null and drops undefined without a word; either would make replay differ from live. */
function assertCarriesBack(value: unknown, path: string): void {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`journal ${path} is ${value}, which no record may hold`)
    return
  }
  if (Array.isArray(value)) {
    // Array.from also visits holes, which JSON would write as null.
    for (const [index, item] of Array.from(value).entries()) assertCarriesBack(item, `${path}[${index}]`)
    return
  }
  if (typeof value !== 'object') throw new Error(`journal ${path} is ${typeof value}, which JSON cannot hold`)
  const prototype = Object.getPrototypeOf(value)
  if (prototype !== Object.prototype && prototype !== null)
    throw new Error(`journal ${path} is not plain data`)
  for (const [key, item] of Object.entries(value)) assertCarriesBack(item, `${path}.${key}`)
}
