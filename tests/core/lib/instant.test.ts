import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clockOf, dayOf, readStamp, stamp } from '../../../src/core/lib/instant.ts'

describe('an instant', () => {
  it('agrees with the language’s own calendar on any day and offset', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4_102_444_800_000 }),
        fc.integer({ min: -840, max: 840 }),
        (ms, offsetMin) => {
          const text = stamp({ ms, offsetMin })
          expect(Date.parse(text)).toBe(ms)
          expect(readStamp(text)).toEqual({ ms, offsetMin: offsetMin === 0 ? 0 : offsetMin })
        },
      ),
    )
  })

  it('keeps the wall clock of the place, whatever zone reads it', () => {
    const moment = readStamp('2026-03-14T06:52:10.125+01:00')
    expect(moment).not.toBeNull()
    if (moment === null) return
    expect(clockOf(moment)).toBe('06:52')
    expect(dayOf(moment)).toBe('2026-03-14')
  })

  it.each(['2026-02-30T06:00', '2026-13-01T06:00', '2026-03-14T24:00', 'today', '', '2026-03-14', '1:30'])(
    'refuses %s',
    (text) => {
      expect(readStamp(text)).toBeNull()
    },
  )
})
