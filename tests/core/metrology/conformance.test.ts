import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { conformance, guardBandFor, guardBandRisk } from '../../../src/core/metrology/conformance.ts'
import { chanceInside } from '../../../src/core/statistics/normal.ts'
import { normalDraws, seeded } from '../../helpers/random.ts'

function chance(value: number, u: number, limits: { lower?: number; upper?: number }) {
  const result = conformance(value, u, limits)
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}

describe('chance of conformance', () => {
  test('parts add to one, are mirrored with the value, and agree with the one-sided chance in use', () => {
    const value = fc.double({ min: -20, max: 20, noNaN: true })
    fc.assert(
      fc.property(value, fc.double({ min: 0.01, max: 5, noNaN: true }), (y, u) => {
        const both = chance(y, u, { lower: -3, upper: 5 })
        expect(both.inside + both.below + both.above).toBeCloseTo(1, 12)
        const mirrored = chance(-y, u, { lower: -5, upper: 3 })
        expect(mirrored.inside).toBeCloseTo(both.inside, 12)
        expect(mirrored.below).toBeCloseTo(both.above, 12)
        expect(chance(y, u, { upper: 5 }).inside).toBeCloseTo(chanceInside('at-most', y, u, 5), 12)
        expect(chance(y, u, { lower: -3 }).inside).toBeCloseTo(chanceInside('at-least', y, u, -3), 12)
      }),
    )
  })

  test('falls steadily as the value nears and passes the limit; a half on it', () => {
    const chances = [0, 1, 2, 3, 4].map((y) => chance(y, 0.5, { upper: 3 }).inside)
    expect([...chances].sort((a, b) => b - a)).toEqual(chances)
    expect(chances[3]).toBe(0.5)
  })

  test.each([
    [1, 1, {}, 'no-limit'],
    [1, 0, { upper: 2 }, 'no-uncertainty'],
    [1, -1, { upper: 2 }, 'no-uncertainty'],
    [Number.NaN, 1, { upper: 2 }, 'not-finite'],
    [1, 1, { upper: Number.NaN }, 'not-finite'],
    [1, 1, { lower: 2, upper: 2 }, 'limits-crossed'],
  ])('%f, u %f, %o is refused as %s', (value, u, limits, code) => {
    const result = conformance(value, u, limits)
    expect(result.ok ? 'taken' : result.error.code).toBe(code)
  })
})

describe('guard band', () => {
  test('risk and width are each other backwards; no band is even odds', () => {
    expect(guardBandRisk(0, 2)).toBe(0.5)
    expect(guardBandFor(0.5, 2)).toBe(0)
    for (const risk of [0.2, 0.05, 0.025, 0.001])
      expect(guardBandRisk(guardBandFor(risk, 2), 2)).toBeCloseTo(risk, 12)
    for (const r of [-0.1, Number.NaN, Number.POSITIVE_INFINITY]) expect(() => guardBandRisk(r, 2)).toThrow()
    for (const risk of [0, 0.6, Number.NaN]) expect(() => guardBandFor(risk, 2)).toThrow()
  })

  /**
   * Second method, from the other end: true sizes spread evenly about the limit, each measured with a random error; of
   * those that read just inside the guarded limit, how many are beyond the limit in truth?
   */
  test.each([0.5, 0.83, 1])('seeded trials: band of %f U leaves the chance it states', (r) => {
    const uniform = seeded(106)
    const draw = normalDraws(uniform)
    const [U, limit, slice] = [2, 0, 0.05]
    const accept = limit - r * U
    let [read, beyond] = [0, 0]
    for (let i = 0; i < 2_000_000; i += 1) {
      const truth = limit + (uniform() - 0.5) * 14
      const reading = truth + (draw() * U) / 2
      if (reading > accept || reading < accept - slice) continue
      read += 1
      if (truth > limit) beyond += 1
    }
    // The middle of the slice is half of it inside the guarded limit.
    const expected = guardBandRisk(r + slice / 2 / U, 2)
    expect(read).toBeGreaterThan(4000)
    expect(Math.abs(beyond / read - expected)).toBeLessThan(4 * Math.sqrt((expected * (1 - expected)) / read))
  })
})
