// Measured values, numbers, waits and lift plans at a gate: what passes, what fails on record, what is only refused.
import { describe, expect, it } from 'vitest'
import { gateState } from '../../../src/core/job/gate.ts'
import { foot, nextChangeMs } from '../../../src/core/sheet/foot.ts'
import {
  BLINDS,
  everyKindFile,
  kindsDefs,
  LIFT,
  NO_RISE,
  OWN_LOCK,
  PERMIT,
  SPACE,
  withGauge,
} from '../../helpers/all-kinds.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'
import { rightLine } from '../../helpers/right-line.ts'
import { gate, LOCKS, NO_START, type Raw, tell, WITNESS } from '../../helpers/small-job.ts'

const at = (evidence: Raw[], change = {}): Walk => {
  const steps = [gate('g', ['start'], [...evidence, WITNESS]), tell('in', { exposes: ['start'] })]
  return new Walk(kindsDefs(steps, change)).keys('RO', 'TC-401-1')
}
const given = (walk: Walk) => Object.keys(gateState(walk.state, 'g').given)
const types = (walk: Walk, last: number) => walk.entries.slice(-last).map((e) => e.type)

describe('every kind, from a file that passes check', () => {
  it('is walked to its end, and the air is asked again after the head came off', () => {
    const walk = new Walk(exampleDefs({ procedure: everyKindFile }))
    const asked: string[] = []
    for (let n = 0; n < 90 && walk.state.closed === null; n++) {
      if (walk.prompt.kind === 'evidence') {
        asked.push(walk.prompt.item.key)
        if (walk.prompt.item.evidence.kind === 'wait') walk.wait(10)
      }
      walk.key(rightLine(walk.engine.defs, walk.state, walk.talk))
    }
    expect(walk.state.closed).toBe('NONE')
    expect(asked.slice(-3)).toEqual(['oxygen', 'burns', 'witness'])
    expect(asked.filter((key) => key === 'head_lift.load' || key === 'locks.breaker')).toHaveLength(2)
  })
})

describe('a measured value', () => {
  const measured = (typed: string, change = {}, gauge = {}) => {
    const walk = at([{ ...SPACE, ...change }], { instruments: withGauge(gauge) }).keys('1')
    walk.key(typed)
    return walk
  }

  it.each([['0'], ['0.3'], ['0.02 barg']])(
    'passes at %s: inside by more than the gauge may be off',
    (typed) => {
      expect(given(measured(typed))).toEqual(['space'])
    },
  )

  it.each([
    ['0.4', /too close to 0.5 psig, as P-4 may be off by 0.2 psi/],
    ['0.5', /too close/],
    ['0.51', /above 0.5 psig/],
    ['20', /above 0.5 psig/],
    ['15 barg', /above/],
  ])('fails at %s on record, and calls everybody clear', (typed, why) => {
    const walk = measured(typed)
    expect(walk.entries.slice(-2)).toMatchObject([
      { type: 'evidence.failed', item: 'space', instrument: 'P-4', why: expect.stringMatching(why) },
      { type: 'gate.closed', cause: 'failed' },
    ])
    expect(given(walk)).toEqual([])
    expect(walk.prompt.kind).toBe('clear')
  })

  it.each(['', 'y', '0 psi', '0 psia', '0,4', 'nan', '1e999', '-', '1 %LEL'])(
    'refuses %j, with nothing on record',
    (typed) => {
      const walk = at([SPACE]).keys('1')
      const before = walk.entries.length
      expect(walk.key(typed)).not.toBeNull()
      expect(walk.entries).toHaveLength(before)
    },
  )

  const psi = (value: number) =>
    ({
      text: `${value} psi`,
      kind: 'pressure-difference',
      value,
      unit: 'psi',
      si: value * 6894.757293168,
    }) as const

  it.each([
    ['0', { resolution: psi(1) }, /steps of 1 psi, too coarse for a limit of 0.5 psig/],
    ['0', { uncertainty: { expanded: psi(0.6), k: 2, source: 'C' } }, /off by 0.6 psi \(k = 2\), too coarse/],
    ['0', { uncertainty: { expanded: psi(0.3), k: 1, source: 'C' } }, /too coarse/],
    ['0', { uncertainty: { expanded: psi(Number.NaN), k: 2, source: 'C' } }, /nobody has stated/],
    ['-1', {}, /reads 0 psig to 15 psig, so its figure here means nothing/],
  ])(
    'of %s never passes on a gauge that cannot tell it: put back, with no word about the place',
    (typed, gauge, why) => {
      const walk = measured(typed, {}, gauge)
      expect(types(walk, 2)).toEqual(['evidence.failed', 'instrument.put-back'])
      expect(walk.entries.at(-2)).toMatchObject({ why: expect.stringMatching(why) })
      expect(given(walk)).toEqual([])
      expect(walk.prompt.kind).toBe('pick')
    },
  )

  it.each([
    ['no bound', { at_most: undefined }, /no bound/],
    ['a bound of another quantity', { at_most: '1 in' }, /not in a unit/],
  ])('never passes with %s', (_what, change, why) => {
    const walk = measured('0', change)
    expect(walk.entries.at(-2)).toMatchObject({ type: 'evidence.failed', why: expect.stringMatching(why) })
  })

  it('lapses by its own life, alone with the witness, and says so', () => {
    const walk = at([{ ...NO_RISE, lasts: '1 min' }, SPACE])
      .keys('ALL SHUT IN')
      .wait(1)
    walk.keys('NO RISE', '1', '0', 'ML')
    expect(gateState(walk.state, 'g').status).toBe('open')
    walk.wait(30).bring({ do: 'tick' })
    expect(walk.last).toMatchObject({
      cause: 'lapsed',
      items: ['space', 'witness'],
      why: 'the gauge pressure, head-end space is past its life',
    })
    expect(given(walk)).toEqual(['no_rise'])
    walk.keys('ALL OUT', '0', 'ML')
    expect(gateState(walk.state, 'g').status).toBe('open')
  })

  it.each(['0 min', '-1 min'])('with a life of %s never opens its gate', (life) => {
    const defs = kindsDefs([gate('g', ['start'], [SPACE, WITNESS]), tell('in', { exposes: ['start'] })])
    const seconds = life === '0 min' ? 0 : -60
    for (const s of defs.steps) {
      if (s.step.kind !== 'gate') continue
      const [space] = s.step.evidence
      if (space?.kind === 'measured') Object.assign(space.life, { si: seconds })
    }
    const walk = new Walk(defs).keys('RO', 'TC-401-1', '1', '0', 'ML')
    expect(walk.entries.some((e) => e.type === 'gate.opened')).toBe(false)
  })
})

describe('numbers', () => {
  it('of a permit may be of an office, and stand twice', () => {
    const walk = at([PERMIT, { ...PERMIT, id: 'hot' }]).keys('hw-2026/114')
    expect(walk.last).toMatchObject({ type: 'evidence.given', shown: 'HW-2026/114' })
    expect(walk.key('HW-2026/114')).toBeNull()
    for (const no of ['', 'y', 'none', 'X'.repeat(25), '１２']) expect(at([PERMIT]).key(no)).toBe('number')
  })

  it('of blinds are one for each isolation point, and none twice', () => {
    const walk = at([BLINDS, { ...BLINDS, id: 'more' }]).keys('B-1')
    expect(given(walk)).toEqual(['blinds.breaker'])
    for (const again of ['B-1', 'b1', 'B1']) expect(walk.key(again)).toBe('number-twice')
    walk.keys('B-2')
    expect(walk.key('B-2')).toBe('number-twice')
    expect(given(walk)).toEqual(['blinds.breaker', 'blinds.barring'])
  })

  it('of a lock at a point and a lock of a person are of one sort', () => {
    const walk = at([LOCKS, OWN_LOCK]).keys('L-1', 'L-2')
    expect(walk.key('L-2')).toBe('number-twice')
    expect(walk.key('L-3')).toBeNull()
    expect(given(walk)).toContain('own_lock.RO')
  })
})

describe('a wait', () => {
  const begun = () => at([{ ...NO_RISE, lasts: '10 min' }]).keys('all shut in')

  it('begins with its own words, as an entry', () => {
    expect(at([NO_RISE]).key('NO RISE')).toBe('not-begun')
    expect(begun().last).toMatchObject({ type: 'wait.begun', item: 'no_rise', shown: 'ALL SHUT IN' })
  })

  it('is over exactly when it is, and says how long is left before', () => {
    const walk = begun()
    walk.stepMs = 0
    walk.wait(3)
    expect(walk.key('NO RISE')).toBe('too-soon')
    expect(walk.said.at(-1)).toMatch(/10 min is not over, with 7 min left/)
    walk.now = { ...walk.now, ms: walk.now.ms + 7 * 60_000 - 1 }
    expect(walk.key('NO RISE')).toBe('too-soon')
    walk.now = { ...walk.now, ms: walk.now.ms + 1 }
    expect(walk.key('y')).toBe('words')
    expect(walk.key('NO RISE')).toBeNull()
    expect(given(walk)).toEqual(['no_rise'])
  })

  it('is not begun a second time while it runs, but is after it was taken back', () => {
    const walk = begun().wait(9)
    expect(walk.key('ALL SHUT IN')).toBe('too-soon')
    walk.keys('back', 'yes')
    expect(walk.last).toMatchObject({ type: 'gate.closed', cause: 'again', items: ['no_rise'] })
    expect(walk.wait(5).key('NO RISE')).toBe('not-begun')
  })

  it.each([
    ['STOP', (w: Walk) => w.keys('stop', '8', 'a shout', '?', 'release', 'KH', 'nobody was hurt')],
    ['leaving', (w: Walk) => w.keys('leave').bring({ do: 'take-up' })],
    ['being taken up', (w: Walk) => w.bring({ do: 'take-up' })],
    ['a clock that moved', (w: Walk) => w.bring({ do: 'clock-moved', seconds: 900 })],
    ['a clock set back', (w: Walk) => w.wait(-6).bring({ do: 'tick' })],
  ])('is struck by %s', (_what, happens) => {
    const walk = begun().wait(5)
    happens(walk)
    if (walk.prompt.kind === 'sign-on') walk.keys('RO', 'TC-401-1')
    walk.wait(60)
    expect(walk.key('NO RISE')).toBe('not-begun')
    expect(gateState(walk.state, 'g').struck).toMatchObject([{ item: 'no_rise', shown: 'ALL SHUT IN' }])
  })

  it('is struck by evidence that lapses or fails beside it', () => {
    const walk = at([{ ...SPACE, life: '10 min' }, NO_RISE])
      .keys('1', '0', 'ALL SHUT IN')
      .wait(10)
    walk.bring({ do: 'tick' })
    expect(walk.last).toMatchObject({ cause: 'lapsed', items: ['space', 'no_rise'] })
    walk.keys('0')
    expect(walk.key('NO RISE')).toBe('not-begun')
  })

  it('is watched again, with what was said after it, when a space it was about is found under pressure', () => {
    const [UPPER, BLEED] = [
      { ...SPACE, id: 'upper', place: 'crank-end space' },
      { ...NO_START, id: 'bleed', words: 'NO FLOW' },
    ]
    const steps = [
      gate(
        'g',
        ['start', 'fall'],
        [
          { ...NO_START, against: ['fall'] },
          { ...LOCKS, against: ['start'] },
          { ...NO_START, id: 'drain', words: 'DRAIN OPEN', against: ['start'] },
          { ...SPACE, against: ['start'] },
          { ...UPPER, against: ['start'], life: '2 h' },
          { ...NO_RISE, against: ['start'] },
          { ...BLEED, against: ['start'] },
          WITNESS,
        ],
      ),
      tell('in', { exposes: ['start'] }),
    ]
    const walk = new Walk(kindsDefs(steps)).keys('RO', 'TC-401-1', 'NO START', 'L-1', 'L-2', 'DRAIN OPEN')
    walk.keys('1', '0', '0', 'ALL SHUT IN').wait(15).keys('NO RISE', 'NO FLOW', 'ML')
    expect(walk.prompt.kind).toBe('tell')
    walk.wait(15).keys('', 'ALL OUT', '20')
    expect(walk.last).toMatchObject({
      type: 'gate.closed',
      cause: 'failed',
      items: ['upper', 'no_rise', 'bleed'],
    })
    expect(given(walk)).toEqual(['try_start', 'locks.breaker', 'locks.barring', 'drain'])
    walk.keys('ALL OUT', '0', '0')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'no_rise' } })
    expect(walk.key('NO RISE')).toBe('not-begun')
  })

  it('makes its beginner one who did it, also when another ended it', () => {
    const walk = begun().wait(10)
    walk.state = { ...walk.state, doer: 'KH' }
    walk.keys('NO RISE')
    expect(walk.last).toMatchObject({ type: 'evidence.given', by: 'KH' })
    expect(walk.key('RO')).toBe('self-witness')
  })

  it.each([0, -60, Number.NaN, Number.POSITIVE_INFINITY])('of %s s never ends', (si) => {
    const walk = begun()
    for (const s of walk.engine.defs.steps) {
      const [wait] = s.step.kind === 'gate' ? s.step.evidence : []
      if (wait?.kind === 'wait') Object.assign(wait.lasts, { si })
    }
    expect(walk.wait(1e6).key('NO RISE')).toBe('too-soon')
  })

  it('is in the foot before what lapses, which is named when it is near', () => {
    const walk = at([
      { ...SPACE, life: '12 min', place: 'the space behind the head-end cover, at the bleed' },
      NO_RISE,
    ])
    walk.keys('1', '0', 'ALL SHUT IN').wait(8)
    const { text, warning } = foot(walk.engine.defs, walk.state, walk.now)
    expect(text).toMatch(/TC-401-1 {3}RO {3}Wait: 7 min left$/)
    expect(warning).toMatch(/^Gauge pressure, the space behind the head-end cover, at the bleed lapses at/)
    walk.keys('back', 'yes')
    expect(foot(walk.engine.defs, walk.state, walk.now).text).toMatch(/Next lapse \d\d:\d\d$/)
  })

  it('is told in the foot by the minute, which wakes when that changes', () => {
    const walk = begun()
    const text = () => foot(walk.engine.defs, walk.state, walk.now).text
    expect(text()).toMatch(/Wait: 10 min left/)
    expect(nextChangeMs(walk.engine.defs, walk.state, walk.now)).toBeLessThanOrEqual(60_000)
    walk.now = { ...walk.now, ms: walk.now.ms + 30_500 }
    // 20 s before the wall clock's own minute would be too late for it.
    expect(nextChangeMs(walk.engine.defs, walk.state, walk.now)).toBeLessThanOrEqual(29_500)
    walk.wait(1)
    expect(text()).toMatch(/Wait: 9 min left/)
    walk.wait(9)
    expect(text()).toMatch(/Wait is over/)
  })
})

describe('a lift plan', () => {
  const full = (load: string, rating: string) => at([LIFT]).keys(load, rating)

  it.each([
    ['1800', '2000'],
    ['2000', '2000'],
    ['900 kg', '2000 lb'],
  ])('of %s on a sling for %s goes on to the sling', (load, rating) => {
    const walk = full(load, rating)
    expect(given(walk)).toEqual(['head_lift.load', 'head_lift.rating'])
    expect(walk.key('tag')).toBe('number')
    expect(walk.keys('S-12').key('inspected')).toBe('words')
    expect(walk.key('inspected today')).toBeNull()
  })

  it.each([
    ['2000.1', '2000'],
    ['1000 kg', '2000 lb'],
  ])(
    'of %s on a sling for %s fails on record with both figures, and both are asked again',
    (load, rating) => {
      const walk = full(load, rating)
      expect(walk.entries.slice(-2)).toMatchObject([
        {
          type: 'evidence.failed',
          item: 'head_lift.rating',
          why: expect.stringContaining('is more than the 2000 lb'),
        },
        { type: 'gate.closed', cause: 'overload', items: ['head_lift.load'] },
      ])
      expect(given(walk)).toEqual([])
      expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'head_lift.load' } })
    },
  )

  it.each(['', 'y', '0', '0.0 kg', '-5', 'nan', '2,000', '1e9', '5 ft'])(
    'refuses %j as a load or a rating',
    (typed) => {
      expect(at([LIFT]).key(typed)).not.toBeNull()
      const walk = at([LIFT]).keys('1800')
      expect(walk.key(typed)).not.toBeNull()
      expect(given(walk)).toEqual(['head_lift.load'])
    },
  )

  it('is of another day at midnight, whole', () => {
    const walk = full('1800', '2000').keys('S-12', 'INSPECTED TODAY', 'ML')
    walk.stepMs = 0
    walk.now = { ms: Date.UTC(2026, 2, 14, 23, 59, 59, 999), offsetMin: 0 }
    walk.bring({ do: 'tick' })
    expect(gateState(walk.state, 'g').status).toBe('open')
    walk.now = { ...walk.now, ms: walk.now.ms + 1 }
    walk.bring({ do: 'tick' })
    expect(walk.last).toMatchObject({ cause: 'lapsed', why: 'the head lift is of another day' })
    expect(given(walk)).toEqual([])
  })

  it('is warned of before midnight, and the foot wakes at it', () => {
    const walk = full('1800', '2000').keys('S-12', 'INSPECTED TODAY', 'ML')
    walk.now = { ms: Date.UTC(2026, 2, 14, 23, 57), offsetMin: 0 }
    const { defs } = walk.engine
    expect(foot(defs, walk.state, walk.now).warning).toBe(
      'Head lift lapses at 00:00, in 3 min: finish and come out.',
    )
    walk.now = { ms: Date.UTC(2026, 2, 14, 23, 59, 59, 400), offsetMin: 0 }
    expect(nextChangeMs(defs, walk.state, walk.now)).toBe(600)
  })

  it('is of another day when the wall clock says so, whatever its offset was', () => {
    const walk = full('1800', '2000').keys('S-12', 'INSPECTED TODAY', 'ML')
    walk.now = { ms: Date.UTC(2026, 2, 14, 22, 30), offsetMin: 120 }
    walk.bring({ do: 'tick' })
    expect(walk.last).toMatchObject({ cause: 'lapsed' })
  })
})
