import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatNumber } from '../../../src/core/lib/decimal.ts'
import { parseEntry } from '../../../src/core/units/entry.ts'
import {
  companion,
  decimalsOf,
  formatBoth,
  formatFinish,
  formatQuantity,
  shownNumber,
} from '../../../src/core/units/format.ts'
import { quantity } from '../../../src/core/units/quantity.ts'
import { UNITS, unitNamed } from '../../../src/core/units/unit-table.ts'

describe('formatNumber', () => {
  test.each([
    [9.5, 4, '9.5000'],
    [9.50624, 4, '9.5062'],
    [0.004, 3, '0.004'],
    [-0.0005, 4, '-0.0005'],
    [0, 2, '0.00'],
    [-0, 2, '0.00'],
    [-0.00001, 4, '0.0000'],
    [1200, 0, '1200'],
    [999.995, 2, '1000.00'],
    // A half goes away from zero as by hand; the binary values of these lie just below the half.
    [1.005, 2, '1.01'],
    [-1.005, 2, '-1.01'],
    [9.50625, 4, '9.5063'],
    [8.325, 2, '8.33'],
    [0.5, 0, '1'],
    [-0.4, 0, '0'],
    [0.1 + 0.2, 15, '0.300000000000000'],
    // Never an exponent, however large or small.
    [1e-7, 7, '0.0000001'],
    [1e-30, 3, '0.000'],
    [1.5e21, 0, '1500000000000000000000'],
    [Number.MIN_VALUE, 2, '0.00'],
  ])('%d to %i decimals is %s', (value, decimals, text) => {
    expect(formatNumber(value, decimals)).toBe(text)
  })

  test('is plain for any finite number and within half a step of it', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, min: -1e300, max: 1e300 }),
        fc.integer({ min: 0, max: 20 }),
        (value, decimals) => {
          const text = formatNumber(value, decimals)
          expect(text).toMatch(/^-?\d+(\.\d+)?$/)
          expect(text).not.toMatch(/^-[0.]*$/)
          expect(text.split('.')[1]?.length ?? 0).toBe(decimals)
          const allowed = 0.5 * 10 ** -decimals * (1 + 1e-9) + 1e-14 * Math.abs(value)
          expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(allowed)
        },
      ),
    )
  })

  test('throws on what cannot be shown', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => formatNumber(value, 2)).toThrow('format')
    for (const decimals of [-1, 1.5, 21, Number.NaN])
      expect(() => formatNumber(1, decimals)).toThrow('decimals')
  })
})

describe('shownNumber', () => {
  test.each([
    [0.0004, 3, '0.0004'],
    [-0.00001574, 4, '-0.00002'],
    [0.3, 0, '0.3'],
    [0.0005, 3, '0.001'],
    [0, 3, '0.000'],
    // What adding and taking away in binary leaves is nothing.
    [1.7e-15, 4, '0.0000'],
    [9.5062, 4, '9.5062'],
  ])('%d to %i decimals is %s', (value, decimals, text) => {
    expect(shownNumber(value, decimals)).toBe(text)
  })

  test('never reads as zero for what is measured and none', () => {
    const sizes = fc.double({ noNaN: true, min: 1e-6, max: 1 })
    fc.assert(
      fc.property(sizes, (value) => {
        expect(Number(shownNumber(value, 0))).toBeGreaterThan(0)
      }),
    )
    const units = fc.constantFrom(...UNITS.filter(({ kind }) => kind !== 'temperature'))
    fc.assert(
      fc.property(units, sizes, ({ symbol }, value) => {
        const parts = formatBoth(quantity(value, symbol), symbol, 3).split('   ')
        for (const part of parts) expect(Number.parseFloat(part)).toBeGreaterThan(0)
      }),
    )
  })
})

describe('formatFinish', () => {
  test.each([
    [0.8e-6, 1, '0.8 um Ra   31 uin Ra'],
    [0.4e-6, 1, '0.4 um Ra   16 uin Ra'],
    [0.025e-6, 1, '0.03 um Ra   1 uin Ra'],
    [-0.1e-6, 1, '-0.1 um Ra   -4 uin Ra'],
    [0, 1, '0.0 um Ra   0 uin Ra'],
  ])('%d m is %s', (metres, decimals, text) => {
    expect(formatFinish(metres, decimals)).toBe(text)
  })
})

describe('decimalsOf', () => {
  test.each([
    [0.0001, 4],
    [0.0005, 4],
    [0.002, 3],
    [0.05, 2],
    [0.25, 2],
    [0.00005, 5],
    [0.1, 1],
    [1, 0],
    [5, 0],
    [10, 0],
    [2.5, 1],
    [1e-7, 7],
    [0.1 + 0.2, 1],
  ])('%d needs %i', (resolution, decimals) => {
    expect(decimalsOf(resolution)).toBe(decimals)
  })

  test.each([0, -0.001, Number.NaN, Number.POSITIVE_INFINITY])('%d throws', (resolution) => {
    expect(() => decimalsOf(resolution)).toThrow('resolution')
  })
})

describe('formatQuantity and companions', () => {
  test.each([
    [9.5062, 'in', 4, '9.5062 in', '9.5062 in   241.457 mm'],
    [0.004, 'in', 4, '0.0040 in', '0.0040 in   0.102 mm'],
    [241.457, 'mm', 3, '241.457 mm', '241.457 mm   9.50618 in'],
    [241.46, 'mm', 2, '241.46 mm', '241.46 mm   9.5063 in'],
    [4, 'mil', 1, '4.0 mil', '4.0 mil   102 um'],
    [900, 'psig', 0, '900 psig', '900 psig   62.05 barg'],
    [62, 'barg', 0, '62 barg', '62 barg   899 psig'],
    [68, '\u00b0F', 0, '68 degF', '68 degF   20.0 degC'],
    [-40, 'degC', 0, '-40 degC', '-40 degC   -40 degF'],
    [9, 'delta-degF', 0, '9 delta-degF', '9 delta-degF   5.0 delta-degC'],
    [25000, 'lbf', 0, '25000 lbf', '25000 lbf   111.206 kN'],
    [100, 'kN', 0, '100 kN', '100 kN   22481 lbf'],
    [300, 'rpm', 0, '300 rpm', '300 rpm'],
    [0.002, '1', 3, '0.002', '0.002'],
    [3, '%LEL', 0, '3 %LEL', '3 %LEL'],
  ])('%d %s to %i decimals', (value, unit, decimals, alone, both) => {
    const q = quantity(value, unit)
    expect(formatQuantity(q, unit, decimals)).toBe(alone)
    expect(formatBoth(q, unit, decimals)).toBe(both)
  })

  test('a quantity is never shown in a unit of another kind', () => {
    expect(() => formatQuantity(quantity(1, 'psig'), 'psia', 1)).toThrow('expected')
    expect(() => formatBoth(quantity(1, '%LEL'), '%vol', 1)).toThrow('expected')
  })

  test('a companion is of the same kind, and never the unit itself', () => {
    const without = UNITS.filter((unit) => companion(unit.symbol) === undefined).map((unit) => unit.symbol)
    expect(without.join(' ')).toBe('m2 deg rad Pa K g W s min h rpm 1/s %vol ppm %LEL 1 % in/in')
    for (const unit of UNITS) {
      const other = companion(unit.symbol)
      if (other === undefined) continue
      expect(unitNamed(other)?.kind, unit.symbol).toBe(unit.kind)
      expect(other).not.toBe(unit.symbol)
    }
  })

  test('the companion step is not above the original step, and above a tenth of it unless it is 1', () => {
    for (const unit of UNITS) {
      const other = unitNamed(companion(unit.symbol) ?? '')
      if (other === undefined) continue
      for (const decimals of [0, 1, 2, 3, 4, 5]) {
        const shown = formatBoth(quantity(1, unit.symbol), unit.symbol, decimals).split('   ')[1] ?? ''
        const shownDecimals = (/\.(\d+)/.exec(shown)?.[1] ?? '').length
        const ratio = (10 ** -shownDecimals * other.factor) / (10 ** -decimals * unit.factor)
        expect(ratio, `${unit.symbol} ${decimals}`).toBeLessThanOrEqual(shownDecimals === 0 ? 10 : 1 + 1e-9)
        if (shownDecimals > 0) expect(ratio, `${unit.symbol} ${decimals}`).toBeGreaterThan(0.1)
      }
    }
  })
})

describe('what is shown can be keyed back', () => {
  test('parse(format(x)) gives x to the figures shown, in every unit that can be keyed', () => {
    const keyed = UNITS.filter((unit) => unit.symbol !== '1')
    fc.assert(
      fc.property(
        fc.constantFrom(...keyed),
        fc.integer({ min: 0, max: 999_999_999 }),
        fc.integer({ min: 0, max: 6 }),
        fc.boolean(),
        (unit, steps, decimals, isTyped) => {
          const value = steps / 10 ** decimals
          const q = quantity(value, unit.symbol)
          const text = isTyped ? formatQuantity(q, unit.symbol, decimals) : formatNumber(value, decimals)
          const entry = parseEntry(text, { kind: unit.kind, unit: unit.symbol })
          if (!entry.ok) throw new Error(entry.error.say)
          expect(entry.value.value).toBe(value)
          expect(entry.value).toMatchObject({ typed: text, unit: unit.symbol, decimals })
          expect(entry.value.si).toBe(q.si)
        },
      ),
    )
  })
})
