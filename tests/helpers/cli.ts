// Barover as built, as another program calls it: no terminal, answers from a pipe or a file.
import { spawn } from 'node:child_process'
import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { ROOT } from './example.ts'
import { BUNDLE, plainEnv } from './pty.ts'

export interface Ran {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

export interface Call {
  /** What is piped in; without it nothing is, as from /dev/null. */
  readonly input?: string
  readonly env?: Readonly<Record<string, string | undefined>>
  readonly cwd?: string
  readonly uid?: number
}

export function barover(args: readonly string[], { input, env, cwd, uid }: Call = {}): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [BUNDLE, ...args], {
      cwd: cwd ?? tmpdir(),
      env: plainEnv(env),
      stdio: [input === undefined ? 'ignore' : 'pipe', 'pipe', 'pipe'],
      ...(uid === undefined ? {} : { uid, gid: uid }),
    })
    let out = ''
    let err = ''
    child.stdout?.setEncoding('utf8').on('data', (text: string) => {
      out += text
    })
    child.stderr?.setEncoding('utf8').on('data', (text: string) => {
      err += text
    })
    child.on('error', reject)
    child.on('close', (code) => resolve({ code, out, err }))
    child.stdin?.end(input)
  })
}

const EXAMPLE = join(ROOT, 'examples', 'tc-401')
export const MACHINE = join(EXAMPLE, 'machine.yaml')
export const ANSWERS = join(EXAMPLE, 'answers.txt')

/** `run` of the shipped procedure on the invented machine. */
export const runArgs = (jobs: string, ...more: string[]): string[] => [
  'run',
  'bore-inspection',
  '--machine',
  MACHINE,
  '--jobs',
  jobs,
  ...more,
]

/** A copy of the example machine, with all it uses, in `folder`; its record changed. */
export function changedMachine(folder: string, change: (record: string) => string): string {
  const copy = join(folder, 'examples', 'tc-401')
  mkdirSync(copy, { recursive: true })
  cpSync(EXAMPLE, copy, { recursive: true })
  cpSync(join(ROOT, 'procedures'), join(folder, 'procedures'), { recursive: true })
  const path = join(copy, 'machine.yaml')
  const text = readFileSync(path, 'utf8')
  const changed = change(text)
  if (changed === text) throw new Error('the machine record no longer says what was to be changed')
  writeFileSync(path, changed)
  return path
}
