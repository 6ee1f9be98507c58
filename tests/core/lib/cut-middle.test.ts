import fc from 'fast-check'
import { expect, it } from 'vitest'
import { cutMiddle, widthOf } from '../../../src/core/lib/text.ts'

it.each([
  ['short enough', 20, 'short enough'],
  ['0 %LEL, flammables where people breathe', 30, '0 %LEL, flammables...breathe'],
  ['0 %LEL, flammables inside the opening', 24, '0 %LEL, flammables...'],
  ['everythingisonewordhereandlong', 12, 'everythin...'],
])('%j in %i columns is %j', (text, width, wanted) => {
  expect(cutMiddle(text, width)).toBe(wanted)
})

it('is never wider than it may be', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), fc.integer({ min: 4, max: 60 }), (text, width) => {
      expect(widthOf(cutMiddle(text, width))).toBeLessThanOrEqual(width)
    }),
  )
})
