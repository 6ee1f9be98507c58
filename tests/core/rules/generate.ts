// Expressions at random, from a seed: well typed with their exact figure, or anything at all.
import { OPERANDS } from '../../../src/core/rules/measured.ts'
import { OPERATIONS } from '../../../src/core/rules/operators.ts'
import type { Operand } from '../../../src/core/rules/types.ts'
import { decimal, type Exact, fraction, leaf, negated, operate, plus, times, WRITTEN } from './exact.ts'
import { nameOf } from './sample-scope.ts'

export type Draw = (below: number) => number

/** A small generator of numbers (Lehmer, 48271 mod 2^31 - 1; Park and Miller 1993), so that every run is the same. */
export function drawing(seed: number): Draw {
  let state = (seed * 7919 + 17) % 2147483647 || 1
  const next = () => {
    state = (state * 48271) % 2147483647
    return state
  }
  for (let i = 0; i < 5; i++) next()
  return (below) => next() % below
}

export function pick<T>(draw: Draw, from: readonly T[]): T {
  const found = from[draw(from.length)]
  if (found === undefined) throw new Error('nothing to pick from')
  return found
}

export interface Typed {
  readonly text: string
  readonly exact: Exact
}

export type Known = ReadonlyMap<string, Exact>

/** Exact values for two figures of each kind, none of them zero. */
export function knownFor(draw: Draw): Map<string, Exact> {
  const known = new Map<string, Exact>()
  for (const of of OPERANDS)
    for (const prefix of ['a', 'b'] as const)
      known.set(nameOf(prefix, of), leaf(of, fraction(BigInt(draw(4000) + 1), 16n)))
  return known
}

/** A figure of a kind, with its exact value. What is divided by is a single figure, so that rounding stays in bounds. */
export function figure(draw: Draw, of: Operand, depth: number, known: Known): Typed {
  const rows = OPERATIONS.filter((row) => row.gives === of)
  if (depth === 0 || draw(5) === 0) return single(draw, of, known)
  const way = draw(8)
  if (way === 0) return chosen(draw, of, depth, known)
  if (way === 1) return mean(draw, of, depth, known)
  if (way === 2 && !['temperature', 'pressure-gauge', 'pressure-absolute'].includes(of)) {
    const inner = figure(draw, of, depth - 1, known)
    return { text: `-(${inner.text})`, exact: { ...inner.exact, value: negated(inner.exact.value) } }
  }
  const row = pick(draw, rows)
  const left = figure(draw, row.left, depth - 1, known)
  const right = row.op === '/' ? single(draw, row.right, known) : figure(draw, row.right, depth - 1, known)
  return {
    text: `(${left.text} ${row.op} ${right.text})`,
    exact: operate(left.exact, row.op, right.exact, of),
  }
}

function single(draw: Draw, of: Operand, known: Known): Typed {
  const ways = WRITTEN.filter((one) => one.of === of)
  const name = nameOf(pick(draw, ['a', 'b'] as const), of)
  if (ways.length === 0 || draw(2) === 0) return { text: name, exact: known.get(name) as Exact }
  const { write, factor, add } = pick(draw, ways)
  const text = `${draw(90) + 1}${draw(2) === 0 ? '' : `.${draw(90) + 10}`}`
  const value = times(plus(decimal(text), add ?? fraction(0n)), factor)
  return { text: write(text), exact: leaf(of, value) }
}

/** `a > b ? x : y` with a condition that is true. */
function chosen(draw: Draw, of: Operand, depth: number, known: Known): Typed {
  const yes = figure(draw, of, depth - 1, known)
  const no = figure(draw, of, depth - 1, known)
  const isYes = draw(2) === 0
  const condition = isYes ? 'strip == "present"' : 'strip in ["gone", "unsure"]'
  return { text: `(${condition} ? ${yes.text} : ${no.text})`, exact: isYes ? yes.exact : no.exact }
}

function mean(draw: Draw, of: Operand, depth: number, known: Known): Typed {
  const [x, y] = [figure(draw, of, depth - 1, known), figure(draw, of, depth - 1, known)]
  const half = fraction(1n, 2n)
  const exact: Exact = {
    value: times(plus(x.exact.value, y.exact.value), half),
    scale: plus(x.exact.scale, y.exact.scale),
    exponents: x.exact.exponents,
    impossible: x.exact.impossible || y.exact.impossible,
  }
  return { text: `mean([${x.text}, ${y.text}])`, exact }
}

const SHARDS: readonly string[] = [
  ...[
    'bore',
    'strip',
    'surface',
    'bore_judged',
    'machine.nominal',
    'machine.counterbore',
    'machine',
    'a_length',
  ],
  ...['a_area', 'list_force', 'later', 'brief', 'a_number', 'b_pressure_gauge', 'a_temperature'],
  ...[
    '"present"',
    "'gone'",
    '"HOLD"',
    '"presnet"',
    '""',
    '"\\u0000"',
    '"\u202e"',
    "'",
    '"',
    '"""',
    'r"',
    'b"x"',
  ],
  ...[
    'length("0.004 in")',
    'length("0.004")',
    'gauge("60 psi")',
    'length(strip)',
    'temperature("-500 degF")',
  ],
  ...['1', '0', '3.5', '1e999', '0x7f', '18446744073709551616u', '99999999999999999999', '.5', '5.', '00'],
  ...['true', 'false', 'null', 'outside', 'outside()', 'machine.outside', 'bore.outside', 'a_length.outside'],
  ...[
    'constructor',
    '__proto__',
    'prototype',
    'a_length.constructor',
    'machine.__proto__',
    'machine["constructor"]',
  ],
  ...[
    'globalThis',
    'process',
    'process.exit(1)',
    'require("fs")',
    'import("fs")',
    'this',
    'eval("1")',
    'Function("x")',
  ],
  ...[
    'bore.exists(x, x > x)',
    'bore.map(x, bore.map(y, y))',
    'cel.bind(x, bore, x)',
    'dyn(bore)',
    'type(bore)',
  ],
  ...[
    'strip.matches("(a+)+$")',
    'timestamp("2026-01-01T00:00:00Z")',
    'duration("1s")',
    'size(bore)',
    'string(1)',
  ],
  ...['has(machine.nominal)', 'bore[0]', 'bore[1000000000]', '[]', '{}', '{"a": 1}', 'optional.none()'],
  ...['compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area}).load'],
  ...['compute("plate-load", {"pressure": bore})', 'compute(compute)', 'compute("__proto__", {}).load'],
  ...['compute("plate-load", {"__proto__": a_area, "constructor": a_area}).constructor'],
  ...[
    '$\u007boutside}',
    '`outside`',
    '<script>',
    '; outside',
    '\\',
    '\u0000',
    '\ud800',
    '\u{1f600}',
    '\u00e9',
    '\uff11',
  ],
  ...[
    '//',
    '/*',
    '*/',
    '#',
    '\n',
    '\t',
    '\r',
    '@',
    '$',
    '~',
    '?',
    ':',
    ',',
    '.',
    '(',
    ')',
    '[',
    ']',
    '{',
    '}',
  ],
]
const JOINTS = [
  '+',
  '-',
  '*',
  '/',
  '%',
  '<',
  '<=',
  '>',
  '>=',
  '==',
  '!=',
  '&&',
  '||',
  'in',
  '?',
  ':',
  '.',
  ',',
  '=',
]
const CALLS = [
  'min',
  'max',
  'mean',
  'spread',
  'abs',
  'sqrt',
  'hypot',
  'count',
  'to_absolute',
  'compute',
  'length',
]

/** Pieces that can be read, right or wrong in their place. */
const CLEAN: readonly string[] = [
  ...[
    'bore',
    'strip',
    'surface',
    'bore_judged',
    'machine.nominal',
    'machine.rings',
    'a_length',
    'b_length',
    'a_area',
  ],
  ...[
    'list_length',
    'later',
    'a_number',
    'b_pressure_gauge',
    'a_pressure_absolute',
    'a_temperature',
    'a_ratio',
    '2',
  ],
  ...[
    '"present"',
    '"HOLD"',
    'length("0.004 in")',
    'area("3 in2")',
    'ratio("5 %")',
    'max(bore)',
    'count(bore)',
    '0.5',
  ],
  ...[
    'strip == "gone"',
    'bore_judged in ["HOLD"]',
    'a_length > b_length',
    'machine.counterbore',
    '0',
    'bore[0]',
  ],
  ...[
    'compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area}).load',
    'machine.outside',
    'outside',
  ],
]

/** Anything at all: shaped like an expression, a heap of pieces, very deep, or very long. */
export function anything(draw: Draw): string {
  switch (draw(10)) {
    case 0:
      return heap(draw, 1 + draw(12))
    case 1:
      return deep(draw)
    case 2:
      return long(draw)
    case 3:
      return spoiled(draw, compared(draw))
    case 4:
      return compared(draw)
    case 5:
      return shaped(draw, 1 + draw(4), SHARDS)
    default:
      return shaped(draw, 1 + draw(3), CLEAN)
  }
}

/** Two figures side by side, of one kind or of two, joined with a rule on words. */
function compared(draw: Draw): string {
  const known = knownFor(draw)
  const of = pick(draw, OPERANDS)
  const other = draw(2) === 0 ? of : pick(draw, OPERANDS)
  const [x, y] = [figure(draw, of, draw(3), known), figure(draw, other, draw(3), known)]
  const rest = pick(draw, ['', ' || strip == "gone"', ' && bore_judged != "HOLD"', ' ? a_length : b_length'])
  return `${x.text} ${pick(draw, ['<', '>', '<=', '>=', '=='])} ${y.text}${rest}`
}

function heap(draw: Draw, pieces: number): string {
  const parts = Array.from({ length: pieces }, () => pick(draw, draw(2) === 0 ? SHARDS : JOINTS))
  return parts.join(pick(draw, ['', ' ']))
}

function shaped(draw: Draw, depth: number, pieces: readonly string[]): string {
  if (depth === 0) return pick(draw, pieces)
  const inner = () => shaped(draw, depth - 1, pieces)
  switch (draw(6)) {
    case 0:
      return `${pick(draw, CALLS)}(${inner()})`
    case 1:
      return `${pick(draw, CALLS)}([${inner()}, ${inner()}])`
    case 2:
      return `(${inner()} ? ${inner()} : ${inner()})`
    case 3:
      return `${pick(draw, ['!', '-', ''])}(${inner()})`
    default:
      return `${inner()} ${pick(draw, JOINTS.slice(0, 14))} ${inner()}`
  }
}

function deep(draw: Draw): string {
  const levels = 1 + draw(300)
  const [open, close] = pick(draw, [
    ['(', ')'],
    ['!', ''],
    ['-', ''],
    ['[', ']'],
    ['abs(', ')'],
    ['{"a":', '}'],
    ['bore.map(x,', ')'],
    ['strip == "gone" ? a_length : (', ')'],
  ])
  return `${open?.repeat(levels)}${pick(draw, SHARDS)}${close?.repeat(levels)}`
}

function long(draw: Draw): string {
  const piece = `${pick(draw, SHARDS)} ${pick(draw, JOINTS)} `
  return `${piece.repeat(1 + draw(400))}${pick(draw, SHARDS)}`
}

function spoiled(draw: Draw, text: string): string {
  const at = draw(text.length)
  const piece = pick(draw, [...SHARDS, ...JOINTS])
  return draw(2) === 0
    ? text.slice(0, at) + piece + text.slice(at)
    : text.slice(0, at) + text.slice(at + 1 + draw(3))
}
