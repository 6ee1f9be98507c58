import { describe, expect, test } from 'vitest'
import {
  ERROR_NOT_ALLOWED_FOR,
  inHundred,
  type Judgement,
  judgeAgainst,
  TOO_CLOSE,
} from '../../../src/core/metrology/conformity.ts'
import type { JudgeInput } from '../../../src/core/metrology/judge-input.ts'
import type { Limit } from '../../../src/core/metrology/limit.ts'
import { IN, sampleLimit } from './sample-limit.ts'

const STEP = 0.0001 * IN

function judge(valueIn: number, change: Partial<JudgeInput> = {}, limit: Partial<Limit> = {}): Judgement {
  return judgeAgainst({
    value: valueIn * IN,
    expandedU: 0.0003 * IN,
    resolution: STEP,
    limit: sampleLimit(limit),
    ...change,
  })
}

describe('guarded decisions, limit 0.0095 in, U 0.0003 in, step 0.0001 in', () => {
  test.each([
    [0.009, 'ACCEPT'],
    [0.0092, 'ACCEPT'],
    [0.0093, 'HOLD'],
    [0.0095, 'HOLD'],
    [0.0098, 'HOLD'],
    [0.0099, 'REWORK'],
    [0.02, 'REWORK'],
  ])('%f in is %s', (valueIn, word) => {
    expect(judge(valueIn).verdict).toBe(word)
  })

  test('a value on an exclusive guarded limit is not accepted; beyond still means by more than U', () => {
    expect(judge(0.0092, {}, { inclusive: false }).verdict).toBe('HOLD')
    expect(judge(0.0091, {}, { inclusive: false }).verdict).toBe('ACCEPT')
    expect(judge(0.0098, {}, { inclusive: false }).verdict).toBe('HOLD')
    expect(judge(0.0099, {}, { inclusive: false }).verdict).toBe('REWORK')
  })

  test('an at-least limit is the mirror image', () => {
    const words = [0.01, 0.0098, 0.0097, 0.0092, 0.0091].map(
      (v) => judge(v, {}, { bound: 'at-least' }).verdict,
    )
    expect(words).toEqual(['ACCEPT', 'ACCEPT', 'HOLD', 'HOLD', 'REWORK'])
  })

  test('figures, reasons and rule go with the word', () => {
    const held = judge(0.0093)
    expect(held.reasons).toEqual([TOO_CLOSE])
    expect(held.used).toBeCloseTo(0.0093 / 0.0095, 12)
    expect((held.left ?? 0) / IN).toBeCloseTo(0.0002, 12)
    expect((held.guard ?? 0) / IN).toBeCloseTo(0.0003, 12)
    expect((held.acceptAtMost ?? 0) / IN).toBeCloseTo(0.0092, 12)
    expect(held.rule).toContain('k = 2')
    expect(held.rule).toContain('at most 2.3 in 100')
    expect(judge(0.0099).left).toBeLessThan(0)
    expect(judge(0.0099, {}, { beyond: 'REPLACE' }).verdict).toBe('REPLACE')
  })

  test('the limit that the owner wants watched early is MONITOR from its share on', () => {
    const watched = { monitorFrom: 0.8 }
    expect(judge(0.0075, {}, watched).verdict).toBe('ACCEPT')
    expect(judge(0.0076, {}, watched).verdict).toBe('MONITOR')
    // 75.6 steps is under 0.8 of the limit as it stood, and on it as rounded to 76.
    expect(judge(0.00756, {}, watched).verdict).toBe('MONITOR')
    expect(judge(0.0093, {}, watched).verdict).toBe('HOLD')
  })

  test('the stated chance follows the k in hand, and a k too small for a guard is refused', () => {
    expect(judge(0.009, { k: 3 }).rule).toContain('at most 0.14 in 100')
    expect(judge(0.009, { k: 1 }).verdict).toBe('HOLD')
    expect(judge(0.009, { k: Number.NaN }).verdict).toBe('HOLD')
    expect([0.02275, 0.00135, 0.04846, 0.5, 1e-9].map(inHundred)).toEqual([
      '2.3',
      '0.14',
      '4.9',
      '50',
      '0.001',
    ])
  })
})

describe('whole steps of the resolution', () => {
  test('a half step goes to the unsafe side (ASTM E29 rounding, halves our own choice)', () => {
    expect(judge(0.00915, { expandedU: 0.0003 * IN }).verdict).toBe('ACCEPT')
    expect(judge(0.00925).verdict).toBe('HOLD')
    expect(judge(0.00975, {}, { bound: 'at-least' }).verdict).toBe('HOLD')
    // Guarded limit 92.6 steps, value 92.5: inside as it stood, but 93 as rounded.
    expect(judge(0.00925, {}, { value: 0.00956 * IN }).verdict).toBe('HOLD')
    expect(judge(0.0092, {}, { value: 0.00956 * IN }).verdict).toBe('ACCEPT')
  })

  test('rounding down never earns an acceptance that the value as it stood has not', () => {
    expect(judge(0.00924).verdict).toBe('HOLD')
    expect(judge(0.00954, { expandedU: 0 }).verdict).toBe('HOLD')
  })

  test('a guard band under half a step still guards', () => {
    expect(judge(0.0095, { expandedU: 0.00001 * IN }).verdict).toBe('HOLD')
    expect(judge(0.0094, { expandedU: 0.00001 * IN }).verdict).toBe('ACCEPT')
    expect(judge(0.0095, { expandedU: 0 }).verdict).toBe('ACCEPT')
  })

  test('a limit between two steps is guarded towards the safe side', () => {
    const limit = { value: 0.00955 * IN }
    expect((judge(0.009, {}, limit).acceptAtMost ?? 0) / IN).toBeCloseTo(0.0092, 12)
    expect(judge(0.0093, {}, limit).verdict).toBe('HOLD')
  })

  test('an error as large as the limit accepts nothing and says so', () => {
    const held = judge(0.001, { expandedU: 0.01 * IN })
    expect(held.verdict).toBe('HOLD')
    expect(held.reasons).toContain(
      'the measuring error is as large as the limit: nothing measured so can be accepted',
    )
  })
})

describe('no stated error', () => {
  test('is HOLD, though the figures may be shown', () => {
    const held = judge(0.001, { expandedU: undefined })
    expect(held).toMatchObject({ verdict: 'HOLD', compared: false })
    expect(held.used).toBeCloseTo(0.001 / 0.0095, 12)
    expect(judge(0.001, { expandedU: null, simpleAcceptance: { by: '  ' } }).verdict).toBe('HOLD')
  })

  test('with simple acceptance by name is a plain comparison, never better than MONITOR', () => {
    const plain = { expandedU: undefined, simpleAcceptance: { by: 'A. Owner' } }
    expect(judge(0.001, plain)).toMatchObject({ verdict: 'MONITOR', note: ERROR_NOT_ALLOWED_FOR })
    expect(judge(0.0095, plain).verdict).toBe('MONITOR')
    expect(judge(0.0095, plain, { inclusive: false }).verdict).toBe('REWORK')
    expect(judge(0.0096, plain).verdict).toBe('REWORK')
    expect(judge(0.00954, plain).verdict).toBe('HOLD')
    expect(judge(0.0094, plain, { bound: 'at-least' }).verdict).toBe('REWORK')
    expect(judge(0.001, plain).rule).toContain('A. Owner')
    expect(judge(0.001, plain).rule).toContain('50 in 100')
  })

  test('simple acceptance does not set aside an error that is stated', () => {
    expect(judge(0.0093, { simpleAcceptance: { by: 'A. Owner' } }).verdict).toBe('HOLD')
    expect(judge(0.001, { expandedU: Number.NaN, simpleAcceptance: { by: 'A. Owner' } }).verdict).toBe('HOLD')
  })
})

describe('where use of a limit starts', () => {
  test('a diameter is used from nominal, so that it does not read as nearly used when new', () => {
    const limit = { value: 9.53 * IN, characteristic: 'largest-diameter', monitorFrom: 0.8 }
    const one = judge(9.503, { startsAt: 9.5 * IN }, limit)
    expect(one.verdict).toBe('ACCEPT')
    expect(one.used).toBeCloseTo(0.1, 9)
    expect(judge(9.503, {}, limit).verdict).toBe('MONITOR')
    expect(judge(9.503, { startsAt: 9.53 * IN }, limit).verdict).toBe('HOLD')
    expect(judge(9.503, { startsAt: Number.NaN }, limit).verdict).toBe('HOLD')
  })

  test('an undersize is used from nominal downwards', () => {
    const rod = judge(2.248, { startsAt: 2.25 * IN }, { bound: 'at-least', value: 2.245 * IN })
    expect(rod.used).toBeCloseTo(0.4, 9)
  })
})

describe('published cases', () => {
  // ILAC-G8:09/2019 scenarios as retold on a calibration guide page (read second-hand): MPE 0.003 mm, U 0.0010 mm.
  test('MPE 0.003 mm, U 0.0010 mm: 0.0017 passes, 0.0025 does not', () => {
    const case77 = (value: number) =>
      judgeAgainst({ value, expandedU: 1e-6, resolution: 1e-7, limit: sampleLimit({ value: 3e-6 }) })
    expect(case77(1.7e-6).verdict).toBe('ACCEPT')
    expect(case77(2.5e-6).verdict).toBe('HOLD')
    expect(case77(1.7e-6).acceptAtMost).toBeCloseTo(2e-6, 12)
  })

  // Same source as the row above for the inputs (10 +/- 1, U 0.2); limits 9.2 and 10.8 are our arithmetic.
  test('10 +/- 1 with U 0.2 accepts from 9.2 to 10.8; the four ways of ILAC-G8 4.2.3 have both middle ones on HOLD', () => {
    const at = (value: number, bound: Limit['bound'], limit: number) =>
      judgeAgainst({ value, expandedU: 0.2, resolution: 0.1, limit: sampleLimit({ bound, value: limit }) })
    expect(at(10.8, 'at-most', 11).verdict).toBe('ACCEPT')
    expect(at(10.8, 'at-most', 11).acceptAtMost).toBeCloseTo(10.8, 12)
    expect(at(10.9, 'at-most', 11).verdict).toBe('HOLD')
    expect(at(11.2, 'at-most', 11).verdict).toBe('HOLD')
    expect(at(11.3, 'at-most', 11).verdict).toBe('REWORK')
    expect(at(9.2, 'at-least', 9).acceptAtMost).toBeCloseTo(9.2, 12)
    expect(at(9.1, 'at-least', 9).verdict).toBe('HOLD')
    expect(at(8.7, 'at-least', 9).verdict).toBe('REWORK')
  })
})
