// The files that a machine record names.
import type { Path } from '../core/definition/lint-common.ts'
import { nearest, quote } from '../core/lib/wording.ts'
import type { GoodJob, GoodOf } from './check.ts'
import type { Diagnostic } from './diagnostic.ts'
import type { Folder } from './folder.ts'
import { locateFinding } from './locate.ts'

export type Uses = Pick<GoodJob, 'machine' | 'instruments' | 'crew' | 'limitBooks'>

/** The files a machine record names, or what is wrong with their names; no job while one of them does not hold. */
export function usesOf(folder: Folder, machine: GoodOf<'machine'>): { job?: Uses; problems: Diagnostic[] } {
  const { uses } = machine.value
  const problems: Diagnostic[] = []
  const get = <K extends 'instruments' | 'crew' | 'limit_book'>(kind: K, name: string, path: Path) => {
    const wanted = folder.resolve(machine.yaml.file, name)
    const result = folder.at(wanted)?.result
    const say = (code: string, message: string, hint?: string) => {
      const one = hint === undefined ? { path, code, message } : { path, code, message, hint }
      problems.push(locateFinding(machine.yaml, one))
    }
    if (result === undefined) {
      const near = nearest(baseName(name), folder.beside(wanted).map(baseName))
      const hint = near === undefined ? 'files are looked for beside this one' : `did you mean ${near}?`
      say('missing-file', `${quote(name)} is not there, or is no text.`, hint)
    } else if (result.kind !== undefined && result.kind !== kind) {
      say(
        'other-kind',
        `${quote(name)} is a file of the kind ${quote(result.kind)}, and ${quote(kind)} is needed.`,
      )
    }
    return result?.ok && result.kind === kind ? (result as GoodOf<K>) : undefined
  }
  const instruments = get('instruments', uses.instruments, ['uses', 'instruments'])
  const crew = get('crew', uses.crew, ['uses', 'crew'])
  const limitBooks = uses.limit_books.map((name, n) => get('limit_book', name, ['uses', 'limit_books', n]))
  const books = limitBooks.filter((one) => one !== undefined)
  const isWhole = books.length === limitBooks.length
  if (instruments === undefined || crew === undefined || !isWhole) return { problems }
  return { job: { machine, instruments, crew, limitBooks: books }, problems }
}

export function baseName(path: string): string {
  return path.split(/[\\/]/).pop() ?? path
}
