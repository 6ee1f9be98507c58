// What sessions come to together: the level to go on with, the weakest skill, and when a missed fault comes back.
import { describe, expect, it } from 'vitest'
import { drawFaults } from '../../../src/core/practice/draw.ts'
import { FAULTS } from '../../../src/core/practice/faults.ts'
import type { Grade } from '../../../src/core/practice/grade.ts'
import { progressLines, progressOf, seedFor } from '../../../src/core/practice/progress.ts'

function sheet(what: Partial<Grade>): Grade {
  return {
    procedure: 'bore_inspection',
    seed: 1,
    level: 1,
    safety: 'passed',
    unsafe: [],
    scores: [],
    hints: 0,
    hidden: [],
    weakest: null,
    isPassed: true,
    isOver: true,
    ...what,
  }
}

const hid = (id: string, isNamed: boolean) => sheet({ hidden: [{ id, name: id, isNamed }] })
const other = sheet({})

describe('progress', () => {
  it.each([
    ['nothing yet', [], 1],
    ['one passed', [1], 1],
    ['two in a row', [1, 1], 2],
    ['two of level 2', [1, 1, 2, 2], 3],
    ['two of level 2 alone', [2, 2], 3],
    ['the highest', [5, 5], 5],
  ] as const)('goes on by level: %s', (_what, levels, next) => {
    expect(progressOf(levels.map((level) => sheet({ level }))).level).toBe(next)
  })

  it('holds the level where the last was not passed', () => {
    expect(progressOf([sheet({}), sheet({ isPassed: false })]).level).toBe(1)
  })

  it('tells the weakest skill of the last five sessions', () => {
    const scores = (right: number) => [
      { skill: 'measuring' as const, right, of: 4 },
      { skill: 'judging' as const, right: 3, of: 4 },
    ]
    expect(progressOf([sheet({ scores: scores(1) })]).weakest).toBe('measuring')
    const later = Array.from({ length: 5 }, () => sheet({ scores: scores(4) }))
    expect(progressOf([sheet({ scores: scores(1) }), ...later]).weakest).toBe('judging')
  })

  it.each([
    ['missed now', [hid('rust', false)], ['rust']],
    ['found, never missed', [hid('rust', true)], []],
    ['missed, then found: not yet', [hid('rust', false), hid('rust', true), other], []],
    [
      'missed, then found, three sessions ago',
      [hid('rust', false), hid('rust', true), other, other],
      ['rust'],
    ],
    [
      'found twice since: not before eight',
      [hid('rust', false), hid('rust', true), hid('rust', true), other, other, other],
      [],
    ],
    ['missed again', [hid('rust', false), hid('rust', true), hid('rust', false)], ['rust']],
    ['the longest due first', [hid('rust', false), hid('leak', false)], ['rust', 'leak']],
  ] as const)('brings back what was missed: %s', (_what, sessions, due) => {
    expect(progressOf(sessions).due).toEqual(due)
  })

  it('counts nothing of a session that was left', () => {
    const progress = progressOf([
      sheet({ isOver: false, hidden: [{ id: 'rust', name: 'x', isNamed: false }] }),
    ])
    expect(progress).toMatchObject({ sessions: [], due: [], level: 1 })
    expect(progressLines(progress)).toEqual(['No practice session is in this folder yet.'])
  })

  it('draws a seed that hides what is due, and tells of it by number only', () => {
    const seed = seedFor(['damp'], FAULTS, 3, 1)
    expect(drawFaults(FAULTS, seed, 3)).toContain('damp')
    expect(seedFor([], FAULTS, 3, 77)).toBe(77)
    // Of a fault that no machine of the level has, the seed it began with.
    expect(seedFor(['damp'], FAULTS, 1, 77)).toBe(77)
    const lines = progressLines(progressOf([hid('rust', false)])).join('\n')
    expect(lines).toContain('1 of what was missed comes back now.')
    expect(lines).not.toContain('rust')
  })
})
