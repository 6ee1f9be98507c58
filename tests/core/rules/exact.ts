// A second way to work an expression out, for tests: exact fractions of whole numbers with exponents of their own.
// It shares the table of exponents with the program, and nothing else: units and operations are written down again here.

import type { Operand } from '../../../src/core/rules/types.ts'
import { DIMENSION } from '../../../src/core/units/index.ts'

export interface Fraction {
  readonly top: bigint
  readonly bottom: bigint
}

function gcd(a: bigint, b: bigint): bigint {
  return b === 0n ? a : gcd(b, a % b)
}

export function fraction(top: bigint, bottom = 1n): Fraction {
  const sign = bottom < 0n ? -1n : 1n
  const common = gcd(top < 0n ? -top : top, bottom < 0n ? -bottom : bottom) || 1n
  return { top: (sign * top) / common, bottom: (sign * bottom) / common }
}

/** `12.5` or `-3` exactly. */
export function decimal(text: string): Fraction {
  const [whole = '', part = ''] = text.split('.')
  return fraction(BigInt(whole + part), 10n ** BigInt(part.length))
}

export const plus = (a: Fraction, b: Fraction) =>
  fraction(a.top * b.bottom + b.top * a.bottom, a.bottom * b.bottom)
export const negated = (a: Fraction) => fraction(-a.top, a.bottom)
export const minus = (a: Fraction, b: Fraction) => plus(a, negated(b))
export const times = (a: Fraction, b: Fraction) => fraction(a.top * b.top, a.bottom * b.bottom)
export const over = (a: Fraction, b: Fraction) => fraction(a.top * b.bottom, a.bottom * b.top)
export const below = (a: Fraction, b: Fraction) => minus(a, b).top < 0n
export const size = (a: Fraction) => (a.top < 0n ? negated(a) : a)

/** The nearest double, near enough for a comparison with a tolerance. */
export function toNumber({ top, bottom }: Fraction): number {
  const scale = 10n ** 30n
  return Number((top * scale) / bottom) / 1e30
}

/** An exact figure with its exponents, and what its parts would come to if all had one sign: the scale of rounding. */
export interface Exact {
  readonly value: Fraction
  readonly scale: Fraction
  readonly exponents: readonly number[]
  /** Below the zero of a scale that has nothing below, somewhere on the way. */
  readonly impossible: boolean
}

export function exponentsOf(of: Operand): readonly number[] {
  return of === 'number' ? [0, 0, 0, 0] : DIMENSION[of]
}

export function leaf(of: Operand, value: Fraction): Exact {
  return { value, scale: size(value), exponents: exponentsOf(of), impossible: isImpossible(of, value) }
}

export function isImpossible(of: Operand, value: Fraction): boolean {
  return value.top < 0n && (of === 'temperature' || of === 'pressure-absolute')
}

/** One operation; throws when the exponents of a sum differ, which the language must never let through. */
export function operate(a: Exact, op: string, b: Exact, gives: Operand): Exact {
  const work = { '+': plus, '-': minus, '*': times, '/': over }[op]
  if (work === undefined) throw new Error(op)
  const sum = op === '+' || op === '-'
  if (sum && a.exponents.join() !== b.exponents.join()) throw new Error(`${a.exponents} ${op} ${b.exponents}`)
  const sign = op === '*' ? 1 : -1
  const value = work(a.value, b.value)
  const scaleOf = { '+': plus, '-': plus, '*': times, '/': over }[op] ?? plus
  return {
    value,
    scale: scaleOf(a.scale, op === '/' ? size(b.value) : b.scale),
    exponents: sum ? a.exponents : a.exponents.map((exponent, i) => exponent + sign * (b.exponents[i] ?? 0)),
    impossible: a.impossible || b.impossible || isImpossible(gives, value),
  }
}

/**
 * SI value of written figures: factor, and what is added first. From NIST SP 811 (2008) App. B: inch 0.0254 m, pound
 * 0.45359237 kg, standard gravity 9.80665 m/s2, degF = (t + 459.67) / 1.8 K; the rest are decimal multiples.
 */
const INCH = decimal('0.0254')
const POUND_FORCE = times(decimal('0.45359237'), decimal('9.80665'))
const PSI = over(POUND_FORCE, times(INCH, INCH))
export const WRITTEN: readonly {
  readonly of: Operand
  readonly write: (figure: string) => string
  readonly factor: Fraction
  readonly add?: Fraction
}[] = [
  { of: 'length', write: (n) => `length("${n} in")`, factor: INCH },
  { of: 'length', write: (n) => `length("${n} mm")`, factor: decimal('0.001') },
  { of: 'length', write: (n) => `length('${n} mil')`, factor: times(INCH, decimal('0.001')) },
  { of: 'area', write: (n) => `area("${n} in2")`, factor: times(INCH, INCH) },
  { of: 'volume', write: (n) => `volume("${n} cm3")`, factor: decimal('0.000001') },
  { of: 'pressure-gauge', write: (n) => `gauge("${n} psig")`, factor: PSI },
  { of: 'pressure-absolute', write: (n) => `absolute("${n} psia")`, factor: PSI },
  { of: 'pressure-absolute', write: (n) => `absolute("${n} bara")`, factor: decimal('100000') },
  { of: 'pressure-difference', write: (n) => `pressure_difference("${n} psi")`, factor: PSI },
  {
    of: 'temperature',
    write: (n) => `temperature("${n} degF")`,
    factor: over(decimal('1'), decimal('1.8')),
    add: decimal('459.67'),
  },
  {
    of: 'temperature',
    write: (n) => `temperature("${n} degC")`,
    factor: decimal('1'),
    add: decimal('273.15'),
  },
  {
    of: 'temperature-difference',
    write: (n) => `temperature_difference("${n} delta-degF")`,
    factor: over(decimal('1'), decimal('1.8')),
  },
  { of: 'force', write: (n) => `force("${n} lbf")`, factor: POUND_FORCE },
  { of: 'torque', write: (n) => `torque("${n} lbf.in")`, factor: times(POUND_FORCE, INCH) },
  { of: 'mass', write: (n) => `mass("${n} lb")`, factor: decimal('0.45359237') },
  { of: 'time', write: (n) => `time("${n} min")`, factor: decimal('60') },
  { of: 'speed', write: (n) => `speed("${n} ft/min")`, factor: over(decimal('0.3048'), decimal('60')) },
  { of: 'rotation', write: (n) => `rotation("${n} rpm")`, factor: over(decimal('1'), decimal('60')) },
  { of: 'power', write: (n) => `power("${n} kW")`, factor: decimal('1000') },
  { of: 'flow', write: (n) => `flow("${n} m3/h")`, factor: over(decimal('1'), decimal('3600')) },
  { of: 'concentration', write: (n) => `concentration("${n} %vol")`, factor: decimal('0.01') },
  { of: 'lel-fraction', write: (n) => `lel_fraction("${n} %LEL")`, factor: decimal('0.01') },
  { of: 'ratio', write: (n) => `ratio("${n} %")`, factor: decimal('0.01') },
  { of: 'number', write: (n) => n, factor: decimal('1') },
]
