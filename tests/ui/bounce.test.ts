// The second Enter of one stroke on the last sheet, which would close the job.
import { describe, expect, it } from 'vitest'
import { enterCloses } from '../../src/core/sheet/stays-on.ts'
import { isBounce } from '../../src/ui/bounce.ts'
import { Walk } from '../helpers/example.ts'

describe('Enter alone', () => {
  it('closes a job on its last sheet only', () => {
    const closes = ({ engine, state }: Walk) => enterCloses(engine.defs, state)
    const walk = new Walk().keys('RO', 'TC-401-1')
    expect(closes(walk)).toBe(false)
    const last = new Walk().toVerdict().keys('1', 'KH', 'inside its limits, none given')
    expect([last.prompt.kind, closes(last)]).toEqual(['tell', true])
    last.keys('')
    expect([last.state.closed, closes(last)]).toEqual(['MONITOR', false])
  })

  it('is no answer there right after the one before, and a word or a later one is', () => {
    expect(isBounce('', true, 80)).toBe(true)
    expect([isBounce('', true, 900), isBounce('', false, 80), isBounce('stop', true, 80)]).toEqual([
      false,
      false,
      false,
    ])
  })
})
