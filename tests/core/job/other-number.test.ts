// Another number of a lock than was keyed for the same point before the hold point fell: doubted, and never silently taken.
import { describe, expect, it } from 'vitest'
import { readEntries } from '../../../src/core/job/entry-schema.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { LOCK_LINES, Walk } from '../../helpers/example.ts'
import { rightLine } from '../../helpers/right-line.ts'

const KEY = 'locks.breaker'
const fallen = () => {
  const walk = new Walk().throughGate()
  walk.bring({ do: 'leave' })
  walk.bring({ do: 'take-up' })
  return walk.keys('RO', 'TC-401-1', 'ALL OUT')
}
const given = (walk: Walk) => walk.state.gates.hold_point?.given[KEY]?.shown

describe('a lock that bears another number than before the hold point fell', () => {
  it('is doubted, whatever is keyed but a choice', () => {
    const walk = fallen().keys('L-107')
    expect(walk.talk.ask).toMatchObject({ kind: 'number-sure', typed: 'L-107', was: 'L-101' })
    const style = { width: 79, record: 'EXAMPLE' as const, ascii: false }
    expect(promptView(walk.engine.defs, walk.state, walk.talk, style).ask.map(({ text }) => text)).toEqual([
      'L-107 is doubted: L-101 was keyed here before.',
      '1  look again at what hangs there',
      '2  mistyped: key it again in full',
      '3  it is another one: say why',
      '4  it is the same one: L-101 was keyed wrong',
      'Which is it? 1, 2, 3 or 4',
      'back leaves this question',
    ])
    for (const line of ['', 'yes', '5', 'L-107']) walk.key(line)
    expect(given(walk)).toBeUndefined()
    walk.keys('1', 'L-101')
    expect(given(walk)).toBe('L-101')
  })

  it('is taken with a reason alone, and both numbers stand on the sheet and on disk', () => {
    const walk = fallen().keys('L-107', '3', 'ML took L-101 home')
    expect(walk.last).toMatchObject({ shown: 'L-107', was: 'L-101', why: 'ML took L-101 home' })
    const text = entryBlock(walk.engine.defs, walk.state, walk.last)?.rows.map((r) => r.text)
    expect(text?.[1]).toBe('  L-101 before, not so now: ML took L-101 home')
    expect(readEntries(walk.entries.map((e) => ({ ...e, prev: '', hash: '' }))).ok).toBe(true)
    expect(fallen().keys('L-107', '3', '12').state.gates.hold_point?.given[KEY]).toBeUndefined()
  })

  it('may be the same lock, keyed wrong before: its number is read once more, and that is on record', () => {
    const walk = fallen().keys('L-107', '4')
    expect(given(walk)).toBeUndefined()
    for (const line of ['1', 'L-108']) expect(given(walk.keys(line, '4'))).toBeUndefined()
    walk.keys('l107')
    const why = 'the same one, and its number was keyed wrong before'
    expect(walk.last).toMatchObject({ shown: 'L-107', was: 'L-101', why })
  })

  it('is refused by the engine itself, also from a file', () => {
    const evidence = { do: 'evidence', step: 'hold_point', item: KEY } as const
    expect(fallen().bring({ ...evidence, typed: 'L-107' })).toBe('other-number')
    expect(fallen().bring({ ...evidence, typed: 'L-107', why: '7' })).toBe('no-words')
    expect(fallen().bring({ ...evidence, typed: 'l101' })).toBeNull()
  })

  it('is doubted also behind one that was taken back in the same round', () => {
    const walk = fallen().keys('L-101', 'back', '1', 'L-107')
    expect(walk.talk.ask?.kind).toBe('number-sure')
    const twice = fallen().keys('L-101', 'back', '1', 'L-101', 'back', '1', 'L-107')
    expect(twice.talk.ask?.kind).toBe('number-sure')
  })

  it('is no other where the first was a slip that somebody took back at once', () => {
    const walk = new Walk().toGate().keys('L-110', 'back', '1', 'L-101', ...LOCK_LINES.slice(1))
    expect(given(walk)).toBe('L-101')
    expect(walk.talk.ask).toBeNull()
  })
})

describe('whoever witnesses', () => {
  it('is told which number stands in place of which, and that the old one was told off by nobody', () => {
    const walk = fallen().keys('L-107', '3', 'the old one would not open', ...LOCK_LINES.slice(1))
    for (let n = 0; n < 20 && !asksWitness(walk); n++)
      walk.key(rightLine(walk.engine.defs, walk.state, walk.talk))
    expect(asksWitness(walk)).toBe(true)
    const style = { width: 79, record: 'EXAMPLE' as const, ascii: false }
    const rows = promptView(walk.engine.defs, walk.state, walk.talk, style).ask.map(({ text }) => text)
    expect(rows).toContain(
      'L-107 IN PLACE OF L-101, lock at main driver breaker, E-1: nobody told L-101 off.',
    )
  })
})

const asksWitness = ({ prompt }: Walk) =>
  prompt.kind === 'evidence' && prompt.item.evidence.kind === 'witness'
