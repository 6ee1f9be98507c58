// Where the program's own procedures and examples lie, from a clone or an installed package.
import { existsSync, readdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { UserError } from './user-error.ts'

/** The folder that holds `procedures` and `examples`: the nearest one above this file. */
export function homeFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url))
  while (!existsSync(join(folder, 'procedures')) && dirname(folder) !== folder) folder = dirname(folder)
  return folder
}

/** A procedure by path, or by the name of a shipped one. */
export function findProcedure(wanted: string): string {
  if (existsSync(wanted)) return wanted
  const folder = join(homeFolder(), 'procedures')
  const shipped = existsSync(folder) ? readdirSync(folder).filter((n) => n.endsWith('.yaml')) : []
  const name = shipped.find((n) => n === wanted || n === `${wanted.replaceAll('_', '-')}.yaml`)
  if (name !== undefined) return join(folder, name)
  const names = shipped.map((n) => n.replace(/\.yaml$/, '')).join(', ')
  throw new UserError(
    `There is no procedure "${wanted}".`,
    4,
    `Shipped with Barover: ${names}. Or give the path of a file.`,
  )
}
