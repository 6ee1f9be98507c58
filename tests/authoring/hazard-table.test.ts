// The table of hazards is held against the procedures: what it names is there, and nothing is left without an answer.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { ROOT } from '../helpers/example.ts'
import { SHIPPED, shippedDefs } from '../helpers/shipped-jobs.ts'

const PAGE = readFileSync(join(ROOT, 'procedures/HAZARDS.md'), 'utf8')
const ROWS = PAGE.split('\n')
  .filter((line) => /^\| \d/.test(line))
  .map((line) => line.split('|').map((cell) => cell.trim()))
const DEFS = new Map(SHIPPED.map((name) => [shippedDefs(name).procedure.procedure, shippedDefs(name)]))

describe('the table of hazards', () => {
  it('has a row for each of the 36', () => {
    expect(ROWS.map((cells) => Number(cells[1]))).toEqual(Array.from({ length: 36 }, (_, i) => i + 1))
  })

  it.each(ROWS.filter((cells) => cells[3] !== ''))('row %#: %s %s %s', (...cells) => {
    const [, , , procedure = '', gate = '', evidence = ''] = cells
    const defs = DEFS.get(procedure)
    const own = defs?.procedure.steps.find((step) => `\`${step.id}\`` === gate)
    expect(own?.kind, `${gate} in ${procedure}`).toBe('gate')
    const ids = own?.kind === 'gate' ? own.evidence.map((e) => e.id) : []
    const named = [...evidence.matchAll(/`(\w+)`/g)].map((match) => match[1])
    expect(named.length).toBeGreaterThan(0)
    for (const id of named) expect(ids, `${id} in ${gate}`).toContain(id)
  })

  it('says why wherever it names no gate', () => {
    for (const [, number, , , , why] of ROWS.filter((cells) => cells[3] === '')) {
      expect(why).toMatch(/^none: /)
      expect(PAGE).toMatch(new RegExp(`^- \\*\\*${number}, `, 'm'))
    }
  })
})
