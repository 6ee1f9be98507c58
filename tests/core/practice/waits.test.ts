// What only waiting, a second look and a second test tell; and what is said wrongly at a step that would hurt somebody.
import { mean, standardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { fold, opening } from '../../../src/core/job/fold.ts'
import { SCATTER, soundMachine } from '../../../src/core/practice/build.ts'
import { factsOf } from '../../../src/core/practice/facts.ts'
import { gradeOf } from '../../../src/core/practice/grade.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { Walk } from '../../helpers/example.ts'
import { careful, defsOf, seedHiding } from '../../helpers/trainees.ts'

/** A session up to where `isThere`, worked by the careful one. */
function upTo(name: string, seed: number, isThere: (walk: Walk) => boolean, level: 1 | 2 | 3 | 4 = 1): Walk {
  const walk = new Walk(defsOf(name), 'PRACTICE', { practice: { seed, level } })
  for (let n = 0; !isThere(walk); n++)
    if (n > 200 || !careful(walk)) throw new Error(`never there: ${walk.prompt.kind}`)
  return walk
}

const atItem = (id: string) => (walk: Walk) =>
  walk.prompt.kind === 'evidence' && walk.prompt.item.evidence.id === id
const atStep = (id: string) => (walk: Walk) =>
  walk.prompt.kind !== 'pick' && 'step' in walk.prompt && walk.prompt.step?.step.id === id

function lastLesson({ entries, engine }: Walk) {
  const [first, ...rest] = entries
  if (first?.type !== 'job.opened') throw new Error('no session')
  let state = opening(first)
  let last: ReturnType<typeof lessonOn> = null
  for (const entry of rest) {
    state = fold(state, entry)
    last = lessonOn(engine.defs, state, entry) ?? last
  }
  return last
}

/** A seed on which nothing is hidden. */
const SOUND = 12

describe('a wait', () => {
  const begun = () =>
    upTo('vent-and-purge', seedHiding('valve-creeps', 3, defsOf('vent-and-purge')), atItem('hold'), 3).keys(
      'look',
      'VENTS SHUT',
    )

  it('that nobody looked at when it was over fails the session, whatever was seen before', () => {
    const walk = begun().keys('look')
    expect(walk.last).toMatchObject({ type: 'practice.asked' })
    expect(walk.wait(10).key('NO RISE')).toBeNull()
    expect(lastLesson(walk)).toMatchObject({ isUnsafe: true })
    expect(lastLesson(walk)?.says.join(' ')).toMatch(/before the wait was over/)
    expect(gradeOf(walk.engine.defs, walk.entries)).toMatchObject({ safety: 'failed', isPassed: false })
  })

  it('shows what comes slowly, and no words may be typed for it', () => {
    const walk = begun().wait(10).keys('look')
    const [, from, to] =
      /END 0\.\d(?: psig when it began)?, (\d+\.\d) now[\s\S]*?, (\d+\.\d) now/.exec(shown(walk)) ?? []
    expect(Math.max(Number(from), Number(to))).toBeGreaterThan(0.8)
    walk.key('NO RISE')
    expect(lastLesson(walk)).toMatchObject({ isUnsafe: false, isToMend: true })
    expect(lastLesson(walk)?.says.join(' ')).toContain('Nothing may be keyed for that')
  })

  it('leaves the words that ask the machine in a foot that has no room for all', () => {
    const { engine, state, talk, now } = begun()
    const style = { width: 79, record: 'PRACTICE', ascii: true } as const
    const { below } = fitLive({
      view: promptView(engine.defs, state, talk, style),
      foot: foot(engine.defs, state, now),
      style,
      rows: 24,
      columns: 80,
      notice: null,
    })
    expect(below.map(({ text }) => text).join(' ')).toMatch(
      /Wait: 10 min left.*Words: look hint wait fault help/,
    )
  })

  it('goes by at a word in a practice session, and in no other', () => {
    const { engine, state, talk, now } = begun()
    expect(hear(engine.defs, state, talk, 'wait', now)).toMatchObject({ input: null, passMs: 600_000 })
    expect(hear(engine.defs, state, talk, 'wait 40', now)).toMatchObject({ input: null, passMs: 2_400_000 })
    expect(hear(engine.defs, state, talk, 'wait 0', now).passMs).toBeUndefined()
    const job = new Walk().toGate()
    for (const line of ['wait', 'wait 40'])
      expect(hear(job.engine.defs, job.state, job.talk, line, job.now).passMs).toBeUndefined()
  })
})

function shown({ entries }: Walk): string {
  const last = entries.findLast((entry) => entry.type === 'practice.asked')
  return last?.type === 'practice.asked' ? last.shown : ''
}

describe('the air', () => {
  it('that changed once it was tested is found by the second test of the same line alone', () => {
    const seed = seedHiding('air-stale', 4, defsOf('vent-and-purge'))
    const walk = upTo('vent-and-purge', seed, atItem('oxygen_breathing'), 4)
    walk.key('look')
    expect(shown(walk)).toMatch(/20\.9 %vol/)
    for (let n = 0; n < 100 && !walk.entries.some(({ type }) => type === 'evidence.failed'); n++)
      careful(walk)
    expect(shown(walk)).toMatch(/1[4-8]\.\d %vol/)
    expect(walk.entries.findLast((e) => e.type === 'evidence.failed')).toMatchObject({
      item: 'oxygen_breathing',
    })
  })
})

describe('a finding that would hurt somebody', () => {
  it.each([
    ['handled', 'hollow-as-solid', 3, '2'],
    ['vents', 'vent-plugged', 2, '1'],
    ['way', 'vent-plugged', 2, '4'],
    ['slacked', 'plug-seized', 3, '1'],
  ] as const)('fails the session at %s with %s', (step, id, level, said) => {
    const walk = upTo('hollow-piston', seedHiding(id, level, defsOf('hollow-piston')), atStep(step), level)
    walk.keys('look', said)
    expect(lastLesson(walk)).toMatchObject({ isUnsafe: true, marks: [{ skill: 'safety', isRight: false }] })
    expect(lastLesson(walk)?.says.length).toBeGreaterThan(2)
  })

  it('is only wrong where it errs to the safe side', () => {
    const walk = upTo(
      'hollow-piston',
      seedHiding('plug-aimed', 1, defsOf('hollow-piston')),
      atStep('record_says'),
    )
    walk.keys('look', '3', 'they do not agree')
    expect(lastLesson(walk)).toMatchObject({
      isUnsafe: false,
      marks: [{ skill: 'diagnosing', isRight: false }],
    })
  })
})

describe('a step that is confirmed', () => {
  const at = () => upTo('ring-fit', seedHiding('ring-material', 3, defsOf('ring-fit')), atStep('new_set'), 3)

  it.each([
    [['1'], false],
    [['look', '1'], false],
    [['look', '2', 'another material is stamped on them'], true],
  ] as const)('and is not so: %j is right: %s', (lines, isRight) => {
    expect(lastLesson(at().keys(...lines))?.marks).toEqual([{ skill: 'diagnosing', isRight }])
  })
})

it('a step that is said to be done with gas behind the cover fails the session, looked at or not', () => {
  const seed = seedHiding('cover-hisses', 4, defsOf('open-cylinder'))
  const walk = upTo('open-cylinder', seed, atStep('slack'), 4)
  for (const lines of [['1'], ['look', '1']])
    expect(lastLesson(walk.copy().keys(...lines))).toMatchObject({ isUnsafe: true })
  expect(lastLesson(walk.copy().keys('look', '2', 'it hisses all round'))).toMatchObject({ isUnsafe: false })
})

it('a thermometer read again and again scatters as its model says, about its own steady error', () => {
  const walk = upTo('ring-fit', SOUND, atStep('piston_temp_before'))
  const figures = Array.from({ length: 400 }, () => {
    walk.key('measure')
    return walk.last.type === 'practice.asked' ? Number(walk.last.figure) : Number.NaN
  })
  const facts = factsOf(walk.engine.defs)
  if (!facts.ok) throw new Error(facts.error.say)
  const { warmth, off } = soundMachine(facts.value, SOUND, 1)
  const { bias = Number.NaN } = off['T-2'] ?? {}
  const truth = (warmth.boreBefore * 9) / 5 + 32
  // Standard uncertainty 0.4 degF, steps of 0.1; a step adds a twelfth of its square (JCGM 100:2008, F.2.2.1).
  const scatter = Math.hypot(SCATTER * 0.4, 0.1 / Math.sqrt(12))
  expect(Math.abs(mean(figures) - truth - (bias * 9) / 5)).toBeLessThan((4 * scatter) / Math.sqrt(400))
  expect(Math.abs(standardDeviation(figures) / scatter - 1)).toBeLessThan(4 / Math.sqrt(2 * 400))
})
