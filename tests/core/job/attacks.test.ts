// Ways somebody might try to come to stand in front of a hazard on stale or borrowed evidence, each tried once.
import { describe, expect, it } from 'vitest'
import { gateState } from '../../../src/core/job/gate.ts'
import { GAS_LINES, GATE_LINES, LOCK_LINES, Walk, WORD_LINES, WORDS_AGAIN } from '../../helpers/example.ts'
import { gate, LOCKS, smallDefs, tell } from '../../helpers/small-job.ts'

const given = (walk: Walk) => gateState(walk.state, 'hold_point').given
const AGAIN = GATE_LINES.filter((line) => line !== '1')
const lapse = (walk: Walk) => {
  walk.wait(31).bring({ do: 'tick' })
  return walk
}

describe('borrowed evidence', () => {
  it('of one person does not serve the next: who takes up gives it all anew', () => {
    const walk = new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES)
    walk.bring({ do: 'leave' })
    walk.bring({ do: 'take-up' })
    walk.keys('ML', 'TC-401-1')
    expect(given(walk)).toEqual({})
    walk.keys(...LOCK_LINES, ...WORDS_AGAIN, ...GAS_LINES)
    expect(walk.key('ML')).toBe('self-witness')
    // Nothing of RO stands any more, so RO is somebody else here.
    expect(walk.key('RO')).toBeNull()
    expect(new Set(Object.values(given(walk)).map((g) => g.by))).toEqual(new Set(['ML']))
  })

  it('of a witness does not outlive the witness becoming the doer', () => {
    const walk = new Walk().throughGate()
    walk.bring({ do: 'leave' })
    walk.bring({ do: 'take-up' })
    walk.keys('ML', 'TC-401-1', 'ALL OUT')
    expect(given(walk)).toEqual({})
    walk.keys(...AGAIN)
    expect(gateState(walk.state, 'hold_point').status).toBe('closed')
    expect(given(walk).witness).toBeUndefined()
  })

  it('of one gate does not open another that asks the same', () => {
    const defs = smallDefs([
      gate('a', ['start'], [LOCKS]),
      gate('b', ['bad_air'], [LOCKS]),
      tell('both', { exposes: ['start', 'bad_air'] }),
    ])
    const walk = new Walk(defs).keys('RO', 'TC-401-1', 'L-1', 'L-2')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', gate: { id: 'b' } })
  })
})

describe('what was pending when the gate fell', () => {
  it('a doubt cannot be settled until the gate is proved again', () => {
    const walk = lapse(new Walk().toBore().keys('9.60'))
    for (const choice of ['again', 'mistyped', 'kept'] as const)
      expect(walk.bring({ do: 'settle-doubt', choice, why: 'it is so' })).toBe('not-asked')
    walk.keys('ALL OUT', ...GAS_LINES, 'ML')
    expect(walk.prompt.kind).toBe('doubt')
  })

  it('an instrument cannot be picked for a step behind it', () => {
    const walk = lapse(new Walk().throughGate().keys('1'))
    expect(walk.bring({ do: 'pick', seat: 'thermometer', instrument: 'T-2' })).toBe('not-asked')
  })

  it('an answer given a moment too late is not taken', () => {
    const walk = new Walk().throughGate().wait(31)
    expect(walk.bring({ do: 'confirm', step: 'wiped' })).toBe('not-asked')
    expect(walk.bring({ do: 'object', step: 'wiped', remark: 'oil' })).toBe('not-asked')
    expect(walk.bring({ do: 'not-applicable', place: 'part_temp_before.middle', why: 'so' })).toBe(
      'not-asked',
    )
    expect(walk.state.done.wiped).toBeUndefined()
  })

  it('a second late reading does not push the first one out', () => {
    const walk = lapse(new Walk().toBore()).keys('9.5033')
    expect(walk.bring({ do: 'read', place: 'bore.head_end.vertical', typed: '9.5099' })).toBe('not-asked')
    expect(walk.state.late?.typed).toBe('9.5033')
  })
})

describe('other ways round', () => {
  it('a correction is paper: it is taken with the gate shut, and opens nothing', () => {
    const walk = lapse(new Walk().toBore().keys('9.5033'))
    const seq = walk.state.readings['set_before.standard']?.[0]?.seq ?? -1
    expect(walk.bring({ do: 'correct', of: seq, typed: '9.5001', why: 'misread the drum' })).toBeNull()
    expect(walk.prompt.kind).toBe('clear')
  })

  it('a tell that exposes people waits for its gate like any other step', () => {
    const walk = lapse(new Walk().toVerdict().keys('1', 'KH', 'read again after 4000 h'))
    expect(walk.prompt).toMatchObject({ kind: 'clear', before: { id: 'tidy' } })
    expect(walk.bring({ do: 'done', step: 'tidy' })).toBe('not-asked')
  })

  it('a step that is not current takes nothing, however it is addressed', () => {
    const walk = new Walk().toBore()
    for (const input of [
      { do: 'done', step: 'tidy' },
      { do: 'done', step: 'bore' },
      { do: 'confirm', step: 'wiped' },
      { do: 'confirm', step: 'no_such' },
      { do: 'observe', step: 'strip', condition: 'present' },
      { do: 'read', place: 'bore.crank_end.vertical', typed: '9.5033' },
      { do: 'read', place: 'set_after.standard', typed: '9.5' },
      { do: 'read', place: 'constructor', typed: '9.5' },
      { do: 'pick', seat: 'gauge', instrument: 'M-3' },
      { do: 'clear', step: 'hold_point', typed: 'ALL OUT' },
      { do: 'reopen', step: 'bore', why: 'because' },
      { do: 'reopen', step: 'hold_point', why: 'because' },
      { do: 'dispose', step: 'disposition', choice: 'accept', person: 'KH', why: 'because' },
    ] as const)
      expect([input.do, walk.bring(input)]).toEqual([input.do, 'not-asked'])
  })

  it('an earlier step that exposes people, gone back to, is behind its gate', () => {
    const walk = lapse(new Walk().toBore())
    walk.bring({ do: 'reopen', step: 'wiped', why: 'it was wet' })
    expect(walk.prompt).toMatchObject({ kind: 'clear', before: { id: 'wiped' } })
  })

  it('a closed job takes nothing, and is closed once', () => {
    const walk = new Walk().toVerdict().keys('1', 'KH', 'read again after 4000 h', '')
    const before = walk.entries.length
    for (const input of [{ do: 'stop' }, { do: 'take-up' }, { do: 'tick' }, { do: 'leave' }] as const)
      expect(walk.bring(input)).toBe('closed')
    expect(walk.entries).toHaveLength(before)
    expect(walk.entries.filter((e) => e.type === 'job.closed')).toHaveLength(1)
  })
})
