// Which operations exist between which kinds of quantity, in one table with reasons. What is not in it does not exist.
// A test works the exponents of every row out (units/kinds.ts), and goes through every pair that is not in it.
import { QUANTITY_KINDS, type QuantityKind } from '../units/index.ts'
import type { Operand } from './types.ts'

export type ArithmeticOp = '+' | '-' | '*' | '/'
export const COMPARE_OPS = ['<', '<=', '>', '>='] as const

export interface Operation {
  readonly left: Operand
  readonly op: ArithmeticOp
  readonly right: Operand
  readonly gives: Operand
  readonly why: string
}

/** Points on a scale whose zero is a convention or a state: two of them are a difference apart, and have no sum. */
export const POINTS: readonly (readonly [point: QuantityKind, step: QuantityKind])[] = [
  ['pressure-gauge', 'pressure-difference'],
  ['pressure-absolute', 'pressure-difference'],
  ['temperature', 'temperature-difference'],
]

const POINT_KINDS: readonly QuantityKind[] = POINTS.map(([point]) => point)

/** Every other kind is an amount: it adds to its own kind and scales. */
export const AMOUNTS: readonly QuantityKind[] = QUANTITY_KINDS.filter((kind) => !POINT_KINDS.includes(kind))

type Product = readonly [a: QuantityKind, b: QuantityKind, gives: QuantityKind, why: string]

/** a * b, in either order; and back: what it gives divided by one is the other. */
export const PRODUCTS: readonly Product[] = [
  ['length', 'length', 'area', 'side by side'],
  ['area', 'length', 'volume', 'base by height'],
  ['pressure-difference', 'area', 'force', 'what a pressure difference does to the area it acts across'],
  [
    'force',
    'length',
    'torque',
    'force on an arm; there is no kind for work here, so the two cannot be mixed up',
  ],
  ['speed', 'time', 'length', 'way covered'],
  ['flow', 'time', 'volume', 'volume that went through'],
  ['area', 'speed', 'flow', 'section by speed through it'],
  ['force', 'speed', 'power', 'force along the way it moves'],
  [
    'length',
    'rotation',
    'speed',
    'way in each turn by turns in each second, as in 2 * stroke * speed of rotation',
  ],
  ['volume', 'rotation', 'flow', 'volume in each turn by turns in each second'],
]

/** Only this way round: a force divided by an area gives a difference of pressure, from no zero. */
export const ONE_WAY: readonly Product[] = [
  ['pressure-absolute', 'area', 'force', 'the whole force of the gas on one side, counted from vacuum'],
]

export const OPERATIONS: readonly Operation[] = withoutTwins([
  ...POINTS.flatMap(pointRows),
  ...AMOUNTS.flatMap(amountRows),
  ...[...AMOUNTS, 'pressure-absolute' as const].flatMap(scaleRows),
  ...PRODUCTS.flatMap(([a, b, gives, why]) => [
    ...bothWays(a, b, gives, why),
    { left: gives, op: '/' as const, right: a, gives: b, why: `back from ${a} * ${b}` },
    { left: gives, op: '/' as const, right: b, gives: a, why: `back from ${a} * ${b}` },
  ]),
  ...ONE_WAY.flatMap(([a, b, gives, why]) => bothWays(a, b, gives, why)),
  ...numberRows(),
])

function pointRows([point, step]: (typeof POINTS)[number]): Operation[] {
  return [
    { left: point, op: '-', right: point, gives: step, why: 'how far apart two points of one scale are' },
    { left: point, op: '+', right: step, gives: point, why: 'a point moved along its scale' },
    { left: step, op: '+', right: point, gives: point, why: 'a point moved along its scale' },
    { left: point, op: '-', right: step, gives: point, why: 'a point moved back along its scale' },
  ]
}

function amountRows(kind: QuantityKind): Operation[] {
  return (['+', '-'] as const).map((op) => ({
    left: kind,
    op,
    right: kind,
    gives: kind,
    why: 'amounts of one kind',
  }))
}

/** An absolute pressure scales too, as its zero is nothing at all: twice as much, and ratios of compression. */
function scaleRows(kind: QuantityKind): Operation[] {
  const factors: readonly Operand[] = ['number', 'ratio']
  return [
    ...factors.flatMap((factor) => [
      ...bothWays(kind, factor, kind, 'so many times as much'),
      { left: kind, op: '/' as const, right: factor, gives: kind, why: 'a part of it' },
    ]),
    { left: kind, op: '/', right: kind, gives: 'ratio', why: 'how many times the other' },
  ]
}

function numberRows(): Operation[] {
  const ops = ['+', '-', '*', '/'] as const
  const why = 'a ratio is a plain fraction, so a number goes with it'
  return [
    ...ops.map(
      (op) => ({ left: 'number', op, right: 'number', gives: 'number', why: 'plain numbers' }) as const,
    ),
    ...(['+', '-'] as const).flatMap((op): Operation[] => [
      { left: 'ratio', op, right: 'number', gives: 'ratio', why },
      { left: 'number', op, right: 'ratio', gives: 'ratio', why },
    ]),
    { left: 'number', op: '/', right: 'ratio', gives: 'ratio', why },
  ]
}

function bothWays(a: Operand, b: Operand, gives: Operand, why: string): Operation[] {
  return [
    { left: a, op: '*', right: b, gives, why },
    { left: b, op: '*', right: a, gives, why },
  ]
}

/** length * length both ways is one row. */
function withoutTwins(rows: readonly Operation[]): Operation[] {
  const byPair = new Map<string, Operation>()
  for (const row of rows) {
    const key = `${row.left} ${row.op} ${row.right}`
    const twin = byPair.get(key)
    if (twin !== undefined && twin.gives !== row.gives) throw new Error(`two answers for ${key}`)
    if (twin === undefined) byPair.set(key, row)
  }
  return [...byPair.values()]
}

/** Kinds that have a minus: amounts, and numbers. A point has none. */
export const NEGATED: readonly Operand[] = [...AMOUNTS, 'number']

/** Compared with <, <=, >, >= , each only with its own kind. */
export const COMPARED: readonly Operand[] = [...QUANTITY_KINDS, 'number']

export function operationOf(left: Operand, op: ArithmeticOp, right: Operand): Operation | undefined {
  return OPERATIONS.find((row) => row.left === left && row.op === op && row.right === right)
}
