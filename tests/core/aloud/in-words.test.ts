// The sheet as it is heard: a slip in a figure has to be heard, and no sign may be swallowed or taken for an option.
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { asSentences, digitByDigit, inWords, UNIT_WORDS } from '../../../src/core/aloud/in-words.ts'
import { UNITS } from '../../../src/core/units/index.ts'

it('every unit of the table has words of its own, and no two have the same', () => {
  const symbols = UNITS.map(({ symbol }) => symbol)
  expect(Object.keys(UNIT_WORDS).sort()).toEqual([...symbols].sort())
  expect(new Set(Object.values(UNIT_WORDS)).size).toBe(symbols.length)
})

it.each([
  ['9.5036 in', 'nine point five zero three six inch'],
  ['9.5063 in', 'nine point five zero six three inch'],
  ['241.393 mm', 'two four one point three nine three millimetres'],
  ['0 %LEL', 'zero percent of L E L'],
  ['20.9 %vol', 'two zero point nine percent by volume'],
  ['H2S 5 ppm', 'H two S five parts per million'],
  ['71.2 degF', 'seven one point two degrees Fahrenheit'],
  ['at most 0.5 psig', 'at most zero point five P S I gauge'],
  ['15 psi', 'one five P S I'],
  ['50 psi', 'five zero P S I'],
  ['-3.5 degC', 'minus three point five degrees Celsius'],
  ['.5 mm', 'point five millimetres'],
  ['19.5 to 23.5 %vol', 'one nine point five to two three point five percent by volume'],
  ['Reading (in) with M-3', 'Reading, inch, with M, three'],
  ['twice, 3 in a row', 'twice, 3 in a row'],
  ['it lasts 10 min', 'it lasts one zero minutes'],
  ['Gas lapses 07:24', 'Gas lapses zero seven two four'],
  ['due 2026-03-14', 'due two zero two six, zero three, one four'],
  ['TC-401-1', 'T C, four zero one, one'],
  ['L-101', 'L, one zero one'],
  ['4071', 'four zero seven one'],
  ['Sheet 14 of 62', 'Sheet 14 of 62'],
  ['1  measure again', '1: measure again'],
  ['[x] locks on  L-101', 'Done: locks on L, one zero one'],
  ['[FAILED] oxygen', 'FAILED: oxygen'],
  ['n/a, and/or 3/4', 'not applicable, and or 3 stroke 4'],
  ['k = 2', 'k equals 2'],
  ['( ACCEPT )', 'ACCEPT,'],
  ['HE to CE', 'head end to crank end'],
])('"%s" is said as "%s"', (text, said) => {
  expect(inWords(text)).toBe(said)
})

it('initials are spelled, and only where they are a word of their own', () => {
  expect(inWords('RO, R. Oduya, signed on. ROD', ['RO'])).toBe('R O, R. Oduya, signed on. ROD')
})

it('each digit has a sound of its own', () => {
  expect(digitByDigit('0123456789')).toBe('zero one two three four five six seven eight nine')
})

it('whatever stands on the sheet, what is said is one line of words that begins with a letter or a figure', () => {
  const sheet = fc.string({ unit: fc.constantFrom(...'-./%[](){}<>=+&|`$"\\;\n\t\u001b9a Z\u00b1\u00e9') })
  fc.assert(
    fc.property(sheet, (text) => {
      expect(inWords(text)).toMatch(/^(?:[\p{L}\p{N}][\p{L}\p{N} .,:;?!']*)?$/u)
    }),
    { numRuns: 300 },
  )
})

it('lines are sentences, so that the voice rests between them', () => {
  expect(asSentences(['STOP.', 'Everybody out', '', 'Why?'])).toBe('STOP. Everybody out. Why?')
})
