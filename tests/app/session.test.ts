// What the shell holds by itself: an entry is on disk before it is shown, a moved clock is found, a PIN is not tried in its wait.
import { describe, expect, it } from 'vitest'
import { createSession } from '../../src/app/session.ts'
import type { Entry } from '../../src/core/job/entries.ts'
import { MISSES_ALLOWED, WAIT_AFTER_MISSES_MS } from '../../src/core/job/signature.ts'
import { PIN_DROPPED } from '../../src/core/talk/words.ts'
import { pinOf, Walk } from '../helpers/example.ts'
import { noFiles } from '../helpers/files.ts'
import { noVoice } from '../helpers/voice.ts'

/** A session from where the walk stands, with a disk and clocks that the test moves by hand. */
function shell(walk: Walk) {
  const written: Entry[] = []
  const tried: string[] = []
  const clock = { wallMs: walk.now.ms, runningMs: 0 }
  const disk: { write: () => Promise<void> } = { write: async () => {} }
  const session = createSession({
    engine: walk.engine,
    state: walk.state,
    shown: [],
    journal: {
      append: async (entries) => {
        await disk.write()
        written.push(...entries)
      },
    },
    clock: { now: () => ({ ...walk.now, ms: clock.wallMs }), running: () => clock.runningMs },
    others: { look: walk.others },
    files: noFiles,
    voice: noVoice,
    pins: {
      fits: async (pin) => {
        tried.push(pin)
        return pin === pinOf('RO')
      },
    },
  })
  const goOn = (wallMs: number, runningMs = wallMs) => {
    clock.wallMs += wallMs
    clock.runningMs += runningMs
  }
  const moves = () => written.flatMap((entry) => (entry.type === 'clock.moved' ? [entry.seconds] : []))
  return { session, written, tried, goOn, moves, disk }
}

const turns = async (count: number) => {
  for (let n = 0; n < count; n++) await Promise.resolve()
}

describe('the journal', () => {
  it('has an entry before anything of it is shown', async () => {
    const { session, disk } = shell(new Walk())
    let done = () => {}
    disk.write = () => new Promise<void>((resolve) => (done = resolve))
    const heard = session.hear('note the guard is off')
    await turns(50)
    expect(session.snapshot().shown).toEqual([])
    expect(session.snapshot().state.seq).toBe(0)
    done()
    await heard
    expect(session.snapshot().shown).toMatchObject([{ kind: 'entry', entry: { type: 'note.written' } }])
  })

  it('that fails lets nothing be shown', async () => {
    const { session, disk } = shell(new Walk())
    disk.write = () => Promise.reject(new Error('full'))
    await expect(session.hear('note the guard is off')).rejects.toThrow('full')
    expect(session.snapshot().shown).toEqual([])
    expect(session.snapshot().state.seq).toBe(0)
  })
})

describe('a wall clock that runs apart from the running clock', () => {
  it.each([6000, -6000])('was moved, by %s ms', async (apart) => {
    const { session, goOn, moves } = shell(new Walk().toBore())
    goOn(60_000 + apart, 60_000)
    await session.tick()
    expect(moves()).toEqual([apart / 1000])
    expect(session.snapshot().state.gates.hold_point?.status).toBe('closed')
  })

  it('is found also when it was moved a little at a time, and said once', async () => {
    const { session, goOn, moves } = shell(new Walk().toBore())
    for (let n = 0; n < 3; n++) {
      goOn(12_000, 10_000)
      await session.tick()
    }
    expect(moves()).toEqual([6])
    goOn(10_000)
    await session.tick()
    expect(moves()).toEqual([6])
  })

  it('but by no more than five seconds is ordinary keeping of time', async () => {
    const { session, goOn, moves } = shell(new Walk().toBore())
    goOn(65_000, 60_000)
    await session.tick()
    expect(moves()).toEqual([])
  })
})

describe('a PIN', () => {
  it('is not even looked at while its person has to wait, and is on no record', async () => {
    const { session, written, tried, goOn } = shell(new Walk())
    await session.hear('RO')
    for (let n = 0; n < MISSES_ALLOWED; n++) await session.hear('9072')
    expect(tried).toHaveLength(MISSES_ALLOWED)
    await session.hear(pinOf('RO'))
    await session.hear('RO')
    await session.hear(pinOf('RO'))
    expect(tried).toHaveLength(MISSES_ALLOWED)
    expect(session.snapshot().state.doer).toBeNull()
    goOn(WAIT_AFTER_MISSES_MS)
    await session.hear('RO')
    await session.hear(pinOf('RO'))
    expect(session.snapshot().state.doer).toBe('RO')
    expect(written.map((entry) => entry.type)).toEqual([
      ...Array.from({ length: MISSES_ALLOWED }, () => 'pin.missed'),
      'person.signed-on',
    ])
    expect(JSON.stringify(written)).not.toMatch(/9072|4071/)
  })

  it('keyed where no talk is goes on record when it is a wrong one, and signs when it fits', async () => {
    const { session, written } = shell(new Walk())
    const what = { do: 'sign-on', person: 'RO' } as const
    expect(await session.sign({ person: 'RO', pin: '9072', what })).toBe(false)
    expect(session.snapshot().state.doer).toBeNull()
    expect(await session.sign({ person: 'RO', pin: pinOf('RO'), what })).toBe(true)
    expect(written.map(({ type }) => type)).toEqual(['pin.missed', 'person.signed-on'])
  })

  it('that fits ends a row of wrong ones also where nothing is taken by it', async () => {
    const { session, written } = shell(new Walk().toBore())
    for (const line of ['hand over', '9072', pinOf('RO')]) await session.hear(line)
    expect(written.map(({ type }) => type)).toEqual(['pin.missed', 'pin.fitted'])
    expect(session.snapshot().state.pinMisses).toEqual({})
  })

  it('whose question is gone looks up nothing that was keyed where a PIN was asked, and says nothing of it', async () => {
    const { session, written } = shell(new Walk().toBore())
    const said = () => session.snapshot().shown.flatMap((one) => (one.kind === 'said' ? one.lines : []))
    for (const line of ['4071', 'what is 4071 runout', 'ask runout 4071']) {
      await session.hear(line, true)
      expect(said().at(-1)).toBe(PIN_DROPPED)
    }
    expect(said().join()).not.toContain('4071')
    await session.hear('what is runout')
    expect(said().join()).toContain('Terms of the trade, runout')
    expect(written).toEqual([])
  })
})
