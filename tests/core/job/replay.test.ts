// The live state is nothing but its entries: written to JSON, checked as they come from disk, and folded, they come to
// the same state at every prefix.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Entry } from '../../../src/core/job/entries.ts'
import { readEntries } from '../../../src/core/job/entry-schema.ts'
import { fold, opening } from '../../../src/core/job/fold.ts'
import type { Input } from '../../../src/core/job/input.ts'
import type { State } from '../../../src/core/job/state.ts'
import { AFTER_LINES, BORE_LINES, GAS_LINES, Walk, WORDS_AGAIN } from '../../helpers/example.ts'
import { smallDefs, TWO_GATES, tell } from '../../helpers/small-job.ts'
import { perform, scheduleWithPeople } from './schedules.ts'

/** What falls when somebody comes onto the job. */
const GATE_LINES_AGAIN = [...WORDS_AGAIN, ...GAS_LINES, 'PB']

/** As the journal gives them back. */
function fromDisk(entries: readonly Entry[]): readonly Entry[] {
  const stored = entries.map((e) => JSON.parse(JSON.stringify({ ...e, prev: '00', hash: '00' })) as unknown)
  const read = readEntries(stored)
  if (!read.ok) throw new Error(read.error.say)
  return read.value
}

/** Every kind of entry there is; a kind left out here is a type error. */
const ALL_KINDS = Object.keys({
  ...{ 'job.opened': 0, 'person.signed-on': 0, 'machine.named': 0, 'machine.mismatched': 0 },
  ...{
    'person.came-on': 0,
    'person.signed-off': 0,
    'job.handed-over': 0,
    'pin.missed': 0,
    'instrument.picked': 0,
    'instrument.put-back': 0,
    'step.done': 0,
    'step.confirmed': 0,
    'step.objected': 0,
  },
  ...{ 'step.reopened': 0, 'evidence.given': 0, 'evidence.failed': 0, 'gate.opened': 0, 'gate.closed': 0 },
  ...{
    'wait.begun': 0,
    'people.clear': 0,
    'reading.taken': 0,
    'reading.doubted': 0,
    'reading.late': 0,
    'doubt.settled': 0,
  },
  ...{
    'late.settled': 0,
    'reading.dropped': 0,
    'reading.corrected': 0,
    'reading.not-applicable': 0,
    'finding.observed': 0,
  },
  ...{ 'instrument.doubted': 0, 'not-applicable.taken-back': 0, 'finding.corrected': 0, 'branch.left': 0 },
  ...{
    'verdict.given': 0,
    'deviation.permitted': 0,
    'disposition.set': 0,
    'disposition.countersigned': 0,
    'note.written': 0,
    'left.adopted': 0,
    'remark.made': 0,
    'file.attached': 0,
    'stop.raised': 0,
    'stop.explained': 0,
  },
  'readings.questioned': 0,
  'pin.fitted': 0,
  ...{ 'practice.asked': 0, 'practice.called': 0, 'practice.named': 0, 'practice.hinted': 0 },
  ...{ 'point.signed': 0, 'point.notice-given': 0, 'point.not-attended': 0 },
  ...{ 'stop.released': 0, 'stop.stands': 0, 'thing.placed': 0, 'thing.seen': 0, 'thing.accounted': 0 },
  ...{ 'paper.row': 0, 'paper.unread': 0, 'paper.signed': 0 },
  ...{ 'elsewhere.seen': 0, 'elsewhere.gone': 0 },
  ...{
    'things.handed-on': 0,
    'job.left': 0,
    'job.taken-up': 0,
    'record.taken-in': 0,
    'clock.moved': 0,
    'job.closed': 0,
  },
} satisfies Record<Entry['type'], 0>)

const THINGS = ['thing.placed', 'thing.seen', 'thing.accounted', 'things.handed-on']

/** In the walk that takes things back, below. */
const TAKEN_BACK: readonly Entry['type'][] = [
  'instrument.doubted',
  'not-applicable.taken-back',
  'finding.corrected',
  'branch.left',
  'deviation.permitted',
]

/** In the walk of a sheet, paper.test.ts. */
const PAPER: readonly Entry['type'][] = ['paper.row', 'paper.unread', 'paper.signed']

const POINTS: readonly Entry['type'][] = ['point.signed', 'point.notice-given', 'point.not-attended']

function statesOf(entries: readonly Entry[]): State[] {
  const [first, ...rest] = entries
  if (first?.type !== 'job.opened') throw new Error('not opened')
  const states = [opening(first)]
  for (const e of rest) states.push(fold(states[states.length - 1] as State, e))
  return states
}

function same(walk: Walk): void {
  const disk = fromDisk(walk.entries)
  expect(disk).toStrictEqual(walk.entries)
  const live = statesOf(walk.entries)
  expect(statesOf(disk)).toStrictEqual(live)
  expect(live[live.length - 1]).toStrictEqual(walk.state)
}

describe('live state equals replay', () => {
  it('at every prefix of a whole job with every kind of entry a person can make', () => {
    const walk = new Walk().keys('RO', 'TC-402-1', 'TC-401-1', '')
    walk.bring({ do: 'reopen', step: 'brief', why: 'once more' })
    walk.bring({ do: 'pin-missed', person: 'ML' })
    walk.bring({ do: 'pin-fitted', person: 'ML' })
    walk.keys('')
    walk.keys(
      'L-101',
      'L-102',
      'L-103',
      'L-104',
      'L-105',
      'L-106',
      'no start',
      'no flow',
      'blocked both ways',
    )
    // Oxygen inside too low for the meter: it is put back; only a STOP gets that asked again.
    walk.keys(
      '1',
      'meter answered',
      '18',
      'ALL OUT',
      '20.9',
      '0',
      '0',
      '9.0',
      '0',
      'stop',
      '1',
      'bore full of nitrogen',
      '?',
    )
    walk.keys(
      'release',
      'KH',
      'blown through with air',
      'ALL OUT',
      'L-101',
      'L-102',
      'L-103',
      'L-104',
      'L-105',
      'L-106',
    )
    walk.keys(
      'no start',
      'no flow',
      'blocked both ways',
      '1',
      'meter answered',
      '20.9',
      '0',
      '0',
      '20.9',
      '0',
      '0',
      'ML',
    )
    walk.keys(
      '2',
      'oil on the wall',
      '1',
      '1',
      '71.2',
      '70.4',
      '1',
      '9.5000',
      '9.60',
      '2',
      '9.60',
      '3',
      'it is worn',
    )
    walk
      .keys('9.5033', '9.5034', 'n/a', 'cannot get there')
      .wait(31)
      .keys('9.5068', 'ALL OUT', '20.9', '0', '0')
    walk.keys('20.9', '0', '0', 'ML', '1', 'correct', 'sheet 4', '1', 'misread', '71.3', 'note all fine')
    walk.bring({
      do: 'attach',
      name: 'a.jpg',
      given: 'a.jpg',
      size: 1,
      sha256: 'ab'.repeat(32),
      caption: 'wall',
    })
    walk.keys('stop', '8', 'a shout', 'ML')
    walk.keys(
      'release',
      'KH',
      'nothing there',
      'ALL OUT',
      'sign on',
      'ML',
      'sign off',
      'ML',
      'hand over',
      'ML',
      'leave',
    )
    walk.bring({ do: 'take-up' })
    walk.bring({ do: 'clock-moved', seconds: -70 })
    same(walk)
    // The rest is in the walk to the end, below.
    const kinds = new Set(walk.entries.map((e) => e.type))
    // A wait: the shipped procedure has none; a walk of its own is in evidence-kinds.test.ts and in the schedules below. So is
    // that a reading is dropped, in pending.test.ts.
    const rest = [
      'reading.dropped',
      'disposition.countersigned',
      // In questions.test.ts.
      'readings.questioned',
      ...['wait.begun', 'finding.observed', 'verdict.given', 'disposition.set', 'job.closed'],
      ...TAKEN_BACK,
      ...POINTS,
      ...PAPER,
      'stop.stands',
      ...THINGS,
      // In take-in-random.test.ts.
      'record.taken-in',
      // In adopt.test.ts.
      ...(['left.adopted', 'remark.made'] as const),
      // In session.test.ts of practice.
      ...['practice.asked', 'practice.called', 'practice.hinted', 'practice.named'],
      // Of two jobs, which have schedules of their own.
      ...['elsewhere.seen', 'elsewhere.gone'],
    ]
    expect([...kinds, ...rest].sort()).toEqual([...ALL_KINDS].sort())
  })

  it('to the verdict and the end', () => {
    const walk = new Walk().toVerdict().keys('1', 'KH', 'read again, none given', '')
    expect(walk.state.closed).toBe('MONITOR')
    same(walk)
  })

  it('with a word by radio that was not so, another that was, and the end', () => {
    const walk = new Walk().toVerdict().keys('sign on', 'ML', '1', 'radio', 'KH', 'run it', 'ML', 'ALL OUT')
    walk.keys('countersign', 'KH', '2', '1', 'radio', 'KH', 'read it again', 'ML', ...GATE_LINES_AGAIN)
    walk.keys('', 'KH', '1')
    expect(walk.entries.flatMap((e) => (e.type === 'disposition.countersigned' ? [e.agrees] : []))).toEqual([
      false,
      true,
    ])
    expect(walk.state.closed).toBe('MONITOR')
    same(walk)
  })

  it('to the end of a job that places things', () => {
    const walk = new Walk(smallDefs([tell('in', { places: [{ id: 'pin', what: 'pin' }] })]))
    walk.keys('RO', 'TC-401-1', '', 'in the crank', 'P-1', 'placed', 'a sling', 'on the hook', '')
    walk.keys('taken', '1', 'RO', 'ML', 'hand on', 'KH', 'the next shift lowers it')
    expect(walk.entries.map((e) => e.type)).toEqual(expect.arrayContaining(THINGS))
    same(walk)
  })

  it('to the end under a STOP that is never released', () => {
    const walk = new Walk()
      .toBore()
      .keys('stop', '8', 'a shout', '?', 'stop', 'same', 'ML', 'cause', '1', '6')
    walk.keys('he fell', 'PB', 'close', 'KH', 'find out why')
    expect(walk.state.closed).toBe('STOP')
    same(walk)
  })

  it('while things are taken back, and after the job was closed', () => {
    const walk = new Walk().throughGate()
    walk.keys('deviation', '1', 'one repeat is enough', 'no time', 'site rule MT-2', '4000 h', 'KH')
    walk.keys('1', '1', '71.2', '70.4', '1', '9.5000', 'n/a', 'a lamp is there')
    walk.bring({ do: 'take-back-not-applicable', place: 'bore.head_end.vertical', why: 'taken out' })
    walk.keys(...BORE_LINES, ...AFTER_LINES)
    walk.bring({ do: 'correct-finding', step: 'strip', condition: 'gone', why: 'wrong line' })
    walk.keys('5', 'KH', 'read again after 4000 h', 'maker letter 12', '4000 h', '91000', '')
    expect(walk.state.closed).toBe('MONITOR')
    same(walk)
    walk.bring({
      do: 'doubt-instrument',
      instrument: 'M-3',
      why: 'dropped',
      says: 'the laboratory',
      person: 'ML',
    })
    expect(walk.state.closed).toBe('HOLD')
    same(walk)
    expect(walk.entries.map((e) => e.type)).toEqual(expect.arrayContaining([...TAKEN_BACK]))
  })

  it('with inspection points', () => {
    const roles = ['lead']
    const steps = [
      tell('bolts', { point: { kind: 'hold', roles } }),
      tell('cover', { point: { kind: 'witness', roles, notice: '1 h' } }),
      tell('end', { point: { kind: 'review', roles } }),
    ]
    const walk = new Walk(smallDefs(steps)).keys('RO', 'TC-401-1', '', 'KH', '', 'notice', '1', 'KH by radio')
    walk.wait(60).keys('not attended', '', 'PB')
    expect(walk.state.closed).toBe('NONE')
    same(walk)
    expect(walk.entries.map((e) => e.type)).toEqual(expect.arrayContaining([...POINTS]))
  })

  it('over random schedules', { timeout: 120_000 }, () => {
    const small = smallDefs(TWO_GATES)
    const starts = [() => new Walk().toBore(), () => new Walk().toVerdict(), () => new Walk(small)]
    fc.assert(
      fc.property(fc.constantFrom(...starts), scheduleWithPeople, (start, actions) => {
        const walk = start()
        const inputs: Input[] = []
        for (const a of actions) perform(walk, a, inputs)
        same(walk)
      }),
      { numRuns: 120, seed: 4 },
    )
  })
})

describe('what comes from disk', () => {
  const good = () => {
    const walk = new Walk().throughGate()
    return walk.entries.map((e) => ({ ...e, prev: '00', hash: '00' })) as Record<string, unknown>[]
  }
  it.each([
    ['a time that cannot be read', { at: 'yesterday' }],
    ['an entry of an unknown type', { type: 'gate.forced' }],
    ['a field that no entry has', { trusted: true }],
    ['no hash', { hash: undefined }],
    ['a number that is none', { seq: Number.NaN }],
    ['a second opening', { type: 'job.opened' }],
  ])('is refused with %s, naming the line', (_what, change) => {
    const entries = good()
    entries[5] = { ...entries[5], ...change }
    const read = readEntries(entries)
    expect(read.ok ? '' : read.error.say).toMatch(/Line 6/)
  })

  it('is refused without its opening, from a newer format, or empty', () => {
    expect(readEntries(good().slice(1)).ok).toBe(false)
    expect(readEntries([]).ok).toBe(false)
    const newer = good()
    newer[0] = { ...newer[0], format: 99 }
    expect(readEntries(newer)).toMatchObject({ ok: false, error: { code: 'newer' } })
  })
})
