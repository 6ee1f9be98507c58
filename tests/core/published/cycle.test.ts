// Every published figure that the cylinder-as-a-compressor functions are checked against, in one place: source with
// page, inputs, printed result, tolerance from its printed rounding, how the figure was seen, and the difference found.
// A wider tolerance is named where the book worked with pi = 22/7, 273 or a rounded speed.
import { describe, expect, test } from 'vitest'
import { sliderCrank } from '../../../src/core/cycle/slider-crank.ts'
import { CYCLE_ROWS as ALL } from './cycle-rows.ts'

describe('published figures', () => {
  test.each(ALL)('$source: $what, printed $printed', ({ printed, half, ours, widened }) => {
    const tolerance = half + (widened?.[0] ?? 0)
    // The last bits of a half step are no difference.
    expect(Math.abs(ours() - printed)).toBeLessThanOrEqual(tolerance * (1 + 1e-9))
  })

  test('there are thirty or more, from eight or more books, and few of them from memory', () => {
    expect(ALL.length).toBeGreaterThanOrEqual(60)
    expect(new Set(ALL.map((row) => row.source.split(',')[0])).size).toBeGreaterThanOrEqual(8)
    expect(ALL.filter((row) => row.status === 'memory').length).toBeLessThanOrEqual(1)
    expect(ALL.every((row) => row.half <= 0.02 * Math.abs(row.printed))).toBe(true)
  })

  test('the exact motion stays within 0.3 % of the textbooks two-term figures', () => {
    const exact = sliderCrank({ crankM: 0.3, conRodM: 1.5, omega: 6 * Math.PI }, (40 * Math.PI) / 180)
    if (!exact.ok) throw new Error(exact.error.say)
    expect(Math.abs(exact.value.velocity / 4.19 - 1)).toBeLessThan(0.003)
    expect(Math.abs(exact.value.acceleration / 85.36 - 1)).toBeLessThan(0.003)
  })
})
