// What may be opened at all, who may sign on, and which machine this is.
import { describe, expect, it, vi } from 'vitest'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { type Opening, openJob } from '../../../src/core/job/open-job.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'

const defs = exampleDefs()
const opening = (change: Partial<Opening>): Opening => ({
  record: 'EXAMPLE',
  job: 'j',
  version: '1',
  zone: 'UTC',
  clock: 'system',
  answers: 'person',
  files: [],
  ...change,
})
const machine = (change: Partial<Definitions['machine']>): Definitions => ({
  ...defs,
  machine: { ...defs.machine, ...change },
})
const KEY = `$scrypt$ln=15,r=8,p=1$${'A'.repeat(22)}$${'B'.repeat(43)}`
const [machineFile, crew, instruments] = [defs.machine, defs.crew, defs.instruments].map((file) => ({
  ...file,
  invented: false,
})) as [typeof defs.machine, typeof defs.crew, typeof defs.instruments]
const real: Definitions = {
  ...defs,
  machine: machineFile,
  instruments,
  crew: { ...crew, crew: crew.crew.map((person) => ({ ...person, pin: KEY })) },
}
const keyOf = (id: string, pin: string | undefined): Definitions => ({
  ...real,
  crew: { crew: real.crew.crew.map((p) => (p.id === id ? { ...p, pin } : p)) },
})

describe('a REAL job', () => {
  it.each([
    ['an invented machine', defs, {}, 'invented', /marked invented/],
    [
      'an invented crew',
      { ...real, crew: { ...real.crew, invented: true } },
      {},
      'invented',
      /This crew file/,
    ],
    [
      'invented instruments',
      { ...real, instruments: { ...instruments, invented: true } },
      {},
      'invented',
      /register of instruments/,
    ],
    [
      'an invented procedure, or part',
      { ...real, invented: ['lesson'] },
      {},
      'invented',
      /This procedure lesson is marked/,
    ],
    ['somebody without a key', keyOf('ML', undefined), {}, 'no-pin', /and ML has none/],
    ...defs.crew.crew.map(
      (p) => [`the example key of ${p.id}`, keyOf('ML', p.pin), {}, 'example-key', /key of ML/] as const,
    ),
    ['a clock set by hand', real, { clock: 'set' }, 'clock', /clock of this computer/],
    ['answers from a script', real, { answers: 'script' }, 'answers', /from a person at a terminal/],
    [
      'a machine that the procedure is not for',
      {
        ...real,
        machine: { ...machineFile, cylinder: { ...machineFile.cylinder, orientation: 'vertical' } },
      },
      {},
      'not-for',
      /vertical/,
    ],
  ] as const)('is refused with %s, and nothing is searched for it', (_what, on, change, code, why) => {
    const search = vi.fn(() => null)
    const opened = openJob(on, opening({ record: 'REAL', ...change }), search)
    expect(opened).toMatchObject({ ok: false, error: { code, say: expect.stringMatching(why) } })
    expect(search).not.toHaveBeenCalled()
  })

  it('is refused while its own gates are not proved, and where nobody tried', () => {
    const asked = vi.fn((_defs: Definitions): string | null => 'a way was found')
    const because = (say: RegExp) => ({
      ok: false,
      error: { code: 'not-proved', say: expect.stringMatching(say) },
    })
    expect(openJob(real, opening({ record: 'REAL' }), asked)).toMatchObject(
      because(/not: a way was found\.$/),
    )
    expect(asked).toHaveBeenCalledWith(real)
    expect(openJob(real, opening({ record: 'REAL' }))).toMatchObject(because(/nothing was searched/))
  })

  it('is opened with keys, people, the clock of this computer and gates that are proved', () => {
    const opened = openJob(real, opening({ record: 'REAL' }), () => null)
    expect(opened).toMatchObject({ ok: true, value: { record: 'REAL', answers: 'person', clock: 'system' } })
  })

  it.each(['PRACTICE', 'EXAMPLE'] as const)(
    'is not what %s is: that takes scripts and a set clock',
    (record) => {
      const opened = openJob(defs, opening({ record, clock: 'set', answers: 'script' }))
      expect(opened).toMatchObject({ ok: true, value: { record, format: 1 } })
    },
  )
})

describe('a machine that the procedure is not for', () => {
  const { cylinder, service } = defs.machine
  it.each([
    ['its cylinder is vertical', { cylinder: { ...cylinder, orientation: 'vertical' } }],
    ['it is single acting', { cylinder: { ...cylinder, acting: 'single' } }],
    ['it is not lubricated', { cylinder: { ...cylinder, lubricated: false } }],
    ['its gas is oxidising', { service: { ...service, oxidising: true } }],
    ['it is a tandem', { cylinder: { ...cylinder, tandem: true } }],
  ] as const)('is refused, saying: %s', (what, change) => {
    for (const record of ['EXAMPLE', 'PRACTICE'] as const) {
      const opened = openJob(machine(change), opening({ record }))
      expect(opened).toMatchObject({
        ok: false,
        error: { code: 'not-for', say: expect.stringContaining(what) },
      })
    }
  })
})

describe('signing on', () => {
  it.each(['', 'XX', 'R O', 'ROO'])('refuses %j', (typed) => {
    const walk = new Walk()
    expect(walk.key(typed)).toBe('unknown-person')
    expect(walk.state.doer).toBeNull()
  })

  it.each(['y', 'ok', 'skip'])('puts %j on no record, and signs nobody on', (typed) => {
    const walk = new Walk()
    const before = walk.entries.length
    walk.key(typed)
    expect(walk.entries.length).toBe(before)
    expect(walk.prompt.kind).toBe('sign-on')
    expect(walk.state.doer).toBeNull()
  })

  it('takes a trainee to PRACTICE only', () => {
    expect(new Walk().key('TS')).toBe('trainee')
    const practice = new Walk(defs, 'PRACTICE')
    expect(practice.key('ts')).toBeNull()
    expect(practice.state.doer).toBe('TS')
  })

  it('tells a trainee so before a PIN is asked, and how to practise', () => {
    const walk = new Walk()
    walk.autoPin = false
    expect(walk.key('ts')).toBe('trainee')
    expect(walk.talk.ask).toBeNull()
    expect(walk.said.join(' ')).toMatch(/choose practice .*--as practice/)
    walk.keys('RO', '4071', 'sign on')
    expect(walk.key('TS')).toBe('trainee')
    // No PIN is asked: other initials may be keyed.
    expect(walk.talk.ask).toEqual({ kind: 'come-on' })
  })

  it('says of Enter alone that nothing was keyed, and what is asked', () => {
    const walk = new Walk()
    walk.key('')
    expect(walk.said).toEqual(['Nothing was keyed. Asked are initials, one of RO, ML, KH, PB, TS.'])
  })

  it('comes before anything else, and only once until the job is left', () => {
    const walk = new Walk()
    for (const input of [
      { do: 'name-machine', typed: 'TC-401-1' },
      { do: 'done', step: 'brief' },
      { do: 'evidence', step: 'hold_point', item: 'locks.breaker', typed: 'L-1' },
    ] as const)
      expect(walk.bring(input)).toBe('not-asked')
    walk.keys('RO')
    expect(walk.bring({ do: 'sign-on', person: 'ML' })).toBe('not-asked')
  })
})

describe('the tag', () => {
  it('that is wrong goes on record, and is asked again', () => {
    const walk = new Walk().keys('RO', 'TC-402-1')
    expect(walk.last).toMatchObject({ type: 'machine.mismatched', typed: 'TC-402-1' })
    expect(walk.prompt.kind).toBe('tag')
    walk.keys('tc 401 1')
    expect(walk.last).toMatchObject({ type: 'machine.named', typed: 'tc 401 1' })
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'brief' } })
  })

  it.each(['', '   '])('is not %j', (typed) => {
    expect(new Walk().keys('RO').key(typed)).toBe('no-tag')
  })

  it('is cut short when it is long, and never taken for near enough', () => {
    const walk = new Walk().keys('RO', `TC-401-1${'1'.repeat(60)}`)
    expect(walk.last).toMatchObject({ type: 'machine.mismatched', typed: expect.stringMatching(/^.{40}$/) })
    for (const typed of ['TC-401-11', 'TC-401', '401-1']) walk.bring({ do: 'name-machine', typed })
    expect(walk.state.machineNamed).toBe(false)
  })
})
