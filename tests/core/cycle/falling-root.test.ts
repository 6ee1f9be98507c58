import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fallingRoot } from '../../../src/core/cycle/falling-root.ts'

const some = (min: number, max: number) => fc.double({ min, max, noNaN: true })

test('finds the zero of smooth functions to the last bits, in few steps', () => {
  let calls = 0
  const { low, high } = fallingRoot(
    (x) => {
      calls += 1
      return 2 - x * x
    },
    0,
    50,
  )
  expect(low).toBeCloseTo(Math.SQRT2, 14)
  expect(high - low).toBeLessThan(1e-14)
  expect(calls).toBeLessThan(25)
})

test('property: low holds, high does not, they are neighbours, whatever jumps and flats there are', () => {
  fc.assert(
    fc.property(some(1, 40), some(0.2, 4), some(0, 5), (zero, power, jump) => {
      const value = (x: number) => (x <= zero ? jump + (zero - x) ** power : -jump - Math.min(1, x - zero))
      const { low, high } = fallingRoot(value, 0, 50)
      expect(value(low)).toBeGreaterThanOrEqual(0)
      expect(value(high)).toBeLessThan(0)
      // Once a place is exactly on zero there is nothing nearer to look for; `high` only has to lie beyond it.
      if (value(low) === 0) expect(low).toBe(zero)
      else expect(high - low).toBeLessThan(1e-6)
    }),
    // Found at random: the search steps exactly on the zero. As text, since the last figure matters.
    {
      examples: [
        [Number('22.778052214526742'), Number('1.0011900866962309'), 0],
        [Number('39.99999999999994'), Number('1.0155884196561541'), 0],
      ],
    },
  )
})

test('a bracket without a zero is a bug', () => {
  expect(() => fallingRoot((x) => x - 100, 0, 50)).toThrow()
  expect(() => fallingRoot((x) => 100 - x, 0, 50)).toThrow()
})
