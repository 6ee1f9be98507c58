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

/** A procedure by path, or by the name of a shipped one. @throws UserError (exit 4) where there is neither. */
export function findProcedure(wanted: string): string {
  const found = existsSync(wanted) ? wanted : shippedProcedure(wanted)
  if (found !== null) return found
  const names = shipped().map((n) => n.replace(/\.yaml$/, ''))
  throw new UserError(
    `There is no procedure "${wanted}".`,
    4,
    `Shipped with Barover: ${names.join(', ')}. Or give the path of a file.`,
  )
}

/** The path of a shipped procedure by its name, with or without its ending, or null. */
export function shippedProcedure(wanted: string): string | null {
  const name = shipped().find((n) => n === wanted || n === `${wanted.replaceAll('_', '-')}.yaml`)
  return name === undefined ? null : join(homeFolder(), 'procedures', name)
}

/** The machine record of an example by the name of its folder, or null. */
export function shippedMachine(wanted: string): string | null {
  const path = join(homeFolder(), 'examples', wanted, 'machine.yaml')
  return /^[a-z0-9-]+$/.test(wanted) && existsSync(path) ? path : null
}

function shipped(): string[] {
  const folder = join(homeFolder(), 'procedures')
  return existsSync(folder) ? readdirSync(folder).filter((n) => n.endsWith('.yaml')) : []
}
