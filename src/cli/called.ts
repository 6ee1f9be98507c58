// How this program was called, so that a command line it prints can be typed as it stands, from where one stands.
import { basename, delimiter, dirname, join, relative } from 'node:path'
import process from 'node:process'
import { homeFolder } from '../node/home.ts'

/** `barover` where that is found, else as it was started: `npm start --` in a clone, or the way to the program itself. */
export function calledAs(): string {
  const [, script = 'barover'] = process.argv
  const folders = (process.env.PATH ?? '').split(delimiter)
  if (basename(script) === 'barover' && folders.includes(dirname(script))) return 'barover'
  return isNpmStart() ? 'npm start --' : `node ${asTyped(script)}`
}

/** npm says which of its scripts runs, to all that is started by it as well: only that of this very clone is meant. */
function isNpmStart(): boolean {
  const { npm_lifecycle_event: event, npm_package_json: file } = process.env
  return event === 'start' && file === join(homeFolder(), 'package.json')
}

const COMMAND =
  /\bbarover (?=(?:run|practice|resume|jobs|show|verify|kit|briefing|check|review|safe|doubt|take-in|compute|pin|--help|--version)(?![\w-]))/g

/** A hint that names a command of Barover, as it can be typed here. */
export function asCalled(hint: string): string {
  return hint.replace(COMMAND, () => `${calledAs()} `)
}

/** As it can be typed: in quotes where it has to be, from here where that is shorter. */
export function asTyped(path: string): string {
  const near = relative(process.cwd(), path)
  const short = near.length < path.length ? near : path
  return /[^\w./-]/.test(short) ? JSON.stringify(short) : short
}
