// How this program was called, so that a command line it prints can be typed as it stands, from where one stands.
import { basename, delimiter, dirname, relative } from 'node:path'
import process from 'node:process'

/** `barover` where that is found, and otherwise the way to it: `node dist/barover.mjs` from a clone. */
export function calledAs(): string {
  const [, script = 'barover'] = process.argv
  const folders = (process.env.PATH ?? '').split(delimiter)
  const isFound = basename(script) === 'barover' && folders.includes(dirname(script))
  return isFound ? 'barover' : `node ${asTyped(script)}`
}

/** As it can be typed: in quotes where it has to be, from here where that is shorter. */
export function asTyped(path: string): string {
  const near = relative(process.cwd(), path)
  const short = near.length < path.length ? near : path
  return /[^\w./-]/.test(short) ? JSON.stringify(short) : short
}
