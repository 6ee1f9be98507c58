// What sessions come to together: the level to go on with, the weakest skill, and when a missed fault comes back.
import { describe, expect, it } from 'vitest'
import { drawFaults } from '../../../src/core/practice/draw.ts'
import { EDITION } from '../../../src/core/practice/edition.ts'
import { FAULTS } from '../../../src/core/practice/faults.ts'
import type { Grade } from '../../../src/core/practice/grade.ts'
import {
  peopleIn,
  progressOf as progressBy,
  progressLines,
  seedFor,
} from '../../../src/core/practice/progress.ts'

function sheet(what: Partial<Grade>): Grade {
  return {
    procedure: 'bore_inspection',
    seed: 1,
    level: 1,
    who: 'TS',
    edition: EDITION,
    age: 'same',
    scenario: null,
    expected: [],
    safety: 'passed',
    unsafe: [],
    scores: [],
    hints: 0,
    mended: {},
    hidden: [],
    weakest: null,
    isPassed: true,
    lost: [],
    isShort: false,
    isOver: true,
    ...what,
  }
}

const progressOf = (sessions: readonly Grade[]) => progressBy(sessions, 'TS')
const hid = (id: string, isNamed: boolean) => sheet({ hidden: [{ id, name: id, isNamed }] })
const other = sheet({})

describe('progress', () => {
  it.each([
    ['nothing yet', [], 1],
    ['one passed', [1], 1],
    ['two in a row', [1, 1], 2],
    ['two of level 2', [1, 1, 2, 2], 3],
    ['two of level 2 alone', [2, 2], 3],
    // Whoever begins at a level and passes it is not sent back below it.
    ['one of level 2 alone', [2], 2],
    ['one of level 4, after two of level 1', [1, 1, 4], 4],
    ['the highest', [5, 5], 5],
  ] as const)('goes on by level: %s', (_what, levels, next) => {
    expect(progressOf(levels.map((level) => sheet({ level }))).level).toBe(next)
  })

  it('holds the level where the last was not passed', () => {
    expect(progressOf([sheet({}), sheet({ isPassed: false })]).level).toBe(1)
    // Passed at its STOP with nothing measured: neither raised by it nor set back.
    expect(progressOf([sheet({}), sheet({ isShort: true })]).level).toBe(1)
    expect(progressOf([sheet({}), sheet({ isShort: true }), sheet({})]).level).toBe(2)
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
    expect(progressLines(progress)).toEqual([
      expect.stringMatching(/^No practice session in this folder has come to its sheet yet/),
    ])
  })

  it('draws a seed that hides what is due, and tells of it by number only', () => {
    const seed = seedFor({ due: ['damp'], dueSkills: [] }, FAULTS, 3, 1)
    expect(drawFaults(FAULTS, seed, 3)).toContain('damp')
    expect(seedFor({ due: [], dueSkills: [] }, FAULTS, 3, 77)).toBe(77)
    // Of a fault that no machine of the level has, the seed it began with.
    expect(seedFor({ due: ['damp'], dueSkills: [] }, FAULTS, 1, 77)).toBe(77)
    const lines = progressLines(progressOf([hid('rust', false)])).join('\n')
    expect(lines).toContain('1 of what was missed comes back now.')
    expect(lines).not.toContain('rust')
  })

  it('is that of one person, and says whose', () => {
    const all = [sheet({ who: 'RO', isPassed: false }), sheet({}), sheet({}), sheet({ who: 'KH' })]
    expect(peopleIn(all)).toEqual(['KH', 'TS', 'RO'])
    expect(progressBy(all, 'TS')).toMatchObject({ who: 'TS', level: 2, sessions: [{}, {}] })
    expect(progressBy(all, 'RO')).toMatchObject({ level: 1, sessions: [{ who: 'RO' }] })
    expect(progressLines(progressBy(all, 'KH'))[0]).toBe(
      'Progress of KH: 1 practice session, in the order they were worked',
    )
  })

  const judged = (right: number) => sheet({ scores: [{ skill: 'judging', right, of: 4 }] })
  it.each([
    ['not enough, just now', [judged(3)], ['judging']],
    ['enough', [judged(4)], []],
    ['enough the next time: not yet', [judged(1), judged(4), other], []],
    ['enough three sessions ago', [judged(1), judged(4), other, other], ['judging']],
    ['not come up since', [judged(1), other, other], ['judging']],
  ] as const)('brings back a weak skill: %s', (_what, sessions, due) => {
    expect(progressOf(sessions).dueSkills).toEqual(due)
  })

  it('counts safety that was failed as a weak skill, whatever its share', () => {
    const scores = [{ skill: 'safety' as const, right: 19, of: 20 }]
    expect(progressOf([sheet({ scores })]).dueSkills).toEqual([])
    expect(progressOf([sheet({ scores, safety: 'failed' })]).dueSkills).toEqual(['safety'])
  })

  it('draws a machine on which the weak skill is asked for, unless a fault is due', () => {
    const shown = (seed: number) =>
      drawFaults(FAULTS, seed, 2).map((id) => FAULTS.find((one) => one.id === id)?.shows)
    for (const [skill, shows] of [
      ['measuring', 'measuring'],
      ['safety', 'stop'],
      ['judging', 'figures'],
      ['diagnosing', 'seen'],
    ] as const)
      expect(shown(seedFor({ due: [], dueSkills: [skill] }, FAULTS, 2, 1))).toContain(shows)
    expect(seedFor({ due: [], dueSkills: ['recording'] }, FAULTS, 2, 77)).toBe(77)
    const seed = seedFor({ due: ['rust'], dueSkills: ['safety'] }, FAULTS, 3, 1)
    expect(drawFaults(FAULTS, seed, 3)).toContain('rust')
  })

  it('says of an older edition that its seed draws another machine now, and counts nothing of one built otherwise', () => {
    const listed = progressOf([sheet({ age: 'other-list' }), sheet({ age: 'other-list' })])
    expect(listed.level).toBe(2)
    expect(progressLines(listed).join('\n')).toMatch(
      /seed 1 .*older edition: that seed draws another machine now/,
    )
    const built = progressOf([
      sheet({ age: 'other-build', hidden: [{ id: 'rust', name: 'x', isNamed: false }] }),
      sheet({ age: 'other-build' }),
    ])
    expect(built).toMatchObject({ level: 1, due: [], dueSkills: [] })
    expect(built.sessions).toHaveLength(2)
    expect(progressLines(built).join('\n')).toContain('it counts for nothing')
  })
})
