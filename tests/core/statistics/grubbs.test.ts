import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { grubbsCritical, grubbsTest } from '../../../src/core/statistics/grubbs.ts'
import { normalDraws, seeded } from '../../helpers/random.ts'

function tested(values: readonly number[]) {
  const result = grubbsTest(values)
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}

describe('the reading that stands out', () => {
  // Data and G from memory of the NIST/SEMATECH e-Handbook 1.3.5.17.1: G = 2.4687, one-sided critical 2.032, n = 8.
  test('e-Handbook example (from memory)', () => {
    const found = tested([199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57])
    expect(found).toMatchObject({ at: 7, value: 245.57, standsOut: true })
    // 2.46876: the page cuts the last place.
    expect(Math.abs(found.g - 2.4687)).toBeLessThan(1e-4)
    expect(grubbsCritical(8, 0.05, 1)).toBeCloseTo(2.032, 3)
  })

  test('the list comes back as it was: nothing is dropped', () => {
    const values = [1, 2, 1, 2, 1, 2, 90]
    tested(values)
    expect(values).toEqual([1, 2, 1, 2, 1, 2, 90])
  })

  test('alike readings have none', () => {
    expect(tested([5, 5, 5, 5])).toMatchObject({ g: 0, standsOut: false })
  })

  test('one step of the instrument off never stands out, however alike the rest; two steps may', () => {
    const off = (steps: number) => grubbsTest([1, 1, 1, 1, 1, 1, 1 + steps * 0.1], 0.05, 0.1)
    expect(off(1)).toMatchObject({ ok: true, value: { at: 6, standsOut: false } })
    expect(off(2)).toMatchObject({ ok: true, value: { at: 6, standsOut: true } })
  })

  test('G is never above (n-1)/sqrt(n), nor is its critical value; order and scale do not matter', () => {
    const values = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 3, maxLength: 20 })
    fc.assert(
      fc.property(values, (xs) => {
        const most = (xs.length - 1) / Math.sqrt(xs.length)
        const found = tested(xs)
        expect(found.g).toBeLessThanOrEqual(most + 1e-9)
        expect(found.critical).toBeLessThan(most)
        expect(xs[found.at]).toBe(found.value)
        expect(tested([...xs].reverse()).g).toBeCloseTo(found.g, 9)
        expect(tested(xs.map((x) => -x)).g).toBeCloseTo(found.g, 9)
      }),
    )
  })

  // Found at random: squares of such small figures run out of range, and G came out above its greatest value.
  test.each([[[4.1845758029022315e-160, 0, 0]], [[5e-324, 0, 0]], [[1e149, 0, 0]]])(
    '%o keeps G in its bounds',
    (xs) => {
      expect(tested(xs).g).toBeCloseTo(2 / Math.sqrt(3), 9)
    },
  )

  test('seeded trials: of sound sets of ten about 5 in 100 are pointed at', () => {
    const draw = normalDraws(seeded(7))
    const trials = 4000
    let out = 0
    for (let i = 0; i < trials; i += 1) if (tested(Array.from({ length: 10 }, draw)).standsOut) out += 1
    expect(Math.abs(out / trials - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / trials))
  })

  test.each([
    [[1, 2], 'too-few-readings'],
    [[1, 2, Number.NaN], 'not-finite'],
  ])('%o is refused as %s', (values, code) => {
    const result = grubbsTest(values)
    expect(result.ok ? 'taken' : result.error.code).toBe(code)
  })
})
