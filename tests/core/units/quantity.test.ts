import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { QUANTITY_KINDS } from '../../../src/core/units/kinds.ts'
import {
  difference,
  fromSi,
  type Quantity,
  quantity,
  toAbsolute,
  toGauge,
  valueIn,
} from '../../../src/core/units/quantity.ts'
import { UNITS, unitsOf } from '../../../src/core/units/unit-table.ts'

describe('quantity and valueIn', () => {
  // NIST SP 811 (2008) App. B: exact inch, pound, standard gravity; K = (degF + 459.67) / 1.8. 212 degF = 100 degC.
  test.each([
    [212, 'degF', 100, 'degC'],
    [32, 'degF', 0, 'degC'],
    [-40, 'degF', -40, 'degC'],
    [0, 'K', -273.15, 'degC'],
    [9, 'delta-degF', 5, 'delta-degC'],
    [1, 'in', 25.4, 'mm'],
    [1, 'mil', 25.4, 'um'],
    [9.5062, 'in', 241.45748, 'mm'],
    [1, 'ft3', 1728, 'in3'],
    [1, 'hp', 0.74569987158227, 'kW'],
    [1, 'hp', 745.69987158227, 'W'],
    [1000, 'psi', 6.894757293168, 'MPa'],
    [100, 'lbf.ft', 135.58179483314, 'N.m'],
    [12, 'lbf.in', 1, 'lbf.ft'],
    [300, 'rpm', 5, '1/s'],
    [180, 'deg', Math.PI, 'rad'],
    [2, '%vol', 20000, 'ppm'],
    [0.1, '%', 0.001, 'in/in'],
  ])('%d %s is %d %s', (value, unit, expected, other) => {
    expect(valueIn(quantity(value, unit), other)).toBeCloseTo(expected, 9)
  })

  test('every unit converts there and back within 1e-12, through SI and through every unit of its kind', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...UNITS),
        // Sizes down to 1e-30 of a unit: far past any reading, short of where a double itself runs out.
        fc.double({ min: -1e9, max: 1e9, noNaN: true }).filter((x) => x === 0 || Math.abs(x) > 1e-30),
        fc.nat(),
        (unit, value, pick) => {
          const others = unitsOf(unit.kind)
          const other = others[pick % others.length] ?? unit
          const there = quantity(value, unit.symbol)
          const back = valueIn(quantity(valueIn(there, other.symbol), other.symbol), unit.symbol)
          // A temperature passes through another zero on the way, so its size is counted from the farthest one.
          const scale = Math.abs(value) + (unit.kind === 'temperature' ? 459.67 : 0)
          expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * scale)
          expect(Math.abs(valueIn(there, unit.symbol) - value)).toBeLessThanOrEqual(1e-12 * scale)
        },
      ),
    )
  })

  test('throws on an unknown unit, a number that is not finite, and a unit of another kind', () => {
    expect(() => quantity(1, 'furlong')).toThrow('unknown unit "furlong"')
    expect(() => quantity(1, 'PSIG')).toThrow('unknown unit')
    expect(() => quantity(Number.NaN, 'in')).toThrow('finite')
    expect(() => quantity(Number.POSITIVE_INFINITY, 'in')).toThrow('finite')
    expect(() => quantity(1e308, 'kPa')).toThrow('finite')
    expect(() => valueIn(quantity(1, 'psig'), 'psia')).toThrow(
      'expected an absolute pressure, got a gauge pressure',
    )
    expect(() => valueIn(quantity(1, 'psig'), 'psi')).toThrow('expected a pressure difference')
    expect(() => valueIn(quantity(5, '%LEL'), '%vol')).toThrow('expected a concentration by volume')
    expect(() => valueIn({ kind: 'length', si: Number.NaN }, 'in')).toThrow('finite')
    expect(() => valueIn({ kind: 'length', si: 1e308 }, 'um')).toThrow('too large')
  })

  test('two kinds never convert, whatever their dimension', () => {
    for (const a of UNITS) {
      for (const b of UNITS) {
        const convert = () => valueIn(quantity(1, a.symbol), b.symbol)
        if (a.kind === b.kind) expect(Number.isFinite(convert())).toBe(true)
        else expect(convert).toThrow('expected')
      }
    }
  })

  test('there is no minus zero', () => {
    expect(Object.is(quantity(-0, 'in').si, 0)).toBe(true)
    expect(Object.is(fromSi('length', -0).si, 0)).toBe(true)
  })
})

describe('gauge and absolute', () => {
  const barometric = quantity(14.696, 'psia')

  test('go through the barometric pressure only', () => {
    const absolute = toAbsolute(quantity(900, 'psig'), barometric)
    if (!absolute.ok) throw new Error(absolute.error.say)
    expect(absolute.value.kind).toBe('pressure-absolute')
    expect(valueIn(absolute.value, 'psia')).toBeCloseTo(914.696, 9)
    const gauge = toGauge(absolute.value, barometric)
    if (!gauge.ok) throw new Error(gauge.error.say)
    expect(gauge.value.kind).toBe('pressure-gauge')
    expect(valueIn(gauge.value, 'psig')).toBeCloseTo(900, 9)
  })

  test('a vacuum reading works down to, and not at or past, a full vacuum', () => {
    expect(toAbsolute(quantity(-14, 'psig'), barometric).ok).toBe(true)
    for (const psig of [-14.696, -20]) {
      expect(toAbsolute(quantity(psig, 'psig'), barometric)).toMatchObject({
        ok: false,
        error: { code: 'vacuum' },
      })
    }
    expect(toGauge(quantity(0, 'psia'), barometric)).toMatchObject({ ok: false, error: { code: 'vacuum' } })
    expect(toGauge(quantity(-1, 'psia'), barometric)).toMatchObject({ ok: false, error: { code: 'vacuum' } })
  })

  test('a barometric pressure of zero or less is refused, never taken as none', () => {
    for (const psia of [0, -14.7]) {
      const bad = quantity(psia, 'psia')
      expect(toAbsolute(quantity(900, 'psig'), bad)).toMatchObject({ ok: false, error: { code: 'vacuum' } })
      expect(toGauge(quantity(900, 'psia'), bad)).toMatchObject({ ok: false, error: { code: 'vacuum' } })
    }
  })

  test('every wrong kind throws', () => {
    for (const kind of QUANTITY_KINDS) {
      const other: Quantity = { kind, si: 1e5 }
      if (kind !== 'pressure-gauge') expect(() => toAbsolute(other, barometric)).toThrow('expected a gauge')
      if (kind === 'pressure-absolute') continue
      expect(() => toGauge(other, barometric)).toThrow('expected an absolute')
      expect(() => toAbsolute(quantity(1, 'psig'), other)).toThrow('expected an absolute')
      expect(() => toGauge(quantity(1, 'psia'), other)).toThrow('expected an absolute')
    }
  })
})

describe('difference', () => {
  test.each([
    [9.5062, 'in', 9.5, 'in', 'length', 6.2, 'mil'],
    [9.5, 'in', 9.5062, 'in', 'length', -6.2, 'mil'],
    [212, 'degF', 32, 'degF', 'temperature-difference', 100, 'delta-degC'],
    [20, 'degC', 68, 'degF', 'temperature-difference', 0, 'delta-degC'],
    [900, 'psig', 350, 'psig', 'pressure-difference', 550, 'psi'],
    [900, 'psia', 350, 'psia', 'pressure-difference', 550, 'psi'],
    [9, 'psi', 4, 'psi', 'pressure-difference', 5, 'psi'],
    [9, 'delta-degC', 4, 'delta-degC', 'temperature-difference', 5, 'delta-degC'],
    [300, 'rpm', 240, 'rpm', 'rotation', 1, '1/s'],
  ])('%d %s less %d %s is a %s of %d %s', (a, unitA, b, unitB, kind, expected, unit) => {
    const result = difference(quantity(a, unitA), quantity(b, unitB))
    expect(result.kind).toBe(kind)
    expect(valueIn(result, unit)).toBeCloseTo(expected, 8)
  })

  test('gauge less absolute, and any other mix, throws', () => {
    for (const a of QUANTITY_KINDS) {
      for (const b of QUANTITY_KINDS) {
        const take = () => difference({ kind: a, si: 2 }, { kind: b, si: 1 })
        if (a === b) expect(take().si).toBe(1)
        else expect(take).toThrow('expected')
      }
    }
  })

  test('equal values differ by zero, not minus zero', () => {
    expect(Object.is(difference(quantity(9.5, 'in'), quantity(9.5, 'in')).si, 0)).toBe(true)
  })
})
