// What was found and marked as a finding needs a lead's word before the job ends, and the lead gives it there by number.
import { describe, expect, it } from 'vitest'
import { nonconformances } from '../../../src/core/job/nonconformance.ts'
import { layOut, plainText } from '../../../src/core/sheet/block.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { Walk } from '../../helpers/example.ts'
import { type Raw, smallDefs, tell } from '../../helpers/small-job.ts'

const STYLE = { width: 79, record: 'EXAMPLE', ascii: true } as const
const look = (id: string): Raw => ({
  id,
  kind: 'observe',
  title: id,
  conditions: [
    { id: 'sound', label: 'Sound' },
    { id: 'scored', label: 'Scored', finding: true },
  ],
})
const jobOf = (...steps: Raw[]) => new Walk(smallDefs(steps)).keys('RO', 'TC-401-1')
const found = (...keys: string[]) => jobOf(look('rod'), look('bore')).keys(...keys)
const names = (walk: Walk) =>
  walk.prompt.kind === 'findings' ? walk.prompt.open.map((one) => one.name) : null
const dispose = (walk: Walk, person: string, choice = 'accept', step = 'rod') =>
  walk.bring({
    do: 'dispose',
    step,
    choice,
    person,
    why: 'light, run it',
    until: '4000 h',
    authority: 'MT-2',
  })
const shown = (walk: Walk) => {
  const block = entryBlock(walk.engine.defs, walk.state, walk.last)
  return block === null ? '' : plainText(layOut(block, STYLE))
}

describe('a job with findings', () => {
  it('does not end before a lead has decided on each, by number', () => {
    const walk = found('2', '2')
    expect(names(walk)).toEqual(['NC-1', 'NC-2'])
    const rows = promptView(walk.engine.defs, walk.state, walk.talk, STYLE).ask.map(({ text }) => text)
    expect(rows.slice(0, 2)).toEqual(['1  NC-1 rod: Scored', '2  NC-2 bore: Scored'])
    expect(walk.key('3')).toBeNull()
    expect(walk.said.at(-1)).toBe('Key the number of a finding, 1 to 2.')
    walk.keys('2', '4', 'KH', 'new liner')
    expect(walk.last).toMatchObject({
      type: 'disposition.set',
      step: 'bore',
      about: 'bore',
      choice: 'replace',
    })
    expect(shown(walk)).toMatch(/NC-2 bore: Scored[\s\S]*Disposition by KH: REPLACE[\s\S]*new liner/)
    expect(names(walk)).toEqual(['NC-1'])
    expect(walk.state.closed).toBeNull()
    walk.keys('1', '1', 'KH', 'light')
    expect(walk.state.closed).toBe('NONE')
    expect(shown(walk)).not.toContain('open:')
  })

  it('ends by itself where nothing was found', () => {
    expect(found('1', '1').state.closed).toBe('NONE')
  })

  it('ends with HOLD where a lead holds one', () => {
    const walk = found('2', '1').keys('1', '6', 'KH', 'not to run like this')
    expect(walk.state.closed).toBe('HOLD')
  })

  it('takes a concession with its authority and how long', () => {
    const walk = found('2', '1').keys('1', '5', 'KH', 'to the shutdown', 'site rule MT-2', '4000 h', '91000')
    expect(walk.state.dispositions.rod).toMatchObject({ choice: 'concession', valid: { hours: 4000 } })
    expect(walk.state.closed).toBe('NONE')
  })

  it.each([
    ['a mechanic', 'ML', 'accept', 'not-lead'],
    ['nobody of the crew', 'XX', 'accept', 'unknown-person'],
    ['a word that is none', 'KH', 'scrap', 'choice'],
  ])('is not decided by %s', (_who, person, choice, code) => {
    const walk = found('2', '1')
    expect(dispose(walk, person, choice)).toBe(code)
    expect(names(walk)).toEqual(['NC-1'])
  })

  it('is decided by a lead at the keyboard, but not by the lead who found it', () => {
    const walk = jobOf(look('rod'), tell('end')).keys('2', 'hand over', 'KH', '')
    expect(walk.state.doer).toBe('KH')
    const own = walk.copy()
    own.state = { ...own.state, doneBy: { rod: ['KH'] } }
    expect(dispose(own, 'KH')).toBe('own-work')
    expect(dispose(own, 'PB')).toBeNull()
    expect(dispose(walk, 'KH')).toBeNull()
    expect(walk.state.closed).toBe('NONE')
  })

  it('cannot be decided before the end, nor where nothing was found', () => {
    expect(dispose(jobOf(look('rod'), look('bore')).keys('2'), 'KH')).toBe('not-asked')
    expect(dispose(found('1', '2'), 'KH')).toBe('not-asked')
  })

  it('by radio is open until the lead signs for it', () => {
    const walk = jobOf(look('rod')).keys('sign on', 'ML').keys('2', '1', '1', 'radio', 'KH', 'run it', 'ML')
    expect(walk.prompt.kind).toBe('countersign')
    walk.keys('KH', '2')
    expect(names(walk)).toEqual(['NC-1'])
  })

  it('is asked anew of what is found once more, and decides nothing for a rule', () => {
    const walk = found('2', '2').keys('1', '1', 'KH', 'light')
    walk.bring({ do: 'correct-finding', step: 'rod', condition: 'sound', why: 'wiped off' })
    expect(names(walk)).toEqual(['NC-2'])
    walk.bring({ do: 'correct-finding', step: 'rod', condition: 'scored', why: 'it was right' })
    expect(names(walk)).toEqual(['NC-2', 'NC-3'])
    expect(nonconformances(walk.engine.defs, walk.state).find((nc) => nc.name === 'NC-3')?.decided).toBeNull()
  })
})

describe('a rule over a finding that is decided', () => {
  it('still goes by what was found', () => {
    const polish = tell('polish', { when: { rule: 'rod == "scored"', unknown: 'hold' } })
    const walk = jobOf(look('rod'), polish).keys('2', '', '1', '3', 'KH', 'polished')
    expect(walk.entries.some((e) => e.type === 'branch.left')).toBe(false)
    expect(walk.state.closed).toBe('NONE')
  })
})
