// What the reference shows as whole pieces of a file passes check where it says they go.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { ROOT, Walk } from '../helpers/example.ts'
import { answersIn, check, defsOf, MACHINE, PART, PROCEDURE } from './guide-files.ts'

const REFERENCE = readFileSync(join(ROOT, 'procedures/REFERENCE.md'), 'utf8')
const FIGURES = REFERENCE.slice(REFERENCE.indexOf('### Figures in rules'))
const STARTER = readFileSync(join(ROOT, 'examples/first-procedure.yaml'), 'utf8')
const ANSWERS = readFileSync(join(ROOT, 'examples/first-procedure-answers.txt'), 'utf8')

function fence(word: string): string {
  const found = [...REFERENCE.matchAll(new RegExp(`^\`\`\`${word}\\n(.*?)^\`\`\``, 'gms'))]
  expect(found).toHaveLength(1)
  return found[0]?.[1] ?? ''
}

const withEnd = (piece: string) => new Map([[PROCEDURE, STARTER + piece]])
const withPart = () => withEnd(fence('part')).set(PART, fence('yaml'))

describe('the reference', () => {
  it('shows a reading along axes that passes check, by itself and as a job, and is drawn', () => {
    const files = withEnd(fence('axes'))
    expect(check(files).diagnostics).toEqual([])
    expect(check(files, MACHINE).diagnostics).toEqual([])
    const walk = new Walk(defsOf(files), 'PRACTICE').keys(...answersIn(ANSWERS))
    expect(walk.prompt).toMatchObject({ kind: 'read', place: { key: 'bore.head.upright' } })
  })

  it('shows a part and a step that uses it, which pass check and ask one thing more', () => {
    expect(check(withPart()).diagnostics).toEqual([])
    expect(check(withPart(), MACHINE).diagnostics).toEqual([])
    const walk = new Walk(defsOf(withPart()), 'PRACTICE').keys(...answersIn(ANSWERS))
    expect(walk.state.closed).toBeNull()
    expect(walk.keys('1').state.closed).toBe('NONE')
  })

  it('shows needs that a step and a part may have, and no other kind of them passes', () => {
    const piece = /^needs:\n(?: .*\n)+/m.exec(REFERENCE)?.[0] ?? ''
    expect(piece).toContain('kind: lifting')
    const needs = piece.replace(/^/gm, '    ').trimEnd()
    const last = `  - id: cranked\n    kind: tell\n    title: End\n${needs}\n`
    expect(check(withEnd(last)).diagnostics).toEqual([])
    const part = new Map([[PROCEDURE, `${STARTER}${fence('part')}${needs}\n`]]).set(PART, fence('yaml'))
    expect(check(part, MACHINE).diagnostics).toEqual([])
    expect(check(withEnd(last.replace('kind: lifting', 'kind: crane'))).diagnostics).toHaveLength(1)
    expect(check(withEnd(`${last.slice(0, last.indexOf('needs:'))}needs: []\n`)).diagnostics).toHaveLength(1)
  })

  it('shows rules and values that hold', () => {
    const [rules = '', values = ''] = [...FIGURES.matchAll(/^```text\n(.*?)^```/gms)].map(
      (one) => one[1] ?? '',
    )
    const temperature = (id: string) =>
      `  - { id: ${id}, kind: read, title: T, quantity: temperature, of: metal, with: heat, drawing: none, ` +
      'stations: [{ id: a, label: a, at: 0.5 }], how: { contact_thermometer: Press. }, ' +
      'repeats: { at_least: 1, at_most: 3, within: 1 delta-degF }, plausible: { from: range, least: 0 degF, most: 160 degF } }\n'
    const surface =
      '  - { id: surface, kind: observe, title: S, conditions: [{ id: sound, label: a }, { id: torn, label: b }] }\n'
    const before = STARTER.replace(
      'seats:\n',
      'seats:\n  - { id: heat, kinds: [contact_thermometer], for: heat }\n',
    ).replace('steps:\n', `${values}steps:\n`)
    const steps = `${fence('axes')}${temperature('part_temp_before')}${temperature('part_temp_after')}${surface}`
    const asked = rules
      .trimEnd()
      .split('\n')
      .map(
        (rule, n) => `  - { id: end_${n}, kind: tell, title: E, when: { rule: '${rule}', unknown: do } }\n`,
      )
    expect(asked).toHaveLength(3)
    expect(check(new Map([[PROCEDURE, before + steps + asked.join('')]])).diagnostics).toEqual([])
  })
})
