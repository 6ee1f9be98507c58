import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type EntryOptions, parseEntry } from '../../../src/core/units/entry.ts'
import { QUANTITY_KINDS } from '../../../src/core/units/kinds.ts'
import { UNITS, unitsOf } from '../../../src/core/units/unit-table.ts'

const BORE: EntryOptions = { kind: 'length', unit: 'in', what: 'a diameter' }

describe('refused, with the sentence', () => {
  test.each([
    ['', 'empty', 'Nothing was keyed; key the figures you read.'],
    ['9,503', 'comma', "'9,503' could be 9.503 or 9503; key it in full without a comma."],
    ['-9,503 in', 'comma', "'-9,503 in' could be -9.503 or -9503; key it in full without a comma."],
    ['0,503', 'comma', "'0,503' has its marks in doubt; key it in full with a point and no comma."],
    ['1e3', 'exponent', "'1e3' is in powers of ten; write it out in full."],
    ['9 503', 'space', "'9 503' has a gap or mark between its figures; key one number without gaps."],
    ['9.5O3', 'look-alike', "'9.5O3' has the letter O in it; key the figure 0."],
    ['l.5', 'look-alike', "'l.5' has the letter l in it; key the figure 1."],
    ['9.', 'unfinished', "'9.' stops at the point; key the figures after it, or leave it out."],
    ['0004', 'spare-zero', "'0004' starts with a spare zero; key it in full with the point in its place."],
    [
      '-9.503',
      'negative',
      "'-9.503' has a minus, and a diameter cannot be below zero; read it again and key what you see.",
    ],
    [
      '9.5 psi',
      'unit-kind',
      "'psi' is a pressure difference; this box takes a length: in, mm, mil, um, ft or m.",
    ],
    [
      '9.5 zz',
      'unit-unknown',
      "'zz' is not a unit known here; this box takes a length: in, mm, mil, um, ft or m.",
    ],
    ['in 9.503', 'unit-first', "'in 9.503' has the unit in front; key the number first, then the unit."],
    ['9.503 in 3', 'extra', "'9.503 in 3' goes on after the unit; key one number and one unit."],
    ['nan', 'not-a-number', "'nan' is not a number; key the figures you read."],
    [
      'a\u0007b',
      'character',
      "'a?b' holds a character that cannot be seen; key it again with plain figures.",
    ],
    [
      '9.50300000000000000000000 in',
      'too-long',
      "'9.503000000000000...' is over 24 characters; key one number and its unit only.",
    ],
  ])('%j: %s', (text, code, say) => {
    expect(parseEntry(text, BORE)).toEqual({ ok: false, error: { code, say } })
  })

  test.each([
    [
      'psi',
      "'psi' does not say gauge or absolute; this box takes a gauge pressure: psig, barg, kPag or MPag.",
    ],
    ['psia', "'psia' is an absolute pressure; this box takes a gauge pressure: psig, barg, kPag or MPag."],
  ])('900 %s in a gauge box', (unit, say) => {
    const result = parseEntry(`900 ${unit}`, { kind: 'pressure-gauge', unit: 'psig' })
    expect(result).toMatchObject({ ok: false, error: { say } })
  })

  test('without `what` the minus is still told plainly', () => {
    expect(parseEntry('-5', { kind: 'temperature', unit: 'degC' })).toMatchObject({
      error: {
        say: "'-5' has a minus, and this box takes nothing below zero; read it again and key what you see.",
      },
    })
  })
})

describe('a word', () => {
  test.each(['look', 'OK', 'lol', 'pool'])('%j is none that has a letter for a figure', (text) => {
    expect(parseEntry(text, BORE)).toMatchObject({ error: { code: 'not-a-number' } })
  })
})

describe('refused, by code', () => {
  test.each([
    ['   ', 'empty'],
    ['\u00a0\u2009', 'empty'],
    ['\t', 'empty'],
    ['NaN', 'not-a-number'],
    ['inf', 'not-a-number'],
    ['Infinity', 'not-a-number'],
    ['-Infinity', 'sign'],
    ['\u221e', 'not-a-number'],
    ['<9.5', 'not-a-number'],
    ['~9.5', 'not-a-number'],
    ['null', 'not-a-number'],
    ['1e999', 'exponent'],
    ['1E-3', 'exponent'],
    ['1.5e+3 in', 'exponent'],
    ['0x10', 'hex'],
    ['0X1F', 'hex'],
    ['-', 'no-figures'],
    ['--', 'no-figures'],
    ['+', 'no-figures'],
    ['.', 'no-figures'],
    ['-.', 'no-figures'],
    [',', 'no-figures'],
    ['\u2212', 'no-figures'],
    ['--9.5', 'sign'],
    ['+-9.5', 'sign'],
    ['- 9.5', 'sign'],
    ['9.5-', 'sign'],
    ['9.5-9.6', 'sign'],
    ['9.5 \u00b1 0.1', 'sign'],
    ['\u20139.5', 'sign'],
    ['\u00bd', 'fraction'],
    ['9\u00bd', 'fraction'],
    ['9 1/2', 'fraction'],
    ['9-1/2 in', 'fraction'],
    ['3/8', 'fraction'],
    ['1 234.5', 'space'],
    ['9\u2009503', 'space'],
    ['9 .503', 'space'],
    ["9'503", 'space'],
    ['9_503', 'space'],
    ['9.50.3', 'points'],
    ['9..5', 'points'],
    ['.9.5', 'points'],
    ['1,234.5', 'comma'],
    ['1,234,567', 'comma'],
    ['9,5', 'comma'],
    [',5', 'comma'],
    ['9,', 'comma'],
    ['1O', 'look-alike'],
    ['O.5', 'look-alike'],
    ['9.5o in', 'look-alike'],
    ['I0.5', 'look-alike'],
    ['9.5l', 'look-alike'],
    ['|0', 'look-alike'],
    ['O', 'look-alike'],
    ['00.5', 'spare-zero'],
    ['1234567890123456', 'too-many-figures'],
    ['9.503000000000000', 'too-many-figures'],
    ['\u0669.\u0665', 'digits'],
    ['\u096f.\u096b', 'digits'],
    ['\u{1d7d7}', 'digits'],
    ['9.5\u00b2', 'unit-unknown'],
    ["9.5'", 'unit-unknown'],
    ['9.5 in2', 'unit-kind'],
    ['9.5 %', 'unit-kind'],
    ['9 ft 3 in', 'extra'],
    ['9.5 in in', 'extra'],
    ['"9.5', 'unit-first'],
    ['9.5\u0000', 'character'],
    ['9.5\r', 'character'],
    ['9\t5', 'character'],
    ['9\u200b.5', 'character'],
    ['\u202e9.5', 'character'],
    ['9\ud800', 'character'],
    ['-0', 'negative'],
  ])('%j: %s', (text, code) => {
    expect(parseEntry(text, BORE)).toMatchObject({ ok: false, error: { code } })
  })

  test.each([
    ['900 bar', 'pressure-gauge', 'psig', 'unit-bare-pressure'],
    ['900 PSI', 'pressure-absolute', 'psia', 'unit-bare-pressure'],
    ['900 psig', 'pressure-difference', 'psi', 'unit-kind'],
    ['8 %', 'concentration', '%vol', 'unit-kind'],
    ['8 %LEL', 'concentration', '%vol', 'unit-kind'],
    ['8 %vol', 'lel-fraction', '%LEL', 'unit-kind'],
    ['9 F', 'temperature-difference', 'delta-degF', 'unit-kind'],
    ['9 lb', 'force', 'lbf', 'unit-kind'],
    ['5l', 'volume', 'in3', 'look-alike'],
    ['251/s', 'rotation', 'rpm', 'unit-unknown'],
    ['5 1', 'ratio', '1', 'space'],
    ['-460 F', 'temperature', 'degF', 'impossible'],
    ['-1', 'pressure-absolute', 'psia', 'impossible'],
  ] as const)('%j in a %s box (%s): %s', (text, kind, unit, code) => {
    expect(parseEntry(text, { kind, unit, signed: true })).toMatchObject({ ok: false, error: { code } })
  })
})

const BOX = fc
  .record({
    unit: fc.constantFrom(...UNITS),
    signed: fc.boolean(),
    decimalComma: fc.boolean(),
    what: fc.option(fc.string({ unit: 'binary' }), { nil: 'a diameter' }),
  })
  .map(({ unit, ...rest }): EntryOptions => ({ kind: unit.kind, unit: unit.symbol, ...rest }))

/** Text near enough to a reading to reach every corner of the parser, beside wholly arbitrary text. */
const PIECE = fc.constantFrom(
  ...'0123456789..,-+ eEOolI|/%"\'xX\u2212\u00a0\u2009\u00bd\uff19\u0669\u0000\u202e\n',
  ...UNITS.flatMap((unit) => [unit.symbol, ...unit.aliases]),
)
const TEXT = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.string({ unit: 'grapheme' }),
  fc.string(),
  fc.array(PIECE, { maxLength: 12 }).map((pieces) => pieces.join('')),
  fc
    .tuple(
      fc.stringMatching(/^[+-]?[0-9]{0,4}[.,]?[0-9]{0,5} ?$/),
      fc.oneof(fc.constant(''), fc.constantFrom(...UNITS.map((unit) => unit.symbol))),
    )
    .map(([figures, unit]) => figures + unit),
)

describe('whatever is typed', () => {
  test('it is a finite number from figures that were typed, or one short sentence', () => {
    let taken = 0
    fc.assert(
      fc.property(TEXT, BOX, (text, box) => {
        const result = parseEntry(text, box)
        if (result.ok) {
          taken += 1
          const { value, si, decimals, unit } = result.value
          expect(text).toMatch(/[0-9\uff10-\uff19]/)
          expect(Number.isFinite(value) && Number.isFinite(si)).toBe(true)
          expect(Object.is(value, -0)).toBe(false)
          expect(value === 0).toBe(!/[1-9\uff11-\uff19]/.test(text.replace(/1\/|[a-z%]+[23]/gi, '')))
          expect(box.signed || value >= 0).toBe(true)
          expect(Number.isInteger(decimals) && decimals >= 0).toBe(true)
          expect(unitsOf(box.kind).map((known) => known.symbol)).toContain(unit)
        } else {
          expect(result.error.code).toMatch(/^[a-z-]+$/)
          expect(result.error.say).toMatch(/^[^\p{C}\p{Zl}\p{Zp}]+\.$/u)
          expect(result.error.say.length).toBeLessThan(160)
        }
      }),
      { numRuns: 5000 },
    )
    expect(taken).toBeGreaterThan(100)
  })

  test('the longest sentences stay under 160 characters in every box', () => {
    const texts = [
      '9 wwwwwwwwwwwwwwwwwwwwww',
      '-9.12345678901234',
      '999999999999,99999999999',
      '9 delta-degF',
    ]
    for (const kind of QUANTITY_KINDS) {
      for (const unit of unitsOf(kind)) {
        for (const text of texts) {
          const result = parseEntry(text, { kind, unit: unit.symbol, what: 'w'.repeat(99) })
          if (!result.ok) expect(result.error.say.length, result.error.say).toBeLessThan(160)
        }
      }
    }
  })
})
