import { describe, expect, test } from 'vitest'
import { type EntryOptions, parseEntry } from '../../../src/core/units/entry.ts'

const BORE: EntryOptions = { kind: 'length', unit: 'in' }
const SIGNED: EntryOptions = { ...BORE, signed: true }
const COMMA: EntryOptions = { ...BORE, decimalComma: true }

function entry(text: string, options: EntryOptions) {
  const result = parseEntry(text, options)
  if (!result.ok) throw new Error(`${result.error.code}: ${result.error.say}`)
  return result.value
}

describe('what is taken', () => {
  test.each([
    ['9.503', 9.503, 'in', 3],
    ['9.50', 9.5, 'in', 2],
    ['9', 9, 'in', 0],
    ['0', 0, 'in', 0],
    ['0.0', 0, 'in', 1],
    ['9.503 in', 9.503, 'in', 3],
    ['9.503in', 9.503, 'in', 3],
    ['9.503"', 9.503, 'in', 3],
    ['9.503\u2033', 9.503, 'in', 3],
    ['9.503 IN', 9.503, 'in', 3],
    ['241.4mm', 241.4, 'mm', 1],
    ['4 mil', 4, 'mil', 0],
    ['4 thou', 4, 'mil', 0],
    ['102 \u00b5m', 102, 'um', 0],
    ['.004', 0.004, 'in', 3],
    ['+.002', 0.002, 'in', 3],
    ['  9.503  ', 9.503, 'in', 3],
    ['\u00a09.503\u00a0in', 9.503, 'in', 3],
    ['9.503\u2009in', 9.503, 'in', 3],
    ['\u30009.503', 9.503, 'in', 3],
    // Full-width figures, point and letters.
    ['\uff19\uff0e\uff15\uff10\uff13', 9.503, 'in', 3],
    ['\uff12\uff14\uff11\uff0e\uff14\uff4d\uff4d', 241.4, 'mm', 1],
    ['123456.789012345', 123456.789012345, 'in', 9],
    ['0.00000000000123', 1.23e-12, 'in', 14],
  ])('%j is %d %s to %i decimals', (text, value, unit, decimals) => {
    expect(entry(text, BORE)).toMatchObject({ typed: text, value, unit, decimals })
  })

  test.each([
    ['-.0005', -0.0005],
    ['\u2212.0005', -0.0005],
    ['\uff0d0.5', -0.5],
    ['-9.503 in', -9.503],
    ['.0005', 0.0005],
    ['+0.5', 0.5],
    ['-0.000', 0],
  ])('signed: %j is %d', (text, value) => {
    expect(Object.is(entry(text, SIGNED).value, value)).toBe(true)
  })

  test.each([
    ['20 \u00b0C', 'temperature', 'degF', 'degC', 293.15],
    ['900', 'pressure-gauge', 'psig', 'psig', 900 * 6894.757293168],
    ['62 barg', 'pressure-gauge', 'psig', 'barg', 6.2e6],
    ['14.7 psia', 'pressure-absolute', 'psia', 'psia', 14.7 * 6894.757293168],
    ['100 ft-lbf', 'torque', 'lbf.ft', 'lbf.ft', 135.58179483314],
    ['25 1/s', 'rotation', 'rpm', '1/s', 25],
    ['300 1/min', 'rotation', 'rpm', 'rpm', 5],
    ['5 ft3', 'volume', 'in3', 'ft3', 0.14158423296],
    ['5 m\u00b3', 'volume', 'in3', 'm3', 5],
    ['5 L', 'volume', 'in3', 'L', 0.005],
    ['5 l', 'volume', 'in3', 'L', 0.005],
    ['5L', 'volume', 'in3', 'L', 0.005],
    ['5lbf', 'force', 'kN', 'lbf', 22.2411080763],
    ['19.5', 'concentration', '%vol', '%vol', 0.195],
    ['8 % LEL', 'lel-fraction', '%LEL', '%LEL', 0.08],
    ['0.001 in/in', 'ratio', '1', 'in/in', 0.001],
    ['2%', 'ratio', '1', '%', 0.02],
    ['9 Fdeg', 'temperature-difference', 'delta-degF', 'delta-degF', 5],
  ] as const)('%j in a %s box (%s) is in %s, %d SI', (text, kind, assumed, unit, si) => {
    const read = entry(text, { kind, unit: assumed })
    expect(read.unit).toBe(unit)
    expect(Math.abs(read.si / si - 1)).toBeLessThan(1e-12)
  })

  test('the assumed unit may be given by an alias and is recorded by its symbol', () => {
    expect(entry('20', { kind: 'temperature', unit: '\u00b0C' }).unit).toBe('degC')
  })

  test('a wrong box is a bug, not a refusal', () => {
    expect(() => parseEntry('1', { kind: 'length', unit: 'psi' })).toThrow('not a unit of length')
    expect(() => parseEntry('1', { kind: 'length', unit: 'furlong' })).toThrow('not a unit of length')
    expect(() => parseEntry('1', { kind: 'pressure-gauge', unit: 'psi' })).toThrow(
      'not a unit of pressure-gauge',
    )
  })
})

describe('where the site writes a decimal comma', () => {
  test.each([
    ['9,503', 9.503, 3],
    ['9,50 in', 9.5, 2],
    [',004', 0.004, 3],
    ['1234,5', 1234.5, 1],
    // A point that cannot mark thousands is the gauge's own decimal point.
    ['9.50', 9.5, 2],
    ['9.5030', 9.503, 4],
    ['0.503', 0.503, 3],
    ['.503', 0.503, 3],
    ['1234.567', 1234.567, 3],
    ['9503', 9503, 0],
  ])('%j is %d to %i decimals', (text, value, decimals) => {
    expect(entry(text, COMMA)).toMatchObject({ value, decimals, typed: text })
  })

  test.each([
    ['9.503', 'point', "'9.503' could be 9,503 or 9503; key it in full without a point."],
    ['241.457 mm', 'point', "'241.457 mm' could be 241,457 or 241457; key it in full without a point."],
    [
      '1.234,5',
      'comma',
      "'1.234,5' has its marks in doubt; key it in full with one comma and no other mark.",
    ],
    [
      '1,234.5',
      'comma',
      "'1,234.5' has its marks in doubt; key it in full with one comma and no other mark.",
    ],
    ['9,50,3', 'comma', "'9,50,3' has its marks in doubt; key it in full with one comma and no other mark."],
    ['1.234.567', 'points', "'1.234.567' has more than one point; key it with one comma."],
    ['9,', 'unfinished', "'9,' stops at the comma; key the figures after it, or leave it out."],
  ])('%j is refused: %s', (text, code, say) => {
    expect(parseEntry(text, COMMA)).toEqual({ ok: false, error: { code, say } })
  })
})
