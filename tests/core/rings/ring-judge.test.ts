import { describe, expect, test } from 'vitest'
import {
  type BandInput,
  GAP_TOO_LARGE,
  GAP_TOO_SMALL,
  judgeRadialWear,
  judgeRingGap,
  judgeSideClearance,
} from '../../../src/core/rings/ring-judge.ts'
import { IN, sampleLimit } from '../metrology/sample-limit.ts'

const least = sampleLimit({ characteristic: 'ring-end-gap', bound: 'at-least', value: 0.019 * IN })
const most = sampleLimit({ characteristic: 'ring-end-gap', value: 0.057 * IN, beyond: 'REPLACE' })
const base: BandInput = { value: 0.03 * IN, expandedU: 0.001 * IN, resolution: 0.001 * IN, least, most }
const at = (inches: number, change: Partial<BandInput> = {}) =>
  judgeRingGap({ ...base, value: inches * IN, ...change })

describe('a gap is wrong on either side', () => {
  test('too small is REWORK with the reason, never better than new', () => {
    const tight = at(0.012)
    expect(tight.verdict).toBe('REWORK')
    expect(tight.reasons[0]).toBe(GAP_TOO_SMALL)
    expect(at(0).verdict).toBe('REWORK')
  })

  test('good in the middle, HOLD within U of either limit, REPLACE beyond the greatest', () => {
    expect([0.02, 0.03, 0.056].map((gap) => at(gap).verdict)).toEqual(['ACCEPT', 'ACCEPT', 'ACCEPT'])
    expect([0.018, 0.019, 0.057, 0.058].map((gap) => at(gap).verdict)).toEqual(Array(4).fill('HOLD'))
    expect(at(0.0595).verdict).toBe('REPLACE')
    expect(at(0.08).reasons[0]).toBe(GAP_TOO_LARGE)
  })

  test('one limit, no value, no U, limits that contradict: HOLD, never a pass', () => {
    const held = (change: Partial<BandInput>) => expect(at(0.03, change).verdict).toBe('HOLD')
    held({ least: null })
    held({ most: undefined })
    held({ expandedU: null })
    held({ resolution: null })
    held({ value: null })
    held({ value: Number.NaN })
    held({ value: -0.001 })
    held({ least: { ...least, value: 0.06 * IN } })
    held({ least: { ...least, bound: 'at-most' } })
    held({ most: { ...most, bound: 'at-least' } })
    held({ most: { ...most, characteristic: 'spread' } })
    held({ least: { ...least, value: Number.NaN } })
  })

  test('a least gap that says REPLACE is a contradiction: a tight ring is filed', () => {
    expect(at(0.01, { least: { ...least, beyond: 'REPLACE' } }).verdict).toBe('HOLD')
  })

  test('an owner who accepts without U gets MONITOR at best', () => {
    const accepted = { expandedU: null, simpleAcceptance: { by: 'A. Lead' } }
    expect(at(0.03, accepted).verdict).toBe('MONITOR')
    expect(at(0.01, accepted).verdict).toBe('REWORK')
  })
})

test('side clearance is two-sided too, under its own name', () => {
  const own = { characteristic: 'ring-side-clearance' }
  const input = {
    ...base,
    least: { ...least, ...own, value: 0.002 * IN },
    most: { ...most, ...own, value: 0.008 * IN },
    expandedU: 0.0005 * IN,
    resolution: 0.0005 * IN,
  }
  const word = (inches: number) => judgeSideClearance({ ...input, value: inches * IN }).verdict
  expect([0.001, 0.004, 0.009].map(word)).toEqual(['REWORK', 'ACCEPT', 'REPLACE'])
  expect(judgeSideClearance({ ...base }).verdict).toBe('HOLD')
})

test('radial wear against the owner’s limit; no limit is HOLD', () => {
  const limit = sampleLimit({ characteristic: 'ring-radial-wear', value: 0.05 * IN, beyond: 'REPLACE' })
  const judge = (inches: number) =>
    judgeRadialWear({ value: inches * IN, expandedU: 0.001 * IN, resolution: 0.001 * IN, limit }).verdict
  expect([0.02, 0.05, 0.06].map(judge)).toEqual(['ACCEPT', 'HOLD', 'REPLACE'])
  const without = (change: object) =>
    judgeRadialWear({ value: 0.02 * IN, expandedU: 0, resolution: 0.001 * IN, limit, ...change }).verdict
  expect(without({ limit: null })).toBe('HOLD')
  expect(without({ limit: { ...limit, characteristic: 'spread' } })).toBe('HOLD')
  expect(without({ limit: { ...limit, bound: 'at-least' } })).toBe('HOLD')
})
