import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Computation, Computed, Parameter, Value } from '../../../src/core/compute/computation.ts'
import { CYCLE_COMPUTATIONS } from '../../../src/core/compute/cycle.ts'
import { readInputs } from '../../../src/core/compute/read-inputs.ts'
import { formatBoth, fromSi } from '../../../src/core/units/index.ts'
import { SAMPLE_INPUTS } from './sample-inputs.ts'
import { get, si } from './sample-machine.ts'

type Inputs = Readonly<Record<string, Value>>

const named = (name: string): Computation => {
  const found = CYCLE_COMPUTATIONS.find((one) => one.name === name)
  if (found === undefined) throw new Error(`no ${name}`)
  return found
}
const sample = (name: string, ...more: string[]): Inputs => {
  const given = [...(SAMPLE_INPUTS[name] ?? []), ...more]
  // A later word of the same key stands in for the earlier.
  const byKey = new Map(given.map((word) => [word.split('=')[0], word]))
  return get(readInputs(named(name), [...byKey.values()])).values
}
const worked = (name: string, ...more: string[]) => get(named(name).run(sample(name, ...more)))
const quantityOf = (computed: Computed, name: string) => {
  const value = computed.outputs[name]
  if (value?.is !== 'quantity') throw new Error(`${name} is no quantity`)
  return value.quantity.si
}
const wordOf = (computed: Computed, name: string) => {
  const value = computed.outputs[name]
  return value?.is === 'word' ? value.word : ''
}
const without = (inputs: Inputs, name: string): Inputs =>
  Object.fromEntries(Object.entries(inputs).filter(([key]) => key !== name))

function expectSound(computation: Computation, computed: Computed): void {
  for (const [name, value] of Object.entries(computed.outputs)) {
    const declared = computation.outputs.find((output) => output.name === name)
    expect(declared?.type.is).toBe(value.is)
    if (value.is === 'number') expect(Number.isFinite(value.number)).toBe(true)
    if (value.is === 'quantity') expect(Number.isFinite(value.quantity.si)).toBe(true)
    if (value.is === 'quantities') expect(value.quantities.every((one) => Number.isFinite(one.si))).toBe(true)
    if (value.is === 'word' && declared?.type.is === 'word') expect(declared.type.words).toContain(value.word)
  }
  for (const step of computed.trace)
    expect(`${step.says}${step.formula}${step.worked}`).not.toMatch(/NaN|Infinity/)
}

describe.each(CYCLE_COMPUTATIONS.map((one) => [one.name, one] as const))('%s', (name, computation) => {
  test('its example gives finite figures, every declared output, and the arithmetic', () => {
    const computed = get(computation.run(sample(name)))
    expectSound(computation, computed)
    expect(Object.keys(computed.outputs)).toEqual(computation.outputs.map((output) => output.name))
    expect(computed.trace.length).toBeGreaterThan(0)
    expect(computation.sources.length).toBeGreaterThan(0)
  })

  test('refuses any required input that is missing, not a number, of another type or below zero', () => {
    const inputs = sample(name)
    for (const parameter of computation.inputs) {
      const given = inputs[parameter.name]
      if (given === undefined) continue
      if (parameter.optional !== true)
        expect(computation.run(without(inputs, parameter.name)).ok, `${parameter.name} left out`).toBe(false)
      for (const bad of spoilt(parameter, given))
        expect(computation.run({ ...inputs, [parameter.name]: bad }).ok, parameter.name).toBe(false)
    }
    expect(computation.run({ ...inputs, nobody: { is: 'number', number: 1 } }).ok).toBe(false)
  })

  test('property: near its example and far from it, finite or refused, and it never throws', () => {
    const inputs = sample(name)
    const runs = name.startsWith('pocket') ? 60 : 300
    const thousandths = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 90, maxLength: 90 })
    let good = 0
    fc.assert(
      fc.property(thousandths, fc.constantFrom(0.005, 0.05, 0.3, 3, 30), (draws, wide) => {
        let next = 0
        const factor = () => 10 ** (wide * ((draws[next++ % draws.length] ?? 0) / 1000))
        const stirred = Object.entries(inputs).map(([key, value]) => [key, stir(value, factor)])
        const result = computation.run(Object.fromEntries(stirred))
        if (result.ok) good += 1
        if (result.ok) expectSound(computation, result.value)
        else expect(result.error.say.length).toBeGreaterThan(10)
      }),
      { numRuns: runs },
    )
    expect(good).toBeGreaterThan(0)
  })
})

/** Values of the parameter that must not be taken. */
function spoilt({ type }: Parameter, given: Value): Value[] {
  if (given.is === 'word')
    return [
      { is: 'word', word: 'perhaps' },
      { is: 'number', number: 1 },
    ]
  if (given.is === 'number')
    return [Number.NaN, Number.POSITIVE_INFINITY, -1e9].map((number) => ({ is: 'number', number }))
  if (given.is === 'quantity') {
    const low = type.is === 'quantity' && type.signed === true ? -1e12 : -1e-3
    const bad =
      type.is === 'quantity' && type.kind === 'angle'
        ? [Number.NaN]
        : [Number.NaN, Number.POSITIVE_INFINITY, low]
    return bad.map((value) => ({ is: 'quantity', quantity: { kind: given.quantity.kind, si: value } }))
  }
  return [Number.NaN, -1e12].map((value) => ({
    is: 'quantities',
    quantities: given.quantities.map((one) => ({ kind: one.kind, si: value })),
  }))
}

function stir(value: Value, factor: () => number): Value {
  if (value.is === 'quantity') {
    const { kind } = value.quantity
    return { is: 'quantity', quantity: fromSi(kind, value.quantity.si * factor()) }
  }
  if (value.is === 'quantities')
    return {
      is: 'quantities',
      quantities: value.quantities.map((one) => fromSi(one.kind, one.si * factor())),
    }
  if (value.is === 'number' && !Number.isInteger(value.number))
    return { is: 'number', number: value.number * factor() ** 0.1 }
  return value
}

describe('what the figures say', () => {
  test('TC-401 first stage: displacement, rod load and temperature', () => {
    expect(quantityOf(worked('displacement'), 'displacement') / si(1, 'cfm')).toBeCloseTo(350.85, 2)
    const load = worked('rod-load')
    // 9,160 lbf in the record leaves the barometer on the rod out: 14.7 x 3.976 = 58 lbf less here, and more in tension.
    expect(quantityOf(load, 'compression') / si(1, 'lbf')).toBeCloseTo(9098.8, 0)
    expect(quantityOf(load, 'tension') / si(1, 'lbf')).toBeCloseTo(8124.7, 0)
    expect(load.trace.map((step) => step.worked).join(' ')).toContain(
      formatBoth(fromSi('force', quantityOf(load, 'compression')), 'lbf', 0),
    )
    expect(quantityOf(worked('discharge-temperature'), 'discharge_temperature') / 1).toBeCloseTo(369.5, 1)
  })

  test('the barometer counts: the same gauges at altitude give another ratio', () => {
    const high = worked('volumetric-efficiency', 'barometer=11.5 psia')
    expect(quantityOf(high, 'ratio')).toBeGreaterThan(quantityOf(worked('volumetric-efficiency'), 'ratio'))
    expect(worked('volumetric-efficiency').warnings.join(' ')).toContain('96-less-ratio')
  })

  test('reversal: HOLD without masses or criterion, and the gas-only figure says it is a screen', () => {
    expect(wordOf(worked('rod-reversal'), 'verdict')).toBe('reverses')
    for (const name of ['mass', 'least_angle', 'least_share']) {
      const computed = get(named('rod-reversal').run(without(sample('rod-reversal'), name)))
      expect(wordOf(computed, 'verdict')).toBe('HOLD')
      expect(computed.warnings.join(' ')).toContain('HOLD')
    }
    const screen = get(named('rod-reversal').run(without(sample('rod-reversal'), 'mass')))
    expect(screen.warnings.join(' ')).toContain('screen')
    const strict = worked('rod-reversal', 'least_angle=179 deg', 'least_share=99 %')
    expect(wordOf(strict, 'verdict')).toBe('does not reverse')
  })

  test('pocket setting: an opening in whole steps, clear; HOLD is a refusal that names the stage', () => {
    const found = worked('pocket-setting')
    expect([wordOf(found, 'answer'), wordOf(found, 'standing')]).toEqual(['opening', 'clear'])
    const turns = found.outputs.turns
    const number = turns?.is === 'number' ? turns.number : Number.NaN
    expect(number * 4).toBeCloseTo(Math.round(number * 4), 9)
    expect(quantityOf(found, 'load')).toBeLessThanOrEqual(quantityOf(found, 'target'))
    const held = named('pocket-setting').run(sample('pocket-setting', 'masses=265 lb'))
    expect(held.ok ? '' : `${held.error.code} ${held.error.say}`).toMatch(/^hold HOLD\. Stage 2.*mass/)
    const apart = named('pocket-setting').run(sample('pocket-setting', 'measured_load=300 hp'))
    expect(apart.ok ? '' : apart.error.code).toBe('hold')
    const spare = named('pocket-setting').run(sample('pocket-setting', 'masses=265 265 265 lb'))
    expect(spare.ok ? '' : spare.error.code).toBe('too-many')
  })

  test('pocket setting: where no opening does, HOLD and what is left', () => {
    const none = worked('pocket-setting', 'driver_rating=150 hp')
    expect([wordOf(none, 'answer'), wordOf(none, 'standing')]).toEqual(['no-opening', 'HOLD'])
    expect(none.warnings.join(' ')).toMatch(/No opening does: .*Left for the lead/)
    const overloaded = worked('pocket-setting', 'tension_limits=5000 18000 lbf')
    expect([wordOf(overloaded, 'answer'), wordOf(overloaded, 'standing')]).toEqual(['opening', 'HOLD'])
  })
})
