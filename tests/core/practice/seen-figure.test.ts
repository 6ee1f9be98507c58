// What was shown was seen, whatever was keyed for it: a STOP that a figure calls for is right, and a figure is told in the unit it was
// shown in.
import { expect, it } from 'vitest'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import type { Walk } from '../../helpers/example.ts'
import { careful, look, practiceDefs, seedHiding, session, type Trainee } from '../../helpers/trainees.ts'

const said = (walk: Walk, type: string) => {
  const entry = walk.entries.findLast((one) => one.type === type)
  return entry === undefined ? undefined : lessonOn(walk.engine.defs, walk.state, entry)
}

/** Stops before gas inside the opening is read, by what its line is. */
const upTo =
  (item: string): Trainee =>
  (walk) =>
    walk.prompt.kind === 'evidence' && walk.prompt.item.key === item ? false : careful(walk)

it('a STOP after gas that was seen is right, also where another figure was keyed for it', () => {
  const { walk } = session(seedHiding('gas-inside', 2), 2, upTo('flammable_inside'))
  const seen = look(walk, 'measure')
  expect(Number(seen.figure)).toBeGreaterThan(10)
  walk.keys('0', 'stop')
  expect(said(walk, 'stop.raised')).toMatchObject({
    marks: [{ skill: 'safety', isRight: true }],
    says: [expect.stringMatching(/^Right: what you saw calls for it/)],
  })
})

it('a STOP where nothing out of its limit was seen is one too many, and costs nothing', () => {
  const { walk } = session(seedHiding('gas-inside', 2), 2, upTo('flammable_inside'))
  walk.keys('stop')
  expect(said(walk, 'stop.raised')).toMatchObject({
    marks: [],
    says: [expect.stringMatching(/^Nothing you have seen called for it yet/)],
  })
})

it('a figure is told in the unit of the instrument, whichever was keyed', () => {
  const stops: Trainee = (walk) =>
    walk.prompt.kind === 'read' && walk.prompt.step.id === 'part_temp_before' ? false : careful(walk)
  const { walk } = session(12, 1, stops, practiceDefs())
  const { figure } = look(walk, 'measure')
  walk.key('22 C')
  const entry = walk.entries.findLast((one) => one.type.startsWith('reading.'))
  const lesson = entry === undefined ? null : lessonOn(walk.engine.defs, walk.state, entry)
  expect(lesson?.says[0]).toBe(`Wrong: T-2 shows ${figure} degF, and 22 C was keyed.`)
})
