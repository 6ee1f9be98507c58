// The functions of rules, in one table: what each takes and gives. None of them loops but over the places of a reading.
import { aKind, QUANTITY_KINDS, type QuantityKind } from '../units/index.ts'
import { fault, type Measured, made, OPERANDS } from './measured.ts'
import { AMOUNTS, POINTS } from './operators.ts'
import type { Operand } from './types.ts'

export interface RuleFunction {
  readonly name: string
  /** For its author: what goes in. */
  readonly takes: string
  /** What it gives for figures of one kind; kinds that are not there are refused. */
  readonly gives: ReadonlyMap<Operand, Operand>
  /** `list`: one list; `one`: one figure; `two`: two figures; a function may have more than one form. */
  readonly forms: readonly ('list' | 'one' | 'two')[]
  readonly work: (si: readonly number[]) => number
}

const SELF = (kinds: readonly Operand[]) => new Map(kinds.map((kind) => [kind, kind]))
const AMOUNTS_AND_NUMBERS: readonly Operand[] = [...AMOUNTS, 'number']
const APART = new Map<Operand, Operand>([...SELF(AMOUNTS_AND_NUMBERS), ...POINTS])
const ROOT = new Map<Operand, Operand>([
  ['area', 'length'],
  ['ratio', 'ratio'],
  ['number', 'number'],
])

const mean = (si: readonly number[]) => si.reduce((sum, one) => sum + one, 0) / si.length
const A_LIST = 'a list of one kind, such as a reading at several places, or [a, b]'

export const FUNCTIONS: readonly RuleFunction[] = [
  {
    name: 'min',
    takes: `${A_LIST}; or two figures of one kind`,
    gives: SELF(OPERANDS),
    forms: ['list', 'two'],
    work: (si) => Math.min(...si),
  },
  {
    name: 'max',
    takes: `${A_LIST}; or two figures of one kind`,
    gives: SELF(OPERANDS),
    forms: ['list', 'two'],
    work: (si) => Math.max(...si),
  },
  { name: 'mean', takes: A_LIST, gives: SELF(OPERANDS), forms: ['list'], work: mean },
  {
    name: 'spread',
    takes: A_LIST,
    gives: APART,
    forms: ['list'],
    work: (si) => Math.max(...si) - Math.min(...si),
  },
  {
    name: 'count',
    takes: A_LIST,
    gives: new Map(OPERANDS.map((kind) => [kind, 'number'])),
    forms: ['list'],
    work: (si) => si.length,
  },
  {
    name: 'abs',
    takes: 'one amount or number; a pressure or a temperature has no minus, a difference of them has',
    gives: SELF(AMOUNTS_AND_NUMBERS),
    forms: ['one'],
    work: ([si = Number.NaN]) => Math.abs(si),
  },
  {
    name: 'sqrt',
    takes: 'an area, a ratio or a number',
    gives: ROOT,
    forms: ['one'],
    work: ([si = Number.NaN]) => Math.sqrt(si),
  },
  {
    name: 'hypot',
    takes: `${A_LIST}; or two figures of one kind; amounts only`,
    gives: SELF(AMOUNTS_AND_NUMBERS),
    forms: ['list', 'two'],
    work: (si) => Math.hypot(...si),
  },
]

/** Between the two scales of pressure, knowingly: the barometric pressure is always handed in. */
export const CONVERSIONS = [
  { name: 'to_absolute', from: 'pressure-gauge', to: 'pressure-absolute', sign: 1 },
  { name: 'to_gauge', from: 'pressure-absolute', to: 'pressure-gauge', sign: -1 },
] as const

/** What is said to take, for each name a rule may call. */
export function takesOf(name: string): string | undefined {
  const conversion = CONVERSIONS.find((one) => one.name === name)
  if (conversion !== undefined)
    return `${aKind(conversion.from)}, then the barometric pressure, as in ${name}(p, machine.barometer)`
  return FUNCTIONS.find((one) => one.name === name)?.takes
}

/** Works a function out over what the language hands in; an empty list or a root of less than nothing is a fault. */
export function workOut(fn: RuleFunction, figures: readonly Measured[]): Measured {
  const [first] = figures
  const gives = first === undefined ? undefined : fn.gives.get(first.of)
  if (gives === undefined) throw fault(`${fn.name} has nothing to work on`)
  return made(gives, fn.work(figures.map((figure) => figure.si)))
}

/** `length("0.004 in")`: the name under which each kind's figures are written. */
export const WRITTEN_AS: ReadonlyMap<string, QuantityKind> = new Map(
  QUANTITY_KINDS.map((kind) => {
    if (kind === 'pressure-gauge') return ['gauge', kind]
    if (kind === 'pressure-absolute') return ['absolute', kind]
    return [kind.replace('-', '_'), kind]
  }),
)

export function writerOf(kind: QuantityKind): string {
  for (const [name, written] of WRITTEN_AS) if (written === kind) return name
  throw new Error(`no way to write a ${kind}`)
}
