// Cochran's C against its published table, and what a share of squares has to do.
import { describe, expect, test } from 'vitest'
import { cochranCritical, cochranOdds } from '../../../src/core/statistics/cochran.ts'

/** Groups of n readings each: rows by number of groups, columns n = 2, 3, 4, 5. */
const of = (groups: number, n: number, risk = 0.05) => cochranCritical(n - 1, groups * (n - 1), groups, risk)

describe('cochranCritical', () => {
  // A table of critical values at 5 in 100 on the pages of a national measurement system (read there); the same are in ISO 5725-2:1994
  // table 4 (from memory). Two groups of five are 0.906 there.
  test.each([
    [2, [0.998, 0.975, 0.939, 0.906]],
    [3, [0.967, 0.871, 0.798, 0.746]],
    [4, [0.906, 0.768, 0.684, 0.629]],
    [6, [0.781, 0.616, 0.532, 0.48]],
    [8, [0.68, 0.516, 0.438, 0.391]],
    [10, [0.602, 0.445, 0.373, 0.331]],
    [20, [0.389, 0.27, 0.221, 0.192]],
  ])('%i groups: the table at 5 in 100', (groups, row) => {
    // The table is of the bound that is worked out here or of the exact chance, which lie within 0.001 of each other.
    row.forEach((value, i) => {
      expect(Math.abs(of(groups, i + 2) - value)).toBeLessThanOrEqual(0.0011)
    })
  })

  test('at 1 in 100 eight groups of three have 0.615 (ISO 5725-2:1994 table 4, from memory)', () => {
    expect(of(8, 3, 0.01)).toBeCloseTo(0.615, 3)
  })

  test('a larger group may have more, a smaller risk allows more, and no share is all of it', () => {
    const unlike = [1, 2, 3].map((dof) => cochranCritical(dof, 9, 5, 0.05))
    expect([...unlike].sort((a, b) => a - b)).toEqual(unlike)
    expect(of(6, 2, 0.01)).toBeGreaterThan(of(6, 2))
    expect(of(2, 2, 0.001)).toBeLessThan(1)
    expect(cochranOdds(1, 6, 6, 0.05)).toBeCloseTo(0.781 / 0.219, 1)
  })

  test('one group, or no risk, is a bug', () => {
    for (const [dof, all, groups, risk] of [
      [1, 1, 1, 0.05],
      [0, 3, 2, 0.05],
      [1, 2, 2, 0],
      [1, 2, 2, 1],
    ] as const)
      expect(() => cochranCritical(dof, all, groups, risk)).toThrow()
  })
})
