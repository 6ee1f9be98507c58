// A wait that runs while whoever watches it is called out by a hold point that stands before: it begins anew.
import { describe, expect, it } from 'vitest'
import { evidenceView } from '../../../src/core/sheet/evidence-view.ts'
import { Walk } from '../../helpers/example.ts'
import { gate, LOCKS, NO_START, type Raw, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'
import { pair } from '../../helpers/two-jobs.ts'
import { violations } from './invariants.ts'
import { momentOf } from './schedules.ts'

const SHUT_IN: Raw = {
  id: 'hold',
  kind: 'wait',
  ask: 'Vents shut, and wait.',
  lasts: '10 min',
  begin_words: 'VENTS SHUT',
  words: 'NO RISE',
}
const OWN: Raw = { id: 'own', kind: 'numbers', of: 'personal_lock', per: 'person', ask: 'Own lock.' }

/** Two hold points, the wait at the second; people stand there behind the first, or clear of it. */
function defs(first: readonly Raw[], exposes: readonly string[] = ['start']) {
  return smallDefs([
    gate('iso', ['start'], [...first, WITNESS]),
    gate('zero', ['bad_air'], [SHUT_IN, WITNESS], { exposes }),
    tell('in', { exposes: ['start', 'bad_air'] }),
  ])
}

const AGES = defs([{ ...NO_START, life: '5 min' }])
const running = (walk: Walk) => walk.state.gates.zero?.begun.hold !== undefined

/** Taken up to a running wait, four minutes into it. */
function waiting(walk: Walk, ...lines: string[]): Walk {
  walk.keys('RO', 'TC-401-1', ...lines, 'ML', 'VENTS SHUT')
  expect(running(walk)).toBe(true)
  walk.wait(4)
  walk.bring({ do: 'tick' })
  expect(running(walk)).toBe(true)
  return walk
}

describe('a wait falls with the hold point that stands before it', () => {
  it('when that lapses: its end is counted from when it is begun anew, and from nothing before', () => {
    const walk = waiting(new Walk(AGES), 'NO START').wait(2)
    walk.bring({ do: 'tick' })
    expect(walk.prompt).toMatchObject({ kind: 'clear', gate: { id: 'iso' } })
    expect(running(walk)).toBe(false)
    expect(walk.last).toMatchObject({
      type: 'gate.closed',
      step: 'zero',
      cause: 'again',
      items: ['hold'],
      why: 'it ran while the hold point "iso" was shut',
    })
    walk.keys('ALL OUT', 'NO START', 'ML').wait(3.6)
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'hold' } })
    expect(walk.key('NO RISE')).toBe('not-begun')
    const { prompt } = walk
    if (prompt.kind !== 'evidence') throw new Error(prompt.kind)
    const rows = evidenceView(walk.engine.defs, walk.state, prompt).rows ?? []
    expect(JSON.stringify(rows)).toContain('Asked again: it ran while the hold point')
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('when a lock of it is taken back, or somebody comes on', () => {
    const locked = waiting(new Walk(defs([LOCKS])), 'L-1', 'L-2')
    locked.bring({ do: 'take-back-evidence', step: 'iso', item: 'locks.breaker', why: 'no lock hung' })
    expect(locked.prompt.kind).toBe('clear')
    expect(running(locked)).toBe(false)
    const owned = waiting(new Walk(defs([OWN])), 'P-1')
    owned.bring({ do: 'come-on', person: 'KH', proved: true })
    expect(owned.prompt.kind).toBe('clear')
    expect(running(owned)).toBe(false)
  })

  it('when another job fells it', () => {
    const lets = smallDefs([
      gate('iso', ['start'], [NO_START, WITNESS]),
      tell('barred', { exposes: ['start'], lets_in: ['start'] }),
      tell('end'),
    ])
    const [us, other] = pair([lets, defs([NO_START])]).walks
    waiting(other, 'NO START')
    us.keys('RO', 'TC-401-1', 'NO START', 'ML')
    other.bring({ do: 'tick' })
    expect(other.prompt).toMatchObject({ kind: 'clear', gate: { id: 'iso' } })
    expect(running(other)).toBe(false)
  })

  it('and not where nobody stands behind that one', () => {
    const walk = waiting(new Walk(defs([{ ...NO_START, life: '5 min' }], [])), 'NO START').wait(2)
    walk.bring({ do: 'tick' })
    expect(walk.state.gates.iso?.status).toBe('closed')
    expect(running(walk)).toBe(true)
    expect(walk.wait(5).key('NO RISE')).toBeNull()
  })

  it('and not once it was watched to its end', () => {
    const walk = waiting(new Walk(defs([{ ...NO_START, life: '15 min' }])), 'NO START').wait(6)
    walk.keys('NO RISE').wait(9)
    walk.bring({ do: 'tick' })
    expect(walk.state.gates.iso?.status).toBe('closed')
    expect(walk.state.gates.zero?.given.hold?.shown).toBe('NO RISE')
  })
})
