// Every YAML file that is shipped, with its path from the root of the repository.
import { readdirSync, readFileSync } from 'node:fs'
import { join, relative } from 'node:path'

const ROOT = join(import.meta.dirname, '..', '..')

export interface Shipped {
  readonly path: string
  readonly text: string
}

export const SHIPPED: readonly Shipped[] = ['procedures', 'examples'].flatMap((folder) =>
  readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile() && /\.ya?ml$/.test(one.name))
    .map((one) => join(one.parentPath, one.name))
    .sort()
    .map((path) => ({ path: relative(ROOT, path), text: readFileSync(path, 'utf8') })),
)
