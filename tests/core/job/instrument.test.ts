// An instrument found out of calibration: what it read is listed and falls, with every verdict, decision and gate on it.
import { describe, expect, it } from 'vitest'
import { outcomeOf } from '../../../src/core/job/outcome.ts'
import { openStop, standing, stands } from '../../../src/core/job/state.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'
import { violations } from './invariants.ts'
import { momentOf } from './schedules.ts'

const doubt = (walk: Walk, instrument: string, why = 'dropped last week', says = 'the laboratory') =>
  walk.bring({ do: 'doubt-instrument', instrument, why, says })
const readWith = (walk: Walk, id: string) =>
  walk.entries.filter((e) => 'place' in e && 'instrument' in e && e.instrument === id).map((e) => e.seq)

describe('an instrument found out of calibration', () => {
  it('has every reading listed by number, and none of them stands', () => {
    const walk = new Walk().toVerdict()
    const seqs = readWith(walk, 'M-3')
    expect(seqs).toHaveLength(12 + 4 + 1 + 2)
    expect(doubt(walk, 'M-3')).toBeNull()
    expect(walk.entries.find((e) => e.type === 'instrument.doubted')).toMatchObject({
      readings: seqs,
      voids: ['bore_judged'],
    })
    const left = Object.keys(walk.state.readings).flatMap((p) => standing(walk.state, p))
    expect(new Set(left.map((r) => r.instrument))).toEqual(new Set(['T-2']))
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('leaves HOLD until all is measured and judged again, with another one', () => {
    const two = exampleDefs({
      instruments: (text) => text.replace(/(id: M-1\n[\s\S]*?due: )\d{4}-\d{2}-\d{2}/, '$12027-01-31'),
    })
    const walk = new Walk(two).toVerdict().keys('1', 'KH', 'read again after 4000 h')
    expect(outcomeOf(walk.engine.defs, walk.state)).toBe('MONITOR')
    doubt(walk, 'M-3')
    expect(walk.last).toMatchObject({ voids: ['bore_judged', 'disposition'] })
    expect(outcomeOf(walk.engine.defs, walk.state)).toBe('HOLD')
    expect(walk.state.dispositions.disposition?.void).toBe(true)
    expect(walk.prompt).toMatchObject({ kind: 'read', step: { id: 'gauge_temp_before' } })
    walk.keys('70.4')
    expect(walk.prompt).toMatchObject({ kind: 'pick', seat: { id: 'gauge' } })
    expect(walk.bring({ do: 'pick', seat: 'gauge', instrument: 'M-3' })).toBe('doubted')
    expect(walk.prompt.kind).toBe('pick')
  })

  it('takes the temperatures with it that were taken for what it read, and no other', () => {
    const walk = new Walk().toVerdict()
    doubt(walk, 'M-3')
    const fallen = walk.entries.findLast((e) => e.type === 'instrument.doubted')
    const of = (seqs: readonly number[] = []) =>
      seqs.map((seq) => {
        const entry = walk.entries[seq]
        return entry?.type === 'reading.taken' ? entry.step : entry?.type
      })
    expect(of(fallen?.temperatures)).toEqual(['gauge_temp_before', 'part_temp_after', 'gauge_temp_after'])
    const live = Object.values(walk.state.readings).flat().filter(stands)
    expect(live.map(({ step }) => step)).toEqual(['part_temp_before'])
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('takes them with it before it read anything, where it lies ready', () => {
    const walk = new Walk().throughGate().keys('1', '1', '71.2', '70.4', '1')
    doubt(walk, 'M-3')
    expect(walk.last).toMatchObject({ readings: [], temperatures: [expect.any(Number)] })
    expect(walk.prompt).toMatchObject({ kind: 'read', step: { id: 'gauge_temp_before' } })
  })

  it('shuts the gates it was a test for, and calls people out', () => {
    const walk = new Walk().toBore()
    doubt(walk, 'G-7')
    expect(walk.last).toMatchObject({ type: 'gate.closed', cause: 'instrument' })
    expect(walk.last).toMatchObject({ items: expect.arrayContaining(['oxygen_breathing', 'witness']) })
    expect(walk.prompt.kind).toBe('clear')
    walk.keys('ALL OUT')
    expect(walk.prompt).toMatchObject({ kind: 'pick', seat: { id: 'meter' } })
    expect(walk.bring({ do: 'pick', seat: 'meter', instrument: 'G-7' })).toBe('doubted')
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('calls people out also from a gate that is only half shown', () => {
    const walk = new Walk().throughGate()
    const half = new Walk().toGate()
    for (const e of ['L-101', 'L-102', 'L-103', 'L-104', 'L-105', 'L-106']) half.key(e)
    half.keys('NO START', 'NO FLOW', 'BLOCKED BOTH WAYS', '1', 'METER ANSWERED', '20.9')
    doubt(half, 'G-7')
    expect(half.prompt.kind).toBe('clear')
    expect(walk.state.gates.hold_point?.status).toBe('open')
  })

  it('takes a doubted or late reading of its own with it', () => {
    const walk = new Walk().toBore().keys('9.60')
    const { seq } = walk.last
    doubt(walk, 'M-3')
    expect(walk.state.doubt).toBeNull()
    expect(walk.last).toMatchObject({ readings: expect.arrayContaining([seq]) })
  })

  it('cannot have its readings corrected', () => {
    const walk = new Walk().toBore().keys('9.5033')
    const { seq } = walk.last
    doubt(walk, 'M-3')
    expect(walk.bring({ do: 'correct', of: seq, typed: '9.5034', why: 'misread' })).toBe('void')
  })

  it.each([
    ['M-1', 'dropped', 'the laboratory', 'not-picked'],
    ['X-9', 'dropped', 'the laboratory', 'not-picked'],
    ['M-3', '1', 'the laboratory', 'no-words'],
    ['M-3', 'dropped', '', 'no-words'],
  ])('is not %j because %j says %j: %s', (instrument, why, says, code) => {
    const walk = new Walk().toBore().keys('9.5033')
    expect(doubt(walk, instrument, why, says)).toBe(code)
    expect(walk.state.doubted).toEqual({})
  })

  it('is named once, by somebody signed on', () => {
    const walk = new Walk().toBore()
    expect(doubt(walk, 'M-3')).toBeNull()
    expect(doubt(walk, 'M-3')).toBe('doubted')
    walk.bring({ do: 'leave' })
    expect(doubt(walk, 'T-2')).toBe('left')
    walk.bring({ do: 'take-up' })
    expect(doubt(walk, 'T-2')).toBe('not-asked')
  })

  it('is heard under STOP, which it does not lift', () => {
    const walk = new Walk().toVerdict().keys('stop')
    expect(doubt(walk, 'M-3')).toBeNull()
    expect(openStop(walk.state)).not.toBeNull()
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('is asked for in words, and what would fall is listed before it does', () => {
    const walk = new Walk().toVerdict().keys('instrument', '3')
    expect(walk.talk.ask).toMatchObject({ kind: 'doubt-why', instrument: 'M-3' })
    const said = walk.said.slice(-25)
    expect(said).toContain('These would no longer stand:')
    expect(said.filter((line) => /^ {2}\d/.test(line))).toHaveLength(22)
    expect(said).toContain('And the temperatures that were taken for what it read:')
    expect(said.at(-1)).toBe('This would make void: Bore judged.')
    walk.keys('reads two thousandths large', 'certificate C-1183')
    expect(walk.entries.find((e) => e.type === 'instrument.doubted')).toMatchObject({
      instrument: 'M-3',
      why: 'reads two thousandths large',
      says: 'certificate C-1183',
    })
  })
})

describe('after the job was closed', () => {
  const closed = () => new Walk().toVerdict().keys('1', 'KH', 'read again after 4000 h', '')
  const late = (walk: Walk, person: string | undefined, instrument = 'M-3') =>
    walk.bring({
      do: 'doubt-instrument',
      instrument,
      why: 'dropped',
      says: 'the laboratory',
      ...(person === undefined ? {} : { person }),
    })

  it('is the one thing it still takes, and its outcome falls to HOLD', () => {
    const walk = closed()
    expect(walk.state.closed).toBe('MONITOR')
    expect(late(walk, 'ML')).toBeNull()
    expect(walk.last).toMatchObject({
      type: 'instrument.doubted',
      by: 'ML',
      person: 'ML',
      signed: 'pin',
    })
    expect(walk.state).toMatchObject({ closed: 'HOLD', fellFrom: 'MONITOR' })
    expect(outcomeOf(walk.engine.defs, walk.state)).toBe('HOLD')
    expect(walk.bring({ do: 'note', text: 'one more word' })).toBe('closed')
    expect(late(walk, 'ML')).toBe('doubted')
  })

  it('leaves STOP, which is worse than HOLD', () => {
    const walk = closed()
    walk.state = { ...walk.state, closed: 'STOP' }
    expect(late(walk, 'ML')).toBeNull()
    expect(walk.state).toMatchObject({ closed: 'STOP', fellFrom: null })
  })

  it('leaves the outcome where no verdict rests on it', () => {
    const walk = closed()
    expect(late(walk, 'ML', 'G-7')).toBeNull()
    expect(walk.state).toMatchObject({ closed: 'MONITOR', fellFrom: null })
  })

  it.each([
    [undefined, 'unknown-person'],
    ['XX', 'unknown-person'],
    ['TS', 'trainee'],
  ])('is signed, not by %j', (person, code) => {
    const walk = closed()
    const before = walk.entries.length
    expect(late(walk, person)).toBe(code)
    expect(walk.entries).toHaveLength(before)
  })

  it('is refused on a clock that stands before the last line', () => {
    const walk = closed()
    walk.now = { ...walk.now, ms: walk.now.ms - 60_000 }
    expect(late(walk, 'ML')).toBe('clock')
    walk.now = { ...walk.now, ms: Number.NaN }
    expect(late(walk, 'ML')).toBe('clock')
  })
})
