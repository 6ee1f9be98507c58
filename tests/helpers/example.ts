// The shipped procedure on the invented machine, for tests of the engine; and short ways to walk it.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { definitionsFrom } from '../../src/authoring/definitions.ts'
import { admit, type Engine } from '../../src/core/job/admit.ts'
import type { Definitions } from '../../src/core/job/definitions.ts'
import { NO_OTHERS, type Others } from '../../src/core/job/elsewhere.ts'
import type { Entry, FileCopy } from '../../src/core/job/entries.ts'
import { opening } from '../../src/core/job/fold.ts'
import type { Input } from '../../src/core/job/input.ts'
import { next, type Prompt } from '../../src/core/job/next.ts'
import { openJob } from '../../src/core/job/open-job.ts'
import type { Practised } from '../../src/core/job/practice.ts'
import { waitAfterMisses } from '../../src/core/job/signature.ts'
import type { State } from '../../src/core/job/state.ts'
import { type Instant, readStamp, stamp } from '../../src/core/lib/instant.ts'
import { followUp } from '../../src/core/talk/ask-register.ts'
import { proven } from '../../src/core/talk/crew-words.ts'
import { hear } from '../../src/core/talk/hear.ts'
import { type PinKeyed, QUIET, type Talk } from '../../src/core/talk/heard.ts'
import { wouldVoidLines } from '../../src/core/talk/would-void.ts'

export const ROOT = join(import.meta.dirname, '..', '..')
export const START = readStamp('2026-03-14T06:20:00.000+00:00') as Instant

export function fileCopies(
  change: Partial<Record<FileCopy['role'], (text: string) => string>> = {},
): FileCopy[] {
  const read = (role: FileCopy['role'], path: string): FileCopy => {
    const text = readFileSync(join(ROOT, path), 'utf8')
    return { role, name: path.split('/').pop() ?? path, sha256: '', text: change[role]?.(text) ?? text }
  }
  return [
    read('procedure', 'procedures/bore-inspection.yaml'),
    read('machine', 'examples/tc-401/machine.yaml'),
    read('instruments', 'examples/tc-401/instruments.yaml'),
    read('crew', 'examples/tc-401/crew.yaml'),
    read('limit-book', 'procedures/limits/handbook-1996.yaml'),
  ]
}

/** The machine record without what was left before: readings of a bore that is new would be doubted beside it. */
export const noOverhauls = (machine: string) => machine.replace(/^overhauls:[\s\S]*?^limits:/m, 'limits:')

export function exampleDefs(change: Parameters<typeof fileCopies>[0] = {}): Definitions {
  const result = definitionsFrom(fileCopies(change))
  if (!result.ok)
    throw new Error(result.diagnostics.map((d) => `${d.file}:${d.line} ${d.message}`).join('\n'))
  return result.defs
}

const FILES = fileCopies()
let read: Definitions | undefined

function unchanged(): Definitions {
  read ??= exampleDefs()
  return read
}

/** The PINs that the example's crew file prints. */
const EXAMPLE_PINS: Readonly<Record<string, string>> = {
  RO: '4071',
  ML: '2596',
  KH: '8314',
  PB: '6053',
  TS: '1749',
}

/** The PIN that tests key for a person: no key is worked out, so that walks stay quick. */
export function pinOf(person: string): string {
  return EXAMPLE_PINS[person] ?? '9072'
}

/** The lines as a person keys them where a PIN is asked behind every initials. */
export function withPins(lines: readonly string[]): string[] {
  return lines.flatMap((line) => (EXAMPLE_PINS[line] === undefined ? [line] : [line, pinOf(line)]))
}

/** A job in memory: lines or inputs in, entries and state kept. Each line takes `stepMs` of time. */
export class Walk {
  readonly engine: Engine
  readonly entries: Entry[] = []
  state: State
  talk: Talk = QUIET
  now: Instant = START
  said: string[] = []
  stepMs = 10_000
  /** Keys the right PIN whenever one is asked, so that walks about other things need not. */
  autoPin = true
  /** Where PINs are keyed: whatever stands there is taken as right, as for crews whose PINs are not in this file. */
  pinsAreRight = false
  /** Every line as it was keyed; a PIN that is keyed by itself stands as `PIN KH`. */
  keyed: string[] = []
  /** What a look at the folder finds. */
  others: () => Others = () => NO_OTHERS

  /** `paper`: a filled-in sheet is keyed in. `practice`: on a hidden machine. */
  constructor(
    defs: Definitions = unchanged(),
    record: 'EXAMPLE' | 'PRACTICE' = 'EXAMPLE',
    more: { readonly paper?: true; readonly practice?: Practised } = {},
  ) {
    this.engine = { defs, version: 'test' }
    const opened = openJob(defs, {
      record,
      job: 'test',
      version: 'test',
      zone: 'UTC',
      clock: 'set',
      answers: 'script',
      files: FILES,
      ...more,
    })
    if (!opened.ok) throw new Error(opened.error.say)
    const first: Entry = { ...opened.value, seq: 0, at: stamp(START) }
    this.entries.push(first)
    this.state = opening({ ...opened.value, seq: 0, at: stamp(START) })
  }

  /** What the question that stands says would become void. */
  get warned(): readonly string[] {
    return this.talk.ask === null ? [] : wouldVoidLines(this.engine.defs, this.state, this.talk.ask)
  }

  /** The same job from here on, apart from the original. */
  copy(): Walk {
    const twin: Walk = Object.create(Walk.prototype)
    Object.assign(twin, this, { entries: [...this.entries], said: [], keyed: [] })
    return twin
  }

  /** An input that is signed is brought as proved, unless it says otherwise or PINs are not keyed by themselves. */
  bring(brought: Input): string | null {
    const input = this.autoPin && !('proved' in brought) ? ({ ...brought, proved: true } as Input) : brought
    const admitted = admit(this.engine, this.state, input, this.now, this.others())
    this.entries.push(...admitted.entries)
    this.state = admitted.state
    if (admitted.refusal !== null) this.said.push(admitted.refusal.say)
    return admitted.refusal?.code ?? null
  }

  /** Keys one line after `stepMs`. Returns the refusal's code, or null. */
  key(line: string): string | null {
    this.now = { ...this.now, ms: this.now.ms + this.stepMs }
    this.keyed.push(line)
    // A hidden machine goes by the moment it is asked in.
    const now = this.state.practice === null ? undefined : this.now
    const heard = hear(this.engine.defs, this.state, this.talk, line, now)
    this.talk = heard.talk
    this.said.push(...heard.say)
    if (heard.pin !== undefined) return this.prove(heard.pin)
    if (heard.refusal !== undefined) {
      this.said.push(heard.refusal.say)
      return heard.refusal.code
    }
    const code = heard.input === null ? null : this.bring(heard.input)
    if (heard.input !== null) this.talk = { ask: followUp(this.state, heard.input) ?? heard.talk.ask }
    if (!this.autoPin || this.talk.ask?.kind !== 'pin') return code
    const { person } = this.talk.ask
    const signed = this.key(pinOf(person))
    this.keyed.splice(this.keyed.lastIndexOf(pinOf(person)), 1, `PIN ${person}`)
    return signed
  }

  /** As the session does it, with the key of tests. */
  private prove({ person, pin, what, asked }: PinKeyed): string | null {
    if (waitAfterMisses(this.state, person, this.now.ms) !== null) return this.bring(what)
    if (this.pinsAreRight || pin === pinOf(person)) {
      const heard = proven(what)
      this.talk = heard.talk
      const code = heard.input === null ? null : this.bring(heard.input)
      if (this.state.pinMisses[person] !== undefined) this.bring({ do: 'pin-fitted', person })
      if (heard.input !== null) this.talk = { ask: followUp(this.state, heard.input) }
      return code
    }
    const code = this.bring({ do: 'pin-missed', person })
    this.talk = { ask: asked ?? { kind: 'pin', person, what } }
    return code
  }

  keys(...lines: string[]): this {
    for (const line of lines) this.key(line)
    return this
  }

  wait(minutes: number): this {
    this.now = { ...this.now, ms: this.now.ms + minutes * 60_000 }
    return this
  }

  /** To the start of the hold point, through it, and up to the first reading of the bore. */
  toGate(): this {
    return this.keys('RO', 'TC-401-1', '')
  }

  throughGate(): this {
    return this.toGate().keys(...GATE_LINES)
  }

  toBore(): this {
    return this.throughGate().keys('1', '1', '71.2', '70.4', '1', '9.5000')
  }

  /** All readings in, and judged. */
  toVerdict(): Walk {
    return this.toBore().keys(...BORE_LINES, ...AFTER_LINES)
  }

  /** From the start of the hold point to the verdict, witnessed by a lead. */
  throughTheRest(): this {
    const gate = GATE_LINES.map((line) => (line === 'ML' ? 'KH' : line))
    return this.keys(...gate, '1', '1', '71.2', '70.4', '1', '9.5000', ...BORE_LINES, ...AFTER_LINES)
  }

  get prompt(): Prompt {
    return next(this.engine.defs, this.state)
  }

  get last(): Entry {
    return this.entries[this.entries.length - 1] as Entry
  }
}

export const LOCK_LINES = ['L-101', 'L-102', 'L-103', 'L-104', 'L-105', 'L-106']
/** The meter is picked before it is said that it answered. */
export const WORD_LINES = ['NO START', 'NO FLOW', 'BLOCKED BOTH WAYS', '1', 'METER ANSWERED']
/** The same where the meter is in use already. */
export const WORDS_AGAIN = WORD_LINES.filter((line) => line !== '1')
export const GAS_LINES = ['20.9', '0', '0', '20.8', '0', '0']
export const GATE_LINES = [...LOCK_LINES, ...WORD_LINES, ...GAS_LINES, 'ML']
export const BORE_LINES = [
  '9.5033',
  '9.5034',
  '9.5021',
  '9.5020',
  '9.5068',
  '9.5069',
  '9.5034',
  '9.5035',
  '9.5027',
  '9.5027',
  '9.5018',
  '9.5019',
]
/** From the strip to the set-check after. */
export const AFTER_LINES = [
  '1',
  ...['9.5008', '9.5008', '9.5007', '9.5007'],
  '9.7502',
  // Surface, where the wear lies, what the jacket side shows.
  ...['1', '1', '1'],
  ...['71.6', '70.8', '9.5001'],
]
