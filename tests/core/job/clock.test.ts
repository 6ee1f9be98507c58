// Clocks that move: back is noticed by the engine itself, ahead and back between entries by the shell.
import { describe, expect, it } from 'vitest'
import { gateState } from '../../../src/core/job/gate.ts'
import { GATE_LINES, Walk } from '../../helpers/example.ts'

const open = () => {
  const walk = new Walk().throughGate()
  walk.stepMs = 0
  return walk
}
const status = (walk: Walk) => gateState(walk.state, 'hold_point').status
const move = (walk: Walk, ms: number) => {
  walk.now = { ...walk.now, ms: walk.now.ms + ms }
  walk.bring({ do: 'tick' })
}

describe('a clock set back', () => {
  it('fells every gate, whole', () => {
    const walk = open()
    move(walk, -2001)
    expect(walk.last).toMatchObject({ type: 'clock.moved', seconds: -2 })
    expect(gateState(walk.state, 'hold_point').given).toEqual({})
    expect(walk.prompt.kind).toBe('clear')
  })

  it('lets ordinary keeping of time pass', () => {
    const walk = open()
    move(walk, -2000)
    expect(status(walk)).toBe('open')
  })

  it('does not add up: many small steps back are one large one', () => {
    const walk = open()
    for (let i = 0; i < 5; i++) move(walk, -1900)
    expect(walk.entries.filter((e) => e.type === 'clock.moved').length).toBeGreaterThan(0)
    expect(status(walk)).toBe('closed')
  })

  it('does not add up either when each step makes an entry', () => {
    const walk = open()
    let back = 0
    while (status(walk) === 'open' && back < 60_000) {
      back += 1900
      walk.now = { ...walk.now, ms: walk.now.ms - 1900 }
      walk.bring({ do: 'note', text: 'what time is it' })
    }
    expect(back).toBeLessThanOrEqual(3800)
  })

  it('is said once, and the gate can be given again on the new time', () => {
    const walk = open()
    move(walk, -3_600_000)
    walk.stepMs = 10_000
    walk.keys('ALL OUT', ...GATE_LINES.filter((l) => l !== '1'))
    expect(walk.entries.filter((e) => e.type === 'clock.moved')).toHaveLength(1)
    expect(status(walk)).toBe('open')
  })
})

describe('a clock that the shell saw move', () => {
  it.each([-1, 3600])('fells every gate, by %s s', (seconds) => {
    const walk = open()
    walk.bring({ do: 'clock-moved', seconds })
    expect(status(walk)).toBe('closed')
    expect(gateState(walk.state, 'hold_point').given).toEqual({})
  })

  it('keeps a reading that was half keyed as late', () => {
    const walk = new Walk().toBore()
    walk.bring({ do: 'clock-moved', seconds: 900 })
    walk.keys('9.5033')
    expect(walk.last.type).toBe('reading.late')
  })
})
