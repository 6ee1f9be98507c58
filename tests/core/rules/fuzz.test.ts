// Ten thousand expressions: none reaches anything outside, none takes longer than its nodes, none crashes; and of those
// that are well typed each comes to the figure that exact fractions give.
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Value } from '../../../src/core/compute/computation.ts'
import { compileExpression } from '../../../src/core/rules/expression.ts'
import { Measured, OPERANDS } from '../../../src/core/rules/measured.ts'
import { compileRule } from '../../../src/core/rules/rule.ts'
import { typeOf } from '../../../src/core/rules/type-names.ts'
import type { Values } from '../../../src/core/rules/types.ts'
import { compileValue } from '../../../src/core/rules/value.ts'
import { exponentsOf, minus, size, toNumber } from './exact.ts'
import { anything, drawing, figure, type Known, knownFor, pick } from './generate.ts'
import { ALL_VALUES, SCOPE, word } from './sample-scope.ts'

const RUNS = 10_000
/** Nodes bound the time a rule takes, as none is worked out twice; a clock would tell of the machine it runs on. */
const MOST_NODES = 200

/** Reads of anything that is not the expression's: set off by names the expressions are full of. */
let outside: string[] = []

function trap(owner: object, name: string): void {
  Object.defineProperty(owner, name, {
    configurable: true,
    get: () => {
      outside.push(name)
      return undefined
    },
  })
}

/** The values of the job, watched: only names that the expression refers to may be asked for. */
function watched(values: Values, names: readonly string[]): Values {
  const hidden = new Proxy(new Map(values), {
    get(map, key) {
      if (key !== 'get') outside.push(`values.${String(key)}`)
      return (name: string) => {
        if (!names.includes(name)) outside.push(`value ${name}`)
        return map.get(name)
      }
    },
  })
  return hidden
}

describe('ten thousand expressions of any sort', () => {
  beforeAll(() => {
    trap(globalThis, 'outside')
    trap(Object.prototype, 'outside')
    trap(Array.prototype, 'outside')
    trap(Map.prototype, 'outside')
  })
  afterAll(() => {
    for (const owner of [globalThis, Object.prototype, Array.prototype, Map.prototype])
      Reflect.deleteProperty(owner, 'outside')
  })

  it('are refused with a place in the text, or worked out within their nodes, and reach nothing outside', () => {
    outside = []
    const codes = new Map<string, number>()
    for (let seed = 0; seed < RUNS; seed++) {
      const text = anything(drawing(seed))
      const asRule = compileRule(text, SCOPE)
      if (asRule.ok) {
        const { names, size: nodes } = asRule.value
        expect(nodes).toBeLessThanOrEqual(MOST_NODES)
        expect(['true', 'false', 'unknown']).toContain(asRule.value.evaluate(watched(ALL_VALUES, names)))
        expect(asRule.value.evaluate(new Map()), text).toBe('unknown')
      } else {
        const { range, say, code } = asRule.error
        expect(range.start >= 0 && range.start <= range.end && range.end <= text.length, text).toBe(true)
        expect(say, text).toMatch(/^[^\n\u0000-\u001f]{5,400}$/)
        codes.set(code, (codes.get(code) ?? 0) + 1)
      }
      const kind = pick(drawing(seed), OPERANDS)
      const asValue = compileValue(text, kind, SCOPE)
      if (asValue.ok) {
        expect(asValue.value.work(watched(ALL_VALUES, asValue.value.names)).is).toMatch(/^(known|unknown)$/)
        expect(asValue.value.work(new Map()).is).toBe('unknown')
      }
    }
    expect(outside).toEqual([])
    const wanted = ['rule', 'rule-word', 'rule-type', 'rule-literal', 'rule-constant', 'rule-equal']
    for (const code of [...wanted, 'unknown-step', 'unknown-fact', 'unknown-outcome', 'used-too-early'])
      expect(codes.get(code) ?? 0, code).toBeGreaterThan(0)
  })

  it('would be caught reaching outside', () => {
    outside = []
    expect((globalThis as { outside?: unknown }).outside).toBeUndefined()
    expect(({} as { outside?: unknown }).outside).toBeUndefined()
    watched(ALL_VALUES, ['strip']).get('surface')
    expect(outside).toEqual(['outside', 'outside', 'value surface'])
  })
})

function valuesFrom(known: Known): Values {
  const values = new Map<string, Value>([['strip', word('present')]])
  for (const of of OPERANDS)
    for (const prefix of ['a', 'b']) {
      const name = `${prefix}_${typeOf(of)}`
      const si = toNumber(known.get(name)?.value ?? { top: 0n, bottom: 1n })
      values.set(
        name,
        of === 'number' ? { is: 'number', number: si } : { is: 'quantity', quantity: { kind: of, si } },
      )
    }
  return values
}

describe('ten thousand well-typed expressions', () => {
  it('come to the kind, the exponents and the figure that exact fractions give', () => {
    let [known, unknown] = [0, 0]
    for (let seed = 0; seed < RUNS; seed++) {
      const draw = drawing(seed + RUNS)
      const names = knownFor(draw)
      const of = pick(draw, OPERANDS)
      const { text, exact } = figure(draw, of, 1 + draw(3), names)
      if (text.length > 600) continue
      const compiled = compileExpression(text, SCOPE)
      if (!compiled.ok && compiled.error.say.includes('too long')) continue
      expect(compiled.ok ? compiled.value.type : compiled.error.say, text).toBe(typeOf(of))
      if (!compiled.ok) continue
      expect(exact.exponents, text).toEqual(exponentsOf(of))
      const outcome = compiled.value.work(valuesFrom(names))
      if (exact.impossible) {
        expect(outcome.is, text).toBe('unknown')
        unknown += 1
        continue
      }
      expect(outcome.is, text).toBe('known')
      const si = outcome.is === 'known' && outcome.value instanceof Measured ? outcome.value.si : Number.NaN
      const slack = 1e-11 * toNumber(exact.scale)
      expect(Math.abs(si - toNumber(exact.value)), text).toBeLessThanOrEqual(slack)
      known += 1
    }
    expect(known).toBeGreaterThan(RUNS * 0.9)
    expect(unknown).toBeGreaterThan(20)
  })

  it('compare as the exact figures do', () => {
    let told = 0
    for (let seed = 0; seed < RUNS / 5; seed++) {
      const draw = drawing(seed + 3 * RUNS)
      const names = knownFor(draw)
      const of = pick(draw, OPERANDS)
      const [x, y] = [figure(draw, of, 1 + draw(2), names), figure(draw, of, 1 + draw(2), names)]
      const text = `${x.text} < ${y.text}`
      const compiled = compileRule(text, SCOPE)
      if (!compiled.ok) {
        expect(compiled.error.code, text).toBe('rule-constant')
        continue
      }
      const outcome = compiled.value.evaluate(valuesFrom(names))
      const apart = minus(x.exact.value, y.exact.value)
      const slack = 1e-11 * (toNumber(x.exact.scale) + toNumber(y.exact.scale))
      if (x.exact.impossible || y.exact.impossible) expect(outcome, text).toBe('unknown')
      else if (toNumber(size(apart)) > slack) {
        expect(outcome, text).toBe(apart.top < 0n ? 'true' : 'false')
        told += 1
      }
    }
    expect(told).toBeGreaterThan(1000)
  })
})
