// Pooled repeats against published examples, and what may and may not change a measuring error.
import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { type PlaceReadings, repeatability } from '../../../src/core/metrology/repeatability.ts'
import { expandedOfReading, type ReadingUncertaintyInput } from '../../../src/core/metrology/uncertainty.ts'

const placed = (all: readonly (readonly number[])[]): PlaceReadings[] =>
  all.map((values, n) => ({ place: `p${n + 1}`, values }))
const STEP = 1e-6
const BASE: ReadingUncertaintyInput = {
  instrumentU: 7.6e-6,
  instrumentK: 2,
  lengthM: 0.2413,
  partAlpha: 10.8e-6,
  instrumentAlpha: 11.5e-6,
  partTempU: 0.23,
  instrumentTempU: 0.23,
  resolutionM: 2.54e-6,
  resolutionInsideU: true,
}
function expanded(change: Partial<ReadingUncertaintyInput>): number {
  const found = expandedOfReading({ ...BASE, ...change })
  if (!found.ok) throw new Error(found.error.say)
  return found.value
}
/** U of each place, and of one that does not stand out. */
function errors(all: readonly (readonly number[])[], step = STEP) {
  const found = repeatability(placed(all), step)
  const u = (repeats: (typeof found)['error']) => expanded(repeats === null ? {} : { repeats })
  return { pool: u(found.error), places: found.places.map(({ error }) => u(error)) }
}

describe('published examples', () => {
  // ISO 5725-2:1994 B.1, sulfur in coal, level 1, eight laboratories, in % by mass; from memory. It gives sr 0.015, and for the
  // most scattered laboratory, the last, a Cochran share of 0.347 (of 0.516 at 5 in 100): neither straggler nor outlier.
  const COAL = [
    [0.71, 0.71, 0.7, 0.71],
    [0.69, 0.67, 0.68],
    [0.66, 0.65, 0.69],
    [0.67, 0.65, 0.66],
    [0.7, 0.69, 0.66, 0.71, 0.69],
    [0.73, 0.74, 0.73],
    [0.71, 0.71, 0.69],
    [0.7, 0.65, 0.68],
  ]
  it('sulfur in coal: 0.015 with 19 degrees of freedom, and none stands out', () => {
    const found = repeatability(placed(COAL), 0.01)
    expect(found.s).toBeCloseTo(0.0151, 4)
    expect(found.dof).toBe(19)
    expect(found.places.filter((one) => one.standsOut)).toEqual([])
    const variances = found.places.map(({ ownS }) => (ownS ?? 0) ** 2)
    expect((variances[7] ?? 0) / variances.reduce((a, b) => a + b, 0)).toBeCloseTo(0.347, 2)
  })

  // JCGM 100:2008 H.5, a voltage standard on ten days, five observations each; standard deviations of the days in uV from memory.
  // It pools them to 85 uV with 40 degrees of freedom.
  it('ten days of five observations: 85 with 40 degrees of freedom', () => {
    const days = [60, 77, 111, 101, 67, 93, 80, 73, 88, 86]
    // Five values whose standard deviation is that of the day: -1, -1, 0, 1, 1 have 1.
    const found = repeatability(placed(days.map((s) => [-1, -1, 0, 1, 1].map((z) => 1e6 + z * s))), 1)
    expect(found.s).toBeCloseTo(84.9, 1)
    expect(found.dof).toBe(40)
  })
})

describe('a place that stands out', () => {
  const EVEN = [
    [9.5033, 9.5034],
    [9.5021, 9.502],
    [9.5068, 9.5069],
    [9.5034, 9.5035],
    [9.5027, 9.5027],
  ]
  const SLIP = [...EVEN, [9.5018, 9.4971, 9.5018]]
  const found = repeatability(placed(SLIP), 0.0001)
  const slipped = found.places[5]

  it('carries its own scatter, the reading left out of the middle in it, with its own degrees of freedom', () => {
    expect(found.places.map(({ standsOut }) => standsOut)).toEqual([false, false, false, false, false, true])
    const s = 0.0047 / Math.sqrt(3)
    expect(slipped?.ownS).toBeCloseTo(s, 9)
    expect(slipped?.error).toMatchObject({ u: expect.closeTo(s / Math.SQRT2, 9), dof: 2 })
  })

  it('counts with the others only as far as chance goes: more than without it, far less than all of it', () => {
    const without = repeatability(placed(EVEN), 0.0001).s ?? Number.NaN
    const plain = Math.sqrt((4 * 0.0001 ** 2) / 2 / 7 + ((0.0047 ** 2 / 3) * 2) / 7)
    expect(found.s).toBeGreaterThan(without)
    expect(found.s).toBeLessThan(plain / 4)
    expect(found.places[0]?.error).toBe(found.error)
  })

  it('is not made of one step of the instrument, where all others read alike', () => {
    const alike = [...Array.from({ length: 5 }, () => [9.5, 9.5]), [9.5, 9.5001]]
    expect(repeatability(placed(alike), 0.0001).places.some((one) => one.standsOut)).toBe(false)
    const off = [...alike.slice(0, 5), [9.5, 9.5003]]
    expect(repeatability(placed(off), 0.0001).places.map((one) => one.standsOut)).toEqual([
      ...Array.from({ length: 5 }, () => false),
      true,
    ])
  })

  it('two slips do not hide behind each other where there are places enough', () => {
    const many = [...EVEN, ...EVEN, ...EVEN, [9.5018, 9.4971], [9.5018, 9.5067]]
    const both = repeatability(placed(many), 0.0001)
    expect(both.places.slice(-2).map((one) => one.standsOut)).toEqual([true, true])
  })
})

const reading = fc.integer({ min: 0, max: 40 }).map((n) => 0.2413 + n * STEP)
const place = fc.array(reading, { minLength: 1, maxLength: 4 })
const bore = fc.array(place, { minLength: 1, maxLength: 8 })

describe('any places', () => {
  test('in another order come to the same', () => {
    fc.assert(
      fc.property(bore, fc.nat(), (all, seed) => {
        const turned = all.map((_, n) => all[(n + seed) % all.length] ?? [])
        const backwards = turned.map((values) => [...values].reverse())
        const [one, other] = [errors(all), errors(backwards)]
        expect(other.pool).toBeCloseTo(one.pool, 12)
        all.forEach((_, n) => {
          expect(other.places[n]).toBeCloseTo(one.places[(n + seed) % all.length] ?? Number.NaN, 12)
        })
      }),
    )
  })

  test('never come to less than no repeats at all would, single readings least of all', () => {
    fc.assert(
      fc.property(bore, (all) => {
        const { pool, places } = errors(all)
        for (const u of [pool, ...places]) expect(u).toBeGreaterThanOrEqual(expanded({}))
        all.forEach((values, n) => {
          if (values.length === 1) expect(places[n]).toBeGreaterThanOrEqual(pool)
        })
      }),
    )
  })

  test('whose scatter grows make no pool smaller, and no U of their own', () => {
    fc.assert(
      fc.property(bore, fc.nat(), fc.double({ min: 1, max: 1000, noNaN: true }), (all, at, by) => {
        const n = at % all.length
        const wider = all.map((values, i) =>
          i === n ? values.map((v) => 0.2413 + (v - 0.2413) * by) : values,
        )
        const [was, is] = [errors(all), errors(wider)]
        expect(is.pool).toBeGreaterThanOrEqual(was.pool * (1 - 1e-9))
        expect(is.places[n]).toBeGreaterThanOrEqual((was.places[n] ?? 0) * (1 - 1e-9))
      }),
    )
  })

  test('one that stands out carries no less than with all of it left in a plain pool', () => {
    fc.assert(
      fc.property(bore, fc.double({ min: 1, max: 1000, noNaN: true }), (all, by) => {
        const wider = all.map((values, i) =>
          i === 0 ? values.map((v) => 0.2413 + (v - 0.2413) * by) : values,
        )
        const found = repeatability(placed(wider), STEP)
        const squares = found.places.map(({ ownS, n }) => (ownS ?? 0) ** 2 * (n - 1))
        const plain = Math.sqrt(squares.reduce((a, b) => a + b, 0) / Math.max(1, found.dof))
        const left = found.dof === 0 ? 0 : expanded({ repeats: { u: plain / Math.SQRT2, dof: found.dof } })
        found.places.forEach((one) => {
          if (!one.standsOut || one.error === null) return
          expect(expanded({ repeats: one.error })).toBeGreaterThanOrEqual(left * (1 - 1e-9))
        })
      }),
    )
  })

  // The rule before took the greatest spread of any place by the range method, d2 = 1.128 for two, with k = 2.
  test('all as far apart as each other come to the rule before, up to a factor of the degrees of freedom alone', () => {
    const ratio = (spread: number, places: number) => {
      const all = Array.from({ length: places }, (_, n) => [0.2413 + n * 1e-5, 0.2413 + n * 1e-5 + spread])
      const { error } = repeatability(placed(all), STEP)
      if (error === null) throw new Error('nothing was read twice')
      const bare = { instrumentU: 0, partTempU: 0, instrumentTempU: 0 }
      return expanded({ ...bare, repeats: error }) / ((2 * spread) / (1.128 * Math.SQRT2))
    }
    // 1.128 / sqrt 2 times t / 2: t 2.52 for six places (GUM Table G.2, from memory).
    expect(ratio(5e-6, 6)).toBeCloseTo((1.128 / Math.SQRT2) * (2.52 / 2), 2)
    for (const spread of [2e-6, 1e-5, 1e-4]) expect(ratio(spread, 6)).toBeCloseTo(ratio(5e-6, 6), 6)
    expect(ratio(5e-6, 12)).toBeLessThan(ratio(5e-6, 6))
    expect(ratio(5e-6, 3)).toBeGreaterThan(1)
  })
})

test('what is no reading is a bug', () => {
  expect(() => repeatability(placed([[1, Number.NaN]]), STEP)).toThrow()
  expect(() => repeatability(placed([[1, 2]]), -1)).toThrow()
  expect(repeatability([], STEP)).toEqual({ s: null, dof: 0, places: [], error: null })
})
