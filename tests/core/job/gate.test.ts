// A gate takes evidence in its order and nothing else: locks by number, words in full, a second person.
import { describe, expect, it } from 'vitest'
import { gateState } from '../../../src/core/job/gate.ts'
import { LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'
import { gate, LOCKS, OXYGEN, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'

const item = (walk: Walk) => (walk.prompt.kind === 'evidence' ? walk.prompt.item.key : walk.prompt.kind)
const given = (walk: Walk) => Object.keys(gateState(walk.state, 'hold_point').given)
const toWitness = () =>
  new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, '20.9', '0', '0', '20.8', '0', '0')

describe('order', () => {
  it('asks every item of the gate once, in the order of the procedure', () => {
    const walk = new Walk().toGate()
    const asked = []
    for (const line of [...LOCK_LINES, ...WORD_LINES, '20.9', '0', '0', '20.8', '0', '0', 'ML']) {
      asked.push(item(walk))
      expect(walk.key(line)).toBeNull()
    }
    expect(asked).toEqual([
      ...[
        'locks.breaker',
        'locks.barring',
        'locks.suction',
        'locks.discharge',
        'locks.recycle',
        'locks.unloader',
      ],
      ...[
        'try_start',
        'bleeds',
        'block',
        'pick',
        'bump',
        'oxygen_breathing',
        'flammable_breathing',
        'h2s_breathing',
      ],
      ...['oxygen_inside', 'flammable_inside', 'h2s_inside', 'witness'],
    ])
    expect(walk.last.type).toBe('gate.opened')
  })

  it('refuses evidence for any item but the one asked, flammables before oxygen among them', () => {
    const walk = new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES)
    for (const early of [
      'flammable_breathing',
      'h2s_breathing',
      'oxygen_inside',
      'witness',
      'locks.breaker',
      'no_such',
    ])
      expect(walk.bring({ do: 'evidence', step: 'hold_point', item: early, typed: '0' })).toBe('not-asked')
    expect(walk.bring({ do: 'evidence', step: 'wiped', item: 'oxygen_breathing', typed: '20.9' })).toBe(
      'not-asked',
    )
    expect(item(walk)).toBe('oxygen_breathing')
  })

  it('stays shut with everything but the witness', () => {
    const walk = toWitness()
    expect(gateState(walk.state, 'hold_point').status).toBe('never')
    expect(walk.bring({ do: 'confirm', step: 'wiped' })).toBe('not-asked')
    expect(walk.bring({ do: 'read', place: 'bore.centre.vertical', typed: '9.5033' })).toBe('not-asked')
  })
})

describe('locks', () => {
  it.each(['', ' ', 'y', 'Y', 'yes', 'locked', 'ok', '-1', 'L 101', 'L_101', 'x'.repeat(17), '１２', 'NaN'])(
    'refuses %j as the number of a lock',
    (typed) => {
      const walk = new Walk().toGate()
      expect(walk.key(typed)).toBe('lock-number')
      expect(given(walk)).toEqual([])
    },
  )

  it('shows a number with a space in it without, and says nothing of that where there is none', () => {
    const walk = new Walk().toGate().keys('L 101')
    expect(walk.said.at(-1)).toMatch(/at least one digit, and no space\. If it is one number: L-101\.$/)
    expect(walk.keys('locked').said.at(-1)).toMatch(/at least one digit\.$/)
    expect(walk.keys('locked here').said.at(-1)).toMatch(/at least one digit\.$/)
  })

  it.each(['L-101', 'l-101', ' L-101 ', 'L101', 'l10-1', '101', '1-01', '0101', 'L-0101'])(
    'refuses one lock at two points, keyed as %j',
    (again) => {
      const walk = new Walk().toGate().keys('L-101')
      expect(walk.key(again)).toBe('lock-twice')
      expect(given(walk)).toEqual(['locks.breaker'])
    },
  )

  it('refuses L-101 where 101 is down as well, and names both', () => {
    const walk = new Walk().toGate().keys('101')
    expect(walk.key('L-101')).toBe('lock-twice')
    expect(walk.said.at(-1)).toMatch(
      /^Lock L-101, which may be 101, is already down for main driver breaker, E-1,/,
    )
    expect(given(walk)).toEqual(['locks.breaker'])
  })

  it('takes other letters or other figures as another lock', () => {
    const walk = new Walk().toGate().keys('L-101', 'K-101', 'L-1010', 'L-11')
    expect(given(walk)).toHaveLength(4)
  })

  it('takes the same lock again at its point after the evidence fell', () => {
    const walk = new Walk().toGate().keys('L-101', 'stop', '8', 'slipped', '?', 'release', 'KH', 'put right')
    expect(given(walk)).toEqual([])
    expect(walk.key('L-101')).toBeNull()
  })
})

describe('words', () => {
  it.each([
    '',
    'y',
    'Y',
    'yes',
    '1',
    'NO',
    'START',
    'NO STARTS',
    'NOSTART',
    'N0 START',
    'NO-START',
    'NO FLOW',
    'NaN',
  ])('refuses %j for NO START', (typed) => {
    const walk = new Walk().toGate().keys(...LOCK_LINES)
    expect(walk.key(typed)).toBe('words')
    expect(item(walk)).toBe('try_start')
  })

  it('takes them in small letters and with odd spaces, and records them whole', () => {
    const walk = new Walk().toGate().keys(...LOCK_LINES, ' no   start ')
    expect(walk.last).toMatchObject({ type: 'evidence.given', item: 'try_start', shown: 'NO START' })
  })
})

describe('witness', () => {
  it.each([
    ['RO', 'self-witness', 'the doer'],
    ['ro', 'self-witness', 'the doer in small letters'],
    ['TS', 'witness-role', 'a trainee'],
    ['XX', 'unknown-person', 'nobody'],
    ['', 'unknown-person', 'a blank'],
    ['y', 'unknown-person', 'a y'],
    ['M L', 'unknown-person', 'initials with a gap'],
  ])('refuses %j as %s: %s', (typed, code) => {
    const walk = toWitness()
    expect(walk.key(typed)).toBe(code)
    expect(gateState(walk.state, 'hold_point').status).toBe('never')
  })

  it('refuses whoever gave evidence that stands, though another sits at the keyboard now', () => {
    const walk = toWitness()
    walk.state = { ...walk.state, doer: 'KH' }
    expect(walk.key('RO')).toBe('self-witness')
    expect(walk.key('KH')).toBe('self-witness')
    expect(walk.key('ML')).toBeNull()
  })

  it('takes only the roles the gate names', () => {
    const defs = smallDefs([gate('g', ['start'], [{ ...WITNESS, roles: ['lead'] }])])
    const walk = new Walk(defs).keys('RO', 'TC-401-1')
    expect(walk.key('ML')).toBe('witness-role')
    expect(walk.key('KH')).toBeNull()
  })
})

describe('a gate with nothing missing', () => {
  it('still does not open before everybody was called out', () => {
    const walk = new Walk().throughGate()
    const open = gateState(walk.state, 'hold_point')
    walk.state = { ...walk.state, gates: { hold_point: { ...open, status: 'closed', mustClear: true } } }
    walk.bring({ do: 'tick' })
    expect(walk.last.type).toBe('gate.opened')
    expect(gateState(walk.state, 'hold_point').status).toBe('closed')
    walk.keys('ALL OUT')
    expect(gateState(walk.state, 'hold_point').status).toBe('open')
  })
})

describe('no side doors', () => {
  it('has no n/a, going back skips nothing, and a note is only a note', () => {
    const walk = new Walk().toGate()
    const before = walk.entries.length
    walk.keys('n/a', 'back', 'N/A')
    expect(walk.entries).toHaveLength(before)
    expect(walk.said.join(' ')).toMatch(/no n\/a.*Nothing was given at this hold point/s)
    expect(walk.bring({ do: 'not-applicable', place: 'locks.breaker', why: 'it is broken' })).toBe(
      'not-asked',
    )
    walk.keys('note lock is on, trust me', 'why', 'help', 'readings')
    expect(walk.last).toMatchObject({ type: 'note.written', step: 'hold_point' })
    expect(given(walk)).toEqual([])
    expect(item(walk)).toBe('locks.breaker')
  })

  it('is not opened by a correction, a reopening, a disposition or a settled doubt', () => {
    const walk = new Walk().toGate()
    expect(walk.bring({ do: 'correct', of: 1, typed: '9.5', why: 'because' })).toBe('no-reading')
    expect(walk.bring({ do: 'reopen', step: 'hold_point', why: 'because' })).toBe('not-asked')
    expect(walk.bring({ do: 'settle-doubt', choice: 'kept', why: 'because' })).toBe('not-asked')
    expect(walk.bring({ do: 'settle-late', kept: true })).toBe('not-asked')
    expect(walk.bring({ do: 'clear', step: 'hold_point', typed: 'ALL OUT' })).toBe('not-asked')
    expect(walk.bring({ do: 'done', step: 'hold_point' })).toBe('not-asked')
    expect(item(walk)).toBe('locks.breaker')
  })
})

describe('hazards and gates', () => {
  it('never presents a step whose hazard no gate holds', () => {
    const walk = new Walk(smallDefs([tell('a', { exposes: ['start'] })])).keys('RO', 'TC-401-1')
    expect(walk.prompt).toMatchObject({ kind: 'held', why: expect.stringContaining('start') })
    expect(walk.bring({ do: 'done', step: 'a' })).toBe('not-asked')
  })

  it('asks a gate that stands after the step first', () => {
    const walk = new Walk(smallDefs([tell('a', { exposes: ['start'] }), gate('g', ['start'], [LOCKS])]))
    walk.keys('RO', 'TC-401-1')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', before: { id: 'a' } })
    walk.keys('L-1', 'L-2')
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'a' } })
  })

  it('does not let a gate hold back its own hazard', () => {
    const walk = new Walk(smallDefs([gate('g', ['start'], [LOCKS], { exposes: ['start'] })])).keys(
      'RO',
      'TC-401-1',
    )
    expect(walk.prompt).toMatchObject({ kind: 'held' })
  })

  it('opens the gate that a gate itself stands behind first, also when asked again for a later step', () => {
    const defs = smallDefs([
      gate('isolated', ['start'], [LOCKS]),
      gate('air', ['bad_air'], [WITNESS], { exposes: ['start'] }),
      tell('a', { exposes: ['bad_air'] }),
    ])
    const walk = new Walk(defs).keys('RO', 'TC-401-1', 'L-1', 'L-2', 'ML')
    expect(walk.prompt).toMatchObject({ kind: 'tell' })
    walk.keys('stop', '8', 'slipped', '?', 'release', 'KH', 'put right')
    expect(walk.prompt).toMatchObject({ kind: 'clear', gate: { id: 'air' } })
    walk.keys('ALL OUT')
    expect(walk.prompt).toMatchObject({ kind: 'clear', gate: { id: 'isolated' } })
    walk.keys('ALL OUT')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', gate: { id: 'isolated' } })
    walk.keys('L-1', 'L-2')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', gate: { id: 'air' } })
  })

  it('holds two gates that wait for each other', () => {
    const defs = smallDefs([
      gate('a', ['start'], [LOCKS], { exposes: ['bad_air'] }),
      gate('b', ['bad_air'], [OXYGEN, WITNESS], { exposes: ['start'] }),
    ])
    const walk = new Walk(defs).keys('RO', 'TC-401-1')
    expect(walk.prompt).toMatchObject({ kind: 'held', why: expect.stringContaining('wait for the other') })
  })
})

describe('evidence taken back', () => {
  it('of words or a lock is that one item, asked again', () => {
    const walk = new Walk().toGate().keys('L-101', 'L-102')
    expect(walk.key('back')).toBeNull()
    expect(walk.warned).toEqual([
      'Last: lock at barring motor breaker, E-2, L-102.',
      'This would make void what was keyed for: lock at barring motor breaker, E-2.',
    ])
    walk.keys('no', 'back')
    expect(given(walk)).toEqual(['locks.breaker', 'locks.barring'])
    expect(walk.keys('back').key('yes')).toBeNull()
    expect(given(walk)).toEqual(['locks.breaker'])
    expect(item(walk)).toBe('locks.barring')
    expect(walk.last).toMatchObject({ type: 'gate.closed', cause: 'again', items: ['locks.barring'] })
  })

  it('of gas is all of it, since it is read in an order; a mistyped oxygen is no dead end with one meter', () => {
    const walk = new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES, '20.9', '0', '0', '2.0', '0')
    // The meter cannot see what burns in 2 % of oxygen: it was put back, and there is no other.
    expect(item(walk)).toBe('pick')
    walk.keys('back')
    expect(walk.warned.join(' ')).toMatch(
      /^Last: oxygen inside the opening, 2 %vol\. This would make void what was keyed for: oxygen where people breathe; /,
    )
    walk.keys('yes', '1')
    expect(item(walk)).toBe('oxygen_breathing')
    expect(given(walk)).toHaveLength(10)
    walk.keys('20.9', '0', '0', '20.8', '0', '0', 'ML')
    expect(gateState(walk.state, 'hold_point').status).toBe('open')
  })

  it('never opens a gate, lets nobody off coming out, and is nothing where nothing was given', () => {
    expect(new Walk().toGate().key('back')).toBe('nothing-given')
    const fallen = new Walk().toBore().wait(31).keys('')
    expect(fallen.prompt.kind).toBe('clear')
    fallen.key('back')
    expect(fallen.prompt.kind).toBe('clear')
    expect(fallen.bring({ do: 'ask-again', step: 'hold_point' })).toBe('not-asked')
    const open = new Walk().throughGate()
    expect(open.bring({ do: 'ask-again', step: 'hold_point' })).toBe('not-asked')
    expect(gateState(open.state, 'hold_point').status).toBe('open')
  })
})
