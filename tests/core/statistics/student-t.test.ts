import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { crossing } from '../../../src/core/statistics/bisect.ts'
import { normalBelow } from '../../../src/core/statistics/normal.ts'
import { normalAt } from '../../../src/core/statistics/normal-quantile.ts'
import { coverageFactor, incompleteBeta, tAt, tBelow } from '../../../src/core/statistics/student-t.ts'

/** Simpson's rule over 0 to `end` in an even count of panels. */
function simpson(f: (x: number) => number, end: number, panels = 4000): number {
  const h = end / panels
  let sum = f(0) + f(end)
  for (let i = 1; i < panels; i += 1) sum += (i % 2 === 1 ? 4 : 2) * f(i * h)
  return (sum * h) / 3
}

/** Second method: with t = sqrt(nu) tan a the density is cos^(nu-1) a, integrated here and scaled by its own whole. */
function integrated(t: number, nu: number): number {
  const density = (a: number) => Math.cos(a) ** (nu - 1)
  return 0.5 + simpson(density, Math.atan(t / Math.sqrt(nu))) / (2 * simpson(density, Math.PI / 2))
}

describe("Student's t", () => {
  test.each([1, 2, 3, 4, 5, 8, 10, 16, 30, 100])(
    '%i degrees of freedom: agrees with numeric integration',
    (nu) => {
      for (const p of [0.6, 0.9, 0.975, 0.995]) expect(integrated(tAt(p, nu), nu)).toBeCloseTo(p, 9)
      for (const t of [0.1, 1, 2.5, 6]) expect(tBelow(t, nu)).toBeCloseTo(integrated(t, nu), 9)
    },
  )

  // Closed forms: Abramowitz & Stegun 26.7.3 and 26.7.4 (from memory) for 1 and 2 degrees of freedom.
  test('one and two degrees of freedom have closed forms', () => {
    for (const p of [0.51, 0.75, 0.975, 0.9995]) {
      expect(tAt(p, 1) / Math.tan(Math.PI * (p - 0.5))).toBeCloseTo(1, 11)
      expect(tAt(p, 2) / ((2 * p - 1) / Math.sqrt(2 * p * (1 - p)))).toBeCloseTo(1, 11)
    }
  })

  test('back and forth, symmetric, and wider for fewer degrees of freedom', () => {
    const nu = fc.double({ min: 1, max: 1e4, noNaN: true })
    const p = fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true })
    fc.assert(
      fc.property(nu, p, (n, q) => {
        expect(tBelow(tAt(q, n), n)).toBeCloseTo(q, 9)
        expect(tBelow(-1.7, n) + tBelow(1.7, n)).toBeCloseTo(1, 12)
        if (q > 0.5001) expect(tAt(q, n)).toBeGreaterThan(tAt(q, n + 1))
        if (q > 0.5001) expect(tAt(q, n)).toBeGreaterThan(normalAt(q))
      }),
      { numRuns: 60 },
    )
  })

  test('for many degrees of freedom it is the normal, without a step where the expansion takes over', () => {
    expect(tAt(0.975, Number.POSITIVE_INFINITY)).toBe(normalAt(0.975))
    for (const p of [0.9, 0.975, 0.9999])
      expect(Math.abs(tBelow(tAt(p, 10_001), 10_001) - p)).toBeLessThan(3e-11)
    expect(coverageFactor(0.95, 1e9)).toBeCloseTo(1.959964, 6)
  })

  test('the incomplete beta function at its ends, and where it is a polynomial', () => {
    expect(incompleteBeta(2, 3, 0)).toBe(0)
    expect(incompleteBeta(2, 3, 1)).toBe(1)
    // I_x(1, b) = 1 - (1 - x)^b; I_x(a, 1) = x^a.
    expect(incompleteBeta(1, 4, 0.3)).toBeCloseTo(1 - 0.7 ** 4, 14)
    expect(incompleteBeta(5, 1, 0.9)).toBeCloseTo(0.9 ** 5, 14)
  })

  test('what has no answer is a bug', () => {
    for (const [p, nu] of [
      [0, 5],
      [1, 5],
      [Number.NaN, 5],
      [0.9, 0],
      [0.9, -1],
      [0.9, Number.NaN],
    ] as const)
      expect(() => tAt(p, nu)).toThrow()
    expect(() => tBelow(Number.NaN, 3)).toThrow()
    expect(() => tBelow(1, 0)).toThrow()
  })
})

describe('the normal distribution backwards', () => {
  test('back and forth, out to a chance of 1 in 10^15', () => {
    for (const p of [1e-15, 1e-9, 0.001, 0.2, 0.5]) expect(normalBelow(normalAt(p)) / p).toBeCloseTo(1, 9)
    expect(normalAt(0.9)).toBe(-normalAt(1 - 0.9))
    expect(normalAt(0.5)).toBe(0)
  })

  test('what has no answer is a bug', () => {
    for (const p of [0, 1, -0.1, Number.NaN]) expect(() => normalAt(p)).toThrow()
  })
})

test('halving finds a crossing either way up, and says when there is none', () => {
  expect(crossing((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 14)
  expect(crossing((x) => 2 - x * x, 0, 2)).toBeCloseTo(Math.SQRT2, 14)
  expect(() => crossing((x) => x + 1, 0, 2)).toThrow()
})
