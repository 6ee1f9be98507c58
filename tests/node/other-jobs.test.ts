// Two jobs on one compressor, each with its own log on disk: what one log says is void in the other, and what cannot be
// read holds.
import { appendFileSync, mkdirSync, readFileSync, unlinkSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { replay } from '../../src/app/replay.ts'
import { type OpenedJob, startJob, takeUpJob } from '../../src/cli/open.ts'
import { admit } from '../../src/core/job/admit.ts'
import { NO_OTHERS } from '../../src/core/job/elsewhere.ts'
import type { Body, Entry } from '../../src/core/job/entries.ts'
import type { Input } from '../../src/core/job/input.ts'
import { next } from '../../src/core/job/next.ts'
import { steppedFrom } from '../../src/node/clock.ts'
import { readJob } from '../../src/node/job-store.ts'
import { hasNobodyThere, otherJobs } from '../../src/node/other-jobs.ts'
import { changedMachine, MACHINE } from '../helpers/cli.ts'
import { LOCK_LINES, ROOT, START } from '../helpers/example.ts'
import { tempFolders } from './journal/fixtures.ts'

const folder = tempFolders()

const BAR = join(ROOT, 'tests', 'fixtures', 'bar-over.yaml')
const BORE = join(ROOT, 'procedures', 'bore-inspection.yaml')

/** The record of the second throw of the same compressor, changed further as said. */
function throw2(at: string, change: (text: string) => string = (text) => text): string {
  const to = join(at, 'second')
  return changedMachine(to, (text) => change(text.replace('machine: TC-401-1', 'machine: TC-401-2')))
}

class Job {
  readonly opened: OpenedJob
  constructor(opened: OpenedJob) {
    this.opened = opened
  }
  get prompt() {
    const { engine, snapshot } = this.opened.session
    return next(engine.defs, snapshot().state)
  }
  get state() {
    return this.opened.session.snapshot().state
  }
  /** What holds it, by another job. */
  get heldBy(): string | null {
    const { prompt } = this
    return prompt.kind === 'held' && prompt.elsewhere === true ? prompt.why : null
  }
  entries<T extends Body['type']>(type: T): Extract<Entry, { type: T }>[] {
    const { entries } = readJob(this.opened.path)
    return entries.filter((e): e is Extract<Entry, { type: T }> => e.type === type)
  }
  bring(input: Exclude<Input, { do: 'take-in' }>): Promise<void> {
    return this.opened.session.bring(input)
  }
  look(): Promise<void> {
    return this.opened.session.look()
  }
  async on(person: string): Promise<this> {
    await this.bring({ do: 'sign-on', person, proved: true })
    if (this.prompt.kind === 'tag')
      await this.bring({ do: 'name-machine', typed: this.opened.defs.machine.machine })
    return this
  }
  /** Keys lines, whatever evidence or instrument is asked; initials count as proved. */
  async give(...lines: string[]): Promise<this> {
    for (const line of lines) {
      const { prompt } = this
      if (prompt.kind === 'evidence')
        await this.bring({
          do: 'evidence',
          step: prompt.gate.id,
          item: prompt.item.key,
          typed: line,
          proved: true,
        })
      else await this.opened.session.hear(line)
    }
    return this
  }
}

const open: Job[] = []
afterEach(() => {
  for (const job of open.splice(0)) job.opened.journal.close()
})

async function start(
  jobs: string,
  procedurePath: string,
  machinePath: string = MACHINE,
  record: 'EXAMPLE' | 'PRACTICE' = 'EXAMPLE',
  answers: 'person' | 'script' = 'person',
): Promise<Job> {
  const clock = steppedFrom(START)
  const job = new Job(
    await startJob({ procedurePath, machinePath, jobs, record, clock, clockKind: 'set', answers }),
  )
  open.push(job)
  return job
}

function takeUp(path: string): Job {
  const job = new Job(takeUpJob(path, () => steppedFrom({ ...START, ms: START.ms + 600_000 })))
  open.push(job)
  return job
}

/** Keys what each line of the bore's hold point asks, until the witness is asked. */
async function provesAll(job: Job): Promise<void> {
  for (let n = 0; n < 30 && job.prompt.kind !== 'held'; n++) {
    const { prompt } = job
    if (prompt.kind === 'pick') await job.give('1')
    if (prompt.kind !== 'evidence') continue
    const { evidence, point } = prompt.item
    if (evidence.kind === 'witness') return
    const points = job.opened.defs.machine.site.isolation_points.map((one) => one.id)
    const lock = LOCK_LINES[points.indexOf(point?.id ?? '')] ?? ''
    const isOxygen = evidence.kind === 'gas' && evidence.limit.startsWith('oxygen')
    await job.give(
      evidence.kind === 'words' ? evidence.words : evidence.kind === 'locks' ? lock : isOxygen ? '20.9' : '0',
    )
  }
}

/** RO at the bore of throw 1, with an arm in it. */
async function atTheBore(jobs: string, record: 'EXAMPLE' | 'PRACTICE' = 'EXAMPLE'): Promise<Job> {
  const job = await (await start(jobs, BORE, MACHINE, record)).on('RO')
  await job.give('')
  await provesAll(job)
  await job.give('ML')
  expect(statusOf(job)).toBe('open')
  return job
}

const statusOf = (job: Job) => job.state.gates.hold_point?.status

async function readyToBar(jobs: string, machine: string): Promise<Job> {
  const job = await (await start(jobs, BAR, machine)).on('KH')
  await job.give('ALL COUNTED', 'PB')
  expect(job.state.gates.ready?.status).toBe('open')
  return job
}

const fellFor = (job: Job) => job.entries('gate.closed').map((e) => e.why)
const idOf = (job: Job) => basename(job.opened.path, '.example.jsonl')

describe('a block taken off on another throw', () => {
  it('waits until nobody is behind what it lets in, and then keeps everybody out until it is done', async () => {
    const at = folder()
    const bore = await atTheBore(join(at, 'jobs'))
    const bar = await readyToBar(join(at, 'jobs'), throw2(at))
    expect(bar.heldBy).toMatch(
      /^this can let in the crank turning over, and job [0-9a-f]{4} \(RO on it\) has let people in/,
    )

    await bore.look()
    expect(bore.prompt.kind).toBe('clear')
    expect(fellFor(bore)).toEqual([
      expect.stringMatching(/^Bar over in job [0-9a-f]{4} \(KH on it\) can let in the crank turning over$/),
    ])
    const seen = bore.entries('elsewhere.seen').pop()
    const theirs = readJob(bar.opened.path)
    expect(seen).toMatchObject({ job: idOf(bar), head: theirs.head, upTo: theirs.entries.length - 1 })
    expect(seen?.by).toBeUndefined()

    await bar.look()
    expect(bar.heldBy).not.toBeNull()
    await bore.give('ALL OUT')
    await bar.look()
    expect(bar.prompt.kind).toBe('confirm')
    await bore.look()
    expect(bore.heldBy).toMatch(/is at "Bar over", which can let in the crank turning over/)
    await bore.bring({ do: 'evidence', step: 'hold_point', item: 'block', typed: 'BLOCKED BOTH WAYS' })
    expect(bore.heldBy).not.toBeNull()

    await bar.bring({ do: 'confirm', step: 'bar_over' })
    await bore.look()
    await provesAll(bore)
    expect(statusOf(bore)).toBe('closed')
    await bore.give('ML')
    expect(statusOf(bore)).toBe('open')
    const opened = bore.entries('gate.opened').pop()
    expect(opened?.looked?.map((one) => one.job)).toEqual([idOf(bar)])
    // What is on disk comes to what was live, here as ever.
    expect(JSON.stringify(replay(readJob(bore.opened.path).entries).state.gates)).toBe(
      JSON.stringify(bore.state.gates),
    )
  })

  it('is not begun beside an open hold point when both are proved in the same moment', async () => {
    const at = folder()
    const bore = await (await start(join(at, 'jobs'), BORE)).on('RO')
    const bar = await (await start(join(at, 'jobs'), BAR, throw2(at))).on('KH')
    await bore.give('')
    await provesAll(bore)
    await bar.give('ALL COUNTED')
    // Each looks before the other has written.
    await Promise.all([bore.give('ML'), bar.give('PB')])
    expect(bore.entries('gate.opened').length + bar.entries('gate.opened').length).toBe(2)
    expect([bar.prompt.kind, statusOf(bore)]).not.toEqual(['confirm', 'open'])
  })

  it('is nothing to a machine that is known to be another, and counts where the records do not tell', async () => {
    const other = folder()
    const free = await atTheBore(join(other, 'jobs'))
    const far = await readyToBar(
      join(other, 'jobs'),
      throw2(other, (text) => text.replace('compressor: TC-401', 'compressor: TC-402')),
    )
    await free.look()
    expect([far.heldBy, statusOf(free), free.entries('elsewhere.seen')]).toEqual([null, 'open', []])

    const unsaid = folder()
    const bore = await atTheBore(join(unsaid, 'jobs'))
    const bar = await readyToBar(
      join(unsaid, 'jobs'),
      throw2(unsaid, (text) => text.replace('compressor: TC-401\n', '')),
    )
    await bore.look()
    expect(bar.heldBy).not.toBeNull()
    expect(statusOf(bore)).toBe('closed')
    expect(bore.entries('elsewhere.seen').pop()?.told).toBe(false)
  })
})

describe('a STOP on the machine', () => {
  it('strikes every hold point of the other job, whole, and holds it until it is released there', async () => {
    const at = folder()
    const bore = await atTheBore(join(at, 'jobs'))
    const bar = await (await start(join(at, 'jobs'), BAR, throw2(at))).on('KH')
    await bar.bring({ do: 'stop' })
    await bore.look()
    expect(fellFor(bore)).toEqual([
      expect.stringMatching(/^STOP was called in job [0-9a-f]{4} \(KH on it\)$/),
    ])
    expect(bore.state.gates.hold_point?.given).toEqual({})
    await bore.give('ALL OUT')
    expect(bore.heldBy).toMatch(
      /^STOP is open in job [0-9a-f]{4} \(KH on it\) on this machine: its cause is not told yet/,
    )
    const of = bar.state.stops[0]?.seq ?? -1
    await bar.bring({ do: 'explain-stop', of, cause: 'gas', why: 'a smell of gas', calledBy: 'RO' })
    await bore.look()
    expect(bore.heldBy).toContain('a smell of gas')
    await bar.bring({ do: 'release-stop', person: 'PB', proved: true, answer: 'it was paint' })
    await bore.look()
    expect(bore.prompt.kind).toBe('evidence')
  })

  it('raised and ended with its job between two looks is seen all the same', async () => {
    const at = folder()
    const bore = await atTheBore(join(at, 'jobs'))
    const bar = await (await start(join(at, 'jobs'), BAR, throw2(at))).on('KH')
    await bar.bring({ do: 'stop' })
    const of = bar.state.stops[0]?.seq ?? -1
    await bar.bring({ do: 'explain-stop', of, cause: 'moved', why: 'it turned', calledBy: 'RO' })
    await bar.bring({ do: 'close-stopped', person: 'PB', proved: true, first: 'a new block' })
    expect(bar.state.closed).toBe('STOP')
    await bore.look()
    expect(fellFor(bore)).toEqual([expect.stringContaining('STOP was called in job')])
    await bore.give('ALL OUT')
    expect(bore.prompt.kind).toBe('evidence')
  })
})

describe('what was taken off', () => {
  it('by number fells what rested on that number, and what it held; without one, everything', async () => {
    const at = folder()
    const bore = await atTheBore(join(at, 'jobs'))
    const bar = await (await start(join(at, 'jobs'), BAR, throw2(at))).on('KH')
    await bar.bring({ do: 'place', what: 'lock', where: 'V-11', number: 'l103' })
    await bore.look()
    expect(statusOf(bore)).toBe('open')
    const account = async () => {
      const of = bar.state.things.find((t) => t.accountedBy === null)?.seq ?? -1
      await bar.bring({ do: 'account', of, person: 'KH', proved: true })
      await bar.bring({ do: 'account', of, person: 'PB', proved: true })
    }
    await account()
    await bore.look()
    expect(fellFor(bore)).toEqual([expect.stringMatching(/^lock, V-11, L103 was taken off, in job/)])
    expect(bore.entries('gate.closed')[0]?.items).toContain('locks.suction')
    await bore.give('ALL OUT')
    await provesAll(bore)
    await bore.give('ML')
    expect(statusOf(bore)).toBe('open')
    await bar.bring({ do: 'place', what: 'crank block', where: 'throw 2', number: null })
    await account()
    await bore.look()
    expect(bore.state.gates.hold_point?.given).toEqual({})
  })
})

describe('a log that cannot be read', () => {
  it('holds, says why, and lets go once it can be read again', async () => {
    const at = folder()
    const bore = await atTheBore(join(at, 'jobs'))
    const bar = await (await start(join(at, 'jobs'), BAR, throw2(at))).on('KH')
    await bore.look()
    const whole = readFileSync(bar.opened.path)
    writeFileSync(bar.opened.path, whole.toString('utf8').replace('"person":"KH"', '"person":"PB"'))
    await bore.look()
    expect(fellFor(bore)).toEqual([
      expect.stringMatching(/^the log of job [0-9a-f]{4} cannot be read: Line 3 was changed/),
    ])
    await bore.give('ALL OUT')
    expect(bore.heldBy).toMatch(
      /^the log of job [0-9a-f]{4} cannot be read, so nobody knows what it takes off/,
    )
    writeFileSync(bar.opened.path, whole)
    await bore.look()
    expect(bore.prompt.kind).toBe('evidence')
  })

  it('that is no log at all holds from the first look on', async () => {
    const jobs = join(folder(), 'jobs')
    mkdirSync(join(jobs, 'example'), { recursive: true })
    writeFileSync(join(jobs, 'example', 'nothing.example.jsonl'), '')
    const job = await (await start(jobs, BORE)).on('RO')
    await job.give('')
    expect(job.heldBy).toContain('it holds no complete entry')
    expect(job.entries('gate.closed')).toEqual([])
  })

  it('or was cut short, or is gone, voids what was proved', async () => {
    const at = folder()
    const bore = await atTheBore(join(at, 'jobs'))
    const bar = await (await start(join(at, 'jobs'), BAR, throw2(at))).on('KH')
    await bore.look()
    const lines = readFileSync(bar.opened.path, 'utf8').split('\n')
    writeFileSync(bar.opened.path, `${lines.slice(0, 2).join('\n')}\n`)
    await bore.look()
    expect(bore.heldBy ?? fellFor(bore)[0]).toContain('its end was cut off')
    await bore.give('ALL OUT')
    unlinkSync(bar.opened.path)
    await bore.look()
    expect(bore.entries('elsewhere.gone')).toHaveLength(1)
    expect(bore.prompt.kind).toBe('evidence')
  })

  it('is gone, though its job had not ended: everything that was proved falls, once', async () => {
    const at = folder()
    const bore = await atTheBore(join(at, 'jobs'))
    const bar = await (await start(join(at, 'jobs'), BAR, throw2(at))).on('KH')
    await bore.look()
    unlinkSync(bar.opened.path)
    await bore.look()
    expect(fellFor(bore)).toEqual([
      expect.stringContaining('had not ended and is not among the jobs of this machine'),
    ])
    await bore.give('ALL OUT')
    await provesAll(bore)
    await bore.give('ML')
    expect(statusOf(bore)).toBe('open')
  })

  it('is not one whose last line was never finished: its writer was killed, and it is open as far as it goes', async () => {
    const at = folder()
    const bar = await readyToBar(join(at, 'jobs'), throw2(at))
    appendFileSync(bar.opened.path, '{"seq":9,"prev":"0f')
    const bore = await (await start(join(at, 'jobs'), BORE)).on('RO')
    await bore.give('')
    // It had been told to bar over when it was killed.
    expect(bore.heldBy).toMatch(/^job [0-9a-f]{4} \(KH on it\) is at "Bar over"/)
  })
})

describe('records of different kinds', () => {
  it('are shown to each other and void nothing', async () => {
    const at = folder()
    const bore = await atTheBore(join(at, 'jobs'), 'PRACTICE')
    const bar = await readyToBar(join(at, 'jobs'), throw2(at))
    expect(bar.prompt.kind).toBe('confirm')
    await bar.bring({ do: 'stop' })
    await bore.look()
    expect(statusOf(bore)).toBe('open')
    expect(bore.entries('elsewhere.seen').pop()).toMatchObject({
      record: 'EXAMPLE',
      stop: 'its cause is not told yet',
    })
  })
})

describe('a job that takes its answers from a script', () => {
  it('has nobody at the machine: it neither holds nor is held, and a STOP it was left under is in nobody’s way', async () => {
    const at = folder()
    const scripted = await (await start(join(at, 'jobs'), BORE, MACHINE, 'EXAMPLE', 'script')).on('RO')
    await scripted.bring({ do: 'stop' })
    const bore = await atTheBore(join(at, 'jobs'))
    expect(bore.entries('elsewhere.seen')).toEqual([])
    await bore.bring({ do: 'stop' })
    const again = await (await start(join(at, 'jobs'), BORE, MACHINE, 'EXAMPLE', 'script')).on('RO')
    await again.give('')
    expect(again.prompt.kind).toBe('evidence')
  })

  it('is none when it is REAL, whatever its log says', () => {
    expect(hasNobodyThere({ record: 'REAL', answers: 'script' })).toBe(false)
    expect(hasNobodyThere({ record: 'PRACTICE', answers: 'script' })).toBe(true)
    expect(hasNobodyThere({ record: 'PRACTICE', answers: 'person' })).toBe(false)
    // A hidden machine is nobody else's; behind a REAL record there is none, whatever its log says.
    const practice = { seed: 1, level: 1 } as const
    expect(hasNobodyThere({ record: 'PRACTICE', answers: 'person', practice })).toBe(true)
    expect(hasNobodyThere({ record: 'REAL', answers: 'person', practice })).toBe(false)
  })
})

describe('a job that is taken up', () => {
  it('is told what has ended meanwhile, and by name', async () => {
    const at = folder()
    const bore = await atTheBore(join(at, 'jobs'))
    const bar = await (await start(join(at, 'jobs'), BAR, throw2(at))).on('KH')
    await bore.bring({ do: 'leave' })
    bore.opened.journal.close()
    await bar.give('ALL COUNTED', 'PB')
    expect(bar.heldBy).toContain('take that job up, as it was left')
    await bar.bring({ do: 'stop' })
    const of = bar.state.stops[0]?.seq ?? -1
    await bar.bring({ do: 'explain-stop', of, cause: 'moved', why: 'it turned', calledBy: 'RO' })
    await bar.bring({ do: 'close-stopped', person: 'PB', proved: true, first: 'a new block' })
    const again = takeUp(bore.opened.path)
    await again.bring({ do: 'take-up' })
    expect(again.entries('elsewhere.gone')).toEqual([])
    expect(again.entries('elsewhere.seen').pop()).toMatchObject({ job: idOf(bar), closed: 'STOP' })
    await again.on('RO')
    expect(again.prompt.kind).toBe('clear')
  })

  it('is read by the machine record it has taken in, and as a log that cannot be read where that is not taken', async () => {
    const at = folder()
    const bore = await atTheBore(join(at, 'jobs'))
    await bore.bring({ do: 'leave' })
    const { session, journal, defs, path } = bore.opened
    const record = readFileSync(MACHINE, 'utf8').replace('edition: "4"', 'edition: "5"')
    const file = { role: 'machine', name: 'machine.yaml', sha256: '', text: record } as const
    const to = { ...defs, machine: { ...defs.machine, edition: '5' } }
    const signed = { unproved: null, why: 'a fault in it', person: 'KH', proved: true }
    const input = { do: 'take-in', file, to, ...signed } as const
    const { entries } = admit(session.engine, bore.state, input, START, NO_OTHERS)
    await journal.port.append(entries)
    const look = (takes: readonly string[]) => {
      const asked: string[] = []
      const port = otherJobs({
        path: path.replace('TC-401-1', 'TC-401-2'),
        record: 'EXAMPLE',
        machine: { tag: 'TC-401-2', compressor: 'TC-401' },
        isTracked: () => false,
        definitionsOf: (files) => {
          const edition = /edition: "(\d)"/.exec(
            files.find(({ role }) => role === 'machine')?.text ?? '',
          )?.[1]
          asked.push(edition ?? '')
          return takes.includes(edition ?? '') ? to : null
        },
      })
      const [seen] = port.look()
      return { asked, seen }
    }
    expect(look(['4', '5'])).toMatchObject({ asked: ['4', '5'], seen: { unread: null, left: true } })
    expect(look(['4'])).toMatchObject({
      asked: ['4', '5'],
      seen: { unread: expect.stringContaining('not taken') },
    })
  })
})
