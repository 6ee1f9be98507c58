import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fitLine, type Line, type Point, predict, spreadAt } from '../../../src/core/statistics/line.ts'
import { normalDraws, seeded } from '../../helpers/random.ts'
import { NORRIS_X, NORRIS_Y } from '../published/statistics-data.ts'

function fitted(points: readonly Point[]): Line {
  const line = fitLine(points)
  if (!line.ok) throw new Error(line.error.say)
  return line.value
}
const norris = NORRIS_X.map((x, i) => ({ x, y: NORRIS_Y[i] ?? Number.NaN }))

/** numerator / denominator as a double, to well past its last digit. */
function ratio(numerator: bigint, denominator: bigint): number {
  return Number((numerator * 10n ** 40n) / denominator) / 1e40
}

describe('least squares in exact arithmetic', () => {
  test('Norris: slope, intercept and residual sum in whole numbers agree to 13 figures', () => {
    // Tenths as whole numbers: every datum has one decimal, so nothing at all is rounded below.
    const [xs, ys] = [NORRIS_X, NORRIS_Y].map((v) => v.map((t) => BigInt(Math.round(t * 10))))
    const n = BigInt(NORRIS_X.length)
    const sum = (v: readonly bigint[]) => v.reduce((a, b) => a + b, 0n)
    const dot = (a: readonly bigint[], b: readonly bigint[]) => sum(a.map((t, i) => t * (b[i] ?? 0n)))
    if (xs === undefined || ys === undefined) throw new Error('no data')
    const sxx = n * dot(xs, xs) - sum(xs) ** 2n
    const sxy = n * dot(xs, ys) - sum(xs) * sum(ys)
    const syy = n * dot(ys, ys) - sum(ys) ** 2n
    const line = fitted(norris)
    expect(line.slope / ratio(sxy, sxx)).toBeCloseTo(1, 13)
    expect(line.intercept / ratio(sum(ys) * sxx - sxy * sum(xs), n * sxx * 10n)).toBeCloseTo(1, 11)
    expect(line.sse / ratio(syy * sxx - sxy ** 2n, n * sxx * 100n)).toBeCloseTo(1, 11)
    expect(line.sxx / ratio(sxx, n * 100n)).toBeCloseTo(1, 13)
  })
})

describe('lines', () => {
  test('points on a line give it back with no scatter', () => {
    const coefficient = fc.double({ min: -100, max: 100, noNaN: true })
    fc.assert(
      fc.property(coefficient, coefficient, fc.integer({ min: 3, max: 20 }), (a, b, n) => {
        const line = fitted(Array.from({ length: n }, (_, x) => ({ x, y: a + b * x })))
        expect(line.slope).toBeCloseTo(b, 9)
        expect(line.intercept).toBeCloseTo(a, 9)
        expect(line.residualSd).toBeCloseTo(0, 9)
      }),
    )
  })

  test('the same line in any order, and shifted with its points', () => {
    const shifted = norris.map(({ x, y }) => ({ x: x + 1000, y: y - 7 }))
    expect(fitted([...norris].reverse()).slope).toBeCloseTo(fitted(norris).slope, 13)
    expect(fitted(shifted).slope).toBeCloseTo(fitted(norris).slope, 12)
    expect(fitted(shifted).sse).toBeCloseTo(fitted(norris).sse, 8)
  })

  test('two points have a line and no scatter; an interval is refused', () => {
    const line = fitted([
      { x: 0, y: 1 },
      { x: 2, y: 5 },
    ])
    expect([line.slope, line.intercept, line.residualSd, line.slopeSe]).toEqual([2, 1, null, null])
    const interval = predict(line, 3, 0.95)
    expect(interval.ok ? 'given' : interval.error.code).toBe('no-scatter')
  })

  test.each([
    [[], 'too-few-points'],
    [[{ x: 1, y: 1 }], 'too-few-points'],
    [
      [
        { x: 1, y: 1 },
        { x: 1, y: 2 },
      ],
      'one-place',
    ],
    [
      [
        { x: 0.1, y: 1 },
        { x: 0.1, y: 2 },
        { x: 0.1, y: 3 },
      ],
      'one-place',
    ],
    [
      [
        { x: 1, y: Number.NaN },
        { x: 2, y: 2 },
      ],
      'not-finite',
    ],
    [
      [
        { x: 0, y: 1e200 },
        { x: 1e200, y: -1e200 },
      ],
      'not-finite',
    ],
  ])('%o is refused as %s', (points, code) => {
    const line = fitLine(points)
    expect(line.ok ? 'taken' : line.error.code).toBe(code)
  })
})

describe('prediction', () => {
  // Derived from the NIST data, not printed by NIST: 498.97179 to 502.62038 at 500, 98.10524 to 101.79348 at 100.
  test.each([
    [500, 498.97179, 502.62038],
    [100, 98.10524, 101.79348],
  ])('Norris at %f: %f to %f', (x, low, high) => {
    const interval = predict(fitted(norris), x, 0.95)
    if (!interval.ok) throw new Error(interval.error.say)
    expect(interval.value.low).toBeCloseTo(low, 4)
    expect(interval.value.high).toBeCloseTo(high, 4)
  })

  test('narrowest in the middle of the points, wider either way alike', () => {
    const line = fitted(norris)
    for (const d of [1, 50, 400]) {
      expect(spreadAt(line, line.xMean + d)).toBeGreaterThan(spreadAt(line, line.xMean))
      expect(spreadAt(line, line.xMean + d)).toBeCloseTo(spreadAt(line, line.xMean - d), 12)
    }
  })

  test('seeded trials: 95 in 100 of further readings fall inside', () => {
    const draw = normalDraws(seeded(16))
    let hits = 0
    const trials = 6000
    for (let i = 0; i < trials; i += 1) {
      const line = fitted([0, 8, 16, 25, 31].map((x) => ({ x, y: 3 + 0.2 * x + draw() })))
      const interval = predict(line, 45, 0.95)
      const next = 3 + 0.2 * 45 + draw()
      if (interval.ok && next > interval.value.low && next < interval.value.high) hits += 1
    }
    // Four standard errors of a share of 0.95 in 6000 trials.
    expect(Math.abs(hits / trials - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / trials))
  })
})
