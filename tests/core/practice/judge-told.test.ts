// At the verdict of a practice session: what the trainee needs to judge is told before, the measuring error with it, and a hint says how the
// largest is counted.
import { expect, it } from 'vitest'
import { asKind } from '../../../src/core/job/definitions.ts'
import { judgeStep } from '../../../src/core/job/judge-step.ts'
import { hintFor } from '../../../src/core/practice/hint.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { timeLines } from '../../../src/core/talk/where.ts'
import { shownUp } from '../../../src/core/units/index.ts'
import { careful, rodDefs, seedHiding, session, type Trainee } from '../../helpers/trainees.ts'

const atJudge: Trainee = (walk) =>
  walk.talk.ask === null && walk.prompt.kind === 'judge' ? false : careful(walk)
const atBoreJudge = () => session(seedHiding('barrel', 1), 1, atJudge).walk

it('limits tells the measuring error that the sheet will allow for', () => {
  const walk = atBoreJudge()
  const { defs } = walk.engine
  if (walk.prompt.kind !== 'judge') throw new Error('no verdict is asked')
  const { inputs } = judgeStep(defs, walk.state, asKind(walk.prompt.step, 'judge'), 'test') as {
    inputs: { differenceU: number; readingU: number }
  }
  const said = hear(defs, walk.state, walk.talk, 'limits').say.join('\n')
  // With a digit more than a size has, as a figure near its limit hangs on it; and rounded up.
  const error = (metres: number) => shownUp(metres / 0.0254, 5)
  expect(said).toContain(
    `Measuring error here: ${error(inputs.differenceU)} of a difference, ${error(inputs.readingU)} of a size, in.`,
  )
  expect(said).toMatch(/Judged at 20 degC: the largest is 9\.5\d{4} in there/)
  // Before all readings are in there is none to tell.
  const before = session(seedHiding('barrel', 1), 1, (one) =>
    one.prompt.kind === 'read' && one.prompt.step.id === 'bore' ? false : careful(one),
  ).walk
  expect(hear(defs, before.state, before.talk, 'limits').say.join('\n')).not.toContain('Measuring error here')
})

it('a hint says that the largest counts from nominal, where a largest is judged', () => {
  const walk = atBoreJudge()
  expect(hintFor(walk.engine.defs, walk.state)).toMatch(/Divide each by its own\. The largest .*from nominal/)
  const rod = session(seedHiding('gauge-off', 2, rodDefs()), 2, atJudge, rodDefs()).walk
  expect(rod.prompt.kind).toBe('judge')
  expect(hintFor(rod.engine.defs, rod.state)).not.toContain('nominal')
})

it('one that is right says so of what governs as well, and what is asked with a word alone names no limit as the right one', () => {
  const walk = atBoreJudge()
  walk.key('1')
  expect(walk.said.at(-1)).toMatch(/which limit governs.*ACCEPT and one of out of round, taper, spread/)
  const { walk: whole } = session(seedHiding('barrel', 1), 1, careful)
  const entry = whole.entries.find(({ type }) => type === 'verdict.given')
  if (entry === undefined) throw new Error('no verdict')
  const says = lessonOn(whole.engine.defs, whole.state, entry)?.says[0]
  expect(says).toMatch(/^Right: [A-Z]+, and .+ governs\.$/)
})

it('a session that is over but for its fault has no work left to be done', () => {
  const { walk } = session(seedHiding('barrel', 1), 1, (one) =>
    one.prompt.kind === 'finish' ? false : careful(one),
  )
  walk.keys('leave', '1')
  walk.bring({ do: 'take-up' })
  walk.keys('RO')
  const { defs } = walk.engine
  expect(timeLines(defs, walk.state)).toEqual([])
})

it('one that is right of the machine while the sheet says HOLD is told why the two differ', () => {
  const { walk } = session(seedHiding('barrel', 1), 1, careful)
  const entry = walk.entries.find(({ type }) => type === 'verdict.given')
  if (entry?.type !== 'verdict.given') throw new Error('no verdict')
  const says = (given: typeof entry, state = walk.state) =>
    lessonOn(walk.engine.defs, state, given)?.says.join(' ') ?? ''
  expect(says(entry)).not.toContain('The sheet says')
  const held = {
    ...entry,
    verdict: { ...entry.verdict, result: { ...entry.verdict.result, verdict: 'HOLD' } },
  } as typeof entry
  // A reading that nobody measured brings it to that.
  const { practice } = walk.state
  if (practice === null) throw new Error('no practice')
  const unmeasured = { ...walk.state, practice: { ...practice, asked: [] } }
  expect(says(held, unmeasured)).toMatch(
    /^Right: .*The sheet says HOLD, as it goes by what was keyed, .*put the figure right, by the word correct\./,
  )
})
