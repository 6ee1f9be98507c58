// Looks for files that somebody names: by path, as the newest in a folder, or by the beginning of a path. Reads names and sizes
// only. Everything that is no plain file with something in it is refused in one sentence.
import { lstat, readdir } from 'node:fs/promises'
import { homedir } from 'node:os'
import { basename, dirname, join, resolve } from 'node:path'
import type { Completion, FilesPort } from '../app/ports.ts'
import { givenName, MOST_FILE_BYTES, sizeText } from '../core/job/attachment.ts'
import { ok, type Refusal, type Result, refuse } from '../core/lib/result.ts'
import { clean } from '../core/lib/text.ts'
import { quote } from '../core/lib/wording.ts'
import type { FoundFile } from '../core/talk/ask-file.ts'
import { errorCode, plainReason } from './journal/problem.ts'

/** What a file must be told of, to be fit. */
interface Facts {
  readonly size: number
  readonly mtimeMs: number
  isFile(): boolean
  isDirectory(): boolean
  isSymbolicLink(): boolean
}

/** More names than one line holds help nobody. */
const MOST_FITS = 6

export function fileFinder(): Pick<FilesPort, 'find' | 'newest' | 'complete'> {
  let folder: string | null = null
  return {
    find: async (path) => {
      const found = await find(path)
      folder = found.folder ?? folder
      return found.result
    },
    newest: async () =>
      folder === null
        ? refuse('no-folder', 'No folder was named yet: key the path of a file, or of the folder it is in.')
        : newestIn(folder),
    complete,
  }
}

/** Why a thing of this name is not taken, or null. */
export function unfit(given: string, facts: Facts): { readonly ok: false; readonly error: Refusal } | null {
  const told = quote(given)
  if (facts.isSymbolicLink()) return refuse('file-link', `${told} is a link: name the file itself.`)
  if (facts.isDirectory())
    return refuse('file-folder', `${told} is a folder: name a file in it, or key newest for its newest.`)
  if (!facts.isFile()) return refuse('file-kind', `${told} is a device or a pipe, not a file.`)
  if (facts.size === 0) return refuse('file-empty', `${told} is empty: there is nothing to attach.`)
  if (facts.size > MOST_FILE_BYTES)
    return refuse(
      'file-large',
      `${told} is ${sizeText(facts.size)}; Barover takes up to ${sizeText(MOST_FILE_BYTES)}: make it smaller.`,
    )
  return null
}

/** As it was keyed; or without the quotes and the backslashes that a terminal sets around a path dropped onto it. */
function meant(typed: string): string[] {
  const text = typed.trim()
  const quoted = /^(['"])(.+)\1$/.exec(text)?.[2]
  const bare = text.replace(/\\([ '"()&])/g, '$1')
  return [...new Set([text, ...(quoted === undefined ? [] : [quoted]), bare])].map(atHome)
}

function atHome(path: string): string {
  return /^~(?=[/\\]|$)/.test(path) ? homedir() + path.slice(1) : path
}

async function find(
  typed: string,
): Promise<{ readonly result: Result<FoundFile>; readonly folder: string | null }> {
  let missing: unknown = null
  for (const path of meant(typed)) {
    try {
      const facts = await lstat(path)
      const wrong = unfit(nameOf(path), facts)
      const folder = facts.isDirectory() ? resolve(path) : dirname(resolve(path))
      return { result: wrong ?? ok(foundAt(path, facts)), folder }
    } catch (error) {
      missing ??= error
    }
  }
  const told = quote(typed)
  const isGone = ['ENOENT', 'ENOTDIR', 'ERR_INVALID_ARG_VALUE'].includes(errorCode(missing))
  const say = isGone ? `There is no file ${told}.` : `${told} cannot be looked at: ${plainReason(missing)}.`
  return { result: refuse(isGone ? 'no-file' : 'file-unread', say), folder: null }
}

function nameOf(path: string): string {
  return givenName(basename(resolve(path)))
}

function foundAt(path: string, { size, mtimeMs }: Facts): FoundFile {
  const whole = resolve(path)
  return {
    path: whole,
    given: nameOf(path),
    size,
    // The real time: a job's own clock may be set by hand.
    ageMs: Date.now() - mtimeMs,
    folder: dirname(whole),
  }
}

/** The one written last of what may be attached at all; hidden ones are nobody's photo. */
async function newestIn(folder: string): Promise<Result<FoundFile>> {
  try {
    const names = (await readdir(folder)).filter((name) => !name.startsWith('.'))
    let newest: { readonly path: string; readonly facts: Facts } | null = null
    for (const name of names) {
      const path = join(folder, name)
      const facts = await lstat(path).catch(() => null)
      if (facts === null || unfit(name, facts) !== null) continue
      if (newest === null || facts.mtimeMs > newest.facts.mtimeMs) newest = { path, facts }
    }
    return newest === null
      ? refuse('no-newest', `There is no file in ${clean(folder)} that can be attached.`)
      : ok(foundAt(newest.path, newest.facts))
  } catch (error) {
    return refuse('file-unread', `The folder ${clean(folder)} cannot be read: ${plainReason(error)}.`)
  }
}

/** What can be keyed at all: a name with characters that are not seen cannot. */
const canBeKeyed = (name: string) => clean(name) === name

/** As far as all names that fit agree. A folder gets its stroke, and what is in it is told at once. */
async function complete(typed: string): Promise<Completion> {
  const cut =
    Math.max(typed.lastIndexOf('/'), process.platform === 'win32' ? typed.lastIndexOf('\\') : -1) + 1
  const [before, begun] = [typed.slice(0, cut), typed.slice(cut)]
  const fits = await namesIn(before, begun)
  const [only] = fits
  if (only === undefined) return { text: typed, fits: [] }
  const text = before + agreed(fits)
  if (fits.length > 1 || !only.endsWith('/')) return { text, fits: shown(fits) }
  return { text, fits: shown(await namesIn(text, '')) }
}

async function namesIn(before: string, begun: string): Promise<string[]> {
  try {
    const listed = await readdir(atHome(before === '' ? '.' : before), { withFileTypes: true })
    return listed
      .filter(({ name }) => name.startsWith(begun) && (begun !== '' || !name.startsWith('.')))
      .map((one) => (one.isDirectory() ? `${one.name}/` : one.name))
      .filter(canBeKeyed)
      .sort()
  } catch {
    return []
  }
}

function shown(fits: readonly string[]): string[] {
  const more = fits.length - MOST_FITS
  return more > 0 ? [...fits.slice(0, MOST_FITS), `and ${more} more`] : [...fits]
}

function agreed(names: readonly string[]): string {
  const [first = '', ...rest] = names
  const letters = [...first]
  let count = letters.length
  for (const name of rest) {
    const other = [...name]
    while (count > 0 && letters.slice(0, count).join('') !== other.slice(0, count).join('')) count--
  }
  return letters.slice(0, count).join('')
}
