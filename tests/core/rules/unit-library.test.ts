// The dimension algebra and the unit table against a general-purpose unit library that knows nothing of ours
// (js-quantities): a second opinion on every product and quotient that a rule may form, and on every factor.
import Qty from 'js-quantities'
import { describe, expect, it } from 'vitest'
import { compileExpression } from '../../../src/core/rules/expression.ts'
import { OPERATIONS } from '../../../src/core/rules/operators.ts'
import type { Operand } from '../../../src/core/rules/types.ts'
import { fromSi, UNITS, valueIn } from '../../../src/core/units/index.ts'
import { nameOf, SCOPE } from './sample-scope.ts'

/** SI unit of each kind as the library writes it. Angle and the ratios have none there. */
const BASE: Readonly<Record<Operand, string>> = {
  number: '1',
  ratio: '1',
  concentration: '1',
  'lel-fraction': '1',
  angle: '1',
  length: 'm',
  area: 'm2',
  volume: 'm3',
  'pressure-gauge': 'Pa',
  'pressure-absolute': 'Pa',
  'pressure-difference': 'Pa',
  temperature: 'tempK',
  'temperature-difference': 'degK',
  force: 'N',
  torque: 'N*m',
  mass: 'kg',
  time: 's',
  speed: 'm/s',
  rotation: '1/s',
  power: 'W',
  flow: 'm3/s',
}

const [A, B] = [7.25, 2.5]
const ARITHMETIC = OPERATIONS.filter(({ op }) => op === '*' || op === '/')

function theirs(left: Operand, op: string, right: Operand): Qty {
  const [a, b] = [Qty(A, BASE[left]), Qty(B, BASE[right])]
  return op === '*' ? a.mul(b) : a.div(b)
}

function ours(left: Operand, op: string, right: Operand): number {
  const compiled = compileExpression(`${nameOf('a', left)} ${op} ${nameOf('b', right)}`, SCOPE)
  if (!compiled.ok) throw new Error(compiled.error.say)
  const value = (of: Operand, si: number) =>
    of === 'number'
      ? ({ is: 'number', number: si } as const)
      : ({ is: 'quantity', quantity: fromSi(of, si) } as const)
  const outcome = compiled.value.work(
    new Map([
      [nameOf('a', left), value(left, A)],
      [nameOf('b', right), value(right, B)],
    ]),
  )
  if (outcome.is === 'unknown' || typeof outcome.value === 'boolean')
    throw new Error(`${left} ${op} ${right} is unknown`)
  return outcome.value.si
}

describe('rules against a general-purpose unit library', () => {
  it.each(ARITHMETIC.map((o) => [o.left, o.op, o.right, o.gives] as const))(
    '%s %s %s is a %s',
    (left, op, right, gives) => {
      const other = theirs(left, op, right)
      expect(other.isCompatible(Qty(1, BASE[gives]))).toBe(true)
      expect(ours(left, op, right)).toBeCloseTo(other.toBase().scalar, 12)
    },
  )

  it('has something to compare', () => {
    expect(ARITHMETIC.length).toBeGreaterThan(80)
  })
})

/** Our symbols in the library's spelling; those it has no word for are left out and counted. */
const THEIRS: Readonly<Record<string, string>> = {
  m: 'm', mm: 'mm', um: 'um', in: 'in', mil: 'mil', ft: 'ft', m2: 'm2', mm2: 'mm2', in2: 'in2', m3: 'm3', L: 'l', mL: 'ml',
  cm3: 'cm3', in3: 'in3', ft3: 'ft3', psi: 'psi', bar: 'bar', kPa: 'kPa', MPa: 'MPa', Pa: 'Pa', N: 'N', kN: 'kN', lbf: 'lbf',
  'N.m': 'N*m', 'lbf.ft': 'lbf*ft', 'lbf.in': 'lbf*in', kg: 'kg', g: 'g', lb: 'lbs', s: 's', min: 'min', h: 'h', 'm/s': 'm/s',
  'ft/min': 'ft/min', W: 'W', kW: 'kW', hp: 'hp', 'm3/s': 'm3/s', 'm3/h': 'm3/h', cfm: 'ft3/min', degF: 'tempF', degC: 'tempC', K: 'tempK',
} // biome-ignore format: a table of pairs

describe('the unit table against the same library', () => {
  const rows = UNITS.filter((u) => THEIRS[u.symbol] !== undefined)

  it('compares most units', () => {
    expect(rows.length).toBeGreaterThanOrEqual(40)
  })

  it.each(rows.map((u) => [u.symbol, u.kind] as const))('%s as a %s', (symbol, kind) => {
    const other = Qty(A, THEIRS[symbol] ?? '').to(BASE[kind]).scalar
    const si = A / valueIn(fromSi(kind, 1), symbol)
    const mine = kind === 'temperature' ? (UNITS.find((u) => u.symbol === symbol) ?? rows[0]) : null
    const value = mine === null || mine === undefined ? si : (A + (mine.offset ?? 0)) * mine.factor
    // The library prints its own factors to eight or more figures; ours are exact.
    expect(value / other).toBeCloseTo(1, 6)
  })
})
