// A slip of the keys at what was looked at: it is told at once, has to be put right, and fails the session only where the hold point is complete
// with it. A look counts until something changes there.
import { describe, expect, it } from 'vitest'
import { asKind, stepById } from '../../../src/core/job/definitions.ts'
import { fold, opening } from '../../../src/core/job/fold.ts'
import { drawFaults } from '../../../src/core/practice/draw.ts'
import { falseLines } from '../../../src/core/practice/false-lines.ts'
import { faultsFor } from '../../../src/core/practice/faults.ts'
import { gradeOf } from '../../../src/core/practice/grade.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import type { Lesson } from '../../../src/core/practice/marks.ts'
import { LOCK_LINES, Walk } from '../../helpers/example.ts'
import { careful, practiceDefs, seedHiding } from '../../helpers/trainees.ts'

const defs = practiceDefs()

function seedOfNothing(): number {
  for (let seed = 1; ; seed++) if (drawFaults(faultsFor(defs), seed, 1).length === 0) return seed
}

const begun = (seed = seedOfNothing()) =>
  new Walk(defs, 'PRACTICE', { practice: { seed, level: 1 } }).keys('RO')
const atLocks = (seed?: number) => begun(seed).keys('look', 'TC-401-1', '')

/** Of the entry of this type that was made last. */
function lessonOf({ entries }: Walk, type: string): Lesson | null {
  const seq = entries.findLast((one) => one.type === type)?.seq ?? 0
  const [first, ...rest] = entries
  if (first?.type !== 'job.opened') throw new Error('not opened')
  let state = opening(first)
  for (const entry of rest) {
    state = fold(state, entry)
    if (entry.seq === seq) return lessonOn(defs, state, entry)
  }
  return null
}

const gradeNow = (walk: Walk) => gradeOf(defs, walk.entries)
const falseNow = ({ state }: Walk) => falseLines(defs, state, asKind(stepById(defs, 'hold_point'), 'gate'))

function numberShown({ last }: Walk): string {
  return (last.type === 'practice.asked' ? last.shown : '').match(/[A-Z]+-\d+/g)?.at(-1) ?? ''
}

/** Two figures of it changed over. */
const swapped = (number: string) => number.replace(/(\d)(\d)$/, (_all, a, b) => (a === b ? `${a}0` : b + a))

/** Looks, and keys the number wrong. */
function slips(walk: Walk): string {
  walk.key('look')
  const number = numberShown(walk)
  walk.key(swapped(number))
  return number
}

function open(walk: Walk): Walk {
  for (let n = 0; walk.state.gates.hold_point?.status !== 'open'; n++)
    if (n > 200 || !careful(walk)) throw new Error(`not open: ${walk.said.at(-1)}`)
  return walk
}

function mended(walk: Walk, how: 'back' | 'correct', number: string): Walk {
  if (how === 'back') walk.keys('back', '1')
  else walk.keys('correct', '1', 'two figures changed over')
  return walk.keys(number)
}

it('a plate that was read is read, after the tag was keyed wrong', () => {
  const walk = begun().keys('look', 'TC-410-1', 'TC-401-1')
  expect(lessonOf(walk, 'machine.mismatched')).toMatchObject({
    marks: [{ skill: 'recording', isRight: false }],
  })
  expect(lessonOf(walk, 'machine.named')).toMatchObject({ isUnsafe: false })
})

describe('a number that was looked at and keyed wrong', () => {
  it('is told at once as a slip, marked under recording, stands as FALSE and fails nothing yet', () => {
    const walk = atLocks()
    const number = slips(walk)
    const lesson = lessonOf(walk, 'evidence.given')
    expect(lesson).toMatchObject({
      isUnsafe: false,
      isToMend: true,
      marks: [{ skill: 'recording', isRight: false }],
    })
    expect(lesson?.says.join(' ')).toContain(`You keyed ${swapped(number)}; there it says ${number}.`)
    expect(lesson?.says.at(-1)).toBe('If the hold point is complete with it, the session is failed.')
    expect(falseNow(walk)).toHaveLength(1)
    expect(gradeNow(walk)).toMatchObject({ unsafe: [] })
  })

  it.each(['back', 'correct'] as const)('is put right by %s, without another look, and passes', (how) => {
    const walk = atLocks()
    mended(walk, how, slips(walk))
    expect(lessonOf(walk, 'evidence.given')).toMatchObject({
      isUnsafe: false,
      marks: [{ skill: 'safety', isRight: true }],
    })
    expect(falseNow(walk)).toEqual([])
    expect(gradeNow(open(walk))).toMatchObject({ safety: 'passed', unsafe: [] })
  })

  it('fails the session once the hold point is complete with it, and says which line', () => {
    const walk = atLocks()
    const number = slips(walk)
    open(walk)
    const lesson = lessonOf(walk, 'gate.opened')
    expect(lesson).toMatchObject({ isUnsafe: true, marks: [{ skill: 'safety', isRight: false }] })
    expect(lesson?.says.join(' ')).toMatch(new RegExp(`^WRONG\\. lock at .*there it says ${number}\\.`))
    expect(gradeNow(walk)).toMatchObject({ safety: 'failed', isPassed: false, unsafe: [{}] })
  })

  it('does not spare who never looked: that fails at once', () => {
    const walk = atLocks().keys('L-999')
    expect(lessonOf(walk, 'evidence.given')).toMatchObject({ isUnsafe: true })
    expect(gradeNow(walk)).toMatchObject({ safety: 'failed' })
  })
})

it('a hurried look is a slip as well, and another look puts it right', () => {
  const walk = atLocks().keys('look quick')
  const number = numberShown(walk)
  walk.key(number)
  expect(lessonOf(walk, 'evidence.given')).toMatchObject({ isUnsafe: false, isToMend: true })
  walk.keys('back', '1', 'look', number)
  expect(lessonOf(walk, 'evidence.given')).toMatchObject({ isUnsafe: false })
})

it('a driver that turned, keyed as still: put right by taking it back, and failed with its consequence if the hold point is complete', () => {
  const walk = atLocks(seedHiding('driver-live', 1))
  for (let n = 0; n < LOCK_LINES.length; n++) careful(walk)
  walk.keys('look', 'NO START')
  expect(lessonOf(walk, 'evidence.given')?.says[1]).toContain('Nothing may be keyed for that: take it back')
  expect(gradeNow(walk)).toMatchObject({ unsafe: [] })
  expect(gradeNow(open(walk))).toMatchObject({ safety: 'failed' })
  expect(lessonOf(walk, 'gate.opened')?.says.join(' ')).toMatch(/would have turned with your arm in the bore/)
})

it('a look is over once the hold point fell: by what was keyed from it nobody knows the air of now', () => {
  const walk = open(atLocks())
  walk.wait(45).keys('1')
  expect(walk.prompt.kind).toBe('clear')
  careful(walk)
  for (let n = 0; !isGas(walk); n++) if (n > 9 || !careful(walk)) throw new Error('no gas')
  const { prompt, state } = walk
  const of = prompt.kind === 'evidence' ? `${prompt.gate.id}/${prompt.item.key}` : ''
  const figure = state.practice?.asked.findLast((one) => one.of === of)?.figure ?? ''
  walk.keys(figure)
  expect(lessonOf(walk, 'evidence.given')).toMatchObject({ isUnsafe: true })
  expect(lessonOf(walk, 'evidence.given')?.says[0]).toBe(
    'WRONG. You looked before it fell, and nobody has since: key look or measure first, then what is there.',
  )
})

it('a gas figure that was taken back is not keyed again once its life is over', () => {
  const walk = atLocks()
  for (let n = 0; !isGas(walk); n++) if (n > 40 || !careful(walk)) throw new Error('no gas')
  walk.keys('measure')
  const figure = walk.last.type === 'practice.asked' ? (walk.last.figure ?? '') : ''
  walk.wait(45).keys(figure)
  expect(lessonOf(walk, 'evidence.given')).toMatchObject({ isUnsafe: false, isToMend: true })
  walk.keys('back', '1', 'measure', figure)
  expect(lessonOf(walk, 'evidence.given')).toMatchObject({ isUnsafe: false, marks: [{ isRight: true }] })
})

const isGas = ({ prompt }: Walk) => prompt.kind === 'evidence' && prompt.item.evidence.kind === 'gas'

it('a figure keyed wrong and taken back as mistyped was measured all the same', () => {
  const walk = begun()
  for (let n = 0; walk.prompt.kind !== 'read'; n++)
    if (n > 200 || !careful(walk)) throw new Error('no reading')
  walk.key('measure')
  const figure = walk.last.type === 'practice.asked' ? (walk.last.figure ?? '') : ''
  walk.key(`${figure.slice(0, 1)}${figure}`)
  expect(walk.prompt.kind).toBe('doubt')
  walk.keys('2', figure)
  expect(lessonOf(walk, 'reading.taken')).toMatchObject({ marks: [{ isRight: true }, { isRight: true }] })
})
