// Two jobs on one machine: what comes off by one of them, in whatever way it is keyed, is void in the other that rests on it.
import { describe, expect, it } from 'vitest'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import type { OtherJob } from '../../../src/core/job/elsewhere.ts'
import type { Walk } from '../../helpers/example.ts'
import {
  gate,
  LOCKS,
  NO_START,
  OFF_STEPS,
  readOne,
  smallDefs,
  tell,
  WITNESS,
  withValve,
} from '../../helpers/small-job.ts'
import { pair } from '../../helpers/two-jobs.ts'

const OWN = { id: 'own', kind: 'numbers', of: 'personal_lock', per: 'person', ask: 'Own lock.' }
const LOCKED = smallDefs([
  gate('iso', ['start'], [LOCKS, NO_START, WITNESS]),
  readOne('inside', { exposes: ['start'] }),
])
/** Locks that are noted, and held against later. */
const NOTED = smallDefs([
  gate('iso', ['start'], [{ ...LOCKS, notes: 'lock' }, WITNESS]),
  tell('in', { exposes: ['start'] }),
  gate('before', ['fall'], [{ ...LOCKS, id: 'locks_again', same_as: 'lock' }, WITNESS]),
  tell('test', { exposes: ['fall'] }),
])
const OWN_LOCKED = smallDefs([
  gate('iso', ['start'], [OWN, NO_START, WITNESS]),
  readOne('inside', { exposes: ['start'] }),
])

/** What the other says after its look, of why its people come out; null where they stay in. */
function whyOut(walk: Walk): string | null {
  walk.bring({ do: 'tick' })
  if (walk.prompt.kind !== 'clear') return null
  const closed = walk.entries.findLast((e) => e.type === 'gate.closed')
  expect(walk.state.gates.iso?.given).toEqual({})
  return closed?.type === 'gate.closed' && closed.cause === 'elsewhere' ? (closed.why ?? '') : null
}

const onLocks = (walk: Walk) => walk.keys('KH', 'TC-401-1', 'L-1', 'L-2', 'NO START', 'ML')

describe('what may have come off by another job calls out whoever rests on it', () => {
  it('a thing from the first signature on that it is out', () => {
    const places = smallDefs([
      tell('pin_in', { places: [{ id: 'pin', what: 'crank block' }] }),
      tell('bar'),
      tell('end'),
    ])
    const [us, other] = pair([places, LOCKED]).walks
    us.keys('RO', 'TC-401-1', '', 'on the crank', 'B-1')
    onLocks(other)
    expect(whyOut(other)).toBeNull()
    us.bring({ do: 'account', of: us.state.things[0]?.seq ?? -1, person: 'RO', proved: true })
    expect(us.last.type).toBe('thing.seen')
    expect(whyOut(other)).toMatch(/crank block, on the crank, B-1 was taken off, in job aaaa/)
  })

  it('a lock that is taken back as a slip', () => {
    const [us, other] = pair([LOCKED, LOCKED]).walks
    onLocks(other)
    us.keys('RO', 'TC-401-1', 'L-1', 'L-2')
    expect(whyOut(other)).toBeNull()
    us.bring({ do: 'ask-again', step: 'iso' })
    expect(whyOut(other)).toMatch(/L-2 was taken back, in job aaaa/)
  })

  it('the number that was noted, where another is found', () => {
    const [us, other] = pair([NOTED, LOCKED]).walks
    us.keys('RO', 'TC-401-1', 'L-1', 'L-2', 'ML', '')
    onLocks(other)
    expect(whyOut(other)).toBeNull()
    us.key('L-77')
    expect(us.last).toMatchObject({ type: 'evidence.failed', unlike: 'lock.breaker' })
    expect(whyOut(other)).toMatch(/L-77 was found where L-1 was, in job aaaa/)
  })

  it('the number that hung before, where a lock was swapped', () => {
    const [us, other] = pair([NOTED, LOCKED]).walks
    us.keys('RO', 'TC-401-1', 'L-1', 'L-2', 'ML')
    onLocks(other)
    us.bring({ do: 'clock-moved', seconds: -100 })
    us.keys('ALL OUT')
    expect(whyOut(other)).toBeNull()
    us.bring({ do: 'evidence', step: 'iso', item: 'locks.breaker', typed: 'L-9', why: 'L-1 was swapped' })
    expect(us.last).toMatchObject({ type: 'evidence.given', was: 'L-1' })
    expect(whyOut(other)).toMatch(/L-9 hangs where L-1 was, in job aaaa/)
  })

  it.each([true, false])(
    'the own lock of who goes, whether its hold point fell before or not: %j',
    (isFallen) => {
      const [us, other] = pair([OWN_LOCKED, OWN_LOCKED]).walks
      us.keys('RO', 'TC-401-1')
      us.bring({ do: 'come-on', person: 'KH', proved: true })
      us.keys('P-1', 'K-1', 'NO START', 'ML')
      other.keys('KH', 'TC-401-1', 'K-1', 'NO START', 'ML')
      if (isFallen) {
        us.bring({ do: 'clock-moved', seconds: -100 })
        us.keys('ALL OUT')
      }
      expect(whyOut(other)).toBeNull()
      us.bring({ do: 'sign-off', person: 'KH', proved: true })
      expect(whyOut(other)).toMatch(/KH went, and may have taken own locks off, in job aaaa/)
    },
  )

  it('every number that hangs, where only words tell that locks are off', () => {
    const words = { id: 'off', kind: 'words', ask: 'Own locks off?', words: 'LOCKS OFF' }
    const tells = smallDefs([
      gate('iso', ['start'], [LOCKS, WITNESS]),
      tell('in', { exposes: ['start'] }),
      gate('go', ['fall'], [words, WITNESS]),
      tell('run', { exposes: ['fall'] }),
    ])
    const [us, other] = pair([tells, LOCKED]).walks
    us.keys('RO', 'TC-401-1', 'L-1', 'L-2', 'ML', '')
    onLocks(other)
    expect(whyOut(other)).toBeNull()
    us.key('LOCKS OFF')
    expect(whyOut(other)).toMatch(/"LOCKS OFF" was keyed of locks or blinds, in job aaaa/)
  })
})

describe('a lock does not come off while people of another job are behind it', () => {
  const OFF = withValve(smallDefs(OFF_STEPS))
  const INSIDE = withValve(LOCKED)

  /** Up to where locks come off, with the locks on that the other job notes too. */
  function atOff(them: Definitions = INSIDE) {
    const jobs = pair([OFF, them])
    const [us, other] = jobs.walks
    us.keys('RO', 'TC-401-1', 'L-1', 'L-2', 'L-3', 'ML')
    return { us, other }
  }
  const inside = (walk: Walk) => walk.keys('KH', 'TC-401-1', 'L-1', 'L-2', 'L-3', 'NO START', 'ML')
  const OFF_NOW = { do: 'evidence', step: 'gas', item: 'off.suction', typed: 'L-3 RO' } as const
  const asksFor = ({ prompt }: Walk) => (prompt.kind === 'evidence' ? prompt.item.key : prompt.kind)

  it('they are called out, nobody goes in again while it comes off, and it is on record why', () => {
    const { us, other } = atOff()
    inside(other)
    us.key('')
    expect(us.prompt).toMatchObject({
      kind: 'held',
      step: { id: 'gas' },
      elsewhere: true,
      why: expect.stringMatching(
        /what comes off here can let in the driver being started, and job bbbb \(KH on it\) has let people in/,
      ),
    })
    expect(us.bring(OFF_NOW)).not.toBeNull()
    expect(us.state.gates.gas?.given ?? {}).toEqual({})
    expect(whyOut(other)).toMatch(
      /Locks or blinds off: gas in job aaaa .* can let in the driver being started/,
    )
    us.bring({ do: 'tick' })
    expect(us.prompt.kind).toBe('held')
    other.key('ALL OUT')
    us.bring({ do: 'tick' })
    expect(asksFor(us)).toBe('off.suction')
    // Nothing is proved anew while it comes off.
    other.bring({ do: 'tick' })
    expect(other.prompt).toMatchObject({ kind: 'held', step: { id: 'iso' }, elsewhere: true })
    us.keys('L-3 RO', 'ML', '')
    other.bring({ do: 'tick' })
    expect(asksFor(us)).toBe('driver.barring')
    expect(other.prompt).toMatchObject({ kind: 'held', elsewhere: true })
    us.keys('L-2 RO', 'L-1 RO', 'ML', '')
    expect(us.state.closed).toBe('NONE')
    other.bring({ do: 'tick' })
    expect(asksFor(other)).toBe('locks.breaker')
  })

  it('one job after the other, where both come to it', () => {
    const { us, other } = atOff(OFF)
    other.keys('KH', 'TC-401-1', 'L-1', 'L-2', 'L-3', 'ML')
    us.key('')
    other.key('')
    for (const walk of [us, other, us, other]) {
      walk.bring({ do: 'tick' })
      if (walk.prompt.kind === 'clear') walk.key('ALL OUT')
    }
    us.bring({ do: 'tick' })
    expect([asksFor(us), asksFor(other)].filter((one) => one === 'off.suction')).toHaveLength(1)
  })

  it('by its number too, where the other holds another hazard by it', () => {
    const by = withValve(
      smallDefs([
        gate('iso', ['fall'], [{ ...LOCKS, against: ['fall'] }, WITNESS]),
        readOne('in', { exposes: ['fall'] }),
      ]),
    )
    const { us, other } = atOff(by)
    other.keys('KH', 'TC-401-1', 'L-1', 'L-2', 'L-3', 'ML')
    us.key('')
    other.bring({ do: 'tick' })
    expect(asksFor(us)).toBe('off.suction')
    us.key('L-3 RO')
    expect(whyOut(other)).toMatch(/L-3 was taken off, in job aaaa/)
  })

  it.each([{ stop: 'a leak' }, { unread: 'it is torn' }])(
    'nor with %j of the other',
    (change: Partial<OtherJob>) => {
      const { us } = atOff()
      us.key('')
      expect(asksFor(us)).toBe('off.suction')
      const seen = us.others()
      us.others = () => seen.map((one) => ({ ...one, ...change }))
      us.bring({ do: 'tick' })
      us.key('ALL OUT')
      expect(us.prompt).toMatchObject({ kind: 'held', step: { id: 'gas' }, elsewhere: true })
      expect(us.bring(OFF_NOW)).not.toBeNull()
      expect(us.state.gates.gas?.given ?? {}).toEqual({})
    },
  )
})
