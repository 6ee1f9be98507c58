// Reading the command line with Node's own parser, and the help of each command.
import { type ParseArgsConfig, parseArgs } from 'node:util'
import { wrap } from '../core/lib/text.ts'
import { UserError } from '../node/user-error.ts'
import { EXIT, EXIT_WORDS } from './exit.ts'

export interface Command {
  readonly name: string
  readonly usage: string
  readonly summary: string
  /** Said below it on its own page. */
  readonly more?: string
  readonly options: Readonly<Record<string, { readonly type: 'string' | 'boolean'; readonly says: string }>>
  readonly positionals: { readonly least: number; readonly most: number }
  readonly run: (values: Values, positionals: readonly string[]) => Promise<number>
}

export type Values = Readonly<Record<string, string | boolean | undefined>>

export const SHARED = {
  jobs: { type: 'string', says: 'folder that jobs are kept in (default: jobs, here)' },
  json: { type: 'boolean', says: 'print one JSON object for other programs' },
  plain: { type: 'boolean', says: 'plain lines, nothing drawn over: for screen readers and pipes' },
  ascii: { type: 'boolean', says: 'only ASCII signs' },
} as const

/** Of commands that a person answers. */
export const ALOUD = {
  aloud: { type: 'boolean', says: 'read the sheet aloud, with the speech program of the computer' },
} as const

export function readArgs(
  command: Command,
  args: readonly string[],
): { values: Values; positionals: readonly string[] } {
  const options: NonNullable<ParseArgsConfig['options']> = { help: { type: 'boolean' } }
  for (const [name, { type }] of Object.entries(command.options)) options[name] = { type }
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options,
      allowPositionals: true,
      strict: true,
    })
    if (values.help !== true) checkCount(command, positionals.length)
    return { values: values as Values, positionals }
  } catch (error) {
    if (error instanceof UserError) throw error
    const first = error instanceof Error ? (error.message.split('\n')[0] ?? '') : ''
    throw new UserError(first.replace(/\.? To specify.*$/, '.'), EXIT.wrongUse, helpOf(command))
  }
}

function checkCount(command: Command, count: number): void {
  const { least, most } = command.positionals
  if (count >= least && count <= most) return
  throw new UserError(
    `barover ${command.name} is called as: ${command.usage}`,
    EXIT.wrongUse,
    helpOf(command),
  )
}

function helpOf({ name }: Command): string {
  return name === '' ? 'barover --help' : `barover ${name} --help`
}

export function text(values: Values, name: string): string | undefined {
  const value = values[name]
  return typeof value === 'string' ? value : undefined
}

/** Within the screen: no word is broken at its edge. `columns` of the screen. */
export function commandHelp(command: Command, columns: number): string {
  const row = (name: string, says: string) => setIn(`  --${name.padEnd(14)} `, says, columns)
  return [
    ...wrap(command.summary, columns),
    '',
    ...setIn('  ', command.usage, columns, 4),
    ...(command.more === undefined ? [] : ['', ...wrap(command.more, columns)]),
    '',
    ...Object.entries(command.options).flatMap(([name, { type, says }]) =>
      row(`${name}${type === 'string' ? ' ...' : ''}`, says),
    ),
    ...row('help', 'this page'),
  ].join('\n')
}

export function generalHelp(commands: readonly Command[], columns: number): string {
  return [
    ...wrap(
      'Barover: a guided procedure assistant for the piston end of a reciprocating gas compressor.',
      columns,
    ),
    '',
    ...commands.flatMap((c) => [...setIn('  ', c.usage, columns, 4), ...setIn('      ', c.summary, columns)]),
    '',
    'barover COMMAND --help says more. Without a command: a choice of jobs.',
    ...wrap(
      'JOB is a path, an id as barover jobs lists it, or any part of one that no other job has.',
      columns,
    ),
    '',
    'Exit codes:',
    ...EXIT_WORDS.flatMap(([code, words]) => setIn(`  ${String(code).padStart(3)}  `, words, columns)),
    '',
    ...wrap("The maker's manual, site permits, local code and licensed practice come first.", columns),
  ].join('\n')
}

/** Text behind a lead, its later lines set in below it. */
function setIn(lead: string, text: string, columns: number, hang = 0): string[] {
  const room = Math.max(20, columns - lead.length)
  return wrap(text, room, hang).map((line, i) => `${i === 0 ? lead : ' '.repeat(lead.length)}${line}`)
}
