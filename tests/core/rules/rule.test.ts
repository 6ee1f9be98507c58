import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compileRule } from '../../../src/core/rules/rule.ts'

const NAMES = ['strip', 'bore_judged']

function rule(text: string) {
  const compiled = compileRule(text, NAMES)
  if (!compiled.ok) throw new Error(compiled.error.say)
  return compiled.value
}

describe('a when rule', () => {
  it('compares the outcome of an earlier step', () => {
    const r = rule('strip == "present"')
    expect(r.evaluate(new Map([['strip', 'present']]))).toBe('true')
    expect(r.evaluate(new Map([['strip', 'gone']]))).toBe('false')
    expect(r.names).toEqual(['strip'])
  })

  it('is unknown as soon as any name in any branch has no value, whatever the other branch says', () => {
    const r = rule('strip == "present" || bore_judged == "HOLD"')
    expect(r.evaluate(new Map([['strip', 'present']]))).toBe('unknown')
    expect(r.evaluate(new Map())).toBe('unknown')
  })

  it.each([
    ['strip == 3', 'rule'],
    ['strp == "a"', 'rule'],
    ['strip', 'rule-type'],
    ['strip = "a"', 'rule'],
    ['true', 'rule-constant'],
    ['strip.matches("(a+)+$")', 'rule-word'],
    ['size(strip) == 3', 'rule-word'],
    ['[1].exists(x, strip == "a")', 'rule'],
    ['', 'rule'],
  ])('refuses %s', (text, code) => {
    const compiled = compileRule(text, NAMES)
    expect(compiled.ok).toBe(false)
    if (!compiled.ok) {
      expect(compiled.error.code).toBe(code)
      expect(compiled.error.say).not.toContain('\n')
    }
  })

  it('never throws on any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        const compiled = compileRule(text, NAMES)
        if (compiled.ok)
          expect(['true', 'false', 'unknown']).toContain(compiled.value.evaluate(new Map([['strip', 'a']])))
      }),
      { numRuns: 500 },
    )
  })
})
