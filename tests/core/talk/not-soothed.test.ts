// What must not be answered as if all were well, and what must not go on record as words.
import { describe, expect, it } from 'vitest'
import { Walk } from '../../helpers/example.ts'

describe('what may be danger', () => {
  it.each([
    'there is a draught coming out of the bore',
    'there is a draft of air from the crank end',
    'there are gusts out of the vent',
    'is there a draft coming out of the bore',
    'what about the draught from the crank end',
  ])('%j is no question about wind', (line) => {
    expect(new Walk().toBore().keys(line).said.join(' ')).not.toMatch(/Hold point 2: complete|moving air/i)
  })

  it('is not hidden under an open STOP by the verdict that was', () => {
    const walk = new Walk().toVerdict().keys('stop', '1', 'it slipped', 'ML')
    for (const line of ['is it ok now', 'did it pass', 'is everything in order']) {
      const before = walk.said.length
      walk.keys(line)
      expect(walk.said.slice(before).join(' '), line).not.toMatch(/That is all the record says/)
    }
  })
})

describe('initials and a PIN, keyed once back had left the question for it', () => {
  it('are no words that lift a STOP, and stand on no record', () => {
    const walk = new Walk().toGate()
    walk.autoPin = false
    walk.keys('stop', '1', 'it slipped', 'ML', '2596', '1', 'KH', 'the block was put back', 'back', 'PB 6053')
    expect(walk.said.at(-1)).toMatch(/^Figures keyed where a PIN was asked/)
    expect(walk.entries.slice(1).filter((one) => JSON.stringify(one).includes('6053'))).toEqual([])
    expect(walk.entries.some(({ type }) => type === 'stop.released')).toBe(false)
  })
})
