// What was signed or gone past, and does not outlive what it rested on: a thing that is put in again, a clock that was wrong.
import { describe, expect, it } from 'vitest'
import { fold } from '../../../src/core/job/fold.ts'
import { wouldVoidLines } from '../../../src/core/talk/would-void.ts'
import { Walk } from '../../helpers/example.ts'
import { gate, LOCKS, NO_START, OXYGEN, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'
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

const givenAt = (walk: Walk, step: string) => Object.keys(walk.state.gates[step]?.given ?? {})

describe('a number that was held against one noted before', () => {
  const TAG = { kind: 'numbers', of: 'tag', per: 'once', ask: 'The tag.' }
  const defs = smallDefs([
    gate('bench', ['start'], [{ ...TAG, id: 'tag', notes: 'piston' }, WITNESS]),
    gate(
      'drill',
      ['fall'],
      [{ ...TAG, id: 'drill_tag', same_as: 'piston' }, { ...NO_START, words: 'FLOODED' }, WITNESS],
      { exposes: ['start'] },
    ),
    tell('drilled', { exposes: ['start', 'fall'] }),
  ])
  const ready = () => {
    const walk = new Walk(defs).keys('RO', 'TC-401-1', 'T-1', 'ML', 'T-1', 'FLOODED', 'ML')
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'drilled' } })
    return walk
  }
  const back = (walk: Walk, item = 'tag') =>
    walk.bring({ do: 'take-back-evidence', step: 'bench', item, why: 'that was the other piston' })

  it('falls with it, with what was tried under it, and nobody drills before it is keyed anew', () => {
    const walk = ready()
    expect(back(walk)).toBeNull()
    expect(givenAt(walk, 'drill')).toEqual([])
    expect(violations(momentOf(walk))).toEqual([])
    walk.keys('ALL OUT', 'T-2', 'ML', 'ALL OUT')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'drill_tag' } })
    walk.keys('T-1')
    expect(walk.last).toMatchObject({ type: 'evidence.failed', unlike: 'piston' })
  })

  it('falls where another number is noted in the place of the first, without any word that it was wrong', () => {
    const walk = ready()
    // Only the first of the two falls.
    const fell = { type: 'gate.closed', step: 'bench', cause: 'people', items: ['tag', 'witness'] } as const
    walk.state = fold(walk.state, { ...fell, seq: walk.state.seq + 1, at: walk.state.lastAt })
    walk.keys('ALL OUT')
    const other = {
      do: 'evidence',
      step: 'bench',
      item: 'tag',
      typed: 'T-2',
      why: 'it is the other',
    } as const
    expect(walk.bring(other)).toBeNull()
    expect(givenAt(walk, 'drill')).toEqual([])
    expect(walk.state.gates.drill).toMatchObject({ status: 'closed', mustClear: true })
  })

  it('falls at every line that rests on it: a lock that was told off under it is told anew', () => {
    const off = { id: 'off', kind: 'locks', same_as: 'lock', taken_off: 'before_start', ask: 'Off.' }
    const jobs = smallDefs([
      gate('hung', ['start'], [{ ...LOCKS, notes: 'lock' }, WITNESS]),
      tell('work', { exposes: ['start'] }),
      gate('gas', ['bad_air'], [off, WITNESS]),
      tell('let_in', { exposes: ['bad_air'] }),
    ])
    const walk = new Walk(jobs).keys('RO', 'TC-401-1', 'L-1', 'L-2', 'ML', '', 'L-2 RO', 'L-1 RO', 'ML')
    const key = givenAt(walk, 'hung').find((one) => walk.state.gates.hung?.given[one]?.shown === 'L-1') ?? ''
    expect(
      walk.bring({ do: 'take-back-evidence', step: 'hung', item: key, why: 'it was lock nine' }),
    ).toBeNull()
    expect(Object.values(walk.state.gates.gas?.given ?? {}).map(({ shown }) => shown)).toEqual(['L-2'])
    expect(walk.state.gates.gas?.status).toBe('closed')
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('does not pass while the one before it is taken back and not noted anew', () => {
    const BLIND = { kind: 'numbers', of: 'blind', per: 'once', ask: 'The blind.' }
    const jobs = smallDefs([
      gate('hung', ['start'], [{ ...BLIND, id: 'blind', notes: 'bl' }, WITNESS]),
      tell('work', { exposes: ['start'] }),
      gate('gas', ['bad_air'], [{ ...BLIND, id: 'off', same_as: 'bl', taken_off: true }, WITNESS]),
      tell('let_in', { exposes: ['bad_air'] }),
    ])
    const walk = new Walk(jobs).keys('RO', 'TC-401-1', 'B-1', 'ML', '')
    walk.bring({ do: 'take-back-evidence', step: 'hung', item: 'blind', why: 'the blind is B-2' })
    for (const typed of ['B-1 RO', 'B-2 RO']) {
      expect(walk.bring({ do: 'evidence', step: 'gas', item: 'off', typed })).toBe('taken-back')
      expect(givenAt(walk, 'gas')).toEqual([])
    }
  })
})

describe('a step before a hold point that is gone back to', () => {
  const defs = smallDefs([
    { id: 'bleed', kind: 'confirm', title: 'the bleed opened', seen: 'Open.' },
    tell('told'),
    gate('vented', ['start'], [LOCKS, { ...NO_START, words: 'NO FLOW' }, OXYGEN, WITNESS]),
    tell('opened', { exposes: ['start'] }),
  ])
  const open = () =>
    new Walk(defs).keys('RO', 'TC-401-1', '1', '', 'L-1', 'L-2', 'NO FLOW', '1', '20.9', 'ML')
  const why = 'the bleed was never open'

  it('takes what was shown of the place since, and leaves what hangs', () => {
    const walk = open()
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'opened' } })
    const question = { kind: 'reopen-why', step: 'bleed' } as const
    expect(wouldVoidLines(defs, walk.state, question).join()).toMatch(/try start; oxygen .*; witness/)
    expect(walk.bring({ do: 'reopen', step: 'bleed', why })).toBeNull()
    expect(givenAt(walk, 'vented')).toHaveLength(2)
    expect(walk.last).toMatchObject({
      type: 'gate.closed',
      cause: 'again',
      why: 'the bleed opened was gone back to',
    })
    walk.keys('1', '')
    expect(walk.prompt.kind).toBe('clear')
    walk.keys('ALL OUT')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'try_start' } })
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('takes nothing where it was only told, and lets nothing in', () => {
    const walk = open()
    walk.bring({ do: 'reopen', step: 'told', why })
    expect(walk.state.gates.vented?.status).toBe('open')
    expect(violations(momentOf(walk))).toEqual([])
  })
})
