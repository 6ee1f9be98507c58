// The sheet of a session says what it takes to pass, each mark that was lost, and what was not practised at all.
import { expect, it } from 'vitest'
import { gradeOf } from '../../../src/core/practice/grade.ts'
import { gradeLines } from '../../../src/core/practice/grade-lines.ts'
import { progressOf } from '../../../src/core/practice/progress.ts'
import { careful, practiceDefs, seedHiding, session, type Trainee } from '../../helpers/trainees.ts'

const defs = practiceDefs()

it('each mark that was lost stands on it with its sheet and why, below what it takes to pass', () => {
  let slip = true
  const blind: Trainee = (walk) => {
    if (walk.prompt.kind !== 'observe' || !slip || walk.talk.ask !== null) return careful(walk)
    slip = false
    walk.keys('1')
    return true
  }
  const { grade, walk } = session(seedHiding('barrel', 1), 1, blind, defs)
  const { lost, scores } = grade
  expect(lost).toHaveLength(1)
  expect(lost[0]).toMatchObject({ skill: 'diagnosing', says: expect.stringMatching(/^nobody looked/) })
  const entry = walk.entries.find(({ type }) => type === 'finding.observed')
  const sheet = defs.steps.find(
    ({ id }) => entry !== undefined && 'step' in entry && id === entry.step,
  )?.number
  const told = gradeLines(grade)
  expect(told).toContain(
    'Pass mark: 80 % of each of them that came up, safety not failed, and what was hidden named: all of it, and nothing else.',
  )
  expect(told.join('\n')).toContain(`  lost, diagnosing, sheet ${sheet}: nobody looked.`)
  const missed = scores.reduce((sum, { right, of }) => sum + of - right, 0)
  expect(lost).toHaveLength(missed)
})

it('a hint is a mark that was lost as well, and what was named wrong is told by name', () => {
  let isFirst = true
  const asks: Trainee = (walk) => {
    if (walk.prompt.kind === 'finish') {
      walk.key('0')
      return true
    }
    if (isFirst && walk.prompt.kind === 'observe') {
      isFirst = false
      walk.keys('hint')
    }
    return careful(walk)
  }
  const { lost, scores } = session(seedHiding('barrel', 1), 1, asks, defs).grade
  expect(lost.map(({ at, says }) => `${at.replace(/\d+/, 'n')}: ${says}`)).toEqual([
    'sheet n: a hint was asked for',
    'what was hidden: Not named: The bore is wider in the middle: a barrel',
  ])
  expect(lost).toHaveLength(scores.reduce((sum, { right, of }) => sum + of - right, 0))
})

it('a session that ended at another plate is passed, says that the rest was not practised, and raises no level', () => {
  const seed = seedHiding('plate-other', 1)
  const { grade } = session(seed, 1, careful, defs)
  expect(grade).toMatchObject({ isPassed: true, safety: 'passed', isShort: true })
  const told = gradeLines(grade)
  expect(told).toContain('It ended before anything else was practised: no level is raised by it.')
  expect(told.join('\n')).not.toContain('level 2')
  expect(progressOf([grade, grade], grade.who).level).toBe(1)
})

it('a whole session is not short', () => {
  const { grade, walk } = session(seedHiding('barrel', 1), 1, careful, defs)
  expect(grade).toMatchObject({ isPassed: true, isShort: false, lost: [] })
  // The same as progress tells: once is not enough.
  expect(gradeLines(grade).join('\n')).toContain(
    'another seed of level 1. Level 2 comes once level 1 was passed 2 times in a row.',
  )
  expect(progressOf([grade], grade.who).level).toBe(1)
  expect(progressOf([grade, grade], grade.who).level).toBe(2)
  expect(gradeOf(defs, walk.entries)?.isShort).toBe(false)
})
