import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Budget,
  type Component,
  combineBudget,
  componentOfRepeats,
  expandBudget,
  expandedOfTwo,
  uOfRectangle,
} from '../../../src/core/metrology/budget.ts'
import { expandedOfReading } from '../../../src/core/metrology/uncertainty.ts'
import { normalDraws, seeded } from '../../helpers/random.ts'

function combined(
  components: readonly Component[],
  correlations?: Parameters<typeof combineBudget>[1],
): Budget {
  const budget = combineBudget(components, correlations)
  if (!budget.ok) throw new Error(budget.error.say)
  return budget.value
}
const part = (name: string, u: number, dof?: number): Component => ({ name, u, dof })

describe('an uncertainty budget', () => {
  test('root sum of squares, shares that add to one, endless degrees of freedom where all are certain', () => {
    const budget = combined([part('a', 3), part('b', 4)])
    expect(budget.uc).toBe(5)
    expect(budget.lines.map((line) => line.share)).toEqual([9 / 25, 16 / 25])
    expect(budget.effectiveDof).toBe(Number.POSITIVE_INFINITY)
  })

  test('agrees with the measuring error a job gives a reading', () => {
    const inJob = expandedOfReading({
      ...{ instrumentU: 4e-6, instrumentK: 2, lengthM: 0.254, partAlpha: 10.8e-6, instrumentAlpha: 11.5e-6 },
      ...{ partTempU: 1, instrumentTempU: 0.5, resolutionM: 1e-6, resolutionInsideU: false },
    })
    const lines = [2e-6, 0.254 * 10.8e-6, 0.254 * 11.5e-6 * 0.5, uOfRectangle(0.5e-6)]
    const budget = combined(lines.map((u, i) => part(`${i}`, u)))
    expect(inJob.ok && inJob.value).toBeCloseTo(2 * budget.uc, 15)
  })

  // JCGM 100:2008 G.4.1 (as a public test of it cites the clause): cut down to the next whole number.
  test('degrees of freedom are cut down, never rounded up', () => {
    const expanded = expandBudget(combined([part('a', 1, 5), part('b', 1, 6)]), 0.95)
    expect(expanded.ok && expanded.value.dof).toBe(10)
    const whole = expandBudget(combined([1, 2, 3, 4].map((i) => part(`${i}`, 1, 10))), 0.95)
    expect(whole.ok && whole.value.dof).toBe(40)
  })

  test('never less than its largest line or fewer degrees of freedom than its poorest; order does not matter', () => {
    const u = fc.double({ min: 1e-9, max: 10, noNaN: true })
    const lines = fc.array(fc.tuple(u, fc.integer({ min: 1, max: 60 })), { minLength: 1, maxLength: 8 })
    fc.assert(
      fc.property(lines, (pairs) => {
        const components = pairs.map(([size, dof], i) => part(`${i}`, size, dof))
        const budget = combined(components)
        expect(budget.uc).toBeGreaterThanOrEqual(Math.max(...pairs.map(([size]) => size)) * (1 - 1e-12))
        expect(budget.effectiveDof).toBeGreaterThanOrEqual(
          Math.min(...pairs.map(([, dof]) => dof)) * (1 - 1e-9),
        )
        expect(combined([...components].reverse()).uc).toBeCloseTo(budget.uc, 12)
      }),
    )
  })

  test('errors that go fully together add; errors that go fully apart cancel; neither states degrees of freedom', () => {
    const pair = [part('a', 3), part('b', 3)]
    const together = combined(pair, [{ between: ['a', 'b'], r: 1 }])
    expect(together.uc).toBeCloseTo(6, 12)
    expect(combined(pair, [{ between: ['a', 'b'], r: -1 }]).uc).toBeCloseTo(0, 6)
    const expanded = expandBudget(together, 0.95)
    expect(expanded.ok ? 'given' : expanded.error.code).toBe('no-effective-dof')
  })

  test.each([
    [[], [], 'no-components'],
    [[part('a', -1)], [], 'component-unsound'],
    [[part('a', Number.NaN)], [], 'component-unsound'],
    [[part('a', 1, 0)], [], 'component-unsound'],
    [[{ name: 'a', u: 1, sensitivity: Number.NaN }], [], 'component-unsound'],
    [[part('a', 1)], [{ between: ['a', 'x'], r: 0.5 }], 'correlation-unsound'],
    [[part('a', 1), part('b', 1)], [{ between: ['a', 'b'], r: 1.1 }], 'correlation-unsound'],
    [
      [part('a', 1), part('b', 1), part('c', 1)],
      [
        { between: ['a', 'b'], r: -1 },
        { between: ['a', 'c'], r: -1 },
        { between: ['b', 'c'], r: -1 },
      ],
      'budget-unsound',
    ],
  ] as const)('%o with %o is refused as %s', (components, correlations, code) => {
    const budget = combineBudget(components, correlations)
    expect(budget.ok ? 'taken' : budget.error.code).toBe(code)
  })

  test('repeats: s / sqrt n with n - 1; one alone is refused, as no scatter is not a scatter of zero', () => {
    const scatter = componentOfRepeats('repeats', [9, 10, 11])
    expect(scatter.ok && scatter.value).toMatchObject({ u: 1 / Math.sqrt(3), dof: 2 })
    const one = componentOfRepeats('repeats', [9])
    expect(one.ok ? 'taken' : one.error.code).toBe('too-few-readings')
  })

  test('seeded trials: a budget of few repeats holds 95 in 100 where k = 2 does not', () => {
    const draw = normalDraws(seeded(4))
    const trials = 5000
    const hits = { t: 0, two: 0 }
    for (let i = 0; i < trials; i += 1) {
      const values = [draw(), draw(), draw()]
      const scatter = componentOfRepeats('repeats', values)
      if (!scatter.ok) throw new Error(scatter.error.say)
      const expanded = expandBudget(combined([scatter.value]), 0.95)
      const off = Math.abs(values.reduce((a, b) => a + b, 0) / 3)
      if (expanded.ok && off <= expanded.value.U) hits.t += 1
      if (off <= 2 * scatter.value.u) hits.two += 1
    }
    expect(Math.abs(hits.t / trials - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / trials))
    expect(hits.two / trials).toBeLessThan(0.85)
  })
})

describe('the difference of two readings', () => {
  test('root sum of squares, alike either way round', () => {
    expect(expandedOfTwo(3, 4)).toBe(5)
    expect(expandedOfTwo(4, 3)).toBe(5)
    expect(() => expandedOfTwo(-1, 2)).toThrow()
    expect(() => expandedOfTwo(Number.NaN, 2)).toThrow()
  })
})
