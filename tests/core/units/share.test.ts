import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Share, shareTold, usedText } from '../../../src/core/units/share.ts'

const to = (decimals: number) => (value: number, more: number) => value.toFixed(decimals + more)

/** Worked out from the figures as they are, as a judgement does. */
function shared(value: number, limit: Share['limit'], startsAt: number | null = null): Share {
  const used =
    startsAt !== null
      ? (value - startsAt) / (limit.value - startsAt)
      : limit.bound === 'at-most'
        ? value / limit.value
        : limit.value / value
  return { value, limit, startsAt, used }
}
const most = (value: number) => ({ value, bound: 'at-most' as const })
const least = (value: number) => ({ value, bound: 'at-least' as const })

/** From what is printed alone, as whoever checks it does. */
function byHand(value: string, limit: string, from: string | null, bound: 'at-most' | 'at-least'): number {
  const start = from === null ? 0 : Number(from.replace('counted from ', ''))
  if (bound === 'at-least') return (100 * Number(limit)) / Number(value)
  return (100 * (Number(value) - start)) / (Number(limit) - start)
}

describe('a figure beside its limit', () => {
  test.each([
    [shared(0.00055, most(0.001)), 4, '0.00055 of 0.00100, 55\u00a0% used'],
    [shared(0.00015, most(0.001)), 4, '0.00015 of 0.00100, 15\u00a0% used'],
    [shared(0.003752, most(0.005)), 4, '0.00375 of 0.00500, 75\u00a0% used'],
    [shared(0.0069, most(0.00548)), 4, '0.00690 of 0.00548, 126\u00a0% used'],
    [shared(0.01175, most(0.025)), 3, '0.0118 of 0.0250, 47\u00a0% used'],
    // Nothing more is shown where it comes out as it is.
    [shared(0.00213, most(0.00949)), 4, '0.0021 of 0.0095, 22\u00a0% used'],
    [shared(0, most(0.15)), 2, '0.00 of 0.15, 0\u00a0% used'],
    [shared(12.98, least(9.5)), 3, '12.980 of 9.500, 73\u00a0% used'],
    [shared(9.5063, most(9.53), 9.5), 4, '9.5063 of 9.5300, 21\u00a0% used, counted from 9.5000'],
    [{ ...shared(0.3, most(1)), used: null }, 1, '0.3 of 1.0'],
  ])('%j to %i places is %s', (share, decimals, text) => {
    const told = shareTold(share, to(decimals))
    expect(`${told.value} of ${told.limit}${usedText(told)}`).toBe(text)
  })

  test('gives its share within one per cent to whoever works it out from what is printed, and no place more than that takes', () => {
    const anyShare = fc
      .record({
        decimals: fc.integer({ min: 0, max: 5 }),
        // In steps of the last place shown: from a limit of fifteen steps up, and figures up to three times as large.
        limit: fc.double({ min: 15, max: 5000, noNaN: true }),
        part: fc.double({ min: 0.01, max: 3, noNaN: true }),
        bound: fc.constantFrom('at-most' as const, 'at-least' as const),
        start: fc.option(fc.integer({ min: 1, max: 90_000 }), { nil: null }),
      })
      .map(({ decimals, limit, part, bound, start }) => {
        const step = 10 ** -decimals
        const from = bound === 'at-least' || start === null ? null : start * step
        const off = (from ?? 0) + limit * step
        const value = bound === 'at-least' ? off / part : (from ?? 0) + limit * step * part
        return { decimals, share: shared(value, { value: off, bound }, from) }
      })
    fc.assert(
      fc.property(anyShare, ({ decimals, share }) => {
        const told = shareTold(share, to(decimals))
        const { bound } = share.limit
        const printed = Number.parseFloat(told.percent ?? '')
        const hand = byHand(told.value, told.limit, told.from, bound)
        expect(Math.abs(hand - printed)).toBeLessThanOrEqual(1)
        for (let more = 0; more < told.more; more++) {
          const less = (value: number) => to(decimals)(value, more)
          const start = share.startsAt === null ? null : less(share.startsAt)
          const rough = byHand(less(share.value), less(share.limit.value), start, bound)
          // Just half a per cent goes either way by the last binary digit: 2.9 of 23.2.
          const isTie = Math.abs(rough - Math.floor(rough) - 0.5) < 1e-6
          if (!isTie) expect(Math.round(rough)).not.toBe(Math.round((share.used ?? 0) * 100))
        }
        expect(told.more).toBeLessThanOrEqual(2)
      }),
      { numRuns: 300 },
    )
  })
})
