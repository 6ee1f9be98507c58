import { describe, expect, test } from 'vitest'
import { QUANTITY_KINDS } from '../../../src/core/units/kinds.ts'
import { findUnit, UNITS, unitNamed, unitsOf } from '../../../src/core/units/unit-table.ts'

function factorOf(symbol: string): number {
  return unitNamed(symbol)?.factor ?? Number.NaN
}

describe('the table', () => {
  test('every kind has a unit', () => {
    for (const kind of QUANTITY_KINDS) expect(unitsOf(kind).length, kind).toBeGreaterThan(0)
  })

  test('no name means two things, exactly or (within a kind) without regard to case', () => {
    const names = UNITS.flatMap((unit) => [unit.symbol, ...unit.aliases])
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([])
    for (const kind of QUANTITY_KINDS) {
      const rows = unitsOf(kind).map((unit) => [
        ...new Set([unit.symbol, ...unit.aliases].map((n) => n.toLowerCase())),
      ])
      const folded = rows.flat()
      expect(folded.filter((name, i) => folded.indexOf(name) !== i)).toEqual([])
    }
  })

  test('every row is finite, positive and sourced; only temperatures have an offset', () => {
    for (const unit of UNITS) {
      expect(unit.factor, unit.symbol).toBeGreaterThan(0)
      expect(Number.isFinite(unit.factor)).toBe(true)
      expect(unit.source).not.toBe('')
      if (unit.offset !== undefined) expect(unit.kind).toBe('temperature')
    }
  })

  // Units the rest of the program counts on, in the order a person is told of them.
  test.each([
    ['length', 'in mm mil um ft m'],
    ['area', 'in2 mm2 m2'],
    ['volume', 'in3 ft3 cm3 mL L m3'],
    ['pressure-gauge', 'psig barg kPag MPag'],
    ['pressure-absolute', 'psia bara kPaa MPaa'],
    ['pressure-difference', 'psi bar kPa MPa Pa'],
    ['temperature', 'degF degC K'],
    ['temperature-difference', 'delta-degF delta-degC'],
    ['force', 'lbf kN N'],
    ['torque', 'lbf.ft lbf.in N.m'],
    ['mass', 'lb kg g'],
    ['time', 's min h'],
    ['speed', 'ft/min m/s'],
    ['rotation', 'rpm 1/s'],
    ['angle', 'deg rad'],
    ['power', 'hp kW W'],
    ['flow', 'cfm m3/h m3/s'],
    ['concentration', '%vol ppm'],
    ['lel-fraction', '%LEL'],
    ['ratio', '1 % in/in'],
  ] as const)('%s: %s', (kind, symbols) => {
    expect(
      unitsOf(kind)
        .map((unit) => unit.symbol)
        .join(' '),
    ).toBe(symbols)
  })
})

describe('factors', () => {
  // Exact by definition (inch, pound, standard gravity: NIST SP 811 (2008) App. B); the digits of the derived ones follow
  // by multiplication and were worked outside this program.
  test.each([
    ['in', 0.0254],
    ['mil', 2.54e-5],
    ['ft', 0.3048],
    ['lb', 0.45359237],
    ['lbf', 4.4482216152605],
    ['in2', 6.4516e-4],
    ['in3', 1.6387064e-5],
    ['ft3', 0.028316846592],
    ['L', 1e-3],
    ['bar', 1e5],
    ['ft/min', 0.00508],
    ['cfm', 4.719474432e-4],
    ['lbf.ft', 1.3558179483314003],
    ['lbf.in', 0.1129848290276167],
    ['psi', 6894.757293168],
    ['hp', 745.69987158227],
  ])('one %s is %d SI', (symbol, expected) => {
    expect(Math.abs(factorOf(symbol) / expected - 1)).toBeLessThan(1e-12)
  })

  // NIST SP 811 (2008) App. B.8 prints seven figures for these (values from memory; rounded prints of the lbf, psi,
  // ft-lbf and hp were read elsewhere and agree). A turn a minute is 1/60 turn a second by definition.
  test.each([
    ['lbf', 6, '4.448222'],
    ['psi', 3, '6894.757'],
    ['psig', 3, '6894.757'],
    ['psia', 3, '6894.757'],
    ['lbf.ft', 6, '1.355818'],
    ['hp', 4, '745.6999'],
    ['deg', 8, '0.01745329'],
    ['rpm', 8, '0.01666667'],
  ])('one %s printed to %i decimals is %s', (symbol, decimals, print) => {
    expect(factorOf(symbol).toFixed(decimals)).toBe(print)
  })

  test('gauge, absolute and difference units of one name share a factor', () => {
    for (const name of ['psi', 'bar', 'kPa', 'MPa']) {
      expect(factorOf(`${name}g`)).toBe(factorOf(name))
      expect(factorOf(`${name}a`)).toBe(factorOf(name))
    }
  })
})

describe('findUnit', () => {
  test.each([
    ['"', 'in'],
    ['\u2033', 'in'],
    ['inches', 'in'],
    ['thou', 'mil'],
    ['mils', 'mil'],
    ['\u00b5m', 'um'],
    ['\u03bcm', 'um'],
    ['\u00b0C', 'degC'],
    ['\u00baC', 'degC'],
    ['C', 'degC'],
    ['F', 'degF'],
    ['Cdeg', 'delta-degC'],
    ['\u0394\u00b0F', 'delta-degF'],
    ['\u2206\u00b0F', 'delta-degF'],
    ['Nm', 'N.m'],
    ['N\u00b7m', 'N.m'],
    ['N\u22c5m', 'N.m'],
    ['ft-lbf', 'lbf.ft'],
    ['ft\u00b7lbf', 'lbf.ft'],
    ['lbf\u00b7ft', 'lbf.ft'],
    ['%  vol', '%vol'],
    [' mm ', 'mm'],
    ['mm/mm', 'in/in'],
    ['ft\u00b3', 'ft3'],
    // Case forgiven where only one unit fits.
    ['PSIG', 'psig'],
    ['IN', 'in'],
    ['kpaa', 'kPaa'],
    ['RPM', 'rpm'],
    ['%lel', '%LEL'],
  ])('%s is %s', (text, symbol) => {
    expect(findUnit(text)?.symbol).toBe(symbol)
  })

  test('a bare psi is a difference and never gauge or absolute', () => {
    expect(findUnit('psi')?.kind).toBe('pressure-difference')
    expect(findUnit('psi', 'pressure-gauge')).toBeUndefined()
    expect(findUnit('PSI', 'pressure-absolute')).toBeUndefined()
    expect(findUnit('bar', 'pressure-gauge')).toBeUndefined()
  })

  test('%LEL, %vol and % are three things', () => {
    expect(findUnit('%LEL', 'concentration')).toBeUndefined()
    expect(findUnit('%', 'concentration')).toBeUndefined()
    expect(findUnit('%vol', 'lel-fraction')).toBeUndefined()
    expect(findUnit('%LEL')?.kind).toBe('lel-fraction')
  })

  test.each(['', ' ', 'furlong', 'psigg', 'toString', '__proto__', 'Nm3/h', 'scfm', "'"])(
    '%j is no unit',
    (text) => {
      expect(findUnit(text)).toBeUndefined()
    },
  )

  test('a program must write the name exactly', () => {
    expect(unitNamed('psig')?.symbol).toBe('psig')
    expect(unitNamed('\u00b0F')?.symbol).toBe('degF')
    expect(unitNamed('PSIG')).toBeUndefined()
  })
})
