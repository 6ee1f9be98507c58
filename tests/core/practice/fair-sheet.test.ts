// The sheet of a session is fair: what was hidden has to be named, one slip that was put right fails nobody, and one wrong is told once.
import { describe, expect, it } from 'vitest'
import { faultsFor } from '../../../src/core/practice/faults.ts'
import { gradeLines } from '../../../src/core/practice/grade-lines.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { practiceTurningRow } from '../../../src/core/sheet/foot-hints.ts'
import { fitLive } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import type { Walk } from '../../helpers/example.ts'
import { leaves, mends } from '../../helpers/slipping-trainees.ts'
import { careful, careless, defsOf, seedHiding, session, type Trainee } from '../../helpers/trainees.ts'

const bore = defsOf('bore-inspection')

/** Careful, and names this at the end. */
const naming =
  (line: string): Trainee =>
  (walk) => {
    if (walk.prompt.kind !== 'finish' || walk.talk.ask !== null) return careful(walk)
    walk.key(line)
    return true
  }

describe('what was hidden', () => {
  const seed = seedHiding('gauge-off', 2)
  const all = faultsFor(bore)
  const number = all.findIndex(({ id }) => id === 'gauge-off') + 1

  it.each([
    ['nothing', '0', false],
    ['another', String(number === 1 ? 2 : 1), false],
    ['the whole list', all.map((_one, n) => n + 1).join(' '), false],
    ['it alone', String(number), true],
  ])('named as %s', (_what, line, isPassed) => {
    expect(session(seed, 2, naming(line), bore).grade).toMatchObject({ safety: 'passed', isPassed })
  })
})

describe('one slip of the keys', () => {
  // Two lines, and a STOP: half of what there was to record.
  const seed = seedHiding('lock-missing', 2)

  it('that was put right fails nobody, however little there was to record, and stands on the sheet', () => {
    const { grade } = session(seed, 2, mends(0).trainee, bore)
    const { right, of } = grade.scores.find(({ skill }) => skill === 'recording') ?? { right: 0, of: 0 }
    expect(grade).toMatchObject({ mended: { recording: 1 }, isPassed: true })
    expect(of - right).toBe(1)
    const share = Math.floor((right / of) * 100)
    expect(gradeLines(grade).join('\n')).toContain(
      `recording   ${right} of ${of} right, ${share} %; one slip was put right`,
    )
    expect(gradeLines(grade).join('\n')).not.toContain('BELOW')
  })

  it('that stays as it is spares nobody', () => {
    const first = session(seed, 2, leaves(0).trainee, bore).grade
    expect(first.mended).toEqual({})
  })

  it('is told once when people are let in with it, and not again each time they go back in', () => {
    const { grade, walk } = session(2, 3, leaves(0).trainee, defsOf('hollow-piston'))
    const opened = walk.entries.filter(({ type }) => type === 'gate.opened')
    expect(opened.length).toBeGreaterThan(1)
    expect(grade.unsafe).toHaveLength(1)
    expect(grade).toMatchObject({ safety: 'failed', isPassed: false })
  })
})

it('a verdict that is right by figures that are not is told as that', () => {
  const defs = defsOf('ring-fit')
  const { walk } = session(1, 2, leaves(1).trainee, defs)
  const says = walk.entries.flatMap((entry) =>
    entry.type === 'verdict.given' ? (lessonOn(defs, walk.state, entry)?.says ?? []) : [],
  )
  expect(says.filter((one) => one.startsWith('Wrong: you said HOLD'))).toHaveLength(1)
  expect(says.filter((one) => one.startsWith('By the figures on record it does come to that'))).toHaveLength(
    1,
  )
})

it('marks lost in the same way at one sheet stand on it once, with how often', () => {
  const { grade } = session(seedHiding('barrel', 1), 1, careless, bore)
  const measured = gradeLines(grade).filter((line) => line.startsWith('  lost, measuring'))
  const lost = grade.lost.filter(({ skill }) => skill === 'measuring')
  expect(measured).toHaveLength(new Set(lost.map(({ at }) => at)).size)
  // And which skill the session was not passed for.
  expect(gradeLines(grade)).toContainEqual(
    expect.stringMatching(/^ {2}measuring .* 0 of \d+ right, 0 %: BELOW the pass mark$/),
  )
  const told = measured.map((line) => Number(/, (\d+) times/.exec(line)?.[1] ?? 1))
  expect(told.reduce((sum, one) => sum + one, 0)).toBe(lost.length)
  expect(Math.max(...told)).toBeGreaterThan(5)
})

describe('the foot of a reading', () => {
  const upTo = (kind: string): Walk =>
    session(3, 1, (at) => at.prompt.kind !== kind && careful(at), bore).walk

  const below = ({ engine, state, talk, now }: Walk, columns: number, rows: number) => {
    const style = { width: columns - 1, record: 'PRACTICE', ascii: true } as const
    const view = promptView(engine.defs, state, talk, style)
    const input = { view, foot: foot(engine.defs, state, now), style, rows, columns, notice: null }
    const live = fitLive(input)
    return [...live.above, ...live.below].map(({ text }) => text).join('\n')
  }

  it('names the word measure, and elsewhere look', () => {
    expect(below(upTo('read'), 80, 24)).toMatch(/measure hint wait/)
    expect(below(upTo('evidence'), 80, 24)).toMatch(/look hint wait/)
  })

  it('on the lowest screen stands beside how to turn back, on the side of the question', () => {
    const { engine, state, talk } = upTo('read')
    const view = promptView(engine.defs, state, talk, { width: 39, record: 'PRACTICE', ascii: true })
    expect(practiceTurningRow(view, 2, 3, 28).text).toBe('3/3 Up measure hint help')
  })
})
