// The exact binomial tail against a count of every outcome in whole numbers.
import { describe, expect, it } from 'vitest'
import { binomialAtLeast } from '../../../src/core/statistics/index.ts'

/** Sum of n! / (k! (n - k)!) a^k (d - a)^(n - k) from hits on, over d^n, with p = a / d: exact until the last division. */
function counted(hits: number, n: number, a: bigint, d: bigint): number {
  let choose = 1n
  let tail = 0n
  for (let k = 0n; k <= BigInt(n); k++) {
    if (k >= BigInt(hits)) tail += choose * a ** k * (d - a) ** (BigInt(n) - k)
    choose = (choose * (BigInt(n) - k)) / (k + 1n)
  }
  return Number((tail * 10n ** 30n) / d ** BigInt(n)) / 1e30
}

describe('the chance of so many hits or more', () => {
  it('is that of counting every outcome, far out in the tail too', () => {
    for (const n of [1, 2, 5, 12, 40, 120])
      for (const hits of [0, 1, n >> 1, n - 1, n]) {
        const exact = counted(hits, n, 1n, 5n)
        if (exact > 1e-18) expect(binomialAtLeast(hits, n, 0.2) / exact).toBeCloseTo(1, 9)
      }
    expect(binomialAtLeast(5, 5, 0.2)).toBeCloseTo(0.00032, 12)
    expect(binomialAtLeast(12, 12, 0.2) / 0.2 ** 12).toBeCloseTo(1, 12)
  })

  it('is one for none or more, and holds at the ends', () => {
    expect(binomialAtLeast(0, 0, 0.2)).toBe(1)
    expect(binomialAtLeast(0, 9, 0)).toBe(1)
    expect(binomialAtLeast(1, 9, 0)).toBe(0)
    expect(binomialAtLeast(9, 9, 1)).toBe(1)
  })

  it.each([
    [3, 2, 0.2],
    [-1, 2, 0.2],
    [1, 2, 1.2],
    [1, 2, Number.NaN],
    [0.5, 2, 0.2],
  ])('is nothing for %d of %d at %d', (hits, n, p) => {
    expect(() => binomialAtLeast(hits, n, p)).toThrow(/no binomial tail/)
  })
})
