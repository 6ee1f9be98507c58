// Names and a computation for tests of the rule language: one name of every kind, lists, words, and an invented sum.
import type { Computation, Value } from '../../../src/core/compute/computation.ts'
import { ok, refuse } from '../../../src/core/lib/result.ts'
import { FACT_TYPES } from '../../../src/core/rules/machine-facts.ts'
import { OPERANDS } from '../../../src/core/rules/measured.ts'
import { compileRule } from '../../../src/core/rules/rule.ts'
import type { NameType, Operand, Scope, Values } from '../../../src/core/rules/types.ts'
import { fromSi, type QuantityKind } from '../../../src/core/units/index.ts'

/** Force on a plate, with the parameters every sort of input and output. For tests only. */
export const PLATE: Computation = {
  name: 'plate-load',
  title: 'Load on a plate',
  inputs: [
    input('pressure', { is: 'quantity', kind: 'pressure-absolute', unit: 'psia' }),
    input('area', { is: 'quantity', kind: 'area', unit: 'in2' }),
    { ...input('gaps', { is: 'quantities', kind: 'length', unit: 'in', least: 1 }), optional: true },
    { ...input('times', { is: 'number' }), optional: true },
    { ...input('side', { is: 'word', words: ['head', 'crank'] }), optional: true },
  ],
  outputs: [
    input('load', { is: 'quantity', kind: 'force', unit: 'lbf' }),
    input('gaps', { is: 'quantities', kind: 'length', unit: 'in', least: 1 }),
    input('sense', { is: 'word', words: ['push', 'pull'] }),
  ],
  sources: ['made up for tests'],
  validity: 'nowhere',
  run: (inputs) => {
    const si = (name: string) => {
      const value = inputs[name]
      return value?.is === 'quantity' ? value.quantity.si : value?.is === 'number' ? value.number : 1
    }
    if (si('area') === 0) return refuse('no-area', 'the plate has no area')
    const load = fromSi('force', si('pressure') * si('area') * (inputs.times === undefined ? 1 : si('times')))
    const gaps = inputs.gaps ?? { is: 'quantities', quantities: [fromSi('length', 0.001)] }
    const sense = {
      is: 'word' as const,
      word: inputs.side?.is === 'word' && inputs.side.word === 'crank' ? 'pull' : 'push',
    }
    return ok({ outputs: { load: { is: 'quantity', quantity: load }, gaps, sense }, trace: [], warnings: [] })
  },
}

function input(name: string, type: Computation['inputs'][number]['type']) {
  return { name, says: `the ${name}`, type }
}

export const COMPUTATIONS = new Map([[PLATE.name, PLATE]])

/** `a_length`, `b_length`: two figures of each kind; `list_length`: a list of each. */
export function nameOf(prefix: 'a' | 'b' | 'list', of: Operand): string {
  return `${prefix}_${of.replaceAll('-', '_')}`
}

const kinds = OPERANDS.flatMap((of): [string, NameType][] => [
  [nameOf('a', of), { is: 'one', of }],
  [nameOf('b', of), { is: 'one', of }],
  [nameOf('list', of), { is: 'list', of }],
])

export const SCOPE: Scope = {
  names: new Map<string, NameType>([
    ...FACT_TYPES,
    ...kinds,
    ['bore', { is: 'list', of: 'length' }],
    ['strip', { is: 'word', words: ['present', 'gone', 'unsure'] }],
    ['surface', { is: 'word', words: ['sound', 'scored', 'unsure'] }],
    [
      'bore_judged',
      { is: 'word', words: ['ACCEPT', 'MONITOR', 'REWORK', 'REPLACE', 'HOLD', 'STOP'], unknownWord: 'HOLD' },
    ],
  ]),
  barred: new Map([
    ['later', { code: 'used-too-early', say: "'later' does not stand before this step." }],
    ['brief', { code: 'no-outcome', say: "'brief' is a tell step." }],
  ]),
  computations: COMPUTATIONS,
}

export function one(kind: QuantityKind, si: number): Value {
  return { is: 'quantity', quantity: { kind, si } }
}

export function several(kind: QuantityKind, ...si: number[]): Value {
  return { is: 'quantities', quantities: si.map((each) => ({ kind, si: each })) }
}

export function word(text: string): Value {
  return { is: 'word', word: text }
}

export function rule(text: string) {
  const compiled = compileRule(text, SCOPE)
  if (!compiled.ok) throw new Error(`${text}: ${compiled.error.say}`)
  return compiled.value
}

/** Sound values for every name of the scope. */
export const ALL_VALUES: Values = new Map<string, Value>(
  [...SCOPE.names].map(([name, type], n): [string, Value] => {
    if (type.is === 'word') return [name, word(type.words[0] ?? '')]
    const si = [300 + n, 310 + n, 305 + n]
    if (type.of === 'number') return [name, { is: 'number', number: n }]
    return [name, type.is === 'one' ? one(type.of, si[0] ?? 0) : several(type.of, ...si)]
  }),
)
