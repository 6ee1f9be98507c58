import { describe, expect, test } from 'vitest'
import { type LimitRule, limitFromRule, resolveRule } from '../../../src/core/bore/fallback-limits.ts'
import { judgeAgainst } from '../../../src/core/metrology/conformity.ts'
import { sampleLimit } from '../metrology/sample-limit.ts'
import { IN } from './sample-bore.ts'

function value(rule: LimitRule, boreIn: number, strokeIn?: number): number {
  const resolved = resolveRule(rule, {
    'nominal-bore': boreIn * IN,
    stroke: strokeIn === undefined ? undefined : strokeIn * IN,
  })
  if (!resolved.ok) throw new Error(resolved.error.say)
  return resolved.value.valueM / IN
}

const SPREAD: LimitRule = { ratio: 0.00075, of: 'nominal-bore' }
const LIGHT_GAS: LimitRule = { ratio: 0.0005, of: 'nominal-bore' }
const ROUND_METAL: LimitRule = { ratio: 0.001, of: 'nominal-bore', atMost: 0.015 * IN }
const ROUND_PTFE: LimitRule = { ratio: 0.002, of: 'nominal-bore', atMost: 0.018 * IN }
const TAPER: LimitRule = { ratio: 0.0005, of: 'stroke' }

// Bloch & Hoefner, Reciprocating Compressors: Operation and Maintenance, 1996, p. 259. Only the spread example is
// printed there with its numbers; the other numbers are our arithmetic on the printed limits.
describe('rules of Bloch & Hoefner 1996, p. 259', () => {
  test('spread: 10.000 in gives 0.0075 in, so from a smallest of 10.0025 the largest may reach 10.010 (printed)', () => {
    expect(value(SPREAD, 10)).toBeCloseTo(0.0075, 12)
    expect(10.0025 + value(SPREAD, 10)).toBeCloseTo(10.01, 12)
    const limit = limitFromRule(
      SPREAD,
      { 'nominal-bore': 10 * IN },
      sampleLimit({ rule: '0.00075 in per in' }),
    )
    const word = (largest: number) =>
      judgeAgainst({
        value: largest * IN - 10.0025 * IN,
        expandedU: 0,
        resolution: 0.0001 * IN,
        limit: limit.ok ? limit.value : null,
      }).verdict
    expect([word(10.01), word(10.0101)]).toEqual(['ACCEPT', 'REWORK'])
  })

  test.each([
    ['spread, light gas', LIGHT_GAS, 10, 0.005],
    ['round, metal rings', ROUND_METAL, 10, 0.01],
    ['round, metal rings', ROUND_METAL, 15, 0.015],
    ['round, metal rings, capped', ROUND_METAL, 20, 0.015],
    ['round, PTFE rings', ROUND_PTFE, 8, 0.016],
    ['round, PTFE rings', ROUND_PTFE, 9, 0.018],
    ['round, PTFE rings, capped', ROUND_PTFE, 12, 0.018],
  ])('%s: %o at %f in gives %f in', (_, rule, bore, inches) => {
    expect(value(rule, bore)).toBeCloseTo(inches, 12)
  })

  test('taper goes by the stroke: 9 in 0.0045, 12 in 0.0060', () => {
    expect(value(TAPER, 10, 9)).toBeCloseTo(0.0045, 12)
    expect(value(TAPER, 10, 12)).toBeCloseTo(0.006, 12)
  })

  test('the spread rule is the tighter below 20 in, equal at 20 in; above it the capped round rule', () => {
    expect(value(SPREAD, 10)).toBeLessThan(value(ROUND_METAL, 10))
    expect(value(SPREAD, 20)).toBeCloseTo(value(ROUND_METAL, 20), 12)
    expect(value(SPREAD, 24)).toBeGreaterThan(value(ROUND_METAL, 24))
  })
})

describe('refusals', () => {
  const code = (rule: LimitRule, sizes = {}) => {
    const resolved = resolveRule(rule, sizes)
    return resolved.ok ? 'taken' : resolved.error.code
  }
  test('a size that is missing or unsound, a rule that is unsound: never a limit', () => {
    expect(code(SPREAD)).toBe('rule-size-missing')
    expect(code(TAPER, { 'nominal-bore': 0.25 })).toBe('rule-size-missing')
    expect(code(SPREAD, { 'nominal-bore': Number.NaN })).toBe('rule-size-missing')
    expect(code(SPREAD, { 'nominal-bore': 0 })).toBe('rule-size-missing')
    for (const ratio of [0, -1, 1, Number.NaN]) expect(code({ ...SPREAD, ratio })).toBe('rule-ratio-unsound')
    for (const atMost of [0, Number.NaN]) expect(code({ ...SPREAD, atMost })).toBe('rule-ceiling-unsound')
    expect(code({ ...SPREAD, of: 'rod' as 'stroke' }, { 'nominal-bore': 0.25 })).toBe('rule-size-unknown')
    expect(limitFromRule(SPREAD, {}, sampleLimit()).ok).toBe(false)
  })

  test('whether the ceiling cut the value is told', () => {
    expect(resolveRule(ROUND_METAL, { 'nominal-bore': 20 * IN })).toMatchObject({ value: { capped: true } })
    expect(resolveRule(ROUND_METAL, { 'nominal-bore': 10 * IN })).toMatchObject({ value: { capped: false } })
  })
})
