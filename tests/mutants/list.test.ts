// The list of safety rules fits the tree: what is to be broken stands there once, and the test that is to notice is there.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { ROOT } from '../helpers/example.ts'
import { MUTANTS, staleWhy, titlePattern } from './list.ts'

const texts = new Map<string, string>()
function read(path: string): string {
  const text = texts.get(path) ?? readFileSync(join(ROOT, path), 'utf8')
  texts.set(path, text)
  return text
}

it('every rule can still be broken as the list says, and names a test that is there', () => {
  expect(MUTANTS.flatMap((mutant) => staleWhy(mutant, read) ?? [])).toEqual([])
})

it('a rule stands in it once, as a sentence, and its test by name', () => {
  const rules = MUTANTS.map((mutant) => mutant.rule)
  expect(rules.filter((rule, i) => rules.indexOf(rule) !== i)).toEqual([])
  for (const { rule, test } of MUTANTS) {
    expect(rule).toMatch(/^[A-Z].*[a-zA-Z0-9]\.$/)
    expect([rule, test.title.length > 5]).toEqual([rule, true])
  }
})

it('a list that does not fit is told from one that does', () => {
  const [mutant] = MUTANTS
  if (mutant === undefined) throw new Error('the list is empty')
  expect(staleWhy({ ...mutant, find: 'no such code' }, read)).toMatch(/stands 0 times/)
  expect(staleWhy({ ...mutant, find: 'const ' }, read)).toMatch(/stands \d+ times, not once/)
  expect(staleWhy({ ...mutant, into: mutant.find }, read)).toMatch(/breaks nothing/)
  expect(staleWhy({ ...mutant, test: { ...mutant.test, title: 'no such test' } }, read)).toMatch(
    /has no "no such test"/,
  )
  expect(titlePattern(['a (b)', 'c.d']).test('says a (b) is')).toBe(true)
  expect(titlePattern(['a (b)', 'c.d']).test('cxd')).toBe(false)
})
