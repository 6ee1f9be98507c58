// A reading that waits to be settled is settled at its own step, behind the gates of that step: going back to an easier step, or
// correcting what stands before it, must not carry the question to where those gates are not asked.
import { describe, expect, it } from 'vitest'
import { Walk } from '../../helpers/example.ts'
import { gate, OXYGEN, readOne, readTemperature, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'

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

  it('is asked about only at its own step, wherever the job stands', () => {
    const walk = doubted()
    // Set back, as no entry of today sets a job back with a reading that still waits.
    walk.state = { ...walk.state, done: {} }
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'outside' } })
    expect(walk.bring({ do: 'settle-doubt', choice: 'kept', why: 'it is so' })).toBe('not-asked')
  })

  it('is not used when the job goes back', () => {
    const walk = new Walk(
      smallDefs([
        tell('outside'),
        readTemperature('warm'),
        gate('air', ['bad_air'], [OXYGEN, WITNESS]),
        readOne('size', { exposes: ['bad_air'], ...ONCE }),
      ]),
    )
    walk.keys('RO', 'TC-401-1', '', '1', '71.2', '1', '20.9', 'ML', '1', '9.9000')
    expect(walk.state.doubt?.step).toBe('size')
    walk.bring({ do: 'doubt-instrument', instrument: 'T-2', why: 'dropped', says: 'the laboratory' })
    expect(walk.entries.at(-1)).toMatchObject({ type: 'reading.dropped', step: 'size' })
    expect(walk.entries.at(-1)?.by).toBeUndefined()
    expect(walk.state.doubt).toBeNull()
    expect(walk.prompt).toMatchObject({ kind: 'pick', step: { id: 'warm' } })
    expect(Object.keys(walk.state.readings).filter((place) => place.startsWith('size'))).toEqual([])
  })
})
