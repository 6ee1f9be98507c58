// A reading that waits to be settled is settled behind the gates of its own step: going back to an easier step, or correcting
// what stands before it, must not carry the question to where those gates are not asked.
import { describe, expect, it } from 'vitest'
import { Walk } from '../../helpers/example.ts'
import { gate, OXYGEN, readOne, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'

const ONCE = { repeats: { at_least: 1, at_most: 1, within: '1 in' } }
const JOB = [
  tell('outside'),
  readOne('before', ONCE),
  gate('air', ['bad_air'], [OXYGEN, WITNESS]),
  readOne('size', { exposes: ['bad_air'], ...ONCE }),
]

/** A reading behind the gate is doubted, and then the gas test lapses. */
function doubted(): Walk {
  const walk = new Walk(smallDefs(JOB))
  walk.keys('RO', 'TC-401-1', '', '1', '9.5000', '1', '20.9', 'ML', '9.9000')
  expect(walk.prompt.kind).toBe('doubt')
  return walk
}

describe('a reading that waits', () => {
  it('holds back going back and corrections until it is settled', () => {
    const walk = doubted()
    expect(walk.bring({ do: 'reopen', step: 'outside', why: 'once more' })).toBe('pending')
    const first = Object.values(walk.state.readings).flat()[0]
    expect(walk.bring({ do: 'correct', of: first?.seq ?? -1, typed: '9.5001', why: 'misread' })).toBe(
      'pending',
    )
    walk.keys('1')
    expect(walk.bring({ do: 'reopen', step: 'outside', why: 'once more' })).toBe(null)
  })

  it('is asked about only behind the gates of its own step, wherever the job stands', () => {
    const walk = doubted()
    walk.wait(31).bring({ do: 'tick' })
    expect(walk.prompt.kind).toBe('clear')
    // Set back past the rule, as an instrument found out of calibration sets a job back.
    walk.state = { ...walk.state, done: {} }
    expect(walk.prompt).toMatchObject({ kind: 'clear', gate: { id: 'air' } })
    expect(walk.bring({ do: 'settle-doubt', choice: 'kept', why: 'it is so' })).toBe('not-asked')
    walk.keys('ALL OUT')
    expect(walk.prompt.kind).toBe('evidence')
  })
})
