import { describe, expect, test } from 'vitest'
import { chanceInside, normalBelow } from '../../../src/core/statistics/normal.ts'

describe('normalBelow', () => {
  // Quantiles as printed in NIST/SEMATECH e-Handbook tables (three decimals), e.g. z.95 = 1.645.
  test.each([
    [1.282, 0.9],
    [1.645, 0.95],
    [1.96, 0.975],
    [2.326, 0.99],
    [2.576, 0.995],
    [3.09, 0.999],
  ])('printed quantile %f leaves %f below', (z, below) => {
    expect(Math.abs(normalBelow(z) - below)).toBeLessThan(1.1e-4)
  })

  test('is symmetric, joins up where the two ways of reckoning meet, and keeps its digits in the tail', () => {
    for (const z of [0, 0.3, 1, 2.49, 2.5, 2.51, 4, 6])
      expect(normalBelow(z) + normalBelow(-z)).toBeCloseTo(1, 13)
    expect(normalBelow(-2.5 - 1e-9) / normalBelow(-2.5)).toBeCloseTo(1, 7)
    expect(normalBelow(-2)).toBeCloseTo(0.0227501319481792, 14)
    expect(normalBelow(-6) / 9.865876450377018e-10).toBeCloseTo(1, 10)
    expect(normalBelow(-1000)).toBe(0)
  })

  test('what is not a number is a bug', () => {
    expect(() => normalBelow(Number.NaN)).toThrow()
    expect(() => chanceInside('at-most', 1, 0, 2)).toThrow()
  })
})

describe('conformance probability: examples of JCGM 106:2012', () => {
  test('7.3.3 example 1, breakdown voltage (example from memory, placed by the contents of UKAS LAB 48): 0.92', () => {
    expect(chanceInside('at-most', -5.47, 0.05, -5.4)).toBeCloseTo(0.92, 2)
  })

  // As retold in UKAS LAB 48 edition 3, example 6 (read second-hand): 99 % and 73 %.
  test.each([
    [509.7, 0.99],
    [495.2, 0.73],
  ])('7.3.3 example 2, burst strength %f kPa, u 8.6, at least 490', (burst, printed) => {
    expect(chanceInside('at-least', burst, 8.6, 490)).toBeCloseTo(printed, 2)
  })

  test('7.4, oil viscosity between 12.5 and 16.3 (inputs read, printed 0.66 from memory)', () => {
    const below = chanceInside('at-most', 13.6, 1.8, 16.3)
    const above = chanceInside('at-least', 13.6, 1.8, 12.5)
    expect(below + above - 1).toBeCloseTo(0.66, 2)
    expect(below + above - 1).toBeCloseTo(0.66263, 5)
  })

  // ILAC-G8:09/2019 and ISO 14253-1:2017 state under 2.5 %, 5 %, 0.16 % (read second-hand); ours with u = U/2 exactly.
  test.each([
    [0.83, 0.04846, 0.05],
    [1, 0.02275, 0.025],
    [1.5, 0.00135, 0.0016],
    [3, 9.87e-10, 1e-6],
  ])(
    'at a limit guarded by %f U the chance of a false accept is %f, under the stated %f',
    (r, reckoned, stated) => {
      const U = 0.2
      const risk = 1 - chanceInside('at-most', 11 - r * U, U / 2, 11)
      expect(risk).toBeLessThan(stated)
      expect(Math.abs(risk - reckoned)).toBeLessThan(5e-6)
    },
  )
})
