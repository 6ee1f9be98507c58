import { describe, expect, test } from 'vitest'
import type { Computation, Parameter } from '../../../src/core/compute/computation.ts'
import { EXAMPLES } from '../../../src/core/compute/examples.ts'
import { readInputs } from '../../../src/core/compute/read-inputs.ts'
import { byName, COMPUTATIONS, compute, findComputation, GROUPS } from '../../../src/core/compute/registry.ts'
import { showComputed, showUse } from '../../../src/core/compute/show.ts'
import { n, q, w } from '../../../src/core/compute/take.ts'
import { ok } from '../../../src/core/lib/result.ts'
import { unitNamed } from '../../../src/core/units/index.ts'

const ALL = [...COMPUTATIONS.values()]
const example = (computation: Computation) => {
  const read = readInputs(computation, EXAMPLES[computation.name] ?? [])
  if (!read.ok) throw new Error(`${computation.name}: ${read.error.say}`)
  return read.value.values
}
const worked = (computation: Computation) => {
  const computed = compute(computation, example(computation))
  if (!computed.ok) throw new Error(`${computation.name}: ${computed.error.say}`)
  return computed.value
}
const plain = (name: string, inputs: readonly Parameter[] = []): Computation => ({
  ...{ name, title: name, inputs, outputs: [], sources: ['common practice, no source'], validity: 'a test' },
  run: () => ok({ outputs: {}, trace: [], warnings: [] }),
})

describe('every computation', () => {
  test.each(ALL.map((one) => [one.name, one] as const))(
    '%s: its example works out, and comes as declared',
    (_, one) => {
      const { outputs, trace } = worked(one)
      expect(trace.length).toBeGreaterThan(0)
      for (const name of Object.keys(outputs)) expect(one.outputs.map((p) => p.name)).toContain(name)
      for (const p of one.outputs) {
        const value = outputs[p.name]
        if (value === undefined) expect(p.optional).toBe(true)
        else expect(value.is).toBe(p.type.is)
        if (value?.is === 'quantity' && p.type.is === 'quantity')
          expect(value.quantity.kind).toBe(p.type.kind)
      }
    },
  )

  test.each(ALL.map((one) => [one.name, one] as const))('%s: says what a reader needs', (name, one) => {
    expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/)
    expect(one.sources.length).toBeGreaterThan(0)
    expect([one.title, one.validity].every((text) => text.length > 5)).toBe(true)
    for (const { name: key, says, type } of [...one.inputs, ...one.outputs]) {
      expect(key).toMatch(/^[a-z][a-z0-9_]*$/)
      expect(says.length).toBeGreaterThan(2)
      if ('unit' in type) expect(unitNamed(type.unit)?.kind).toBe(type.kind)
    }
  })

  test.each(ALL.map((one) => [one.name, one] as const))(
    '%s: refuses when any needed input is missing',
    (_, one) => {
      const given = example(one)
      for (const { name, optional } of one.inputs) {
        if (optional === true) continue
        const { [name]: _left, ...rest } = given
        const direct = one.run(rest)
        expect(direct.ok ? `worked without ${name}` : 'refused').toBe('refused')
        expect(compute(one, rest).ok).toBe(false)
      }
    },
  )

  test.each(ALL.map((one) => [one.name, one] as const))(
    '%s: fits 80 columns, and no figure is NaN',
    (_, one) => {
      const style = { width: 79, ascii: true }
      const pages = [
        ...showUse(one, EXAMPLES[one.name] ?? [], style),
        ...showComputed(one, example(one), worked(one), style),
      ]
      for (const line of pages) {
        expect(line.length).toBeLessThanOrEqual(79)
        expect(line).not.toMatch(/NaN|Infinity|undefined|\[object/)
        expect(line).toMatch(/^[\x20-\x7e]*$/)
      }
    },
  )

  test('every example is for a computation there is', () => {
    for (const name of Object.keys(EXAMPLES)) expect(COMPUTATIONS.has(name)).toBe(true)
  })
})

describe('the registry', () => {
  test('two of one name, or two inputs of one name, is a bug', () => {
    const twice = [
      { title: 'a', computations: [plain('one')] },
      { title: 'b', computations: [plain('one')] },
    ]
    expect(() => byName(twice)).toThrow('two computations are named "one"')
    const input: Parameter = { name: 'x', says: 'a thing', type: { is: 'number' } }
    expect(() => byName([{ title: 'a', computations: [plain('one', [input, input])] }])).toThrow('two inputs')
  })

  test('finds by name, forgives case and underscores, and names the nearest otherwise', () => {
    expect(findComputation('Wear_Rate').ok).toBe(true)
    const near = findComputation('wear-rats')
    expect(near.ok ? '' : near.error.say).toContain('did you mean wear-rate?')
    const far = findComputation('xyzzy')
    expect(far.ok ? '' : far.error.say).toMatch(/barover compute lists them\.$/)
  })

  test('all are listed, once', () => {
    const listed = GROUPS.flatMap((group) => group.computations.map((one) => one.name))
    expect(listed).toEqual([...COMPUTATIONS.keys()])
  })

  test('what does not fit the declaration is refused before it is run', () => {
    const input: Parameter = {
      name: 'x',
      says: 'a thing',
      type: { is: 'number', least: 1, most: 3, whole: true },
    }
    const one = plain('one', [input])
    const code = (inputs: Parameters<typeof compute>[1]) => {
      const result = compute(one, inputs)
      return result.ok ? 'ran' : result.error.code
    }
    expect(code({ x: n(2) })).toBe('ran')
    expect(code({ x: n(2), y: n(2) })).toBe('unknown-input')
    expect(code({})).toBe('missing-input')
    expect(code({ x: n(4) })).toBe('out-of-range')
    expect(code({ x: n(1.5) })).toBe('not-whole')
    expect(code({ x: { is: 'number', number: Number.NaN } })).toBe('not-finite')
    expect(code({ x: q(1, 'in') })).toBe('wrong-type')
  })

  test('a figure that is not finite never leaves: it is a bug', () => {
    const broken: Computation = {
      ...plain('broken'),
      run: () => ok({ outputs: { x: { is: 'number', number: Number.NaN } }, trace: [], warnings: [] }),
    }
    expect(() => compute(broken, {})).toThrow('not finite')
    expect(() => n(Number.POSITIVE_INFINITY)).toThrow()
    expect(w('yes')).toEqual({ is: 'word', word: 'yes' })
  })
})
