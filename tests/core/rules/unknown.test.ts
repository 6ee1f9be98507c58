// Unknown is not a value (decision 8): over every set of things missing, and every way of not being known.
import { describe, expect, it } from 'vitest'
import type { Value } from '../../../src/core/compute/computation.ts'
import { compileRule } from '../../../src/core/rules/rule.ts'
import { compileValue } from '../../../src/core/rules/value.ts'
import { ALL_VALUES, one, PLATE, rule, SCOPE, several, word } from './sample-scope.ts'

/** Rules that the language alone would answer without looking at every name. */
const RULES = [
  'strip == "present" || spread(bore) > a_length',
  'strip == "gone" && spread(bore) > a_length',
  'spread(bore) < a_length || strip == "present"',
  '(strip == "present" ? a_length : b_length) > length("1 in")',
  '!(strip == "gone" && machine.counterbore < machine.nominal && bore_judged == "ACCEPT")',
  'surface == "sound" || compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area}).load > a_force',
  'count(bore) >= 0 || strip in ["gone"] || bore_judged in ["HOLD", "ACCEPT"]',
]

const without = (missing: readonly string[]) =>
  new Map([...ALL_VALUES].filter(([name]) => !missing.includes(name)))
const withValue = (name: string, value: Value) => new Map([...ALL_VALUES, [name, value]])

function subsets(names: readonly string[]): string[][] {
  return Array.from({ length: 2 ** names.length }, (_, bits) => names.filter((_name, n) => bits & (1 << n)))
}

describe('a rule with something missing', () => {
  it.each(RULES)('%s is unknown for every set of names missing, and known for none', (text) => {
    const r = rule(text)
    const sets = subsets(r.names)
    expect(sets.length).toBe(2 ** r.names.length)
    for (const missing of sets) {
      const outcome = r.evaluate(without(missing))
      if (missing.length === 0) expect(['true', 'false']).toContain(outcome)
      else expect(outcome, missing.join()).toBe('unknown')
      expect(r.unknownBecause(without(missing)).length).toBe(missing.length)
    }
  })

  it.each(RULES)('%s is unknown for every figure in it that is not finite, or cannot be', (text) => {
    const r = rule(text)
    for (const name of r.names) {
      const type = SCOPE.names.get(name)
      if (type === undefined || type.is === 'word' || type.of === 'number') continue
      for (const si of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
        const bad = type.is === 'one' ? one(type.of, si) : several(type.of, 1, si, 2)
        expect(r.evaluate(withValue(name, bad)), `${name} ${si}`).toBe('unknown')
      }
      if (type.is === 'list') expect(r.evaluate(withValue(name, several(type.of)))).toBe('unknown')
    }
  })

  it('is unknown for a temperature or an absolute pressure below nothing', () => {
    const r = rule('a_temperature > temperature("0 degF") || a_pressure_absolute > absolute("0 psia")')
    expect(r.evaluate(ALL_VALUES)).toBe('true')
    expect(r.evaluate(withValue('a_temperature', one('temperature', -1)))).toBe('unknown')
    expect(r.evaluate(withValue('a_pressure_absolute', one('pressure-absolute', -1)))).toBe('unknown')
  })
})

describe('a judge on HOLD', () => {
  const on = (text: string, verdict: string) => rule(text).evaluate(new Map([['bore_judged', word(verdict)]]))

  it('answers whether it is on HOLD, and no other question', () => {
    expect(on('bore_judged == "HOLD"', 'HOLD')).toBe('true')
    expect(on('bore_judged != "HOLD"', 'HOLD')).toBe('false')
    expect(on('bore_judged in ["HOLD", "REWORK"]', 'HOLD')).toBe('true')
    for (const text of [
      'bore_judged == "ACCEPT"',
      'bore_judged != "ACCEPT"',
      'bore_judged in ["ACCEPT", "MONITOR"]',
      '!(bore_judged in ["ACCEPT", "MONITOR"])',
      'bore_judged == "HOLD" || bore_judged == "REWORK"',
      'bore_judged == "HOLD" && bore_judged != "ACCEPT"',
      'bore_judged == bore_judged',
    ])
      expect(on(text, 'HOLD'), text).toBe('unknown')
  })

  it('is a word like any other when it is none', () => {
    expect(on('bore_judged == "HOLD"', 'ACCEPT')).toBe('false')
    expect(on('bore_judged in ["HOLD", "REWORK"]', 'REWORK')).toBe('true')
    expect(on('bore_judged != "ACCEPT"', 'REPLACE')).toBe('true')
    expect(on('bore_judged == "HOLD" || bore_judged == "REWORK"', 'REWORK')).toBe('true')
  })
})

describe('what cannot be worked out', () => {
  const zero = withValue('a_length', one('length', 0))
  it.each([
    'b_length / a_length > ratio("1 %")',
    'a_length / a_length > ratio("1 %")',
    '!(b_length / a_length > ratio("1 %"))',
    'b_length / a_length > ratio("1 %") || strip == "present"',
    'strip == "gone" || b_length / a_length > ratio("1 %") || strip == "present"',
    'b_length / a_length > ratio("1 %") && strip == "gone"',
    'a_force / (a_length * a_length) > a_pressure_difference || strip == "present"',
    'sqrt(a_length * a_length - b_length * b_length) > a_length',
    'a_temperature - a_temperature_difference - b_temperature_difference > a_temperature || strip == "present"',
    '1 / (count(bore) - 3) > 0 && strip == "present"',
  ])('%s is unknown, whatever stands beside it', (text) => {
    expect(rule(text).evaluate(zero)).toBe('unknown')
    expect(rule(text).unknownBecause(zero)).not.toEqual([])
  })

  it('does not spoil a rule when it stands where it is never come to', () => {
    const r = rule('a_length > length("0 in") && b_length / a_length > ratio("1 %")')
    expect(r.evaluate(zero)).toBe('false')
    expect(r.evaluate(ALL_VALUES)).toBe('true')
  })

  it('is unknown when a figure grows beyond all bounds, or a computation refuses', () => {
    const huge = withValue('a_length', one('length', 1e300))
    expect(rule('a_length * a_length > a_area || strip == "present"').evaluate(huge)).toBe('unknown')
    const load = rule(
      'compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area}).load > a_force',
    )
    expect(load.evaluate(withValue('a_area', one('area', 0)))).toBe('unknown')
    expect(load.unknownBecause(withValue('a_area', one('area', 0)))).toEqual(['the plate has no area'])
    const value = compileValue('a_length * a_length', 'area', SCOPE)
    expect(value.ok && value.value.work(huge).is).toBe('unknown')
  })

  it('leaves nothing behind for the next rule', () => {
    expect(rule('b_length / a_length > ratio("1 %")').evaluate(zero)).toBe('unknown')
    expect(rule('strip == "present"').evaluate(zero)).toBe('true')
  })

  it('is a bug, and no answer, when a computation throws, whatever stands beside it', () => {
    const broken = {
      ...PLATE,
      run: () => {
        throw new Error('a slip in the program')
      },
    }
    const scope = { ...SCOPE, computations: new Map([[PLATE.name, broken]]) }
    const call = 'compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area}).load'
    const compiled = compileRule(`${call} > a_force || strip == "present"`, scope)
    if (!compiled.ok) throw new Error(compiled.error.say)
    expect(() => compiled.value.evaluate(ALL_VALUES)).toThrow('a slip in the program')
    expect(rule('strip == "present"').evaluate(ALL_VALUES)).toBe('true')
  })

  it('is a bug, and no answer, when a value is of another kind than its name', () => {
    const r = rule('a_length > b_length')
    expect(() => r.evaluate(withValue('a_length', one('area', 1)))).toThrow(/another kind/)
    expect(() => rule('strip == "gone"').evaluate(withValue('strip', word('elsewhere')))).toThrow(
      /another kind/,
    )
  })
})
