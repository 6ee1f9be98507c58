// Several conditions found at one step: each a finding with a number of its own, under one note; and none that contradict.
import { describe, expect, it } from 'vitest'
import { readEntries } from '../../../src/core/job/entry-schema.ts'
import { handOverLines } from '../../../src/core/job/hand-over.ts'
import { nonconformances } from '../../../src/core/job/nonconformance.ts'
import { layOut, plainText } from '../../../src/core/sheet/block.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { Walk } from '../../helpers/example.ts'
import { smallDefs, tell } from '../../helpers/small-job.ts'

const STYLE = { width: 79, record: 'EXAMPLE', ascii: true } as const
const LOOK = {
  id: 'surface',
  kind: 'observe',
  title: 'Surface',
  several: true,
  conditions: [
    { id: 'sound', label: 'Even sheen' },
    { id: 'scored', label: 'Scoring', note: true, finding: true },
    { id: 'ridge', label: 'A ridge', note: true, finding: true },
    { id: 'cracked', label: 'A crack', finding: true },
  ],
}
const begin = (look: object = LOOK) =>
  new Walk(smallDefs([look as never, tell('end')])).keys('RO', 'TC-401-1')
const list = (walk: Walk) => nonconformances(walk.engine.defs, walk.state)
const shown = (walk: Walk) => {
  const block = entryBlock(walk.engine.defs, walk.state, walk.last)
  return block === null ? '' : plainText(layOut(block, STYLE))
}

describe('several conditions at one step', () => {
  it.each(['2 3', '2,3', '2, 3', '2 and 3', ' 2  3 '])('%j are two findings under one note', (line) => {
    const walk = begin().keys(line, 'bottom, half-way; ridge at the head end')
    expect(walk.last).toMatchObject({
      type: 'finding.observed',
      condition: 'scored',
      also: ['ridge'],
      note: 'bottom, half-way; ridge at the head end',
    })
    expect(list(walk)).toMatchObject([
      { name: 'NC-1', word: 'scored', stands: true, decided: null },
      { name: 'NC-2', word: 'ridge', stands: true, decided: null },
    ])
    expect(shown(walk)).toContain('Surface: Scoring; A ridge')
    expect(shown(walk)).toContain('Nonconformance NC-1, open')
    expect(shown(walk)).toContain('Nonconformance NC-2, open')
    expect(handOverLines(walk.engine.defs, walk.state).join('\n')).toContain('Scoring; A ridge, bottom')
    const disk = walk.entries.map((e) => ({ ...e, prev: '', hash: '' }))
    expect(readEntries(disk).ok).toBe(true)
  })

  it('hold the job until a lead decides, and one decision is for all that was found at the step', () => {
    const walk = begin().keys('2 4', 'low', '')
    expect(walk.prompt.kind).toBe('findings')
    walk.key('1')
    expect(walk.said).toContain('NC-1 Surface: Scoring; NC-2 Surface: A crack.')
    walk.keys('1', 'KH', 'shallow, stays')
    expect(list(walk).map(({ decided }) => decided?.choice)).toEqual(['accept', 'accept'])
    expect(walk.state.closed).not.toBeNull()
  })

  it('are none where one of them is no finding, and none of a step that takes one', () => {
    const walk = begin()
    expect(walk.key('1 2')).toBe('one-condition')
    expect(walk.said.at(-1)).toContain('"Even sheen" goes with no other')
    expect(walk.talk.ask).toBeNull()
    const { several: _several, ...one } = LOOK
    expect(begin(one).key('3 4')).toBe('one-condition')
    for (const line of ['2 5', '0 2', '2 x', '2 3 note'])
      expect(begin().keys(line).state.done.surface).toBeUndefined()
    expect(begin().keys('4').last).toMatchObject({ condition: 'cracked' })
    expect(begin().keys('4').last).not.toHaveProperty('also')
  })

  it('are named by no rule, as no one word tells what the step came to', () => {
    const ruled = tell('polish', { when: { rule: 'surface == "ridge"', unknown: 'do' } })
    expect(() => smallDefs([LOOK as never, ruled, tell('end')])).toThrow(/several conditions at once/)
  })

  it('say so at the prompt', () => {
    const walk = begin()
    const { ask } = promptView(walk.engine.defs, walk.state, walk.talk, STYLE)
    expect(ask.at(-1)?.text).toBe('Several: their numbers with a space between, as 2 4')
  })

  it('are corrected together, with what stood before in full; what fell keeps its number', () => {
    const walk = begin().keys('2 3', 'low', 'correct', '1', 'the scoring was oil', '3 4', 'only at the end')
    expect(walk.last).toMatchObject({
      type: 'finding.corrected',
      was: 'scored',
      was_also: ['ridge'],
      condition: 'ridge',
      also: ['cracked'],
    })
    expect(shown(walk)).toContain('in place of: Scoring; A ridge')
    expect(list(walk).map(({ name, word, stands }) => [name, word, stands])).toEqual([
      ['NC-1', 'scored', false],
      ['NC-2', 'ridge', false],
      ['NC-3', 'ridge', true],
      ['NC-4', 'cracked', true],
    ])
  })
})
