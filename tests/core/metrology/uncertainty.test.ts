import { describe, expect, test } from 'vitest'
import {
  expandedOfCentreAgainstEnds,
  expandedOfDifference,
  expandedOfReading,
  type ReadingUncertaintyInput,
  statedOfReading,
} from '../../../src/core/metrology/uncertainty.ts'

const plain: ReadingUncertaintyInput = {
  instrumentU: 4e-6,
  instrumentK: 2,
  lengthM: 0.254,
  partAlpha: 10.8e-6,
  instrumentAlpha: 11.5e-6,
  partTempU: 0,
  instrumentTempU: 0,
  resolutionM: 1e-6,
  resolutionInsideU: true,
}

function expanded(change: Partial<ReadingUncertaintyInput>): number {
  const result = expandedOfReading({ ...plain, ...change })
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}

describe('expandedOfReading', () => {
  test('the instrument alone comes back at k = 2, whatever k it was stated with', () => {
    expect(expanded({})).toBeCloseTo(4e-6, 15)
    expect(expanded({ instrumentU: 6e-6, instrumentK: 3 })).toBeCloseTo(4e-6, 15)
  })

  // JCGM 100:2008 H.1 (read second-hand): 25, 9.7, 2.9 and 16.6 nm give uc = 32 nm; 16.6 is ls x alpha x 0.029 C.
  test('GUM H.1: the temperature term is 16.6 nm and the whole 32 nm', () => {
    const lsM = 50.000623e-3
    const temperature = { lengthM: lsM, partAlpha: 11.5e-6, partTempU: 0.029 }
    const rest = 2 * Math.hypot(25e-9, 9.7e-9, 2.9e-9)
    expect((expanded({ ...temperature, instrumentU: 0 }) / 2) * 1e9).toBeCloseTo(16.68, 2)
    expect(Math.round((expanded({ ...temperature, instrumentU: rest }) / 2) * 1e9)).toBe(32)
  })

  test('GUM H.1: a coefficient known to 0.58e-6, 0.1 C away from 20, adds 2.9 nm', () => {
    const expansion = { partAlphaU: 0.58e-6, instrumentAlphaU: 0, partC: 19.9, instrumentC: 19.9 }
    expect((expanded({ instrumentU: 0, lengthM: 50.000623e-3, expansion }) / 2) * 1e9).toBeCloseTo(2.9, 2)
  })

  test('resolution counts as a rectangle, and once only', () => {
    expect(expanded({ instrumentU: 0, resolutionInsideU: false })).toBeCloseTo(2e-6 / Math.sqrt(12), 15)
    expect(expanded({ instrumentU: 0, resolutionInsideU: true })).toBe(0)
  })

  test('few repeats widen it: t at 95.45 in 100 (GUM Table G.2, from memory), from endless degrees of freedom on k = 2', () => {
    const only = (dof: number) => expanded({ instrumentU: 0, repeats: { u: 1e-6, dof } }) / 1e-6
    for (const [dof, t] of [
      [1, 13.97],
      [2, 4.53],
      [3, 3.31],
      [6, 2.52],
      [10, 2.28],
      [40, 2.06],
    ] as const)
      expect(only(dof)).toBeCloseTo(t, 2)
    expect(only(1e9)).toBeCloseTo(2, 6)
  })

  test('beside a well known part the degrees of freedom are those of the whole, cut down (GUM G.4.1)', () => {
    // u 2 um of the instrument and 1 um of 6 degrees of freedom: 6 x 5^2 / 1 = 150.
    const stated = statedOfReading({ ...plain, repeats: { u: 1e-6, dof: 6 } })
    expect(stated.ok && stated.value).toMatchObject({ dof: 150, uc: expect.closeTo(Math.sqrt(5) * 1e-6, 15) })
    expect(expanded({ repeats: { u: 1e-6, dof: 6 } })).toBeGreaterThan(2 * Math.sqrt(5) * 1e-6)
  })

  test('each term can only add', () => {
    const larger = [
      { partTempU: 1 },
      { instrumentTempU: 1 },
      { resolutionInsideU: false },
      { repeats: { u: 1e-6, dof: 5 } },
    ]
    for (const change of larger) expect(expanded(change)).toBeGreaterThan(expanded({}))
    expect(expanded({ partTempU: 1, instrumentTempU: 1 })).toBeGreaterThan(expanded({ partTempU: 1 }))
  })

  test.each([
    [{ instrumentU: undefined }, 'no-stated-uncertainty'],
    [{ instrumentK: null }, 'no-coverage-factor'],
    [{ instrumentK: 0 }, 'no-coverage-factor'],
    [{ instrumentU: Number.NaN }, 'uncertainty-input-unsound'],
    [{ instrumentU: -1e-6 }, 'uncertainty-input-unsound'],
    [{ partTempU: Number.NaN }, 'uncertainty-input-unsound'],
    [{ instrumentTempU: -1 }, 'uncertainty-input-unsound'],
    [{ repeats: { u: Number.POSITIVE_INFINITY, dof: 5 } }, 'uncertainty-input-unsound'],
    [{ repeats: { u: 1e-6, dof: 0 } }, 'uncertainty-input-unsound'],
    [{ repeats: { u: -1e-6, dof: 5 } }, 'uncertainty-input-unsound'],
    [{ resolutionM: 0 }, 'uncertainty-input-unsound'],
    [{ lengthM: 0 }, 'uncertainty-input-unsound'],
    [
      { expansion: { partAlphaU: -1, instrumentAlphaU: 0, partC: 30, instrumentC: 20 } },
      'uncertainty-input-unsound',
    ],
  ])('%o is refused as %s', (change, code) => {
    const result = expandedOfReading({ ...plain, ...change })
    expect(result.ok ? 'taken' : result.error.code).toBe(code)
  })
})

describe('what is reckoned from readings', () => {
  test('difference: root two; middle against the mean of the ends: root one and a half (JCGM 100:2008 5.1.2)', () => {
    expect(expandedOfDifference(3e-6)).toBeCloseTo(Math.hypot(3e-6, 3e-6), 15)
    expect(expandedOfCentreAgainstEnds(3e-6)).toBeCloseTo(Math.hypot(3e-6, 1.5e-6, 1.5e-6), 15)
  })

  test('an error shared by the session is second order in a difference: 0.2 mm, 5 C, under 0.02 um', () => {
    const grow = 1 + 10.8e-6 * 5
    const shift = 0.2542 * grow - 0.254 * grow - (0.2542 - 0.254)
    expect(Math.abs(shift)).toBeLessThan(0.02e-6)
    expect(0.254 * grow - 0.254).toBeGreaterThan(10e-6)
  })

  test('an unsound U is a bug', () => {
    for (const u of [Number.NaN, -1]) {
      expect(() => expandedOfDifference(u)).toThrow()
      expect(() => expandedOfCentreAgainstEnds(u)).toThrow()
    }
  })
})
