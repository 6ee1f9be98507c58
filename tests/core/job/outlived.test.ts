// What was signed or gone past, and does not outlive what it rested on: a thing that is put in again, a clock that was wrong.
import { describe, expect, it } from 'vitest'
import { Walk } from '../../helpers/example.ts'
import { gate, NO_START, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'
import { violations } from './invariants.ts'
import { momentOf } from './schedules.ts'

describe('a signature that a thing is out', () => {
  const CLEAR = { ...NO_START, id: 'temporary', words: 'NOTHING LEFT IN', register: 'clear' }
  const defs = smallDefs([
    tell('pin_in', { places: [{ id: 'pin', what: 'locking pin' }] }),
    tell('bar'),
    gate('go', ['start'], [CLEAR, WITNESS]),
    tell('run', { exposes: ['start'] }),
  ])
  const seen = () => {
    const walk = new Walk(defs).keys('RO', 'TC-401-1', '', 'in the flywheel', 'P-1')
    expect(account(walk, 'RO')).toBeNull()
    expect(walk.state.things[0]?.seenBy).toBe('RO')
    return walk
  }
  const account = (walk: Walk, person: string) =>
    walk.bring({ do: 'account', of: walk.state.things[0]?.seq ?? -1, person, proved: true })
  const why = 'the crank was not blocked after all'

  it('falls when the step that placed it is gone back to, so that two sign for it as it is now', () => {
    const walk = seen()
    walk.bring({ do: 'reopen', step: 'pin_in', why })
    expect(walk.state.things[0]?.seenBy).toBeNull()
    walk.bring({ do: 'done', step: 'pin_in' })
    expect(account(walk, 'KH')).toBeNull()
    expect(walk.state.things[0]?.accountedBy).toBeNull()
    expect(account(walk, 'KH')).toBe('same-person')
    expect(account(walk, 'RO')).toBeNull()
    expect(walk.state.things[0]?.accountedBy).toEqual(['KH', 'RO'])
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('falls when it is signed between the going back and the doing anew', () => {
    const walk = new Walk(defs).keys('RO', 'TC-401-1', '', 'in the flywheel', 'P-1')
    walk.bring({ do: 'reopen', step: 'pin_in', why })
    expect(account(walk, 'RO')).toBeNull()
    walk.bring({ do: 'done', step: 'pin_in' })
    expect(walk.state.things[0]?.seenBy).toBeNull()
  })

  it('stands over what other steps do', () => {
    const walk = seen().keys('')
    expect(walk.state.things[0]?.seenBy).toBe('RO')
    walk.bring({ do: 'reopen', step: 'bar', why })
    expect(walk.state.things[0]?.seenBy).toBe('RO')
  })
})

describe('a witness point gone past unattended', () => {
  const HOURS_MS = 3_600_000
  const defs = smallDefs([
    tell('work', { point: { kind: 'witness', roles: ['lead', 'mechanic'], notice: '2 h' } }),
    tell('next'),
    tell('end'),
  ])
  const past = () => {
    const walk = new Walk(defs).keys('RO', 'TC-401-1')
    walk.bring({ do: 'give-notice', step: 'work', whom: 'the owner' })
    walk.keys('')
    walk.now = { ...walk.now, ms: walk.now.ms + 3 * HOURS_MS }
    expect(walk.bring({ do: 'not-attended', step: 'work' })).toBeNull()
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'next' } })
    return walk
  }

  it('is asked again where the clock that told the notice had run out is set right', () => {
    const walk = past()
    walk.now = { ...walk.now, ms: walk.now.ms - 3 * HOURS_MS + 60_000 }
    walk.bring({ do: 'tick' })
    expect(walk.last.type).toBe('clock.moved')
    expect(walk.prompt).toMatchObject({ kind: 'point', step: { id: 'work' } })
    expect(walk.bring({ do: 'not-attended', step: 'work' })).toBe('no-notice')
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('stays as it is where an inspector signed, whatever the clock says', () => {
    const walk = new Walk(defs).keys('RO', 'TC-401-1', '')
    expect(walk.bring({ do: 'sign-point', step: 'work', person: 'ML', proved: true })).toBeNull()
    walk.bring({ do: 'clock-moved', seconds: 900 })
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'next' } })
    expect(violations(momentOf(walk))).toEqual([])
  })
})
