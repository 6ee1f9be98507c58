// What is read off the plate of a point is no lock; a number that looks like none, or like none of the others, is asked about.
import { describe, expect, it } from 'vitest'
import { readEntries } from '../../../src/core/job/entry-schema.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { Walk } from '../../helpers/example.ts'

const given = (walk: Walk) => Object.values(walk.state.gates.hold_point?.given ?? {}).map((g) => g.shown)

describe('the tag of an isolation point', () => {
  it.each(['E-1', 'e1', 'V-13', 'v-1-3', 'V-17'])('is no lock: %s', (line) => {
    const walk = new Walk().toGate()
    expect(walk.key(line)).toBe('point-tag')
    expect(walk.said.at(-1)).toMatch(/is the tag of the point: .*The number stands on the lock/)
    expect(given(walk)).toEqual([])
  })

  it('is none with a reason beside it either', () => {
    const evidence = { do: 'evidence', step: 'hold_point', item: 'locks.breaker' } as const
    expect(new Walk().toGate().bring({ ...evidence, typed: 'V-13', why: 'it hangs there' })).toBe('point-tag')
    expect(new Walk().toGate().bring({ ...evidence, typed: 'V-131' })).toBeNull()
  })
})

describe('an odd number of a lock', () => {
  it.each([
    ['1', [], '1 is doubted: one digit alone is seldom the number of a lock.'],
    ['2', ['L-101'], '2 is doubted: one digit alone is seldom the number of a lock.'],
    ['104', ['L-101'], '104 is doubted: the others here are like L-101.'],
    ['L-104', ['102'], 'L-104 is doubted: the others here are like 102.'],
  ])('%s behind %j is asked about, and not taken', (line, before, says) => {
    const walk = new Walk().toGate().keys(...before, line)
    expect(given(walk)).toEqual(before)
    const style = { width: 79, record: 'EXAMPLE' as const, ascii: false }
    const view = promptView(walk.engine.defs, walk.state, walk.talk, style)
    expect(view.ask[0]?.text).toBe(says)
    walk.keys('1')
    expect(given(walk)).toEqual(before)
  })

  it('is kept with a reason alone, which stands on the sheet and on disk', () => {
    const walk = new Walk().toGate().keys('1', '3', '7')
    expect(given(walk)).toEqual([])
    walk.keys('1', '3', 'stamped with one digit')
    expect(walk.last).toMatchObject({ shown: '1', why: 'stamped with one digit' })
    const rows = entryBlock(walk.engine.defs, walk.state, walk.last)?.rows.map((r) => r.text)
    expect(rows?.[1]).toBe('  doubted, and kept: stamped with one digit')
    expect(readEntries(walk.entries.map((e) => ({ ...e, prev: '', hash: '' }))).ok).toBe(true)
  })

  it('is none where letters, figures and dashes are as in one of the others, or as it was before it fell', () => {
    expect(given(new Walk().toGate().keys('L-101', 'K12', 'l9'))).toEqual(['L-101', 'K12', 'L9'])
    const walk = new Walk().toGate().keys('7', '3', 'stamped so', 'stop', '8', 'slipped', '?', 'release')
    walk.keys('KH', 'put right', '7')
    expect(given(walk)).toEqual(['7'])
  })
})
