// What is said of a machine without a look, or said otherwise afterwards; and a session that was left before anything was named.
import { describe, expect, it } from 'vitest'
import { asKind } from '../../../src/core/job/definitions.ts'
import type { Input } from '../../../src/core/job/input.ts'
import { gradeOf } from '../../../src/core/practice/grade.ts'
import { gradeLines } from '../../../src/core/practice/grade-lines.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import { progressOf } from '../../../src/core/practice/progress.ts'
import { practiceOf } from '../../../src/core/report/parts/practice.ts'
import type { Walk } from '../../helpers/example.ts'
import { careful, defsOf, practiceDefs, seedHiding, session, type Trainee } from '../../helpers/trainees.ts'

const hollow = defsOf('hollow-piston')

/** A careful session of the bench as far as the step, nothing of it looked at yet. */
function upTo(step: string): Walk {
  const stops: Trainee = (walk) =>
    walk.talk.ask === null && walk.prompt.kind === 'observe' && walk.prompt.step.id === step
      ? false
      : careful(walk)
  return session(seedHiding('vent-plugged', 3, hollow), 3, stops, hollow).walk
}

/** Keys a condition by its id, and what is asked behind it. */
function say(walk: Walk, id: string): Walk {
  const { prompt } = walk
  if (prompt.kind !== 'observe') throw new Error(`no finding: ${prompt.kind}`)
  const { conditions } = asKind(prompt.step, 'observe').step
  walk.keys(String(conditions.findIndex((one) => one.id === id) + 1))
  while (walk.talk.ask !== null) careful(walk)
  return walk
}

const found = (walk: Walk, type: 'finding.observed' | 'finding.corrected') => {
  const entry = walk.entries.findLast((one) => one.type === type && one.step === 'vents')
  if (entry === undefined) throw new Error(`no ${type}`)
  return lessonOn(hollow, walk.state, entry)
}

describe('a vent that is plugged, said to be open', () => {
  it('by whoever never looked fails the session, as by whoever did', () => {
    const blind = found(say(upTo('vents'), 'silent'), 'finding.observed')
    const seen = found(say(upTo('vents').keys('look'), 'silent'), 'finding.observed')
    expect([blind?.isUnsafe, seen?.isUnsafe]).toEqual([true, true])
    expect(blind?.says.join(' ')).toContain('evidence that nobody saw has passed')
    expect(seen?.says.join(' ')).toContain('it was said to be safe, and it was not')
  })

  it('by a correction fails it too, and a correction to what is there does not', () => {
    const to = (first: string, then: string) => {
      const walk = say(upTo('vents').keys('look'), first)
      const input = {
        do: 'correct-finding',
        step: 'vents',
        condition: then,
        note: 'as seen',
        why: 'mistyped',
      }
      expect(walk.bring(input as Input)).toBeNull()
      return found(walk, 'finding.corrected')
    }
    expect(to('blocked', 'silent')?.isUnsafe).toBe(true)
    // Right now, and no mark for it: it was told.
    expect(to('silent', 'blocked')).toMatchObject({
      marks: [],
      isUnsafe: false,
      isPutRight: true,
      says: [/^Now it stands as it is there/],
    })
  })
})

it('what was said without a look is wrong even where it is so, and no look is asked for that cannot be had any more', () => {
  const lesson = found(say(upTo('vents'), 'blocked'), 'finding.observed')
  expect(lesson).toMatchObject({ isUnsafe: false, marks: [{ isRight: false }] })
  expect(lesson?.says).toEqual([
    'Wrong: nobody looked. At the next one the word look comes first, then the answer.',
    'What was keyed is what is there, by luck.',
  ])
})

it('what was said without a look and is not so is told what is there', () => {
  const { walk } = session(seedHiding('barrel', 1), 1, (one) =>
    one.talk.ask === null && one.prompt.kind === 'observe' ? false : careful(one),
  )
  const { prompt, engine } = walk
  if (prompt.kind !== 'observe') throw new Error('no finding')
  expect(prompt.step.id).toBe('strip')
  walk.key('3')
  const entry = walk.entries.findLast(({ type }) => type === 'finding.observed')
  if (entry === undefined) throw new Error('no finding')
  const lesson = lessonOn(engine.defs, walk.state, entry)
  expect(lesson).toMatchObject({ isUnsafe: false, marks: [{ isRight: false }] })
  expect(lesson?.says[1]).toMatch(/^It is: At the head end/)
  expect(lesson?.says.join(' ')).not.toContain('by luck')
})

describe('a session that was left before anything was named', () => {
  const { walk } = session(seedHiding('barrel', 1), 1, (one) => one.prompt.kind !== 'judge' && careful(one))
  const grade = gradeOf(practiceDefs(), walk.entries)
  if (grade === null) throw new Error('no session')

  it('is not over: neither passed nor on to another level, on the screen and in the report', () => {
    expect(grade).toMatchObject({ isOver: false, isPassed: false, safety: 'passed' })
    const told = gradeLines(grade).join('\n')
    expect(told).toContain('( NOT OVER )  Nothing was named yet: it counts for nothing until then.')
    expect(told).toContain('Practise next: the rest of this one.')
    expect(told).not.toMatch(/PASSED \)|level 2/)
    expect(practiceOf(practiceDefs(), walk.entries)).toMatchObject({ isOver: false, isPassed: false })
    expect(progressOf([grade], 'RO').sessions).toEqual([])
  })

  it('is not passed, nor a level higher, where it is named before anybody went near', () => {
    const early = session(seedHiding('barrel', 1), 1, (one) => {
      one.keys('RO', 'fault 0')
      return false
    }).grade
    expect(early).toMatchObject({ isOver: true, isPassed: false, safety: 'not reached' })
    expect(gradeLines({ ...early, weakest: null })).toContain(
      'Practise next: this level, as far as its first hold point.',
    )
  })
})

it('a step that practice hides nothing at is never said to need no look', () => {
  const isolation = defsOf('isolation')
  const stops: Trainee = (walk) => walk.prompt.kind !== 'confirm' && careful(walk)
  const { walk } = session(seedHiding('lock-open', 3, isolation), 3, stops, isolation)
  walk.key('look')
  expect(walk.said.at(-1)).toMatch(/^Practice hides nothing at this step.*At a machine you go and look\.$/)
})
