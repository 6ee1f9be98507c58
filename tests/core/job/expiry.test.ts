// Time closes gates: exactly at the life of the first gas test, while the prompt waits and when the next line comes.
import { describe, expect, it } from 'vitest'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { fold } from '../../../src/core/job/fold.ts'
import { gateState, gatesOf } from '../../../src/core/job/gate.ts'
import { lapsesAt } from '../../../src/core/job/lapse.ts'
import { foot, nextChangeMs } from '../../../src/core/sheet/foot.ts'
import { exampleDefs, GAS_LINES, LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'
import { gate, OXYGEN, smallDefs, tell } from '../../helpers/small-job.ts'

const LIFE_MS = 30 * 60_000

const firstGasMs = (walk: Walk) =>
  gateState(walk.state, 'hold_point').given.oxygen_breathing?.atMs ?? Number.NaN
const status = (walk: Walk) => gateState(walk.state, 'hold_point').status
const at = (walk: Walk, ms: number): Walk => {
  walk.stepMs = 0
  walk.now = { ...walk.now, ms }
  return walk
}
const withLife = (si: number): Definitions => {
  const defs = exampleDefs()
  const { site } = defs.machine
  const gas = { ...site.gas, life: { ...site.gas.life, si } }
  return { ...defs, machine: { ...defs.machine, site: { ...site, gas } } }
}
/** At the first reading of the bore, `ms` after its gas test. */
const boreAt = (ms: number) => {
  const walk = new Walk().toBore()
  return at(walk, firstGasMs(walk) + ms)
}

describe('the moment', () => {
  it('still stands a millisecond before the life of the FIRST gas test is over', () => {
    const walk = boreAt(LIFE_MS - 1)
    walk.bring({ do: 'tick' })
    expect(status(walk)).toBe('open')
    walk.key('9.5033')
    expect(walk.last.type).toBe('reading.taken')
  })

  it('falls exactly at its life while the prompt waits', () => {
    const walk = boreAt(LIFE_MS)
    const before = walk.entries.length
    walk.bring({ do: 'tick' })
    expect(walk.entries.slice(before)).toMatchObject([
      {
        type: 'gate.closed',
        cause: 'lapsed',
        items: [
          ...[
            'oxygen_breathing',
            'flammable_breathing',
            'h2s_breathing',
            'oxygen_inside',
            'flammable_inside',
          ],
          ...['h2s_inside', 'witness'],
        ],
      },
    ])
    expect(walk.prompt.kind).toBe('clear')
  })

  it('falls when the next line comes, before the line is looked at', () => {
    const walk = new Walk().throughGate()
    at(walk, firstGasMs(walk) + LIFE_MS)
    expect(walk.key('1')).toBe('not-asked')
    expect(walk.last.type).toBe('gate.closed')
    expect(walk.state.done.wiped).toBeUndefined()
  })

  it.each([0, -60, Number.NaN, Number.POSITIVE_INFINITY])('never opens with a life of %s s', (si) => {
    const walk = new Walk(withLife(si))
    walk.stepMs = 0
    walk.throughGate()
    expect(walk.entries.some((e) => e.type === 'gate.opened')).toBe(false)
    walk.bring({ do: 'confirm', step: 'wiped' })
    expect(walk.state.done.wiped).toBeUndefined()
  })

  it('never opens with a life of 0, not even in the moment of its last test', () => {
    const { machine } = withLife(0)
    const defs = smallDefs([gate('air', ['bad_air'], [OXYGEN]), tell('a', { exposes: ['bad_air'] })], [], {
      machine,
    })
    const walk = new Walk(defs).keys('RO', 'TC-401-1', '1', '20.9')
    expect(walk.last).toMatchObject({ type: 'evidence.given', item: 'oxygen' })
    expect(walk.prompt.kind).toBe('held')
  })

  it('counts a gas test at an unreadable time as stale', () => {
    const walk = new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, '20.9')
    const given = walk.last
    walk.state = fold(walk.state, { ...given, seq: given.seq + 1, at: 'yesterday' })
    const [gate] = gatesOf(walk.engine.defs)
    expect(gate && lapsesAt(walk.engine.defs, walk.state, gate)).toBe(Number.NEGATIVE_INFINITY)
    walk.bring({ do: 'tick' })
    expect(walk.last).toMatchObject({ type: 'gate.closed', cause: 'lapsed' })
  })
})

describe('after it fell', () => {
  it('wants everybody out in words first, then only gas and the witness', () => {
    const walk = boreAt(LIFE_MS).keys('')
    for (const no of ['', 'out', 'ALL', 'ALL  OUTT', '20.9 %vol', 'KH']) expect(walk.key(no)).not.toBeNull()
    for (const reflex of ['y', 'ok', 'skip']) {
      walk.key(reflex)
      expect(walk.prompt.kind).toBe('clear')
    }
    expect(walk.bring({ do: 'evidence', step: 'hold_point', item: 'oxygen_breathing', typed: '20.9' })).toBe(
      'not-asked',
    )
    expect(walk.key('all out')).toBeNull()
    expect(walk.last).toMatchObject({ type: 'people.clear', words: 'ALL OUT' })
    const asked = []
    for (const line of [...GAS_LINES, 'ML']) {
      asked.push(walk.prompt.kind === 'evidence' ? walk.prompt.item.key : walk.prompt.kind)
      walk.key(line)
    }
    expect(asked).toEqual([
      ...['oxygen_breathing', 'flammable_breathing', 'h2s_breathing', 'oxygen_inside', 'flammable_inside'],
      ...['h2s_inside', 'witness'],
    ])
    expect(status(walk)).toBe('open')
    expect(walk.prompt).toMatchObject({ kind: 'read', place: { key: 'bore.head_end.vertical' } })
  })

  it('calls people out again when gas fails on the way back in', () => {
    const walk = boreAt(LIFE_MS).keys('', 'ALL OUT', '18')
    expect(walk.prompt.kind).toBe('clear')
  })

  it('calls nobody out of a hold point that was only half asked, and asks its gas again', () => {
    const walk = new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, '20.9', '0')
    at(walk, firstGasMs(walk) + LIFE_MS).key('0')
    expect(walk.last).toMatchObject({
      type: 'gate.closed',
      items: ['oxygen_breathing', 'flammable_breathing'],
    })
    expect(gateState(walk.state, 'hold_point').struck.map((s) => s.shown)).toEqual(['20.9 %vol', '0 %LEL'])
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'oxygen_breathing' } })
  })

  it('opens only if the first gas test still stands when the witness signs', () => {
    const walk = new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, ...GAS_LINES)
    expect(at(walk, firstGasMs(walk) + LIFE_MS).key('ML')).toBe('not-asked')
    expect(status(walk)).toBe('never')
  })
})

describe('a reading keyed too late', () => {
  it('is kept as late when its line comes after the life', () => {
    const walk = boreAt(LIFE_MS).keys('9.5033')
    expect(walk.entries.slice(-2).map((e) => e.type)).toEqual(['gate.closed', 'reading.late'])
    expect(walk.state.readings['bore.head_end.vertical']).toBeUndefined()
  })

  it('is kept as late when it was half keyed as the prompt fell', () => {
    const walk = boreAt(LIFE_MS)
    walk.bring({ do: 'tick' })
    expect(walk.key('9.5033')).toBeNull()
    expect(walk.last).toMatchObject({ type: 'reading.late', place: 'bore.head_end.vertical' })
    expect(walk.key('9.5034')).toBe('words')
  })

  it('is no reading once anything else was done since, or when its gate had fallen before it was asked', () => {
    const stopped = boreAt(LIFE_MS)
    stopped.bring({ do: 'tick' })
    stopped.keys('stop', '8', 'somebody fell', '?', 'release', 'KH', 'he is well')
    expect(stopped.key('9.5033')).toBe('words')
    const paper = new Walk().throughGate().keys('1', '1', '71.2')
    at(paper, firstGasMs(paper) + LIFE_MS).bring({ do: 'tick' })
    paper.keys('70.4', '1', '9.5000')
    expect(paper.prompt).toMatchObject({ kind: 'clear', before: { id: 'bore' } })
    expect(paper.key('9.5033')).toBe('words')
  })

  it('counts for nothing until confirmed behind the gate, and not at all if not', () => {
    const walk = boreAt(LIFE_MS).keys('9.5033', 'ALL OUT', ...GAS_LINES)
    expect(walk.bring({ do: 'settle-late', kept: true })).toBe('not-asked')
    walk.keys('ML')
    expect(walk.prompt.kind).toBe('late')
    const no = walk.copy().keys('2')
    expect(no.state.readings['bore.head_end.vertical']).toBeUndefined()
    expect(no.prompt).toMatchObject({ kind: 'read', place: { key: 'bore.head_end.vertical' } })
    walk.keys('1')
    expect(walk.state.readings['bore.head_end.vertical']).toMatchObject([
      { typed: '9.5033', keptBecause: expect.stringMatching(/after the gate had closed/) },
    ])
  })

  it('is still doubted for its size when confirmed', () => {
    const walk = boreAt(LIFE_MS).keys('9.60', 'ALL OUT', ...GAS_LINES, 'ML', '1')
    expect(walk.prompt.kind).toBe('doubt')
    expect(walk.state.readings['bore.head_end.vertical']).toBeUndefined()
  })

  it('does not keep what is no figure', () => {
    const walk = boreAt(LIFE_MS)
    expect(walk.key('9,503')).not.toBeNull()
    expect(walk.state.late).toBeNull()
  })
})

describe('a question of several lines when the gate falls', () => {
  it('gives way to coming out, except a note', () => {
    const walk = new Walk().throughGate().keys('2')
    expect(walk.talk.ask?.kind).toBe('object')
    at(walk, firstGasMs(walk) + LIFE_MS).bring({ do: 'tick' })
    expect(walk.key('oil on the wall')).toBe('words')
    expect(walk.talk.ask).toBeNull()
    walk.keys('note', 'all are out')
    expect(walk.last).toMatchObject({ type: 'note.written', text: 'all are out' })
  })
})

describe('the foot of the sheet', () => {
  const text = (walk: Walk) => foot(walk.engine.defs, walk.state, walk.now)

  it('gives age and time of lapse, warns from five minutes before, and never calls a test good', () => {
    expect(text(boreAt(60_000)).text).toMatch(/Gas 1 min old, lapses \d\d:\d\d/)
    expect(text(boreAt(LIFE_MS - 300_001)).warning).toBeNull()
    expect(text(boreAt(LIFE_MS - 300_000)).warning).toMatch(
      /lapses at \d\d:\d\d, in 5 min: finish and come out/,
    )
    expect(text(boreAt(LIFE_MS)).text).toMatch(/Gas lapsed/)
    for (const ms of [0, LIFE_MS / 2, LIFE_MS - 1])
      expect(text(boreAt(ms)).text).not.toMatch(/good|ok|safe|valid/i)
  })

  it('wakes at the very moment of the lapse', () => {
    const walk = boreAt(LIFE_MS - 700)
    expect(nextChangeMs(walk.engine.defs, walk.state, walk.now)).toBe(700)
  })
})
