import { expect, test } from 'vitest'
import { VERDICT_WORDS, type VerdictWord, worst } from '../../../src/core/metrology/verdict.ts'

test('the worst word stands for the whole, whatever the order', () => {
  expect(worst(['ACCEPT', 'MONITOR', 'ACCEPT'])).toBe('MONITOR')
  expect(worst(['REPLACE', 'REWORK', 'MONITOR'])).toBe('REPLACE')
  expect(worst(['HOLD', 'REPLACE'])).toBe('HOLD')
  expect(worst(['STOP', 'HOLD'])).toBe('STOP')
  expect(worst(['ACCEPT'])).toBe('ACCEPT')
})

test('nothing judged is HOLD', () => {
  expect(worst([])).toBe('HOLD')
})

test('an unknown word is a bug, never the mildest one', () => {
  expect(() => worst(['ACCEPT', 'PASS' as VerdictWord])).toThrow()
})

test('severity runs in the stated order', () => {
  expect(VERDICT_WORDS).toEqual(['ACCEPT', 'MONITOR', 'REWORK', 'REPLACE', 'HOLD', 'STOP'])
})
