// Inspection points: nothing goes on past one, nobody signs for their own work, and what changes is inspected again.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Input } from '../../../src/core/job/input.ts'
import { next } from '../../../src/core/job/next.ts'
import { doersOf } from '../../../src/core/job/point.ts'
import { layOut, plainText } from '../../../src/core/sheet/block.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { openItems } from '../../../src/core/talk/open-items.ts'
import { Walk } from '../../helpers/example.ts'
import { gate, NO_START, type Raw, readOne, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'
import { violations } from './invariants.ts'
import { LINES, momentOf, perform, scheduleOf } from './schedules.ts'

const HOLD = { kind: 'hold', roles: ['lead'] }
const WATCH = { kind: 'witness', roles: ['mechanic', 'lead'], notice: '30 min' }
const REVIEW = { kind: 'review', roles: ['lead'] }
const ONCE = { at_least: 1, at_most: 1, within: '1 in' }
const look = (more: Raw = {}): Raw => ({
  id: 'look',
  kind: 'observe',
  title: 'look',
  conditions: [
    { id: 'sound', label: 'Sound' },
    { id: 'scored', label: 'Scored', finding: true },
  ],
  ...more,
})

const begin = (...steps: Raw[]) => new Walk(smallDefs(steps)).keys('RO', 'TC-401-1')
const sign = (walk: Walk, step: string, person: string) => walk.bring({ do: 'sign-point', step, person })

describe('a hold point of an inspection plan', () => {
  const held = () => begin(tell('bolts', { point: HOLD }), tell('end')).keys('')

  it('stops work once the step is done, until a person of the role signs who did none of it', () => {
    const walk = held()
    expect(walk.prompt).toMatchObject({ kind: 'point', step: { id: 'bolts' } })
    expect(walk.bring({ do: 'done', step: 'end' })).toBe('not-asked')
    walk.keys('kh')
    expect(walk.last).toMatchObject({ type: 'point.signed', point: 'hold', person: 'KH', signed: 'pin' })
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'end' } })
  })

  it.each([
    ['RO', 'own-work'],
    ['ML', 'point-role'],
    ['TS', 'point-role'],
    ['XX', 'unknown-person'],
    ['', 'unknown-person'],
  ])('is not signed by %j', (person, code) => {
    const walk = held()
    expect(sign(walk, 'bolts', person)).toBe(code)
    expect(walk.state.points).toEqual({})
  })

  it('is never gone past unattended, notice or not', () => {
    const walk = held()
    expect(walk.bring({ do: 'give-notice', step: 'bolts', whom: 'the lead' })).toBe('no-witness-point')
    expect(walk.key('not attended')).toBe('not-witness')
  })

  it('is not signed by a lead who did it or took its readings and handed the keyboard on', () => {
    const walk = held()
    walk.state = { ...walk.state, doneBy: { bolts: ['KH'] } }
    expect(sign(walk, 'bolts', 'KH')).toBe('own-work')
    const read = begin(readOne('size', { repeats: ONCE, point: HOLD }), tell('end')).keys('1', '9.5030')
    const list = read.state.readings['size.here'] ?? []
    read.state = { ...read.state, readings: { 'size.here': list.map((r) => ({ ...r, by: 'PB' })) } }
    expect(sign(read, 'size', 'PB')).toBe('own-work')
    expect(sign(read, 'size', 'KH')).toBeNull()
  })

  it('of a judgement or a decision is not signed by who took the readings under it, or decided', () => {
    const walk = new Walk().toVerdict().keys('1', 'KH', 'read again, none given')
    const doers = (step: string) => {
      const placed = walk.engine.defs.steps.find((s) => s.id === step)
      return placed === undefined ? [] : [...doersOf(walk.state, placed)]
    }
    const [key = '', list = []] = Object.entries(walk.state.readings).at(-1) ?? []
    walk.state = {
      ...walk.state,
      readings: { ...walk.state.readings, [key]: list.map((r) => ({ ...r, by: 'PB' })) },
    }
    expect(doers('bore_judged')).toContain('PB')
    expect(doers('disposition')).toContain('KH')
    expect(doers('disposition')).not.toContain('PB')
  })

  it('stands behind the gates of its step', () => {
    const isolated = gate('isolated', ['start'], [NO_START, WITNESS])
    const walk = begin(isolated, tell('in', { exposes: ['start'], point: HOLD }), tell('end'))
    walk.keys('NO START', 'ML', '')
    expect(walk.prompt.kind).toBe('point')
    walk.bring({ do: 'leave' })
    walk.bring({ do: 'take-up' })
    walk.keys('RO', 'TC-401-1')
    expect(walk.prompt.kind).toBe('clear')
  })

  it('falls by name with what it covered, and is asked again', () => {
    const walk = begin(readOne('size', { repeats: ONCE, point: HOLD }), tell('end')).keys('1', '9.5030', 'KH')
    const of = walk.state.readings['size.here']?.[0]?.seq ?? -1
    walk.keys('correct', '1')
    expect(walk.warned).toEqual(['This would make void: size with its inspection point.'])
    walk.keys('back')
    expect(walk.bring({ do: 'correct', of, typed: '9.504', why: 'misread' })).toBeNull()
    expect(walk.last).toMatchObject({ voids: ['size'] })
    expect(walk.prompt).toMatchObject({ kind: 'point', step: { id: 'size' } })
    walk.keys('PB')
    walk.bring({ do: 'doubt-instrument', instrument: 'M-3', why: 'dropped', says: 'the laboratory' })
    expect(walk.last).toMatchObject({ voids: ['size'] })
    expect(walk.state.points.size?.void).toBe(true)
  })

  it('falls with a finding that is corrected and a task gone back to', () => {
    const walk = begin(look({ point: HOLD }), tell('end')).keys('1', 'KH')
    walk.bring({ do: 'correct-finding', step: 'look', condition: 'scored', why: 'looked again' })
    expect(walk.last).toMatchObject({ voids: ['look'] })
    expect(walk.prompt.kind).toBe('point')
    walk.keys('KH')
    walk.bring({ do: 'reopen', step: 'look', why: 'once more' })
    expect(walk.prompt.kind).toBe('observe')
    walk.keys('1')
    expect(walk.prompt.kind).toBe('point')
  })
})

describe('a witness point', () => {
  const watched = () => begin(tell('first'), tell('bolts', { point: WATCH }), tell('end'))
  const give = (walk: Walk) => walk.bring({ do: 'give-notice', step: 'bolts', whom: 'ML by radio' })

  it('goes on unattended only when a notice has really run out, and says so', () => {
    const walk = watched().keys('', '')
    expect(walk.key('not attended')).toBe('no-notice')
    walk.keys('notice', '1', 'ML by radio')
    expect(walk.last).toMatchObject({ type: 'point.notice-given', whom: 'ML by radio' })
    const { seq } = walk.last
    walk.wait(29)
    expect(walk.bring({ do: 'not-attended', step: 'bolts' })).toBe('notice-runs')
    walk.wait(0.99)
    expect(walk.bring({ do: 'not-attended', step: 'bolts' })).toBe('notice-runs')
    walk.wait(0.01)
    expect(walk.bring({ do: 'not-attended', step: 'bolts' })).toBeNull()
    expect(walk.last).toMatchObject({ type: 'point.not-attended', whom: 'ML by radio', notice: seq })
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'end' } })
    expect(openItems(walk.engine.defs, walk.state)).toEqual([
      '2 bolts: inspection point: witness, not attended',
    ])
  })

  it('takes its notice beforehand, and is signed like any other', () => {
    const walk = watched()
    expect(give(walk)).toBeNull()
    expect(give(walk)).toBe('no-witness-point')
    walk.keys('', '')
    expect(sign(walk, 'bolts', 'RO')).toBe('own-work')
    walk.keys('ML')
    expect(walk.last).toMatchObject({ type: 'point.signed', point: 'witness', person: 'ML' })
  })

  it.each([
    ['told', (walk: Walk) => walk.bring({ do: 'clock-moved', seconds: 3600 })],
    ['found by itself', (walk: Walk) => walk.wait(-5).bring({ do: 'tick' })],
  ])('loses its notice when the clock moves, %s', (_how, move) => {
    const walk = watched().keys('', '')
    give(walk)
    move(walk)
    walk.wait(120)
    expect(walk.bring({ do: 'not-attended', step: 'bolts' })).toBe('no-notice')
  })

  it('asks a new notice after the step is done again', () => {
    const walk = watched().keys('', '')
    give(walk)
    walk.bring({ do: 'reopen', step: 'bolts', why: 'once more' })
    walk.wait(60).keys('')
    expect(walk.key('not attended')).toBe('no-notice')
  })
})

describe('a review point', () => {
  const reviewed = () => begin(look({ point: REVIEW }), tell('end', { point: REVIEW })).keys('2', '')

  it('lets work go on, and keeps the job open until leads have signed', () => {
    const walk = reviewed()
    expect(walk.prompt).toMatchObject({ kind: 'review', step: { id: 'look' } })
    expect(openItems(walk.engine.defs, walk.state)).toContain(
      '1 look: inspection point: review of records, not signed',
    )
    expect(sign(walk, 'look', 'ML')).toBe('point-role')
    expect(sign(walk, 'end', 'KH')).toBe('not-asked')
    walk.keys('KH')
    expect(walk.state.closed).toBeNull()
    walk.keys('PB')
    expect(walk.prompt.kind).toBe('findings')
    walk.keys('1', '1', 'KH', 'a scratch, none given')
    expect(walk.state.closed).toBe('NONE')
  })
})

describe('on the screen', () => {
  it('an inspection point is never taken for a gate, and says how long a notice runs', () => {
    const walk = begin(tell('bolts', { point: WATCH }), tell('end')).keys('')
    const style = { width: 79, record: 'EXAMPLE', ascii: true } as const
    const rows = () => {
      const view = promptView(walk.engine.defs, walk.state, walk.talk, style)
      return plainText(layOut({ margin: '', rows: view.ask }, style))
    }
    expect(rows()).toMatch(/Inspection point: witness/)
    expect(rows()).not.toMatch(/hold point/i)
    walk.keys('notice', '1', 'ML by radio')
    expect(rows()).toMatch(/Notice to ML by radio runs until 2026-03-14 06:5\d; then: not/)
  })
})

describe('over random schedules', () => {
  const STEPS: Raw[] = [
    gate('isolated', ['start'], [NO_START, WITNESS]),
    readOne('size', { repeats: ONCE, exposes: ['start'], point: HOLD }),
    look({ point: WATCH }),
    tell('polish', { when: { rule: 'look == "scored"', unknown: 'hold' }, point: WATCH }),
    readOne('again', {
      repeats: ONCE,
      when: { rule: 'size > length("9.503 in")', unknown: 'hold' },
      point: HOLD,
    }),
    tell('end', { point: REVIEW }),
  ]

  const LINES_AT_POINTS = [...LINES, ...Array(8).fill('notice'), ...Array(24).fill('not attended')]

  it('nothing goes on past a point, and only what stands counts', { timeout: 120_000 }, () => {
    const defs = smallDefs(STEPS)
    const seen = new Set<string>()
    fc.assert(
      fc.property(scheduleOf(LINES_AT_POINTS), (actions) => {
        const walk = new Walk(defs)
        const inputs: Input[] = []
        actions.forEach((a, n) => {
          perform(walk, a, inputs)
          const moment = momentOf(walk)
          expect(violations(moment, n === actions.length - 1)).toEqual([])
          seen.add(next(moment.defs, moment.state).kind)
        })
        for (const e of walk.entries) seen.add(e.type)
      }),
      { numRuns: 400, seed: 20260315 },
    )
    const wanted = ['point', 'review', 'point.signed', 'point.notice-given', 'point.not-attended']
    const back = ['instrument.doubted', 'finding.corrected', 'branch.left', 'reading.corrected', 'job.closed']
    expect([...wanted, ...back, 'deviation.permitted'].filter((one) => !seen.has(one))).toEqual([])
  })
})
