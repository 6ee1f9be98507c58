// The language as its author meets it: what is allowed, and what is refused, with the word that is marked.
import { describe, expect, it } from 'vitest'
import { compileExpression } from '../../../src/core/rules/expression.ts'
import { compileRule } from '../../../src/core/rules/rule.ts'
import { compileValue } from '../../../src/core/rules/value.ts'
import { ALL_VALUES, one, rule, SCOPE, several, word } from './sample-scope.ts'

describe('a rule', () => {
  it('compares the outcome of an earlier step', () => {
    const r = rule('strip == "present"')
    expect(r.evaluate(new Map([['strip', word('present')]]))).toBe('true')
    expect(r.evaluate(new Map([['strip', word('gone')]]))).toBe('false')
    expect(r.names).toEqual(['strip'])
  })

  it('compares figures of one kind, in whatever unit they are written', () => {
    const r = rule('spread(bore) > length("0.004 in")')
    expect(r.evaluate(new Map([['bore', several('length', 0.2, 0.2001)]]))).toBe('false')
    expect(r.evaluate(new Map([['bore', several('length', 0.2, 0.2002)]]))).toBe('true')
    const mm = rule('spread(bore) > length("0.1016 mm")')
    expect(mm.evaluate(new Map([['bore', several('length', 0.2, 0.2002)]]))).toBe('true')
  })

  it.each([
    ['strip != "gone"', 'true'],
    ['strip in ["present", "unsure"]', 'true'],
    ['"present" == strip', 'true'],
    ['!(strip == "gone") && surface != "scored"', 'true'],
    ['strip == surface', 'false'],
    ['machine.rings == "metallic"', 'true'],
    ['count(bore) >= 3', 'true'],
    ['1 / 3 * a_ratio < a_ratio', 'true'],
    ['max(1, 2) * a_length > a_length', 'true'],
    ['sqrt(a_length * a_length) - a_length <= length("0.001 um")', 'true'],
    ['hypot(a_length, b_length) > max([a_length, b_length])', 'true'],
    ['abs(a_length - b_length) < length("2 m")', 'true'],
    ['mean(list_temperature) - a_temperature < temperature_difference("20 delta-degF")', 'true'],
    ['to_absolute(a_pressure_gauge, machine.barometer) > absolute("0 psia")', 'true'],
    ['(strip == "gone" ? a_length : b_length) >= b_length', 'true'],
    [
      'compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area}).load > force("1 lbf")',
      'true',
    ],
    [
      'max(compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area}).gaps) > length("0.5 mm")',
      'true',
    ],
    [
      'compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area, "gaps": bore, "times": 2, "side": "crank"}).sense == "pull"',
      'true',
    ],
  ])('%s is %s', (text, outcome) => {
    expect(rule(text).evaluate(ALL_VALUES)).toBe(outcome)
  })
})

describe('refused, at the very word', () => {
  it.each([
    // Words
    ['strip == "presnet"', 'unknown-outcome', '"presnet"'],
    ['strip in ["present", "goen"]', 'unknown-outcome', '"goen"'],
    ['bore_judged == "accept"', 'unknown-outcome', '"accept"'],
    ['machine.rings == "pfte"', 'unknown-outcome', '"pfte"'],
    ['strip == machine.rings', 'unknown-outcome', 'strip == machine.rings'],
    ['strip == 3', 'rule-type', '3'],
    ['strip == "pre\\x73ent"', 'rule-type', '"pre\\x73ent"'],
    ['strip == r"present"', 'rule-type', 'r"present"'],
    ['strip', 'rule-type', 'strip'],
    ['strip + "x" == strip', 'rule-type', 'strip + "x"'],
    ['strip < "z"', 'rule-type', 'strip'],
    ['"a" == "a"', 'rule-type', '"a" == "a"'],
    ['strip in strip', 'rule-type', 'strip'],
    ['strip == bore', 'rule-type', 'bore'],
    // Names
    ['strp == "gone"', 'unknown-step', 'strp'],
    ['later == "seen"', 'used-too-early', 'later'],
    ['brief == "done"', 'no-outcome', 'brief'],
    ['machine.nominl > a_length', 'unknown-fact', 'machine.nominl'],
    ['machine == machine', 'unknown-fact', 'machine'],
    ['constructor == "x"', 'unknown-step', 'constructor'],
    // Kinds
    ['a_length > 3', 'rule-type', '3'],
    ['a_ratio < 0.7', 'rule-type', '0.7'],
    ['a_length + a_area > a_area', 'rule-type', 'a_length + a_area'],
    ['a_temperature + b_temperature > a_temperature', 'rule-type', 'a_temperature + b_temperature'],
    ['a_temperature * 2 > a_temperature', 'rule-type', 'a_temperature * 2'],
    ['a_pressure_gauge * a_area > a_force', 'rule-type', 'a_pressure_gauge * a_area'],
    ['a_pressure_gauge > a_pressure_absolute', 'rule-type', 'a_pressure_gauge > a_pressure_absolute'],
    ['a_torque * a_rotation > a_power', 'rule-type', 'a_torque * a_rotation'],
    ['a_length == b_length', 'rule-equal', 'a_length == b_length'],
    ['-a_temperature < a_temperature', 'rule-type', '-a_temperature'],
    ['!a_length', 'rule-type', '!a_length'],
    ['a_length && strip == "gone"', 'rule-type', 'a_length'],
    ['a_length ? a_area > b_area : a_area < b_area', 'rule-type', 'a_length'],
    ['(strip == "gone" ? a_length : a_area) > a_length', 'rule-type', 'strip == "gone" ? a_length : a_area'],
    ['max([a_length, a_area]) > a_length', 'rule-type', 'a_area'],
    ['a_length < b_length < a_length', 'rule-type', 'a_length < b_length'],
    ['bore > a_length', 'rule-type', 'bore'],
    ['bore + bore == bore', 'rule-type', 'bore'],
    ['max([]) > a_length', 'rule-type', '[]'],
    ['max([bore]) > a_length', 'rule-type', 'bore'],
    ['[a_length] == [a_length]', 'rule-type', '[a_length]'],
    // Figures
    ['a_length > length("0.004")', 'rule-literal', '"0.004"'],
    ['a_length > length("0,004 in")', 'rule-literal', '"0,004 in"'],
    ['a_length > length("4 psi")', 'rule-literal', '"4 psi"'],
    ['a_length > length(strip)', 'rule-literal', 'strip'],
    ['a_length > length("1" + " in")', 'rule-literal', '"1" + " in"'],
    ['a_length > length("""1 in""")', 'rule-literal', '"""1 in"""'],
    ['a_length > length(3)', 'rule-literal', '3'],
    ['a_length > length()', 'rule-literal', 'length()'],
    ['a_pressure_gauge > gauge("60 psi")', 'rule-literal', '"60 psi"'],
    ['a_pressure_absolute > absolute("-1 psia")', 'rule-literal', '"-1 psia"'],
    ['a_mass > mass("-1 lb")', 'rule-literal', '"-1 lb"'],
    ['012 * a_length > b_length', 'rule-literal', '012'],
    ['0x10 * a_length > b_length', 'rule-literal', '0x10'],
    ['1e3 * a_length > b_length', 'rule-literal', '1e3'],
    ['2u * a_length > b_length', 'rule-literal', '2u'],
    // Nothing that loops, guesses, matches, looks up or leaves
    ['bore.exists(x, x > a_length)', 'rule-word', 'bore.exists(x, x > a_length)'],
    ['bore.all(x, x > a_length)', 'rule-word', 'bore.all(x, x > a_length)'],
    ['max(bore.map(x, x)) > a_length', 'rule-word', 'bore.map(x, x)'],
    ['strip.matches("(a+)+$")', 'rule-word', 'strip.matches("(a+)+$")'],
    ['strip.size() > 3', 'rule-word', 'strip.size()'],
    ['size(strip) > 3', 'rule-word', 'size(strip)'],
    ['string(a_length) == strip', 'rule-type', 'string(a_length)'],
    ['dyn(strip) == 3', 'rule-word', 'dyn(strip)'],
    [
      'timestamp("2026-01-01T00:00:00Z") > timestamp("2025-01-01T00:00:00Z")',
      'rule-word',
      'timestamp("2026-01-01T00:00:00Z")',
    ],
    ['has(machine.counterbore)', 'rule-word', 'has(machine.counterbore)'],
    ['type(a_length) == type(b_length)', 'rule-word', 'type(a_length)'],
    ['bore[0] > a_length', 'rule-word', 'bore[0]'],
    ['machine["nominal"] > a_length', 'rule-word', 'machine["nominal"]'],
    ['a_length.si > 3', 'rule-word', 'a_length.si'],
    ['machine.nominal.si > 3', 'rule-word', 'machine.nominal.si'],
    ['{"a": a_length} == {"a": a_length}', 'rule-word', '{"a": a_length}'],
    ['a_number % 2 > 1', 'rule-word', 'a_number % 2'],
    ['b"x" == strip', 'rule-type', 'b"x"'],
    ['cel.bind(x, a_length, x) > a_length', 'rule-word', 'cel.bind(x, a_length, x)'],
    ['a_length > b_length // && strip == "gone"', 'rule-word', '// && strip == "gone"'],
    // Nothing at all
    ['true', 'rule-constant', 'true'],
    ['1 < 2', 'rule-constant', '1 < 2'],
    ['strip = "gone"', 'rule', '='],
    ['strip == "gone', 'rule', '"gone'],
    ['strip ==', 'rule', ''],
    ['(strip == "gone"', 'rule', ''],
    ['strip == "gone")', 'rule', ')'],
    ['while == "gone"', 'rule', 'while'],
    ['a_length \u2265 b_length', 'rule', '\u2265'],
    ['', 'rule', ''],
    // Computations
    ['compute("plate-lode", {}).load > a_force', 'unknown-computation', '"plate-lode"'],
    [
      'compute("plate-load", {"pressure": a_pressure_gauge, "area": a_area}).load > a_force',
      'rule-type',
      'a_pressure_gauge',
    ],
    [
      'compute("plate-load", {"pressure": a_pressure_absolute, "aera": a_area}).load > a_force',
      'unknown-input',
      '"aera"',
    ],
    [
      'compute("plate-load", {"pressure": a_pressure_absolute}).load > a_force',
      'missing-input',
      '{"pressure": a_pressure_absolute}',
    ],
    ['compute("plate-load", {"area": a_area, "area": a_area}).load > a_force', 'repeated-input', '"area"'],
    [
      'compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area}).laod > a_force',
      'unknown-output',
      'laod',
    ],
    [
      'compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area, "side": "haed"}).load > a_force',
      'unknown-outcome',
      '"haed"',
    ],
    [
      'compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area, "gaps": a_length}).load > a_force',
      'rule-type',
      'a_length',
    ],
    [
      'compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area}).load > a_length',
      'rule-type',
      'compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area}).load > a_length',
    ],
    [
      'compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area}).gaps > a_length',
      'rule-type',
      'compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area}).gaps',
    ],
    [
      'compute("plate-load", {"pressure": a_pressure_absolute, "area": a_area}).sense == "pusch"',
      'unknown-outcome',
      '"pusch"',
    ],
    ['compute(strip, {}).load > a_force', 'rule-type', 'compute(strip, {})'],
    ['compute("plate-load", machine).load > a_force', 'rule-type', 'compute("plate-load", machine)'],
  ])('%s: %s', (text, code, marked) => {
    const compiled = compileRule(text, SCOPE)
    expect(compiled.ok).toBe(false)
    if (compiled.ok) return
    const { error } = compiled
    expect([error.code, text.slice(error.range.start, error.range.end)]).toEqual([code, marked])
    expect(error.say).toMatch(/^[A-Za-z'"&!].*\.$/)
    expect(error.say).not.toMatch(/undefined|overload|[\n_]{2}/)
  })

  it('points at the later of two like words, not at the first', () => {
    const text = 'compute("plate-load", {"area": a_area, "area": a_area}).load > a_force'
    const compiled = compileRule(text, SCOPE)
    expect(compiled.ok ? -1 : compiled.error.range.start).toBe(text.lastIndexOf('"area"'))
  })
})

describe('a value', () => {
  it('is of the kind it is said to be', () => {
    const good = compileValue('max(bore) - machine.nominal', 'length', SCOPE)
    expect(good.ok).toBe(true)
    const values = new Map([
      ['bore', several('length', 0.2, 0.25)],
      ['machine.nominal', one('length', 0.2)],
    ])
    const outcome = good.ok && good.value.work(values)
    expect(outcome).toMatchObject({ is: 'known', value: { is: 'quantity', quantity: { kind: 'length' } } })
    const wrong = compileValue('max(bore) / machine.nominal', 'length', SCOPE)
    expect(wrong.ok ? '' : wrong.error.code).toBe('value-kind')
    const yes = compileValue('max(bore) > machine.nominal', 'number', SCOPE)
    expect(yes.ok ? '' : yes.error.say).toBe(
      'This comes to a yes or no, and its kind is said to be a number without a unit.',
    )
  })

  it('comes from something: a figure that is always the same has no source', () => {
    const constant = compileValue('length("0.004 in")', 'length', SCOPE)
    expect(constant.ok ? '' : constant.error.code).toBe('rule-constant')
  })
})

describe('numbers', () => {
  it('are of one sort: a third is a third, whole or not', () => {
    const third = compileValue('1 / 3 * a_length', 'length', SCOPE)
    const outcome = third.ok && third.value.work(new Map([['a_length', one('length', 3)]]))
    expect(outcome).toEqual({ is: 'known', value: { is: 'quantity', quantity: { kind: 'length', si: 1 } } })
    expect(compileExpression('count(bore) / 2 + 0.5', SCOPE)).toMatchObject({ value: { type: 'number' } })
  })
})

describe('the bounds of a rule', () => {
  const sum = (terms: number) => `${Array(terms).fill('a_length').join('+')} > b_length`
  const nested = (levels: number) => `${'('.repeat(levels)}a_length${')'.repeat(levels)} > b_length`

  it('are few nodes, each counted once', () => {
    expect(rule('a_length > b_length').size).toBe(3)
    expect(rule('strip in ["gone", "unsure"] && !(surface == "sound")').size).toBe(10)
    expect(rule(sum(50)).size).toBe(101)
    const many = compileRule(`${Array(120).fill('1').join('+')} > a_number`, SCOPE)
    expect(many.ok ? '' : many.error.say).toBe('The rule is too long or too deep to be read.')
    const letters = compileRule(sum(80), SCOPE)
    expect(letters.ok ? '' : letters.error.say).toBe('The rule is too long to be read.')
  })

  it('are few levels', () => {
    expect(rule(nested(15)).size).toBe(3)
    const deep = compileRule(nested(30), SCOPE)
    expect(deep.ok ? '' : deep.error.say).toBe('The rule is too long or too deep to be read.')
    expect(compileRule(`${'!'.repeat(590)}strip`, SCOPE).ok).toBe(false)
  })
})
