// How far apart repeats may lie, in the units of whoever keys them.
import { describe, expect, it } from 'vitest'
import { alikeWithin } from '../../../src/core/talk/alike-within.ts'
import { UNITS, unitNamed } from '../../../src/core/units/index.ts'
import { exampleDefs } from '../../helpers/example.ts'

const written = (text: string) => {
  const unit = text.slice(text.indexOf(' ') + 1)
  const value = Number(text.split(' ')[0])
  const known = unitNamed(unit)
  if (known === undefined) throw new Error(unit)
  return { text, unit, value, kind: known.kind, si: value * known.factor }
}
const inches = exampleDefs()
const millimetres = {
  ...inches,
  machine: { ...inches.machine, shop_units: { ...inches.machine.shop_units, length: 'mm' as const } },
}

describe('repeats alike within', () => {
  it.each([
    ['0.0003 in', '0.0003 in (0.0076 mm)'],
    ['4 hp', '4 hp (2.9 kW)'],
    ['2 psi', '2 psi (0.13 bar)'],
    ['4 delta-degF', '4 degF (2.2 degC)'],
    ['0.01 mm', '0.01 mm'],
    ['5 deg', '5 deg'],
    ['3 m/s', '3 m/s'],
    ['2 m3/h', '2 m3/h'],
    ['3 lbf.in', '3 lbf.in (0.33 N.m)'],
  ])('%s, on a machine in millimetres', (text, told) => {
    expect(alikeWithin(millimetres, written(text))).toBe(told)
  })

  it.each([
    ['0.0003 in', '0.0003 in'],
    ['0.01 mm', '0.01 mm (0.00039 in)'],
    ['3 kW', '3 kW (4.0 hp)'],
    ['2 delta-degC', '2 degC (3.6 degF)'],
  ])('%s, on a machine in inches', (text, told) => {
    expect(alikeWithin(inches, written(text))).toBe(told)
  })

  it('is never told wider than it is', () => {
    for (const { symbol } of UNITS)
      for (const defs of [inches, millimetres]) {
        const limit = written(`0.0127 ${symbol}`)
        const other = /\((\S+) (.*)\)/.exec(alikeWithin(defs, limit))
        if (other === null) continue
        const [, figure = '', unit = ''] = other
        const factor = (unitNamed(unit) ?? unitNamed(`delta-${unit}`))?.factor ?? Number.NaN
        const known = limit.kind === 'temperature-difference' ? unitNamed(`delta-${unit}`)?.factor : factor
        expect(Number(figure) * (known ?? Number.NaN)).toBeLessThanOrEqual(limit.si * (1 + 1e-9))
        expect(Number(figure)).toBeGreaterThan(0)
      }
  })
})
