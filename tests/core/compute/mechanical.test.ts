// Every computation of the piston end: worked with its example as it would be keyed, and with bad inputs.

import { describe, expect, test } from 'vitest'
import { BORE } from '../../../src/core/compute/bore.ts'
import type { Computation, Computed, Value } from '../../../src/core/compute/computation.ts'
import { END_CLEARANCE } from '../../../src/core/compute/end-clearance.ts'
import { FASTENING } from '../../../src/core/compute/fastening.ts'
import { MECHANICAL_EXAMPLES } from '../../../src/core/compute/mechanical-examples.ts'
import { PISTON } from '../../../src/core/compute/piston.ts'
import { readInputs } from '../../../src/core/compute/read-inputs.ts'
import { RINGS } from '../../../src/core/compute/rings.ts'
import { ROD } from '../../../src/core/compute/rod.ts'
import { valueIn } from '../../../src/core/units/index.ts'

const ALL = [...BORE, ...RINGS, ...PISTON, ...ROD, ...FASTENING, ...END_CLEARANCE]
const named = ALL.map((computation) => [computation.name, computation] as const)

function inputsOf(computation: Computation): Record<string, Value> {
  const read = readInputs(computation, MECHANICAL_EXAMPLES[computation.name] ?? [])
  if (!read.ok) throw new Error(`${computation.name}: ${read.error.say}`)
  return { ...read.value.values }
}

function worked(name: string): Computed {
  const computation = ALL.find((one) => one.name === name)
  if (computation === undefined) throw new Error(`no ${name}`)
  const computed = computation.run(inputsOf(computation))
  if (!computed.ok) throw new Error(computed.error.say)
  return computed.value
}

function output(name: string, key: string, unit?: string): number | string {
  const value = worked(name).outputs[key]
  if (value?.is === 'quantity') return valueIn(value.quantity, unit ?? '')
  if (value?.is === 'number') return value.number
  if (value?.is === 'word') return value.word
  throw new Error(`no output ${key}`)
}

/** Pokes one figure of an input; nothing where the input has no figure. */
function poked(value: Value, figure: number): Value | undefined {
  if (value.is === 'number') return { is: 'number', number: figure }
  if (value.is === 'quantity') return { is: 'quantity', quantity: { ...value.quantity, si: figure } }
  if (value.is === 'word') return undefined
  const [first, ...rest] = value.quantities
  return first && { is: 'quantities', quantities: [{ ...first, si: figure }, ...rest] }
}

describe.each(named)('%s', (name, computation) => {
  test('works out its example: all outputs declared and finite, the arithmetic shown, sources named', () => {
    const { outputs, trace } = worked(name)
    for (const { name: key, type, optional } of computation.outputs) {
      const value = outputs[key]
      if (value === undefined) expect(optional, key).toBe(true)
      else expect(value.is, key).toBe(type.is)
    }
    expect(Object.keys(outputs).every((key) => computation.outputs.some((one) => one.name === key))).toBe(
      true,
    )
    expect(trace.length).toBeGreaterThan(0)
    expect(trace.map(({ says, formula, worked }) => `${says}${formula}${worked}`).join()).not.toMatch(
      /NaN|Infinity|undefined/,
    )
    expect(computation.sources.length).toBeGreaterThan(0)
    expect(computation.validity).not.toBe('')
  })

  test('an input left out is refused, unless it is optional and the figure does without', () => {
    for (const { name: key, optional } of computation.inputs) {
      const { [key]: _gone, ...rest } = inputsOf(computation)
      if (!optional) expect(computation.run(rest).ok, key).toBe(false)
    }
  })

  test('not a number, endless, an input nobody declared, a word for a figure: refused', () => {
    const inputs = inputsOf(computation)
    for (const [key, value] of Object.entries(inputs)) {
      for (const figure of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
        const bad = poked(value, figure)
        if (bad !== undefined)
          expect(computation.run({ ...inputs, [key]: bad }).ok, `${key} ${figure}`).toBe(false)
      }
      const wrong: Value = value.is === 'word' ? { is: 'number', number: 1 } : { is: 'word', word: 'one' }
      expect(computation.run({ ...inputs, [key]: wrong }).ok, key).toBe(false)
    }
    expect(computation.run({ ...inputs, no_such_input: { is: 'number', number: 1 } }).ok).toBe(false)
  })

  test('below zero is refused, but for what is signed by nature', () => {
    const inputs = inputsOf(computation)
    for (const { name: key, type } of computation.inputs) {
      const value = inputs[key]
      const isSigned = type.is === 'quantity' && (type.signed || type.kind === 'pressure-gauge')
      const bad = value === undefined || isSigned ? undefined : poked(value, -0.001)
      if (bad !== undefined) expect(computation.run({ ...inputs, [key]: bad }).ok, key).toBe(false)
    }
  })
})

test('names are their own, every one has an example and every example a computation', () => {
  expect(new Set(ALL.map(({ name }) => name)).size).toBe(ALL.length)
  expect(Object.keys(MECHANICAL_EXAMPLES).sort()).toEqual(ALL.map(({ name }) => name).sort())
})

describe('the documented examples', () => {
  test.each([
    ['ring-end-gap', 'gap', 'in', 0.03],
    ['ring-thermal-gap', 'gap', 'mm', 4.389],
    ['ring-side-clearance', 'least', 'in', 0.002],
    ['ring-radial-wear', 'wear', 'in', 0.038],
    ['ring-gap-growth', 'growth', 'in', 0.0314],
    ['ring-gap-limit', 'bore_growth', 'in', 0.0191],
    ['oversize-ring-trigger', 'growth', 'in', 0.04],
    ['rider-clearance', 'most', 'in', 0.02],
    ['rider-groove', 'end', 'in', 0.35],
    ['piston-running-clearance', 'clearance', 'in', 0.025],
    ['piston-weight', 'density', undefined, 0.159],
    ['plug-force', 'force', 'lbf', 176.7],
    ['cavity-energy', 'energy', undefined, 13.66],
    ['rod-form', 'undersize', 'in', 0.0038],
    ['rod-runout-expected', 'expected', 'in', -0.00334],
    ['rod-sag', 'sag', 'in', 0.00159],
    ['rod-drop-wear', 'wear', 'in', 0.015],
    ['bore-form', 'spread', 'in', 0.005],
    ['bore-limit', 'limit', 'in', 0.0075],
    ['bore-oversize', 'oversize', 'in', 0.02],
    ['stress-area-unified', 'area', 'in2', 0.373],
    ['stress-area-metric', 'area', 'mm2', 352.5],
    ['tension-from-torque', 'tension', 'kN', 34.17],
    ['torque-for-tension', 'torque', 'lbf.in', 3750],
    ['bolt-stretch', 'stress', 'psi', 21739],
    ['nut-angle', 'angle', 'deg', 59.1],
    ['joint-load-share', 'c', undefined, 0.3202],
    ['end-clearance-split', 'crank', 'in', 0.04],
    ['thermal-growth', 'growth', 'in', 0.036],
    ['end-clearance-hot', 'head_hot', 'in', 0.058],
    ['end-clearance-move', 'move', 'in', -0.02],
    ['end-clearance-sum', 'difference', 'in', -0.001],
  ])('%s: %s in %s is %f', (name, key, unit, expected) => {
    const figure = output(name, key, unit) as number
    expect(Math.abs(figure / expected - 1)).toBeLessThan(0.005)
  })

  test('words: one fact and a contradiction leave a piston hollow; the rod goes into the crosshead', () => {
    expect(output('piston-weight', 'says')).toBe('hollow')
    expect(output('piston-kind', 'handle_as')).toBe('hollow')
    expect(worked('piston-kind').warnings.join(' ')).toContain('hollow stands')
    expect(output('end-clearance-move', 'screw')).toBe('into the crosshead')
    expect(output('tightening-passes', 'order')).toBe('1 5 3 7 2 6 4 8')
    expect(output('bore-spread-rule', 'rule')).toBe('spread-general')
  })

  test('a fall-back rule always says that it is one', () => {
    for (const name of [
      'ring-end-gap',
      'rider-clearance',
      'bore-limit',
      'piston-running-clearance',
      'end-clearance-split',
    ])
      expect(worked(name).warnings.join(' ')).toContain('only where the machine')
  })
})
