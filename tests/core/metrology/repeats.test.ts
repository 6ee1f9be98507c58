import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { combineRepeats } from '../../../src/core/metrology/repeats.ts'
import { IN } from './sample-limit.ts'

const rule = { atLeast: 2, atMost: 4, within: 0.0003 * IN }
const inches = (...values: number[]) => values.map((value) => value * IN)

describe('combineRepeats', () => {
  test('asks for more before there are enough', () => {
    expect(combineRepeats([], rule)).toEqual({ state: 'more', spread: null })
    expect(combineRepeats(inches(9.5021), rule)).toEqual({ state: 'more', spread: 0 })
  })

  test('two that agree settle at their mean, to the last decimal of the span', () => {
    const two = combineRepeats(inches(9.5021, 9.5024), rule)
    expect(two.state).toBe('settled')
    expect((two.value ?? 0) / IN).toBeCloseTo(9.50225, 10)
    expect((two.spread ?? 0) / IN).toBeCloseTo(0.0003, 10)
    expect(combineRepeats(inches(9.5021, 9.5025), rule)).toMatchObject({ state: 'more' })
  })

  test('a difference of exactly the span agrees, whatever the last bits of the two readings', () => {
    for (let tenth = 95_000; tenth < 95_400; tenth += 1) {
      const two = [Number(`${tenth}e-4`) * IN, Number(`${tenth + 3}e-4`) * IN]
      expect(combineRepeats(two, rule).state).toBe('settled')
    }
  })

  test('of three the middle one stands when one neighbour agrees, and the odd one is kept in the spread', () => {
    const three = combineRepeats(inches(9.5021, 9.5079, 9.5023), rule)
    expect((three.value ?? 0) / IN).toBeCloseTo(9.5023, 10)
    expect((three.spread ?? 0) / IN).toBeCloseTo(0.0058, 10)
    expect(combineRepeats(inches(9.502, 9.503, 9.504), rule).state).toBe('more')
  })

  test('four that still disagree in the middle are unsettled and give no value', () => {
    const four = combineRepeats(inches(9.5, 9.501, 9.502, 9.503), rule)
    expect(four).toMatchObject({ state: 'unsettled' })
    expect(four.value).toBeUndefined()
    expect(combineRepeats(inches(9.5, 9.5011, 9.5012, 9.503), rule).state).toBe('settled')
  })

  test('one reading settles only where one is enough', () => {
    expect(combineRepeats([0.2], { atLeast: 1, atMost: 1, within: 0 })).toEqual({
      state: 'settled',
      value: 0.2,
      spread: 0,
    })
  })

  test('bugs throw: a reading that is not finite, a rule that is unsound', () => {
    for (const x of [Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => combineRepeats([0.2, x], rule)).toThrow()
    const unsound = [{ atLeast: 0 }, { atLeast: 1.5 }, { atMost: 1 }, { within: -1 }, { within: Number.NaN }]
    for (const change of unsound) expect(() => combineRepeats([0.2], { ...rule, ...change })).toThrow()
  })

  test('the order of reading does not matter, the input is untouched, and the value lies among the readings', () => {
    const readings = fc.array(fc.double({ min: 0.24, max: 0.2401, noNaN: true }), {
      minLength: 1,
      maxLength: 6,
    })
    fc.assert(
      fc.property(readings, fc.double({ min: 0, max: 1e-4, noNaN: true }), (values, within) => {
        const before = [...values]
        const one = combineRepeats(values, { atLeast: 2, atMost: 5, within })
        expect(combineRepeats([...values].reverse(), { atLeast: 2, atMost: 5, within })).toEqual(one)
        expect(values).toEqual(before)
        expect(one.value === undefined).toBe(one.state !== 'settled')
        if (one.value === undefined) return
        expect(one.value).toBeGreaterThanOrEqual(Math.min(...values))
        expect(one.value).toBeLessThanOrEqual(Math.max(...values))
      }),
    )
  })
})
