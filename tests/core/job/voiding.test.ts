// What voids evidence besides time and STOP: work that lets a hazard in again, people who come, instruments found unfit.
import { describe, expect, it } from 'vitest'
import { fold } from '../../../src/core/job/fold.ts'
import { gateState, gatesOf } from '../../../src/core/job/gate.ts'
import { itemsMeasuredWith } from '../../../src/core/job/voiding.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { kindsDefs, LET_IN, METER_ANSWERED, OWN_LOCK, SPACE, withGauge } from '../../helpers/all-kinds.ts'
import { Walk } from '../../helpers/example.ts'
import {
  FLAMMABLE,
  gate,
  LOCKS,
  NO_START,
  OXYGEN,
  type Raw,
  readOne,
  tell,
  WITNESS,
} from '../../helpers/small-job.ts'

const status = (walk: Walk, id: string) => gateState(walk.state, id).status
const given = (walk: Walk, id: string) => Object.keys(gateState(walk.state, id).given)
const start = (steps: readonly Raw[], change = {}) =>
  new Walk(kindsDefs(steps, change)).keys('RO', 'TC-401-1')

describe('work that lets a hazard in', () => {
  const opened = () => start(LET_IN).keys('P-1', 'ML', 'METER ANSWERED', '1', '20.9', 'ML', '')

  it('shuts the gate that holds it, fells what proves it and the witness, and leaves the rest', () => {
    const walk = opened()
    expect(walk.entries.slice(-2)).toMatchObject([
      { type: 'step.done', step: 'opened' },
      {
        type: 'gate.closed',
        step: 'air',
        cause: 'opening',
        items: ['oxygen', 'witness'],
        why: 'opened can let in gas',
      },
    ])
    expect(given(walk, 'air')).toEqual(['bump'])
    expect(status(walk, 'isolated')).toBe('open')
  })

  it('has the gate asked before the very next step that faces what it holds, people called out first', () => {
    const walk = opened()
    expect(walk.prompt).toMatchObject({ kind: 'clear', gate: { id: 'air' }, before: { id: 'unblocked' } })
    walk.keys('ALL OUT', '20.9', 'ML')
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'unblocked' } })
    walk.keys('')
    expect(walk.last).toMatchObject({
      type: 'gate.closed',
      step: 'isolated',
      items: ['own_lock.RO', 'witness'],
    })
    expect(status(walk, 'air')).toBe('open')
  })

  it('shuts it again each time it is done: gone back to, it is itself behind the gate', () => {
    const walk = opened().keys('ALL OUT', '20.9', 'ML')
    walk.bring({ do: 'reopen', step: 'opened', why: 'a nut was left' })
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'opened' } })
    walk.keys('')
    expect(walk.last).toMatchObject({ type: 'gate.closed', step: 'air', cause: 'opening' })
    // Gone back to once more while the gate is shut.
    walk.bring({ do: 'reopen', step: 'opened', why: 'another' })
    expect(walk.prompt).toMatchObject({ kind: 'clear', gate: { id: 'air' }, before: { id: 'opened' } })
  })

  it('shuts it too for work that did not go as it should, and the work is behind it again', () => {
    const steps = [
      gate('air', ['bad_air'], [OXYGEN, WITNESS]),
      { ...tell('cover', { exposes: ['bad_air'], lets_in: ['bad_air'] }), kind: 'confirm', seen: 'Off.' },
    ]
    const walk = start(steps).keys('1', '20.9', 'ML', '2', 'a gasket is missing')
    expect(walk.entries.slice(-2)).toMatchObject([
      { type: 'step.objected', step: 'cover' },
      { type: 'gate.closed', step: 'air', cause: 'opening', items: ['oxygen', 'witness'] },
    ])
    expect(walk.prompt).toMatchObject({ kind: 'clear', before: { id: 'cover' } })
  })

  it('fells what is half given, and nothing where nothing of it was', () => {
    const half = [
      tell('cracked', { lets_in: ['bad_air'] }),
      gate(
        'air',
        ['bad_air'],
        [{ id: 'tag', kind: 'numbers', of: 'tag', per: 'once', ask: 'The tag.' }, ...[OXYGEN, WITNESS]],
      ),
      tell('in', { exposes: ['bad_air'] }),
    ]
    const walk = start(half).keys('')
    expect(walk.last.type).toBe('step.done')
    walk.keys('T-1')
    walk.bring({ do: 'reopen', step: 'cracked', why: 'once more' })
    expect(walk.last.type).toBe('step.reopened')
    walk.keys('')
    expect(walk.last).toMatchObject({ type: 'gate.closed', cause: 'opening', items: ['tag'] })
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'tag' } })
  })

  it.each([
    ['taken', ['9.5030']],
    ['doubted and kept', ['9.60', '3', 'it is worn']],
    ['not applicable', ['n/a', 'cannot get there']],
  ])('counts a reading once its step is complete: %s', (_what, lines) => {
    const once = { repeats: { at_least: 1, at_most: 1, within: '1 in' } }
    const steps = [
      gate('g', ['start'], [NO_START, WITNESS]),
      readOne('size', { exposes: ['start'], lets_in: ['start'], ...once }),
      tell('in', { exposes: ['start'] }),
    ]
    const walk = start(steps)
      .keys('NO START', 'ML', '1')
      .keys(...lines)
    expect(walk.last).toMatchObject({
      type: 'gate.closed',
      cause: 'opening',
      items: ['try_start', 'witness'],
    })
  })
})

describe('somebody who comes onto the job', () => {
  const steps = [
    gate('g', ['start'], [NO_START, OWN_LOCK, WITNESS]),
    tell('in', { exposes: ['start'] }),
    tell('out', { exposes: ['start'] }),
  ]
  /** The entry as it would come: nobody can sign on at an open gate today. */
  const joins = (walk: Walk, person: string) => {
    const { seq, at } = walk.last
    const entry = { type: 'person.signed-on', person, seq: seq + 1, at, by: person } as const
    walk.entries.push(entry)
    walk.state = { ...fold(walk.state, entry), doer: 'RO' }
    walk.bring({ do: 'tick' })
  }

  it('shuts an open gate for the missing number, and only that and the witness are asked', () => {
    const walk = start(steps).keys('NO START', 'P-1', 'ML')
    joins(walk, 'KH')
    expect(walk.last).toMatchObject({
      type: 'gate.closed',
      cause: 'people',
      items: ['witness'],
      why: 'KH came onto the job',
    })
    expect(walk.prompt.kind).toBe('clear')
    walk.keys('ALL OUT')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'own_lock.KH', person: 'KH' } })
    expect(walk.key('P-1')).toBe('number-twice')
    walk.keys('P-2', 'ML')
    expect(walk.last).toMatchObject({ type: 'gate.opened' })
  })

  it('is counted anew where people were counted clear, in a gate without gas too', () => {
    const COUNTED = { ...NO_START, id: 'counted', words: 'ALL COUNTED CLEAR' }
    const walk = start([gate('g', ['start'], [LOCKS, COUNTED, WITNESS]), tell('bar', { exposes: ['start'] })])
    walk.keys('L-1', 'L-2', 'ALL COUNTED CLEAR', 'ML')
    expect(walk.prompt).toMatchObject({ kind: 'tell' })
    walk.bring({ do: 'come-on', person: 'KH', proved: true })
    expect(walk.last).toMatchObject({ type: 'gate.closed', cause: 'people', items: ['counted', 'witness'] })
    expect(walk.prompt.kind).toBe('clear')
    walk.keys('ALL OUT')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'counted' } })
  })

  it('hangs a lock anew after going off: the one of before went with them', () => {
    const walk = start(steps).keys('NO START', 'P-1', 'ML')
    walk.bring({ do: 'come-on', person: 'KH', proved: true })
    walk.keys('ALL OUT', 'NO START', 'P-2', 'ML')
    expect(status(walk, 'g')).toBe('open')
    walk.bring({ do: 'sign-off', person: 'KH', proved: true })
    expect(status(walk, 'g')).toBe('open')
    walk.bring({ do: 'come-on', person: 'KH', proved: true })
    expect(status(walk, 'g')).toBe('closed')
    expect(given(walk, 'g')).toEqual(['own_lock.RO'])
    walk.keys('ALL OUT', 'NO START')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'own_lock.KH' } })
  })

  it('is asked for in a gate that is half given', () => {
    const walk = start(steps).keys('NO START')
    joins(walk, 'KH')
    expect(walk.keys('P-1').prompt).toMatchObject({ item: { key: 'own_lock.KH' } })
  })
})

describe('an instrument', () => {
  const LASTING = { ...SPACE, life: '48 h' }
  const steps = [
    gate('g', ['start'], [NO_START, LASTING, { ...LASTING, id: 'crank_space' }, WITNESS]),
    tell('in', { exposes: ['start'] }),
  ]

  it('found unfit while it is asked for voids what it measured, in every gate', () => {
    const due = { due: '2026-03-14', certificate: 'C' }
    const walk = start(steps, { instruments: withGauge({ calibration: due }) }).keys('NO START', '1', '0')
    const [g] = gatesOf(walk.engine.defs)
    expect(g && itemsMeasuredWith(walk.state, g, 'P-4')).toEqual(['space'])
    expect(g && itemsMeasuredWith(walk.state, g, 'G-7')).toEqual([])
    // Its calibration runs out at midnight; the space stands for longer.
    walk.wait(24 * 60)
    walk.keys('0')
    expect(walk.entries.slice(-2)).toMatchObject([
      { type: 'instrument.put-back', seat: 'low_range' },
      { type: 'gate.closed', cause: 'instrument', items: ['space'] },
    ])
    expect(given(walk, 'g')).toEqual(['try_start'])
  })
})

describe('words that are said of an instrument', () => {
  const BUMP = { ...NO_START, id: 'bump', words: 'METER ANSWERED', seat: 'meter' }
  const steps = [
    gate('g', ['bad_air', 'start'], [NO_START, BUMP, OXYGEN, FLAMMABLE, WITNESS]),
    tell('in', { exposes: ['bad_air'] }),
  ]

  it('fall when another is picked: it is tried before it is believed', () => {
    const walk = start(steps).keys('NO START', '1', 'METER ANSWERED', '20.9', '0', 'ML')
    expect(walk.prompt.kind).toBe('tell')
    walk.bring({ do: 'doubt-instrument', instrument: 'G-7', why: 'it failed the gas', says: 'KH' })
    walk.keys('ALL OUT')
    expect(walk.prompt.kind).toBe('pick')
    walk.keys('2')
    expect(walk.last).toMatchObject({ type: 'gate.closed', cause: 'again', items: ['bump'] })
    expect(given(walk, 'g')).toEqual(['try_start'])
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'bump' } })
    walk.keys('METER ANSWERED', '20.9', '0', 'ML')
    expect(walk.prompt.kind).toBe('tell')
  })

  it('stand while the same one is used', () => {
    const walk = start(steps).keys('NO START', '1', 'METER ANSWERED', '20.9', '0', 'ML').wait(31)
    walk.keys('', 'ALL OUT')
    expect(given(walk, 'g')).toEqual(['try_start', 'bump'])
  })
})

describe('several things that lapse', () => {
  const steps = [
    gate('g', ['start'], [{ ...NO_START, life: '30 min' }, METER_ANSWERED, OXYGEN, WITNESS]),
    tell('in', { exposes: ['start'] }),
  ]
  const opened = () => {
    const walk = start(steps)
    walk.stepMs = 0
    return walk.keys('NO START', 'METER ANSWERED', '1', '20.9', 'ML')
  }

  it('at one moment fall together and are named', () => {
    const walk = opened().wait(30)
    walk.bring({ do: 'tick' })
    expect(walk.last).toMatchObject({
      items: ['try_start', 'bump', 'oxygen', 'witness'],
      why: 'the try start, the bump and the gas test are past their life',
    })
  })

  it('are named in the warning before', () => {
    const walk = opened().wait(26)
    const { text, warning } = foot(walk.engine.defs, walk.state, walk.now)
    expect(warning).toMatch(
      /^Try start, bump and gas test lapse at \d\d:\d\d, in 4 min: finish and come out\.$/,
    )
    expect(text).toMatch(/Next lapse \d\d:\d\d$/)
  })

  it('fall one by one where they do not go together', () => {
    const walk = start(steps)
    walk.stepMs = 0
    walk.keys('NO START').wait(10).keys('METER ANSWERED', '1', '20.9', 'ML').wait(20).bring({ do: 'tick' })
    expect(walk.last).toMatchObject({
      items: ['try_start', 'witness'],
      why: 'the try start is past its life',
    })
  })
})
