// Reads the files of a job from disk: the procedure, the machine record, and what the record names beside itself.
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import { parse } from 'yaml'
import type { FileCopy } from '../core/job/entries.ts'
import { errorCode } from './journal/problem.ts'
import { UserError } from './user-error.ts'

const MOST_BYTES = 1_048_576

/** @throws UserError (exit 4) when a file is missing, unreadable, not UTF-8 or larger than 1 MiB. */
export function readTextFile(path: string): string {
  let bytes: Buffer
  try {
    if (statSync(path).size > MOST_BYTES)
      throw new UserError(`${path} is larger than 1 MiB, so it is no file of ours.`, 4)
    bytes = readFileSync(path)
  } catch (error) {
    if (error instanceof UserError) throw error
    const why =
      { ENOENT: 'there is no such file', EACCES: 'it may not be read', EISDIR: 'it is a folder' }[
        errorCode(error)
      ] ?? 'it cannot be read'
    throw new UserError(`${path}: ${why}.`, 4)
  }
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    throw new UserError(`${path} is not text in UTF-8.`, 4)
  }
}

export interface ReadFiles {
  readonly files: readonly FileCopy[]
  /** Where each came from, by name in the job, to point at when something is wrong in it. */
  readonly paths: ReadonlyMap<string, string>
}

/** The files a job is opened with. What the machine record `uses` is looked up beside the record. `scenarioPath`: of a practice session. */
export function readJobFiles(procedurePath: string, machinePath: string, scenarioPath?: string): ReadFiles {
  const paths = new Map<string, string>()
  const copy = (role: FileCopy['role'], path: string): FileCopy => {
    const text = readTextFile(path)
    const name = uniqueName(basename(path), paths)
    paths.set(name, path)
    return { role, name, sha256: createHash('sha256').update(text, 'utf8').digest('hex'), text }
  }
  const files = [copy('procedure', procedurePath), copy('machine', machinePath)]
  const uses = usesOf(files[1]?.text ?? '')
  const beside = (name: string) => resolve(dirname(machinePath), name)
  if (uses.instruments !== null) files.push(copy('instruments', beside(uses.instruments)))
  if (uses.crew !== null) files.push(copy('crew', beside(uses.crew)))
  for (const book of uses.limitBooks) files.push(copy('limit-book', beside(book)))
  for (const part of partFiles(procedurePath, files[0]?.text ?? '')) files.push(copy('part', part))
  if (scenarioPath !== undefined) files.push(copy('scenario', scenarioPath))
  return { files, paths }
}

/** A name that none of those taken has. */
export function uniqueName(name: string, taken: ReadonlyMap<string, string>): string {
  let unique = name
  for (let n = 2; taken.has(unique); n++) unique = `${n}-${name}`
  return unique
}

/** A first, forgiving look; the checker that follows says what is wrong with the file. */
function loosely(text: string): Record<string, unknown> {
  try {
    const value: unknown = parse(text, { maxAliasCount: 100 })
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {}
  } catch {
    return {}
  }
}

function usesOf(machineText: string): {
  instruments: string | null
  crew: string | null
  limitBooks: string[]
} {
  const uses = loosely(machineText).uses
  const record = typeof uses === 'object' && uses !== null ? (uses as Record<string, unknown>) : {}
  const text = (value: unknown) => (typeof value === 'string' ? value : null)
  const books = Array.isArray(record.limit_books)
    ? record.limit_books.filter((b) => typeof b === 'string')
    : []
  return { instruments: text(record.instruments), crew: text(record.crew), limitBooks: books }
}

/** Whom to call and the rescue plan, as far as the record can be read at all: a fault elsewhere in it hides neither. */
export function siteWordsIn(machineText: string): { emergency?: string; rescue?: readonly string[] } {
  const { site } = loosely(machineText)
  if (typeof site !== 'object' || site === null) return {}
  const { emergency, rescue } = site as Record<string, unknown>
  return {
    ...(typeof emergency === 'string' && { emergency }),
    ...(Array.isArray(rescue) && { rescue: rescue.filter((line) => typeof line === 'string') }),
  }
}

/** Which machine a record is of, as far as it can be read; null when it names none. */
export function machineIdIn(machineText: string): { machine: string; compressor?: string } | null {
  const { machine, compressor } = loosely(machineText)
  if (typeof machine !== 'string') return null
  return { machine, ...(typeof compressor === 'string' && { compressor }) }
}

/** Procedures beside this one that it uses as parts, and those they use. */
function partFiles(procedurePath: string, text: string): string[] {
  const wanted = usedBy(text)
  if (wanted.length === 0) return []
  const folder = dirname(procedurePath)
  const byId = new Map<string, { path: string; uses: string[] }>()
  for (const name of readdirSync(folder)
    .filter((n) => /\.ya?ml$/.test(n))
    .sort()) {
    const path = join(folder, name)
    const value = readTextFile(path)
    const id = loosely(value).procedure
    if (typeof id === 'string') byId.set(id, { path, uses: usedBy(value) })
  }
  const found = new Set<string>()
  const visit = (ids: readonly string[]): void => {
    for (const id of ids) {
      const part = byId.get(id)
      if (part === undefined || found.has(part.path)) continue
      found.add(part.path)
      visit(part.uses)
    }
  }
  visit(wanted)
  return [...found]
}

function usedBy(text: string): string[] {
  const steps = loosely(text).steps
  if (!Array.isArray(steps)) return []
  return steps.flatMap((s) =>
    typeof s === 'object' && s !== null && typeof s.use === 'string' ? [s.use] : [],
  )
}
