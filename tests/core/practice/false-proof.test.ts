// A proof that is false is spoken of where somebody asks what to do now and where somebody stops; a number is another only by letters and figures.
import { expect, it } from 'vitest'
import { fold, opening } from '../../../src/core/job/fold.ts'
import type { State } from '../../../src/core/job/state.ts'
import { falseProofs } from '../../../src/core/practice/false-proof.ts'
import { gradeOf } from '../../../src/core/practice/grade.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import type { Walk } from '../../helpers/example.ts'
import { careful, look, seedHiding, session, type Trainee } from '../../helpers/trainees.ts'

const upTo =
  (item: string): Trainee =>
  (walk) =>
    walk.prompt.kind === 'evidence' && walk.prompt.item.key === item ? false : careful(walk)

const SEED = 12
const atStart = () => session(SEED, 2, upTo('try_start')).walk
const defsOf = (walk: Walk) => walk.engine.defs

/** The job as it stood right behind that entry. */
function after(walk: Walk, seq: number): State {
  const [first, ...rest] = walk.entries
  if (first?.type !== 'job.opened') throw new Error('not opened')
  return rest.filter((one) => one.seq <= seq).reduce(fold, opening(first))
}

it('what to do now after a false NO START speaks of it before what is asked', () => {
  const walk = atStart().keys('no start')
  expect(falseProofs(defsOf(walk), walk.state)).toEqual(['try start at hold point 2'])
  walk.said.length = 0
  walk.key('what do I do now')
  const said = walk.said.join(' ')
  expect(said).toMatch(/^FALSE: try start at hold point 2 stands as shown and is not so\./)
  expect(said).toContain('by the word correct')
  expect(said).toContain('A STOP is right')
  expect(said.indexOf('NO FLOW')).toBeGreaterThan(said.indexOf('FALSE'))
})

it('and does not once it was taken back, looked at and keyed', () => {
  const walk = atStart().keys('no start', 'back', '1', 'look', 'no start')
  expect(falseProofs(defsOf(walk), walk.state)).toEqual([])
  walk.said.length = 0
  walk.key('what do I do now')
  expect(walk.said.join(' ')).not.toContain('FALSE')
})

it('a STOP on it is told to be right, and is no mark for anybody', () => {
  const walk = atStart().keys('no start', 'stop')
  const seq = walk.entries.findIndex(({ type }) => type === 'stop.raised')
  const entry = walk.entries[seq]
  const lost = gradeOf(defsOf(walk), walk.entries)
  expect(walk.entries.some(({ type }) => type === 'stop.raised')).toBe(true)
  const shown = entry === undefined ? null : lessonOn(defsOf(walk), after(walk, seq), entry)
  expect(shown?.marks).toEqual([])
  expect(shown?.says[0]).toMatch(/^A STOP is right here: try start at hold point 2/)
  expect(lost?.safety).toBe('failed')
})

it.each([
  ['without its dash', (n: string) => n.replace('-', '')],
  ['in small letters', (n: string) => n.toLowerCase()],
])('the number of a lock %s is that lock', (_how, typed) => {
  const walk = session(seedHiding('driver-live', 2), 2, (one) =>
    one.prompt.kind === 'evidence' ? false : careful(one),
  ).walk
  const { shown } = look(walk)
  const number = shown.match(/[A-Z]+-\d+/g)?.at(-1) ?? ''
  walk.key(typed(number))
  if (walk.talk.ask !== null) walk.keys('3', 'it stands so on the lock')
  const entry = walk.entries.findLast(({ type }) => type === 'evidence.given')
  expect(entry === undefined ? null : lessonOn(defsOf(walk), walk.state, entry)).toMatchObject({
    isUnsafe: false,
    marks: [{ skill: 'safety', isRight: true }],
  })
})
