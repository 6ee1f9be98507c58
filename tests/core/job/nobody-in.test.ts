// A slip at a hold point that is still being filled in: taken back calmly only while nobody can be behind any of them.

import { describe, expect, it } from 'vitest'
import type { Entry } from '../../../src/core/job/entries.ts'
import { foldGate } from '../../../src/core/job/fold-gate.ts'
import { nobodyIn } from '../../../src/core/job/nobody-in.ts'
import { EMPTY_GATE } from '../../../src/core/job/state.ts'
import { GATE_LINES, Walk } from '../../helpers/example.ts'
import { gate, LOCKS, NO_START, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'

describe('what was shown for a hold point and taken back', () => {
  it('is calm while nobody can be behind any hold point: a slip of the pen on paper', () => {
    const walk = new Walk(
      smallDefs([
        gate('isolated', ['start'], [LOCKS, NO_START, WITNESS]),
        tell('in', { exposes: ['start'] }),
      ]),
    )
    walk.keys('RO', 'TC-401-1', 'L-1', 'L-2', 'correct', '1')
    expect(walk.warned).toEqual([
      'It is asked again; nobody was let in yet. This would make void what was keyed for: lock at barring motor breaker, E-2.',
    ])
    walk.keys('keyed the number of the other one')
    expect(walk.last).toMatchObject({ type: 'gate.closed', cause: 'corrected', nobody_in: true })
    expect(walk.prompt).toMatchObject({ kind: 'evidence' })
    walk.keys('L-3', 'NO START', 'ML')
    expect(walk.last.type).toBe('gate.opened')
    walk.keys('correct', '2', 'it was the wrong panel')
    expect(walk.last).not.toHaveProperty('nobody_in')
    expect(walk.prompt.kind).toBe('clear')
  })

  it.each([
    ['was ever complete', { status: 'closed' }],
    ['still calls people out', { mustClear: true }],
  ] as const)('calls people out where another hold point %s', (_says, other) => {
    const walk = new Walk(
      smallDefs([
        gate('first', ['stored'], [NO_START]),
        gate('isolated', ['start'], [LOCKS, NO_START, WITNESS]),
        tell('in', { exposes: ['start'] }),
      ]),
    )
    walk.keys('RO', 'TC-401-1', 'NO START', 'L-1')
    const first = { ...EMPTY_GATE, ...other }
    walk.state = { ...walk.state, gates: { ...walk.state.gates, first } }
    expect(nobodyIn(walk.engine.defs, walk.state)).toBe(false)
    walk.state = { ...walk.state, gates: { ...walk.state.gates, first: EMPTY_GATE } }
    expect(nobodyIn(walk.engine.defs, walk.state)).toBe(true)
  })

  it('calls people out of a hold point where something was read or is watched at the place', () => {
    const walk = new Walk().toGate()
    walk.keys(...GATE_LINES.slice(0, -6))
    const [gate] = Object.values(walk.state.gates)
    expect(gate?.status).toBe('never')
    expect(Object.values(gate?.given ?? {}).some(({ instrument }) => instrument !== null)).toBe(true)
    expect(nobodyIn(walk.engine.defs, walk.state)).toBe(false)
  })

  it('believes no entry that says nobody is in against a hold point that is open', () => {
    const walk = new Walk().toBore()
    const body = { type: 'gate.closed', step: 'hold_point', cause: 'corrected', items: ['witness'] } as const
    const entry = { ...walk.last, ...body, nobody_in: true } as Extract<Entry, { type: 'gate.closed' }>
    expect(foldGate(walk.state, entry).gates.hold_point?.mustClear).toBe(true)
  })
})
