import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { BORE_RULES, RIDGE_RULES, ridgeLimit, spreadRuleFor } from '../../../src/core/bore/bore-rules.ts'
import { resolveRule } from '../../../src/core/bore/fallback-limits.ts'
import { type OversizeInput, oversizeAvailable } from '../../../src/core/bore/oversize.ts'
import type { Result } from '../../../src/core/lib/result.ts'
import { judgeAgainst } from '../../../src/core/metrology/conformity.ts'
import { IN } from './sample-bore.ts'

const code = (result: Result<unknown>) => (result.ok ? 'taken' : result.error.code)
const PSI = 6894.757293168

const WORN: OversizeInput = {
  nominalM: 9.5 * IN,
  largestM: 9.516 * IN,
  cleanUpM: 0.004 * IN,
  oversizesM: [0.03 * IN, 0.01 * IN, 0.02 * IN],
  counterboreM: 9.75 * IN,
}

describe('oversize available', () => {
  test('the smallest that cleans up: 0.020 in for a bore worn to 9.516 in, on the edge of cleaning up', () => {
    const found = oversizeAvailable(WORN)
    expect(found).toMatchObject({
      ok: true,
      value: { oversizeM: expect.closeTo(0.02 * IN, 10), boundBy: 'counterbore' },
    })
    expect(oversizeAvailable({ ...WORN, cleanUpM: 0.0041 * IN })).toMatchObject({
      value: { oversizeM: expect.closeTo(0.03 * IN, 10) },
    })
  })

  test('nothing on the list within the book, nothing listed, no counterbore: refused', () => {
    expect(code(oversizeAvailable({ ...WORN, maxBoreM: 9.518 * IN }))).toBe('no-oversize-fits')
    expect(code(oversizeAvailable({ ...WORN, oversizesM: [] }))).toBe('no-oversize-listed')
    expect(code(oversizeAvailable({ ...WORN, counterboreM: null }))).toBe('counterbore-unknown')
    expect(code(oversizeAvailable({ ...WORN, cleanUpM: undefined }))).toBe('figure-missing')
    expect(code(oversizeAvailable({ ...WORN, oversizesM: [0.02 * IN, 0] }))).toBe('figure-unsound')
    expect(code(oversizeAvailable({ ...WORN, largestM: Number.NaN }))).toBe('figure-unsound')
    expect(code(oversizeAvailable({ ...WORN, largestM: 9.76 * IN }))).toBe('counterbore-below-bore')
  })

  test('second method: what is found satisfies both bounds, and no smaller one on the list does', () => {
    const worn = fc.record({
      wear: fc.integer({ min: 0, max: 60 }),
      cleanUp: fc.integer({ min: 0, max: 20 }),
      sizes: fc.array(fc.integer({ min: 1, max: 120 }), { minLength: 1, maxLength: 6 }),
      bound: fc.integer({ min: 60, max: 130 }),
    })
    const mil = 0.001 * IN
    fc.assert(
      fc.property(worn, ({ wear, cleanUp, sizes, bound }) => {
        const found = oversizeAvailable({
          nominalM: 10 * IN,
          largestM: 10 * IN + wear * mil,
          cleanUpM: cleanUp * mil,
          oversizesM: sizes.map((size) => size * mil),
          counterboreM: 10 * IN + bound * mil,
        })
        const fits = sizes.filter((size) => size >= wear + cleanUp && size <= bound).sort((a, b) => a - b)
        if (fits[0] === undefined) expect(code(found)).toBe('no-oversize-fits')
        else expect(found.ok ? Math.round(found.value.oversizeM / mil) : found.error.code).toBe(fits[0])
      }),
    )
  })
})

describe('which spread rule', () => {
  const of = (molarMass: number | null, psi: number | null) =>
    spreadRuleFor({ molarMass, differentialPa: psi === null ? null : psi * PSI })
  test('light gas or high differential, either alone, takes the tighter rule; on the edge too', () => {
    expect(of(18.5, 125)).toMatchObject({ value: { rule: 'spread-general' } })
    expect(of(16.04, 125)).toMatchObject({ value: { rule: 'spread-light-gas' } })
    expect(of(18.5, 900)).toMatchObject({ value: { rule: 'spread-light-gas' } })
    expect(of(17, 125)).toMatchObject({ value: { rule: 'spread-light-gas' } })
    expect(of(18.5, 700)).toMatchObject({ value: { rule: 'spread-light-gas' } })
  })
  test('unknown gas or differential never takes the looser rule', () => {
    expect(code(of(null, 125))).toBe('figure-missing')
    expect(code(of(18.5, null))).toBe('figure-missing')
    expect(code(of(0, 125))).toBe('figure-unsound')
  })
  // Bloch & Hoefner 1996, p. 259: 0.00075, 0.0005, 0.001 to 0.015 in, 0.002 to 0.018 in, 0.0005 per in of stroke.
  test('the named rules carry the printed ratios and ceilings', () => {
    const inches = (rule: keyof typeof BORE_RULES, bore: number) => {
      const found = resolveRule(BORE_RULES[rule], { 'nominal-bore': bore * IN, stroke: 9 * IN })
      return found.ok ? found.value.valueM / IN : Number.NaN
    }
    expect(inches('spread-general', 10)).toBeCloseTo(0.0075, 12)
    expect(inches('spread-light-gas', 10)).toBeCloseTo(0.005, 12)
    expect(inches('round-metal-rings', 20)).toBeCloseTo(0.015, 12)
    expect(inches('round-ptfe-rings', 12)).toBeCloseTo(0.018, 12)
    expect(inches('taper-per-stroke', 10)).toBeCloseTo(0.0045, 12)
  })
})

// Bloch & Hoefner 1996, p. 259: rebore at a ridge of 0.007 to 0.010 in.
describe('ridge', () => {
  const about = { approvedBy: 'A. Lead', since: '2024-01-01', book: 'invented' }
  const word = (rule: keyof typeof RIDGE_RULES, inches: number, uIn = 0.0002) => {
    const limit = ridgeLimit(rule, about)
    const input = { value: inches * IN, expandedU: uIn * IN, resolution: 0.0001 * IN }
    return judgeAgainst({ ...input, limit: limit.ok ? limit.value : null }).verdict
  }
  test('the two readings of the band are apart, and a ridge at the figure is never passed', () => {
    const [tight, wide] = Object.keys(RIDGE_RULES) as (keyof typeof RIDGE_RULES)[]
    if (tight === undefined || wide === undefined) throw new Error('two ridge rules')
    expect([0.006, 0.007, 0.008].map((ridge) => word(tight, ridge))).toEqual(['ACCEPT', 'HOLD', 'REWORK'])
    expect([0.0069, 0.007].map((ridge) => word(tight, ridge, 0))).toEqual(['ACCEPT', 'HOLD'])
    expect([0.006, 0.0075, 0.01, 0.0105].map((ridge) => word(wide, ridge))).toEqual([
      'ACCEPT',
      'MONITOR',
      'HOLD',
      'REWORK',
    ])
  })
  test('no such rule is refused', () => {
    expect(code(ridgeLimit('hasOwnProperty' as keyof typeof RIDGE_RULES, about))).toBe('rule-not-offered')
  })
})
