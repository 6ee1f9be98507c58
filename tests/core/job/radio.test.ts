// A lead's word by radio: keyed by somebody who did none of the work, it lets work go on and no job close.
import { describe, expect, it } from 'vitest'
import { admitRadio } from '../../../src/core/job/admit-radio.ts'
import { handOverLines } from '../../../src/core/job/hand-over.ts'
import { openWords } from '../../../src/core/job/open-words.ts'
import { pinOf, Walk } from '../../helpers/example.ts'
import { violations } from './invariants.ts'
import { momentOf } from './schedules.ts'

/** Judged MONITOR, RO at the keyboard, ML on the job and at none of the readings. */
const judged = () => new Walk().toGate().keys('sign on', 'ML').throughTheRest()
const radio = (walk: Walk, change: Record<string, unknown> = {}) =>
  walk.bring({
    do: 'radio',
    step: 'disposition',
    choice: 'accept',
    lead: 'KH',
    said: 'run it',
    person: 'ML',
    proved: true,
    ...change,
  })

describe('a word by radio', () => {
  it('is recorded as exactly that, and the work goes on', () => {
    const walk = judged()
    walk.autoPin = false
    walk.keys('1', 'radio', 'KH', 'Run it, read again in March', 'ML', pinOf('ML'))
    expect(walk.last).toMatchObject({
      type: 'disposition.set',
      person: 'KH',
      choice: 'accept',
      why: 'Run it, read again in March',
      radio: { by: 'ML' },
      signed: 'pin',
      by: 'RO',
    })
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'tidy' } })
    expect(violations(momentOf(walk))).toEqual([])
  })

  it.each([
    ['the doer', { person: 'RO' }, 'own-word'],
    ['somebody not on the job', { person: 'PB' }, 'not-on'],
    ['somebody without a PIN', { proved: false }, 'pin-needed'],
    ['a mechanic for a lead', { lead: 'ML' }, 'not-lead'],
    ['nobody for a lead', { lead: 'XX' }, 'unknown-person'],
    ['without words', { said: '.' }, 'no-words'],
    ['for a concession', { choice: 'concession' }, 'radio-concession'],
    ['for what is not open', { choice: 'hold' }, 'choice'],
  ])('is refused from %s', (_what, change, code) => {
    const walk = judged()
    expect(radio(walk, change)).toBe(code)
    expect(walk.state.dispositions).toEqual({})
  })

  it('says first who has to key it, and is not begun where nobody on the job fits', () => {
    const walk = judged().keys('1', 'radio')
    expect(walk.talk.ask?.kind).toBe('radio-lead')
    expect(walk.said.at(-2)).toMatch(/^It needs ML, on this job and not at the work/)
    const alone = new Walk().toGate().throughTheRest().keys('1', 'radio')
    expect(alone.talk.ask?.kind).toBe('dispose-who')
    expect(alone.said.at(-2)).toMatch(
      /^Not by radio yet: ML may key what the lead says, having measured nothing\. Whoever does comes onto the job first: back, then sign on\./,
    )
    expect(alone.said.at(-1)).toMatch(/a lead comes and signs here/)
    expect(alone.keys('KH', 'run it, none given').prompt).toMatchObject({ kind: 'tell' })
  })

  it('is refused from who took a reading and handed over, and from the lead who is there', () => {
    const walk = judged()
    const readBy = (by: string) =>
      Object.fromEntries(
        Object.entries(walk.state.readings).map(([k, l]) => [k, l.map((r) => ({ ...r, by }))]),
      )
    walk.state = { ...walk.state, readings: readBy('ML') }
    expect(radio(walk)).toBe('own-word')
    walk.state = { ...walk.state, readings: readBy('KH') }
    expect(radio(walk)).toBe('own-work')
    const here = judged().keys('sign on', 'KH')
    expect(radio(here, { person: 'KH' })).toBe('lead-here')
  })

  it('says of who is only at the keyboard no more than that', () => {
    const walk = judged()
    const others = Object.fromEntries(
      Object.entries(walk.state.readings).map(([k, l]) => [k, l.map((r) => ({ ...r, by: 'ML' }))]),
    )
    walk.state = { ...walk.state, readings: others, doer: 'PB', people: ['PB', 'ML'] }
    const input = { do: 'radio', step: 'disposition', choice: 'accept', lead: 'KH', said: 'run it' } as const
    const heard = admitRadio(walk.engine.defs, walk.state, { ...input, person: 'PB', proved: true })
    expect(heard).toMatchObject({
      error: { say: 'PB is at the keyboard, so somebody else who heard it signs for it.' },
    })
  })

  it('opens no gate and releases no STOP', () => {
    const walk = new Walk().toGate().keys('sign on', 'ML', 'radio')
    expect(walk.talk.ask).toBe(null)
    expect(radio(walk)).toBe('not-asked')
    walk.keys('stop', 'a hiss')
    expect(radio(walk)).toBe('stopped')
  })
})

describe('the countersignature', () => {
  const spoken = () => {
    const walk = judged()
    radio(walk)
    return walk
  }

  it('is what the job waits for, from that same lead', () => {
    const walk = spoken().keys('')
    expect(walk.prompt.kind).toBe('countersign')
    expect(walk.state.closed).toBe(null)
    walk.keys('PB')
    expect(walk.talk.ask).toBe(null)
    expect(walk.bring({ do: 'countersign', person: 'PB', proved: true, agrees: true })).toBe('nothing-open')
    expect(walk.bring({ do: 'countersign', person: 'KH', proved: false, agrees: true })).toBe('pin-needed')
    walk.keys('KH', '1')
    expect(walk.state.closed).toBe('MONITOR')
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('can be given at any time before', () => {
    const walk = spoken().keys('countersign', 'KH', '1')
    expect(openWords(walk.state)).toEqual([])
    walk.keys('')
    expect(walk.state.closed).toBe('MONITOR')
  })

  it('refused, voids the word, and the verdict is to be disposed of again', () => {
    const walk = spoken().keys('countersign', 'KH', '2')
    expect(walk.last).toMatchObject({ type: 'disposition.countersigned', agrees: false })
    expect(walk.prompt).toMatchObject({ kind: 'decide' })
    expect(openWords(walk.state)).toEqual([])
  })

  it('is no longer open once a correction has voided what was said', () => {
    const walk = spoken()
    walk.keys('correct', 'sheet 7.1', '2', 'misread', '9.5034')
    expect(openWords(walk.state)).toEqual([])
    expect(walk.prompt.kind).toBe('decide')
  })

  it('is shown as open in the hand-over until it is given', () => {
    const walk = spoken()
    const open = /accept by KH by radio, keyed by ML, NOT COUNTERSIGNED, run it/
    expect(handOverLines(walk.engine.defs, walk.state).join('\n')).toMatch(open)
    walk.keys('countersign', 'KH', '1')
    expect(handOverLines(walk.engine.defs, walk.state).join('\n')).not.toMatch(/NOT COUNTERSIGNED/)
  })
})
