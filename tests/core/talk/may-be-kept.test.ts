// Which lines wait while sides are turned over, and which never do.
import { describe, expect, it } from 'vitest'
import { mayBeKept } from '../../../src/core/talk/may-be-kept.ts'
import { LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'

const kept = (walk: Walk, line: string, wasAsked = false) =>
  mayBeKept(walk.engine.defs, walk.state, walk.talk, line, wasAsked)

describe('a line keyed before its question is up', () => {
  it('is kept where a figure is read', () => {
    expect(kept(new Walk().toBore(), '9.5033')).toBe(true)
  })

  it.each(['', '  ', '2596', '409612'])('is not kept where it is nothing or may be a PIN: %j', (line) => {
    expect(kept(new Walk().toBore(), line, true)).toBe(false)
  })

  it('is never kept at a hold point, before the plate is read, or where somebody signs', () => {
    const at = new Walk().toGate()
    for (const wasAsked of [false, true]) {
      expect(kept(at, 'L-101', wasAsked)).toBe(false)
      expect(kept(at.copy().keys(...LOCK_LINES), 'no start', wasAsked)).toBe(false)
      expect(kept(at.copy().keys(...LOCK_LINES, ...WORD_LINES), '20.9', wasAsked)).toBe(false)
      expect(kept(new Walk(), 'RO', wasAsked)).toBe(false)
    }
  })

  it('is kept of a choice only once that was up, and of words at once', () => {
    expect(kept(new Walk().toBore().keys('note'), 'oil in the port')).toBe(true)
    const wiped = new Walk().throughGate()
    expect(wiped.prompt.kind).toBe('confirm')
    expect(kept(wiped, '1')).toBe(false)
    expect(kept(wiped, '1', true)).toBe(true)
  })
})
