import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { meanOf, sdOf, summarise, sumOf } from '../../../src/core/statistics/summary.ts'

const size = fc.double({ min: -1e6, max: 1e6, noNaN: true })
const sizes = fc.array(size, { minLength: 2, maxLength: 40 })

describe('sums, means and scatter', () => {
  test('a sum does not lose the small beside the large', () => {
    expect(sumOf([1e16, 1, -1e16])).toBe(1)
    expect(sumOf([])).toBe(0)
  })

  // NIST StRD NumAcc1 (read second-hand): the naive one-pass formula gives 0 or worse here.
  test('scatter about a large size keeps its digits', () => {
    expect(sdOf([10000001, 10000003, 10000002])).toBe(1)
  })

  test('same scatter wherever the scale starts, same figures in any order', () => {
    fc.assert(
      fc.property(sizes, fc.integer({ min: -1000, max: 1000 }), (xs, shift) => {
        const sd = sdOf(xs)
        expect(Math.abs(sdOf(xs.map((x) => x + shift)) - sd)).toBeLessThan(1e-9 * (1 + sd))
        expect(Math.abs(sdOf([...xs].reverse()) - sd)).toBeLessThan(1e-12 * (1 + sd))
        expect(meanOf(xs)).toBeGreaterThanOrEqual(Math.min(...xs) - 1e-9)
        expect(meanOf(xs)).toBeLessThanOrEqual(Math.max(...xs) + 1e-9)
      }),
    )
  })

  test('all alike has no scatter at all', () => {
    fc.assert(
      fc.property(size, fc.integer({ min: 2, max: 50 }), (x, n) => {
        expect(sdOf(Array.from({ length: n }, () => x))).toBe(0)
      }),
    )
  })

  test('one value has a mean and no scatter, not a scatter of zero', () => {
    expect(summarise([3])).toEqual({
      ok: true,
      value: { n: 1, mean: 3, sd: null, sdOfMean: null, least: 3, greatest: 3 },
    })
  })

  test.each([
    [[], 'no-values'],
    [[1, Number.NaN], 'not-finite'],
    [[Number.POSITIVE_INFINITY], 'not-finite'],
  ])('%o is refused as %s', (values, code) => {
    const result = summarise(values)
    expect(result.ok ? 'taken' : result.error.code).toBe(code)
  })

  test('asked of nothing, or of what is no number, it is a bug', () => {
    expect(() => meanOf([])).toThrow()
    expect(() => sdOf([1])).toThrow()
    expect(() => meanOf([1, Number.NaN])).toThrow()
  })
})
