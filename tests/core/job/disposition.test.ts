// What is to be done with a verdict: a lead decides who did not take the readings, and gives a reason.
import { describe, expect, it } from 'vitest'
import { dispositionsFor } from '../../../src/core/job/admit-step.ts'
import { outcomeOf } from '../../../src/core/job/outcome.ts'
import { Walk } from '../../helpers/example.ts'

const ALL = ['accept', 'rework', 'repair', 'replace', 'concession', 'hold']
const dispose = (walk: Walk, person: string, why = 'read again', choice = 'accept') =>
  walk.bring({ do: 'dispose', step: 'disposition', choice, person, why, proved: true })

describe('choices', () => {
  it.each([
    ['HOLD', ['rework', 'repair', 'replace', 'concession', 'hold']],
    ['REWORK', ['rework', 'repair', 'replace', 'concession']],
    ['REPLACE', ['rework', 'repair', 'replace', 'concession']],
    ['MONITOR', ['accept', 'rework', 'repair', 'replace', 'concession']],
    ['ACCEPT', ['accept', 'rework', 'repair', 'replace', 'concession']],
  ])('for %s are %j', (verdict, choices) => {
    expect(dispositionsFor(verdict, ALL)).toEqual(choices)
  })
})

describe('a disposition', () => {
  it.each([
    ['ML', 'not-lead'],
    ['TS', 'not-lead'],
    ['RO', 'not-lead'],
    ['XX', 'unknown-person'],
    ['', 'unknown-person'],
  ])('is not for %j', (person, code) => {
    const walk = new Walk().toVerdict()
    expect(dispose(walk, person)).toBe(code)
    expect(walk.state.dispositions).toEqual({})
  })

  it.each(['', ' ', '1', '...'])('needs a reason in words, not %j', (why) => {
    expect(dispose(new Walk().toVerdict(), 'KH', why)).toBe('no-words')
  })

  it('is not for the lead who measured', () => {
    const walk = new Walk()
    walk.keys('KH', 'TC-401-1', '').keys('L-1', 'L-2', 'L-3', 'L-4', 'L-5', 'L-6')
    expect(walk.state.doer).toBe('KH')
    const measured = new Walk().toVerdict()
    measured.state = { ...measured.state, doer: 'KH' }
    expect(dispose(measured, 'KH')).toBe('own-work')
    expect(dispose(measured, 'PB')).toBeNull()
  })

  it('is not for a lead who measured and then handed the keyboard on', () => {
    const walk = new Walk().toVerdict()
    const readings = Object.fromEntries(
      Object.entries(walk.state.readings).map(([k, l]) => [k, l.map((r) => ({ ...r, by: 'KH' }))]),
    )
    walk.state = { ...walk.state, readings }
    expect(dispose(walk, 'KH')).toBe('own-work')
    expect(dispose(walk, 'PB')).toBeNull()
  })

  it('is of a verdict that stands, from the choices open for it', () => {
    const walk = new Walk().toVerdict()
    expect(dispose(walk, 'KH', 'so', 'hold')).toBe('choice')
    expect(dispose(walk, 'KH', 'so', 'scrap')).toBe('choice')
    const verdict = walk.state.verdicts.bore_judged
    if (verdict === undefined) throw new Error('not judged')
    const early = new Walk().toBore()
    expect(dispose(early, 'KH')).toBe('not-asked')
    expect(dispose(walk, 'kh')).toBeNull()
    expect(walk.last).toMatchObject({
      type: 'disposition.set',
      about: 'bore_judged',
      person: 'KH',
      why: 'read again',
    })
    expect(walk.state.verdicts.bore_judged).toBe(verdict)
  })
})

describe('the outcome', () => {
  it('is the verdict, whatever was decided about it', () => {
    const walk = new Walk().toVerdict()
    dispose(walk, 'KH', 'worn but runs', 'concession')
    walk.keys('')
    expect(walk.state.closed).toBe('MONITOR')
    expect(walk.bring({ do: 'note', text: 'late word' })).toBe('closed')
  })

  it('is HOLD with nothing judged or a void verdict, STOP under STOP', () => {
    const { defs } = new Walk().engine
    expect(outcomeOf(defs, new Walk().toBore().state)).toBe('HOLD')
    const walk = new Walk().toVerdict()
    expect(outcomeOf(defs, walk.state)).toBe('MONITOR')
    walk.bring({ do: 'reopen', step: 'strip', why: 'look again' })
    expect(outcomeOf(defs, walk.state)).toBe('HOLD')
    walk.keys('stop')
    expect(outcomeOf(defs, walk.state)).toBe('STOP')
  })
})
