// A reading that is put right is marked like any other: as it was shown, measured anew inside correct, or invented. One that was doubted and
// withdrawn was never taken, and costs nothing.
import { describe, expect, it } from 'vitest'
import type { Entry } from '../../../src/core/job/entries.ts'
import { fold, opening } from '../../../src/core/job/fold.ts'
import { gradeOf, isEnough } from '../../../src/core/practice/grade.ts'
import { gradeLines } from '../../../src/core/practice/grade-lines.ts'
import { slipsAfter } from '../../../src/core/practice/grade-slips.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import type { Lesson } from '../../../src/core/practice/marks.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { questionText } from '../../../src/core/talk/ask.ts'
import type { Walk } from '../../helpers/example.ts'
import { careful, look, session, type Trainee } from '../../helpers/trainees.ts'

const SEED = 12

/** At the second reading of the bore, with one on record as it was shown. */
const upTo: Trainee = (walk) => (firstTaken(walk) === null ? careful(walk) : false)

/** The place of the bore that was read once, and is asked again. */
function firstTaken({ prompt, state }: Walk): string | null {
  if (prompt.kind !== 'read' || prompt.step.step.id !== 'bore') return null
  return state.readings[prompt.place.key]?.length === 1 ? prompt.place.key : null
}

const atSecond = () => session(SEED, 2, upTo).walk

/** Of the entry of this type that was made last. */
function lessonOf({ entries, engine }: Walk, type: string): Lesson | null {
  const last = entries.findLast((one) => one.type === type)
  const [first, ...rest] = entries
  if (first?.type !== 'job.opened' || last === undefined) throw new Error(`no ${type}`)
  let state = opening(first)
  for (const entry of rest) {
    state = fold(state, entry)
    if (entry.seq === last.seq) return lessonOn(engine.defs, state, entry)
  }
  return null
}

const shownLast = ({ state }: Walk) =>
  state.practice?.asked.findLast(({ figure }) => figure !== null)?.figure ?? ''
const moved = (figure: string, by: number) => (Number(figure) + by).toFixed(4)
/** Another reading, of which only the kind counts. */
const walkEntry = (like: Entry, seq: number) => ({ ...like, type: 'reading.taken', seq }) as Entry

const lostIn = (walk: Walk) => gradeOf(walk.engine.defs, walk.entries)?.lost ?? []

describe('a figure put in the place of another', () => {
  it('that nobody measured is invented, is told so and stands on the sheet', () => {
    const walk = atSecond()
    const shown = shownLast(walk)
    walk.keys('correct', '1', 'it was read too high', moved(shown, -0.0002))
    const lesson = lessonOf(walk, 'reading.corrected')
    expect(lesson?.says[0]).toMatch(new RegExp(`is invented: M-3 showed ${shown} there`))
    expect(lesson?.marks.map(({ skill, isRight }) => [skill, isRight])).toEqual([
      ['measuring', false],
      ['recording', false],
    ])
    expect(
      lostIn(walk)
        .map(({ says }) => says)
        .join(' '),
    ).toContain('is invented')
  })

  it('that nobody measured is put right by one that is: let off once, and said on the sheet; no other mark of measuring is', () => {
    const walk = atSecond()
    walk.key(moved(shownLast(walk), -0.0009))
    expect(lessonOf(walk, 'reading.taken')).toMatchObject({ isUnmeasured: true })
    expect(lostIn(walk).map(({ isMended }) => isMended)).toEqual([undefined])
    walk.keys('correct', '1', 'it was not measured', 'measure')
    walk.key(shownLast(walk))
    const grade = gradeOf(walk.engine.defs, walk.entries)
    expect(grade?.mended).toEqual({ measuring: 1 })
    expect(grade?.lost.map(({ isMended }) => isMended)).toEqual([true])
    const one = { skill: 'measuring', right: 3, of: 4 } as const
    expect([isEnough(one, {}), isEnough(one, { recording: 1 }), isEnough(one, { measuring: 1 })]).toEqual([
      false,
      false,
      true,
    ])
    expect(isEnough({ ...one, right: 2 }, { measuring: 3 })).toBe(false)
    if (grade == null) throw new Error('a session has a grade')
    expect(gradeLines(grade).join('\n')).toMatch(/lost, measuring, .*nothing was measured.*; put right since/)
  })

  it('of two at one place is put right by itself alone: a repeat that is right mends nothing', () => {
    const walk = atSecond()
    const shown = shownLast(walk)
    const invented = moved(shown, -0.0009)
    const next = moved(shown, -0.0011)
    // Invented, and the repeat measured; the same at the next place.
    walk.keys(invented, 'measure')
    walk.keys(shownLast(walk), next, 'measure')
    walk.key(shownLast(walk))
    const told = () =>
      lostIn(walk)
        .filter(({ skill }) => skill === 'measuring')
        .map(({ says, isMended }) => [/for (\S+) in/.exec(says)?.[1], isMended])
    expect(told()).toEqual([
      [invented, undefined],
      [next, undefined],
    ])
    expect(gradeOf(walk.engine.defs, walk.entries)?.mended).toEqual({})
    const of = walk.entries.findLast((e) => e.type === 'reading.taken' && e.typed === next)
    if (of === undefined) throw new Error('not taken')
    walk.keys('correct', '2', 'it was not measured', 'measure')
    walk.key(shownLast(walk))
    expect(told()).toEqual([
      [invented, undefined],
      [next, true],
    ])
    expect(gradeOf(walk.engine.defs, walk.entries)?.mended).toEqual({ measuring: 1 })
  })

  it('that fell is put right by the one that is taken in its place, and one that stands by none', () => {
    const { state, last } = atSecond()
    const place = last.type === 'practice.asked' ? last.of : Object.keys(state.readings).at(-1)
    if (place === undefined) throw new Error('nothing was read')
    const [first] = state.readings[place] ?? []
    if (first === undefined) throw new Error('nothing was read there')
    const slip = { of: place, reading: first.seq, skills: ['measuring'] } as const
    const taken = walkEntry(last, first.seq + 5)
    const slipsWith = (voidBy: number | null) =>
      slipsAfter(
        [slip],
        { ...state, readings: { ...state.readings, [place]: [{ ...first, voidBy }] } },
        taken,
        place,
        null,
      )
    expect(slipsWith(null)).toEqual({ open: [slip], mended: [] })
    expect(slipsWith(first.seq + 1)).toEqual({ open: [], mended: [slip] })
  })

  it('is right as it was shown, after a slip of the keys, and mends it', () => {
    const walk = atSecond()
    const { figure = '' } = look(walk, 'measure')
    walk.key(moved(figure, 0.0001))
    expect(lessonOf(walk, 'reading.taken')?.marks.some(({ isRight }) => !isRight)).toBe(true)
    walk.keys('correct', '1', 'last figure keyed wrong', figure)
    expect(lessonOf(walk, 'reading.corrected')).toMatchObject({
      marks: [{ skill: 'recording', isRight: true }],
    })
    expect(gradeOf(walk.engine.defs, walk.entries)?.mended).toEqual({ recording: 1 })
  })

  it('is measured anew inside the question, which stands as it was', () => {
    const walk = atSecond()
    const stood = shownLast(walk)
    walk.keys('correct', '1', 'it was read too high', 'measure')
    expect(walk.last).toMatchObject({ type: 'practice.asked', of: firstTaken(walk) })
    expect(walk.talk.ask).not.toBeNull()
    expect(walk.talk.ask === null ? '' : questionText(walk.talk.ask)).toContain('The right figure')
    for (let n = 0; shownLast(walk) === stood && n < 20; n++) walk.key('measure')
    walk.key(shownLast(walk))
    expect(lessonOf(walk, 'reading.corrected')).toMatchObject({
      marks: [
        { skill: 'measuring', isRight: true },
        { skill: 'recording', isRight: true },
      ],
    })
    // What was measured for it is for no other reading.
    walk.key(shownLast(walk))
    expect(lessonOf(walk, 'reading.taken')?.says[0]).toMatch(/^Wrong: nothing was measured/)
  })

  it('leaves what was measured for the next reading to that one', () => {
    const walk = atSecond()
    const first = shownLast(walk)
    const { figure = '' } = look(walk, 'measure')
    walk.keys('correct', '1', 'to see it once more', moved(first, 0.0001), figure)
    const { marks = [] } = lessonOf(walk, 'reading.taken') ?? {}
    expect(marks.length).toBeGreaterThan(0)
    expect(marks.every(({ isRight }) => isRight)).toBe(true)
  })

  it('is not measured where the hold point of its place has fallen', () => {
    const walk = atSecond()
    walk.keys('stop')
    expect(walk.keys('measure').last.type).not.toBe('practice.asked')
    const fallen = atSecond()
    fallen.now = { ...fallen.now, ms: fallen.now.ms + 3 * 3_600_000 }
    fallen.bring({ do: 'tick' })
    fallen.keys('correct')
    const before = fallen.entries.filter(({ type }) => type === 'practice.asked').length
    fallen.keys('1', 'it was read too high', 'measure')
    expect(fallen.entries.filter(({ type }) => type === 'practice.asked')).toHaveLength(before)
    expect(fallen.said.at(-1)).toMatch(/^Nobody is in/)
  })
})

describe('a figure that was doubted', () => {
  const doubted = () => {
    const walk = atSecond()
    const { figure = '' } = look(walk, 'measure')
    walk.key('0.9500')
    expect(walk.state.doubt).not.toBeNull()
    return { walk, figure }
  }

  it('and withdrawn costs nothing: nothing was taken', () => {
    const { walk, figure } = doubted()
    expect(lessonOf(walk, 'reading.doubted')).toMatchObject({ marks: [] })
    walk.keys('2', figure)
    expect(lessonOf(walk, 'reading.taken')?.marks.every(({ isRight }) => isRight)).toBe(true)
    expect(lostIn(walk)).toEqual([])
  })

  it('and kept is marked where it is kept, by its sheet', () => {
    const { walk } = doubted()
    walk.keys('3', 'so it stood on the gauge')
    expect(lessonOf(walk, 'doubt.settled')?.marks.some(({ isRight }) => !isRight)).toBe(true)
    expect(lostIn(walk)[0]?.at).toMatch(/^sheet \d/)
  })
})

it('a finding that was put right says so on the sheet, and spares no mark', () => {
  const { walk } = session(SEED, 2, (one) =>
    one.talk.ask === null && one.prompt.kind === 'observe' && one.prompt.step.id === 'strip'
      ? false
      : careful(one),
  )
  walk.keys('look', '3')
  walk.bring({ do: 'correct-finding', step: 'strip', condition: 'present', why: 'picked the wrong line' })
  const grade = gradeOf(walk.engine.defs, walk.entries)
  expect(grade?.lost).toMatchObject([{ skill: 'diagnosing', isMended: true }])
  expect(grade?.mended).toEqual({})
})

it('fault is no word of a STOP, and what is left to do under one names it first', () => {
  const walk = atSecond().keys('stop', '4', 'fault 8')
  expect(walk.talk.ask).toMatchObject({ kind: 'stop-why' })
  expect(walk.said.at(-1)).toMatch(/fault are heard at the prompt/)
  walk.keys('the block was loose', 'RO')
  const style = { width: 79, record: 'PRACTICE', ascii: true } as const
  const rows = () =>
    promptView(walk.engine.defs, walk.state, walk.talk, style)
      .ask.map(({ text }) => text)
      .join(' ')
  expect(rows()).toContain('name what was hidden, by the word fault, then leave')
  walk.keys('fault 0')
  expect(rows()).not.toContain('name what was hidden')
})

describe('what a lead decides', () => {
  const decided = (about: string, choice: string): Lesson | null => {
    const { walk } = session(SEED, 2, ({ state }) => state.practice === null)
    const entry = {
      type: 'disposition.set',
      step: about,
      about,
      choice,
      why: 'it is so',
      person: 'KH',
    } as const
    return lessonOn(walk.engine.defs, walk.state, { ...entry, seq: 9, at: '', signed: 'pin' } as never)
  }

  it.each(['rework', 'repair', 'replace'])('%s of a finding is wrong: nothing was done to it', (choice) => {
    expect(decided('surface', choice)).toMatchObject({ marks: [{ skill: 'recording', isRight: false }] })
  })

  it('is not marked else, and that is said', () => {
    for (const lesson of [decided('surface', 'hold'), decided('bore_judged', 'rework')]) {
      expect(lesson?.marks).toEqual([])
      expect(lesson?.says[0]).toMatch(/^Not marked/)
    }
  })
})
