// Barover as built, in a real pseudo-terminal, driven by keys and watched on a screen.
import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { IPty } from '@lydell/node-pty'
import { afterEach } from 'vitest'
import { GATE_LINES, ROOT, withPins } from './example.ts'
import { deviceOf, heldPty } from './held-pty.ts'
import { Screen, type Size } from './screen.ts'

/** The bundle under test; another build than the one in dist can be named. */
export const BUNDLE = process.env.BAROVER_BUNDLE ?? join(ROOT, 'dist', 'barover.mjs')

/** The environment of a plain terminal: a set CI keeps the renderer from drawing. */
export function plainEnv(more: Readonly<Record<string, string | undefined>> = {}): Record<string, string> {
  const env: Record<string, string | undefined> = { ...process.env, TERM: 'xterm-256color', TZ: 'UTC' }
  // No proof of an earlier run, and nothing left behind, unless a test brings a folder of its own.
  env.XDG_CACHE_HOME = '/dev/null/none'
  for (const name of [
    'CI',
    'CONTINUOUS_INTEGRATION',
    'NO_COLOR',
    'FORCE_COLOR',
    'LC_ALL',
    'LC_CTYPE',
    'LANG',
  ])
    env[name] = undefined
  return Object.fromEntries(
    Object.entries({ ...env, LANG: 'C.UTF-8', ...more }).flatMap(([k, v]) =>
      v === undefined ? [] : [[k, v]],
    ),
  )
}

export interface Started {
  readonly size?: Size
  readonly env?: Readonly<Record<string, string | undefined>>
}

export interface Exit {
  readonly code: number
  readonly signal: number
}

/** Without hashes, whose digits may come to a PIN by chance. */
export function withoutHashes(text: string): string {
  return text.replace(/[0-9a-f]{8,}/g, '')
}

export class Terminal extends Screen {
  readonly pid: number
  /** Null while it runs. */
  exit: Exit | null = null
  readonly #pty: IPty
  /** What was keyed last. */
  #last = ''

  constructor(args: readonly string[], { size = { cols: 80, rows: 24 }, env = {} }: Started = {}) {
    super(size)
    if (!existsSync(BUNDLE)) throw new Error('there is no bundle to test: npm run build first')
    this.#pty = heldPty(process.execPath, [BUNDLE, ...args], { ...size, cwd: tmpdir(), env: plainEnv(env) })
    this.pid = this.#pty.pid
    this.#pty.onData((data) => this.write(data))
    this.#pty.onExit(({ exitCode, signal }) => {
      this.exit = { code: exitCode, signal: signal ?? 0 }
    })
  }

  send(keys: string): void {
    this.#pty.write(keys)
  }

  /**
   * Keys a line as a person does: what came with the line before is turned over to its end first, and Enter is a write of its own, once
   * the text is in sight.
   */
  async say(line: string): Promise<void> {
    await this.until('an empty line to key on', () => this.input === '')
    const isUnheard = this.#last !== '' && this.flow.includes(`Not taken: ${this.#last}.`)
    await this.turnOver()
    // It was keyed before the answer to the line before it was up.
    if (isUnheard) await this.#key(this.#last)
    await this.#key(line)
  }

  /** All that stands before the question is turned over. */
  async turnOver(): Promise<void> {
    while (/Enter turns over|Enter: over,/.test(this.flow)) {
      const before = this.text
      this.send('\r')
      await this.until('the next side', () => this.text !== before)
    }
  }

  async #key(line: string): Promise<void> {
    this.#last = line
    await this.until('an empty line to key on', () => this.input === '')
    if (line !== '') {
      this.send(line)
      await this.until(`"${line}" on the line`, () => this.#shows(line))
    }
    const isPin = this.input === '(not shown)'
    this.send('\r')
    await this.until('the line taken', () => line === '' || !this.#shows(line))
    if (isPin) await this.until('the PIN taken', () => this.input === '' && !/PIN of \w+\./.test(this.text))
  }

  /** A long line shows its end only; a PIN shows only that something is keyed. */
  #shows(line: string): boolean {
    const { input } = this
    return (
      input === line ||
      (input === '(not shown)' && /^\d{4,12}$/.test(line)) ||
      (input !== null && input.length > 25 && line.endsWith(input.trimStart()))
    )
  }

  async sayAll(lines: readonly string[]): Promise<void> {
    for (const line of lines) await this.say(line)
  }

  /** Keys without Enter, until the line ends as it should; for an empty `shown`, until it is empty. */
  async key(text: string, shown: string): Promise<void> {
    this.send(text)
    await this.until(`"${shown}" on the line`, () =>
      shown === '' ? this.input === '' : this.input?.endsWith(shown) === true,
    )
  }

  /** Each line as it is said, and what has to be seen then. */
  async dialogue(pairs: readonly (readonly [line: string, seen: string])[]): Promise<void> {
    for (const [line, seen] of pairs) {
      await this.say(line)
      await this.see(seen)
    }
  }

  override resize(size: Size): void {
    super.resize(size)
    this.#pty.resize(size.cols, size.rows)
  }

  /** Whether the terminal shows nothing of what is keyed, as its own settings say. */
  get isSilent(): boolean {
    return / -echo /.test(
      ` ${execFileSync('stty', ['-F', deviceOf(this.#pty), '-a'], { encoding: 'utf8' })} `,
    )
  }

  kill(signal: string): void {
    this.#pty.kill(signal)
  }

  async ended(withinMs?: number): Promise<Exit> {
    await this.until('the program end', () => this.exit !== null, withinMs)
    return this.exit ?? { code: -1, signal: -1 }
  }
}

/** Terminals and folders of one test file; what a failed test leaves running or lying about is cleared after each. */
export function terminals() {
  const open: Terminal[] = []
  const folders: string[] = []
  afterEach(() => {
    for (const one of open.splice(0)) if (one.exit === null) one.kill('SIGKILL')
    for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true })
  })
  return {
    folder: (): string => {
      const folder = mkdtempSync(join(tmpdir(), 'barover-'))
      folders.push(folder)
      return folder
    },
    start: (args: readonly string[], started?: Started): Terminal => {
      const one = new Terminal(args, started)
      open.push(one)
      return one
    },
  }
}

export const EXAMPLE_RUN = [
  'run',
  'bore-inspection',
  '--machine',
  join(ROOT, 'examples', 'tc-401', 'machine.yaml'),
  '--clock',
  '2026-03-14 06:20+00:00',
]

/** From the first prompt into the hold point, and from there to the first reading of the bore. */
export const TO_GATE = ['RO', '4071', 'TC-401-1', 'done']
export const FROM_GATE = ['1', '1', '71.2', '70.4', '1', '9.5000']
export const TO_BORE = [...TO_GATE, ...withPins(GATE_LINES), ...FROM_GATE]

/** The one log in a folder of jobs. */
export function logPath(jobs: string): string {
  const folder = join(jobs, 'example')
  const logs = readdirSync(folder).filter((name) => name.endsWith('.jsonl'))
  if (logs.length !== 1) throw new Error(`expected one log in ${folder}, found ${logs.length}`)
  return join(folder, logs[0] ?? '')
}

export interface Logged {
  readonly seq: number
  readonly type: string
  readonly [key: string]: unknown
}

/** The entries on disk, as parsed lines. */
export function logged(jobs: string): Logged[] {
  const lines = readFileSync(logPath(jobs), 'utf8')
    .split('\n')
    .filter((line) => line !== '')
  return lines.map((line) => JSON.parse(line) as Logged)
}

/** Starts the example job in a folder of its own and keys the lines, each once it is asked for. */
export function jobStarter(terminal: ReturnType<typeof terminals>) {
  return async (lines: readonly string[], started?: Started): Promise<{ t: Terminal; jobs: string }> => {
    const jobs = terminal.folder()
    const t = terminal.start([...EXAMPLE_RUN, '--jobs', jobs], started)
    await t.see('Your initials')
    await t.sayAll(lines)
    return { t, jobs }
  }
}
