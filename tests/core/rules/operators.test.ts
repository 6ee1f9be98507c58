// The table of operations against the exponents of the kinds, for every pair there is; and against the language itself.
import { describe, expect, it } from 'vitest'
import { compileExpression } from '../../../src/core/rules/expression.ts'
import { OPERANDS } from '../../../src/core/rules/measured.ts'
import { COMPARE_OPS, OPERATIONS, operationOf } from '../../../src/core/rules/operators.ts'
import { REFUSED_OPERATIONS, reasonAgainst } from '../../../src/core/rules/refused-operations.ts'
import { typeOf } from '../../../src/core/rules/type-names.ts'
import type { Operand } from '../../../src/core/rules/types.ts'
import { DIMENSION, type Dimension } from '../../../src/core/units/index.ts'
import { nameOf, SCOPE } from './sample-scope.ts'

const OPS = ['+', '-', '*', '/'] as const
type Op = (typeof OPS)[number]

const exponents = (of: Operand): Dimension => (of === 'number' ? [0, 0, 0, 0] : DIMENSION[of])
const same = (a: Dimension, b: Dimension) => a.every((exponent, i) => exponent === b[i])

/** Exponents of the outcome; null when the two do not add. */
function outcome(left: Operand, op: Op, right: Operand): Dimension | null {
  const [a, b] = [exponents(left), exponents(right)]
  if (op === '+' || op === '-') return same(a, b) ? a : null
  const sign = op === '*' ? 1 : -1
  const [l = 0, m = 0, t = 0, k = 0] = a.map((exponent, i) => exponent + sign * (b[i] ?? 0))
  return [l, m, t, k]
}

const PAIRS = OPERANDS.flatMap((left) => OPERANDS.map((right) => [left, right] as const))
const TRIPLES = PAIRS.flatMap(([left, right]) => OPS.map((op) => [left, op, right] as const))
const compile = (text: string) => compileExpression(text, SCOPE)

/** Zero of the scale is a convention (gauge, temperature in daily use) or a state of nothing. Written down apart. */
const POINT = new Set<Operand>(['pressure-gauge', 'pressure-absolute', 'temperature'])

describe('the table of operations', () => {
  it('gives every outcome the exponents that its sides come to', () => {
    for (const { left, op, right, gives } of OPERATIONS) {
      const found = outcome(left, op, right)
      expect(found !== null && same(found, exponents(gives)), `${left} ${op} ${right} = ${gives}`).toBe(true)
    }
  })

  it('has no pair twice, and a reason in every row', () => {
    const keys = OPERATIONS.map(({ left, op, right }) => `${left} ${op} ${right}`)
    expect(new Set(keys).size).toBe(keys.length)
    for (const row of [...OPERATIONS, ...REFUSED_OPERATIONS]) expect(row.why.length).toBeGreaterThan(8)
  })

  it('keeps points and differences apart: point - point is a step, point and step a point, nothing else adds', () => {
    for (const { left, op, right, gives } of OPERATIONS) {
      const points = [left, right].filter((side) => POINT.has(side)).length
      if (op === '-' && points === 2) expect([left === right, POINT.has(gives)]).toEqual([true, false])
      else if (op === '+' || op === '-')
        expect(points, `${left} ${op} ${right}`).toBe(POINT.has(gives) ? 1 : 0)
      else if (points > 0) expect([left, right], `${left} ${op} ${right}`).toContain('pressure-absolute')
      if (left === 'pressure-gauge' || right === 'pressure-gauge') expect(['+', '-']).toContain(op)
    }
  })

  it('tells a reason for every pair whose exponents come out as some kind, and which is refused', () => {
    const missing = TRIPLES.filter(([left, op, right]) => {
      const found = outcome(left, op, right)
      const isSomeKind = found !== null && OPERANDS.some((of) => same(found, exponents(of)))
      return (
        isSomeKind &&
        operationOf(left, op, right) === undefined &&
        reasonAgainst(left, op, right) === undefined
      )
    })
    expect(missing.map((triple) => triple.join(' '))).toEqual([])
  })
})

describe('the language', () => {
  it('holds exactly the operations of the table, each with its kind, for every pair', () => {
    let allowed = 0
    for (const [left, op, right] of TRIPLES) {
      const compiled = compile(`${nameOf('a', left)} ${op} ${nameOf('b', right)}`)
      const row = operationOf(left, op, right)
      const found = compiled.ok ? compiled.value.type : null
      expect(found, `${left} ${op} ${right}`).toBe(row === undefined ? null : typeOf(row.gives))
      if (row !== undefined) allowed += 1
    }
    expect(allowed).toBe(OPERATIONS.length)
  })

  it('compares each kind with itself only', () => {
    for (const [left, right] of PAIRS) {
      for (const op of COMPARE_OPS) {
        const compiled = compile(`${nameOf('a', left)} ${op} ${nameOf('b', right)}`)
        expect(compiled.ok && compiled.value.type, `${left} ${op} ${right}`).toBe(
          left === right ? 'bool' : false,
        )
      }
    }
  })

  it('never asks whether two figures are equal', () => {
    for (const [left, right] of PAIRS) {
      for (const op of ['==', '!=']) {
        const compiled = compile(`${nameOf('a', left)} ${op} ${nameOf('b', right)}`)
        expect(compiled.ok ? 'allowed' : compiled.error.code, `${left} ${op} ${right}`).toBe('rule-equal')
      }
    }
  })

  it('has no arithmetic on lists, words or comparisons, with anything', () => {
    const odd = [
      'list_length',
      'bore',
      'strip',
      '"x"',
      '(a_length > b_length)',
      '[a_length]',
      'machine.rings',
    ]
    for (const left of odd)
      for (const right of [...odd, 'a_length', '2'])
        for (const op of [...OPS, ...COMPARE_OPS, '%']) {
          expect(compile(`${left} ${op} ${right}`).ok, `${left} ${op} ${right}`).toBe(false)
          expect(compile(`${right} ${op} ${left}`).ok, `${right} ${op} ${left}`).toBe(false)
        }
  })
})
