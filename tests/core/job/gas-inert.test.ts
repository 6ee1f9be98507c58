// The end of a purge is told by a meter that needs no air, in % of the volume, at the vent: no other figure stands in.
import { describe, expect, it } from 'vitest'
import { inertLetIn } from '../../../src/core/job/inert-let-in.ts'
import { Walk } from '../../helpers/example.ts'
import { rightLine } from '../../helpers/right-line.ts'
import { shippedDefs } from '../../helpers/shipped-jobs.ts'

function toPurge(): Walk {
  const walk = new Walk(shippedDefs('vent-and-purge.yaml'))
  for (let n = 0; n < 120; n++) {
    const { prompt, state } = walk
    if (prompt.kind === 'pick' && prompt.seat.id === 'purge_meter') return walk
    const begun = prompt.kind === 'evidence' ? state.gates[prompt.gate.id]?.begun[prompt.item.key] : undefined
    if (begun !== undefined) walk.wait(11)
    walk.key(rightLine(walk.engine.defs, walk.state, walk.talk))
  }
  throw new Error('the purge was never asked')
}

describe('the end of a purge', () => {
  it('is read only with a meter that reads without air', () => {
    const walk = toPurge()
    expect(walk.key('1')).toBe('unfit')
    expect(walk.said.join(' ')).toContain('it does not read in gas without air')
    expect(walk.key('2')).toBe(null)
  })

  it('is not told by another meter that sits in the seat all the same', () => {
    const walk = toPurge()
    walk.state = { ...walk.state, seats: { ...walk.state.seats, purge_meter: 'G-7' } }
    walk.key('0')
    expect(walk.entries.slice(-2)).toMatchObject([
      { type: 'evidence.failed', item: 'purged', why: expect.stringMatching(/does not read what burns/) },
      { type: 'instrument.put-back', seat: 'purge_meter' },
    ])
    expect(walk.state.gates.at_zero?.given.purged).toBeUndefined()
  })

  it('fails above its limit, and in whatever unit but its own', () => {
    const walk = toPurge().keys('2')
    expect(walk.key('3 %LEL')).not.toBe(null)
    expect(walk.key('101')).toBe('flammable_in_inert')
    walk.key('2.1')
    expect(walk.state.gates.at_zero?.given.purged).toBeUndefined()
    expect(walk.entries.some((e) => e.type === 'evidence.failed' && e.item === 'purged')).toBe(true)
  })

  it('passes at its limit, and is not the test of what people breathe', () => {
    const walk = toPurge().keys('2', '2')
    expect(walk.state.gates.at_zero?.given.purged).toBeDefined()
    expect(walk.prompt.kind === 'pick' || walk.prompt.kind === 'evidence').toBe(true)
    expect(walk.state.gates.at_zero?.status).toBe('never')
  })

  it('tells the rest of the job that inert gas was let in, also once the hold point has fallen', () => {
    const walk = toPurge()
    const told = () => inertLetIn(walk.engine.defs, walk.state)
    expect(told()).toBeNull()
    walk.key('2')
    for (let n = 0; n < 4 && told() === null; n++)
      walk.key(rightLine(walk.engine.defs, walk.state, walk.talk))
    const sheet = walk.engine.defs.steps.find(({ id }) => id.endsWith('at_zero'))?.number
    expect(told()).toBe(sheet)
    walk.key('stop')
    expect(
      walk.state.gates[walk.engine.defs.steps.find(({ id }) => id.endsWith('at_zero'))?.id ?? '']?.given,
    ).toEqual({})
    expect(told()).toBe(sheet)
  })
})
