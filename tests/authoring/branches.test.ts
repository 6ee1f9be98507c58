// Steps that can never be reached, held against every way through random small procedures, walked by a reader of rules
// that knows neither CEL nor the checker.
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readDefinition } from '../../src/authoring/definition-file.ts'
import { sourceLine } from '../../src/authoring/diagnostic.ts'

type Rule =
  | { readonly op: '==' | '!='; readonly step: number; readonly word: string }
  | { readonly op: '&&' | '||'; readonly step?: never; readonly left: Rule; readonly right: Rule }

interface Step {
  readonly words: readonly string[]
  readonly rule: Rule | null
  readonly unknown: 'do' | 'skip' | 'hold'
}

const WORDS = ['a', 'b', 'c']

function ruleOver(before: number): fc.Arbitrary<Rule> {
  const leaf = fc.record({
    op: fc.constantFrom('==', '!=' as const),
    step: fc.nat({ max: before - 1 }),
    word: fc.constantFrom('a', 'b'),
  }) as fc.Arbitrary<Rule>
  const pair = fc.record({
    op: fc.constantFrom('&&', '||' as const),
    left: leaf,
    right: leaf,
  }) as fc.Arbitrary<Rule>
  return fc.oneof(leaf, pair)
}

const procedure: fc.Arbitrary<Step[]> = fc.integer({ min: 2, max: 5 }).chain((count) =>
  fc.tuple(
    ...Array.from({ length: count }, (_, n) =>
      fc.record({
        words: fc.constantFrom(WORDS.slice(0, 2), WORDS),
        rule: n === 0 ? fc.constant(null) : fc.option(ruleOver(n), { freq: 5 }),
        unknown: fc.constantFrom('do', 'skip', 'hold' as const),
      }),
    ),
  ),
) as fc.Arbitrary<Step[]>

function written(rule: Rule): string {
  if (rule.step !== undefined) return `s${rule.step} ${rule.op} "${rule.word}"`
  return `(${written(rule.left)}) ${rule.op} (${written(rule.right)})`
}

function truth(rule: Rule, known: readonly (string | undefined)[]): boolean {
  if (rule.step !== undefined) return (known[rule.step] === rule.word) === (rule.op === '==')
  const [left, right] = [truth(rule.left, known), truth(rule.right, known)]
  return rule.op === '&&' ? left && right : left || right
}

function namesIn(rule: Rule): number[] {
  return rule.step !== undefined ? [rule.step] : [...namesIn(rule.left), ...namesIn(rule.right)]
}

/** Numbers of the steps that some way through comes to do. */
function reached(steps: readonly Step[]): Set<number> {
  const done = new Set<number>()
  const walk = (n: number, known: readonly (string | undefined)[]): void => {
    const step = steps[n]
    if (step === undefined) return
    const isUnknown = step.rule !== null && namesIn(step.rule).some((name) => known[name] === undefined)
    const act = isUnknown ? step.unknown : step.rule === null || truth(step.rule, known) ? 'do' : 'skip'
    if (act === 'hold') return
    if (act === 'do') done.add(n)
    for (const word of act === 'do' ? step.words : [undefined]) walk(n + 1, [...known, word])
  }
  walk(0, [])
  return done
}

/** Can the rule be true, and can it be false, if each step it names could have any of its words? */
function alone(rule: Rule, steps: readonly Step[]): Set<boolean> {
  const found = new Set<boolean>()
  const walk = (n: number, known: readonly string[]): void => {
    if (n === steps.length) found.add(truth(rule, known))
    else for (const word of steps[n]?.words ?? []) walk(n + 1, [...known, word])
  }
  walk(0, [])
  return found
}

const HEAD = readFileSync(new URL('../fixtures/files/good-part.yaml', import.meta.url), 'utf8').split(
  'hazards:',
)[0]

function asText(steps: readonly Step[]): string {
  const texts = steps.map(({ words, rule, unknown }, n) =>
    [
      `  - { id: s${n}, kind: observe, title: Look,`,
      rule === null ? '' : `      when: { rule: '${written(rule)}', unknown: ${unknown} },`,
      `      conditions: [${words.map((word) => `{ id: ${word}, label: "${word}" }`).join(', ')}] }`,
    ].join('\n'),
  )
  return `${HEAD}hazards: []\nseats: []\nsteps:\n${texts.join('\n')}\n`
}

/** Code of the finding at each step, by the number of the step. */
function told(steps: readonly Step[]): Map<number, string> {
  const text = asText(steps)
  const result = readDefinition(text, 'f')
  const found = new Map<number, string>()
  for (const one of result.ok ? result.warnings : result.diagnostics) {
    if (!/^(never|always)/.test(one.code)) throw new Error(`${one.code}: ${one.message}\n${text}`)
    const above = text.split('\n').slice(0, one.line).join('\n')
    found.set(Number([...above.matchAll(/id: s(\d)/g)].pop()?.[1]), one.code)
    expect(sourceLine(text, one.line)).toContain('rule:')
  }
  return found
}

describe('branches of a random procedure', () => {
  it('are told of exactly when no way takes them', () => {
    const seen = new Map<string, number>()
    fc.assert(
      fc.property(procedure, (steps) => {
        const found = told(steps)
        const done = reached(steps)
        for (const [n, code] of found) {
          seen.set(code, (seen.get(code) ?? 0) + 1)
          const rule = steps[n]?.rule
          if (rule === null || rule === undefined) throw new Error('a step without a rule was told of')
          if (code === 'never-reached') expect(done.has(n)).toBe(false)
          else expect([...alone(rule, steps)]).toEqual([code === 'always-true'])
        }
        // The first step that no way reaches has no other to blame, so it must be told of.
        const first = steps.findIndex((_step, n) => !done.has(n))
        if (first !== -1 && steps.slice(0, first).every((_step, n) => !found.has(n)))
          expect(found.has(first)).toBe(true)
        const odd = steps.findIndex(({ rule }) => rule !== null && alone(rule, steps).size === 1)
        if (odd !== -1 && steps.slice(0, odd).every((_step, n) => !found.has(n)))
          expect(found.has(odd)).toBe(true)
      }),
      { numRuns: Number(process.env.BRANCHES ?? 800) },
    )
    expect([...seen.keys()].sort()).toEqual(['always-true', 'never-reached', 'never-true'])
  })
})

describe('a rule over more cases than can be tried', () => {
  it('is a warning, never a silence', () => {
    const words = Array.from({ length: 9 }, (_, n) => `w${n}`)
    const steps: Step[] = Array.from({ length: 5 }, () => ({ words, rule: null, unknown: 'hold' as const }))
    const rule = '(s0 == "w0" && s1 == "w1") && (s2 == "w2" && s3 == "w3") && s4 == "w4"'
    const text = `${asText(steps)}  - { id: last, kind: tell, title: Go, when: { rule: '${rule}', unknown: hold } }\n`
    const result = readDefinition(text, 'f')
    expect(result.ok && result.warnings.map((one) => one.code)).toEqual(['not-tried'])
  })
})
