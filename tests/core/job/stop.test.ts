// STOP: from any prompt and inside any question, at once; nothing goes on until a lead who did not raise it releases it.
import { describe, expect, it } from 'vitest'
import { gateState } from '../../../src/core/job/gate.ts'
import type { Input } from '../../../src/core/job/input.ts'
import { openStop } from '../../../src/core/job/state.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { BORE_LINES, Walk } from '../../helpers/example.ts'

/** Lines that lead to each prompt and each question of several lines. */
const PLACES: [string, () => Walk][] = [
  ['before anybody signed on', () => new Walk()],
  ['at the tag', () => new Walk().keys('RO')],
  ['at a tell', () => new Walk().keys('RO', 'TC-401-1')],
  ['at a lock', () => new Walk().toGate()],
  ['at an instrument', () => new Walk().throughGate().keys('1')],
  ['at a confirm', () => new Walk().throughGate()],
  ['at what is seen instead', () => new Walk().throughGate().keys('2')],
  ['at a reading', () => new Walk().toBore()],
  ['at a doubt', () => new Walk().toBore().keys('9.60')],
  ['at why a doubtful one is kept', () => new Walk().toBore().keys('9.60', '3')],
  ['at why it cannot be measured', () => new Walk().toBore().keys('n/a')],
  ['at which to correct', () => new Walk().toBore().keys('correct')],
  ['at why it is corrected', () => new Walk().toBore().keys('correct', '1')],
  ['at the right figure', () => new Walk().toBore().keys('correct', '1', 'misread')],
  ['at a note', () => new Walk().toBore().keys('note')],
  ['at why go back', () => new Walk().throughGate().keys('1', 'back')],
  ['at an observation', () => new Walk().toBore().keys(...BORE_LINES)],
  ['at its note', () => new Walk().toBore().keys(...BORE_LINES, '3')],
  ['at a disposition', () => new Walk().toVerdict()],
  ['at who decides', () => new Walk().toVerdict().keys('1')],
  ['at why it is decided so', () => new Walk().toVerdict().keys('1', 'KH')],
  ['at coming out', () => new Walk().toBore().wait(31).keys('')],
  ['at a late reading', () => new Walk().toBore().wait(31).keys('9.5033')],
]

describe('STOP', () => {
  it.each(PLACES)('is heard %s, and blocks at once', (_where, walkTo) => {
    for (const word of ['stop', 'STOP', ' Stop! ', 'stop.', '!', '!!!', 'stop stop', 'STOP! STOP!']) {
      const walk = walkTo()
      walk.key(word)
      expect(walk.last.type).toBe('stop.raised')
      expect(walk.talk.ask).toBeNull()
      expect(walk.prompt.kind).toBe('stop-cause')
      expect(
        Object.values(walk.state.gates).every(
          (g) => g.status !== 'open' && Object.keys(g.given).length === 0,
        ),
      ).toBe(true)
    }
  })

  it('takes nothing but note, help, its cause, its release and leaving', () => {
    const walk = new Walk().toBore().keys('stop')
    const work: Input[] = [
      { do: 'sign-on', person: 'ML' },
      { do: 'name-machine', typed: 'TC-401-1' },
      { do: 'pick', seat: 'gauge', instrument: 'M-3' },
      { do: 'done', step: 'brief' },
      { do: 'confirm', step: 'wiped' },
      { do: 'object', step: 'wiped', remark: 'oil' },
      { do: 'evidence', step: 'hold_point', item: 'locks.breaker', typed: 'L-101' },
      { do: 'clear', step: 'hold_point', typed: 'ALL OUT' },
      { do: 'read', place: 'bore.head_end.vertical', typed: '9.5033' },
      { do: 'settle-doubt', choice: 'again' },
      { do: 'settle-late', kept: true },
      { do: 'correct', of: 30, typed: '71.3', why: 'because' },
      { do: 'not-applicable', place: 'bore.head_end.vertical', why: 'because' },
      { do: 'observe', step: 'strip', condition: 'present' },
      { do: 'dispose', step: 'disposition', choice: 'rework', person: 'KH', why: 'because' },
      { do: 'reopen', step: 'brief', why: 'because' },
    ]
    for (const explained of [false, true]) {
      if (explained) walk.keys('8', 'somebody slipped', '?')
      const before = walk.entries.length
      for (const input of work) expect([input.do, walk.bring(input)]).toEqual([input.do, 'stopped'])
      expect(walk.entries).toHaveLength(before)
      walk.keys('help', 'why', 'note he is out')
      expect(walk.entries.slice(before).map((e) => e.type)).toEqual(['note.written'])
    }
  })

  it('wants its cause in words before it can be released', () => {
    const walk = new Walk().toBore().keys('stop')
    for (const no of ['', '0', '9', '...', '8', '', '1', '...']) walk.key(no)
    const of = walk.state.seq
    expect(walk.last.type).toBe('stop.raised')
    expect(walk.bring({ do: 'explain-stop', of, cause: 'other', why: '12', calledBy: null })).toBe('no-words')
    expect(walk.bring({ do: 'release-stop', person: 'KH', answer: 'put right' })).toBe('not-asked')
    expect(openStop(walk.state)?.cause).toBeNull()
  })

  it.each([
    ['RO', 'not-lead'],
    ['TS', 'not-lead'],
    ['XX', 'unknown-person'],
    ['', 'unknown-person'],
  ])('is not released by %j', (person, code) => {
    const walk = new Walk().toBore().keys('stop', '8', 'somebody slipped', '?')
    expect(walk.bring({ do: 'release-stop', person, answer: 'put right' })).toBe(code)
    for (const answer of ['none', 'None.', 'nothing', 'n/a', 'ok', 'none given'])
      expect(walk.bring({ do: 'release-stop', person: 'KH', answer })).toBe('no-words')
    expect(walk.bring({ do: 'release-stop', person: 'KH', answer: '1' })).toBe('no-words')
    expect(openStop(walk.state)).not.toBeNull()
  })

  it('of a lead is released by another lead only, also after it was left and taken up', () => {
    const walk = new Walk().keys('KH', 'TC-401-1', 'stop', '8', 'somebody slipped', '?')
    expect(walk.bring({ do: 'release-stop', person: 'KH', answer: 'put right' })).toBe('own-stop')
    walk.bring({ do: 'leave' })
    walk.bring({ do: 'take-up' })
    expect(walk.prompt.kind).toBe('stopped')
    expect(walk.bring({ do: 'release-stop', person: 'kh', answer: 'put right' })).toBe('own-stop')
    expect(walk.bring({ do: 'release-stop', person: 'PB', answer: 'put right' })).toBeNull()
    expect(walk.prompt.kind).toBe('sign-on')
  })

  it('released, calls everybody out and asks the whole gate again', () => {
    const walk = new Walk().toBore().keys('stop', '8', 'somebody slipped', '?', 'release', 'KH', 'dry now')
    expect(walk.prompt.kind).toBe('clear')
    walk.keys('ALL OUT')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'locks.breaker' } })
    expect(gateState(walk.state, 'hold_point').struck).toHaveLength(17)
  })

  it('is heard after the job was left, which otherwise takes nothing until taken up', () => {
    const walk = new Walk().throughGate()
    walk.bring({ do: 'leave' })
    for (const input of [
      { do: 'sign-on', person: 'RO' },
      { do: 'evidence', step: 'hold_point', item: 'locks.breaker', typed: 'L-101' },
      { do: 'clear', step: 'hold_point', typed: 'ALL OUT' },
      { do: 'note', text: 'still here' },
      { do: 'correct', of: 1, typed: '1', why: 'because' },
    ] as Input[])
      expect(walk.bring(input)).toBe('left')
    expect(walk.bring({ do: 'stop' })).toBeNull()
    expect(walk.last.type).toBe('stop.raised')
  })
})

describe('falling twice', () => {
  it('does not forget that people were let in', () => {
    const walk = new Walk().toBore().wait(31).keys('')
    expect(walk.prompt.kind).toBe('clear')
    walk.keys('stop', '8', 'somebody slipped', '?', 'release', 'KH', 'dry now')
    expect(walk.prompt.kind).toBe('clear')
    walk.bring({ do: 'leave' })
    walk.bring({ do: 'take-up' })
    expect(walk.keys('ML', 'TC-401-1').prompt.kind).toBe('clear')
  })
})

describe('leaving and taking up', () => {
  it('fells everything at once, before anybody comes back', () => {
    const walk = new Walk().toBore()
    walk.bring({ do: 'leave' })
    expect(gateState(walk.state, 'hold_point')).toMatchObject({ status: 'closed', cause: 'left' })
    expect(gateState(walk.state, 'hold_point').given).toEqual({})
  })

  it('fells everything, asks who is there, and calls people out first', () => {
    for (const crashed of [true, false]) {
      const walk = new Walk().toBore().keys('9.5033')
      if (!crashed) walk.bring({ do: 'leave' })
      walk.bring({ do: 'take-up' })
      expect(walk.prompt.kind).toBe('sign-on')
      expect(walk.bring({ do: 'reopen', step: 'brief', why: 'because' })).toBe('not-asked')
      expect(walk.bring({ do: 'correct', of: walk.state.seq, typed: '9.5', why: 'because' })).toBe(
        'not-asked',
      )
      walk.keys('ML')
      const { ask } = promptView(walk.engine.defs, walk.state, walk.talk, {
        width: 79,
        record: 'EXAMPLE',
        ascii: true,
      })
      expect(ask[0]?.text).toBe('COME OUT AND STAND CLEAR.')
      walk.keys('TC-401-1')
      expect(walk.prompt).toMatchObject({ kind: 'clear' })
      expect(gateState(walk.state, 'hold_point')).toMatchObject({
        cause: crashed ? 'interrupted' : 'left',
      })
      expect(gateState(walk.state, 'hold_point').given).toEqual({})
      expect(walk.state.readings['bore.head_end.vertical']).toHaveLength(1)
    }
  })
})
