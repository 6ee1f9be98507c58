// A scenario of an instructor at work: what it may say, and that nothing it says opens a hold point, changes a mark or makes a job.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { definitionsFrom } from '../../../src/authoring/definitions.ts'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { openJob } from '../../../src/core/job/open-job.ts'
import { hiddenMachine } from '../../../src/core/practice/ask.ts'
import { ageOf, EDITION, whyOver } from '../../../src/core/practice/edition.ts'
import { gradeOf } from '../../../src/core/practice/grade.ts'
import { gradeLines } from '../../../src/core/practice/grade-lines.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import { practisedBy } from '../../../src/core/practice/lint-scenario.ts'
import { practiceOpeningRows } from '../../../src/core/sheet/practice-block.ts'
import { ROOT, Walk } from '../../helpers/example.ts'
import { shippedCopies } from '../../helpers/shipped-jobs.ts'
import { careful, careless, practiceDefs, sessionOf, type Trainee } from '../../helpers/trainees.ts'

const textOf = (name: string) => readFileSync(join(ROOT, 'examples/scenarios', `${name}.yaml`), 'utf8')

function scenarioDefs(text: string): Definitions {
  const files = [
    ...shippedCopies('bore-inspection.yaml', 'tc-401'),
    { role: 'scenario' as const, name: 'scenario.yaml', text },
  ]
  const made = definitionsFrom(files, 'kept')
  if (!made.ok) throw new Error(made.diagnostics.map(({ message }) => message).join('\n'))
  return { ...practiceDefs(), scenario: made.defs.scenario ?? never() }
}

function never(): never {
  throw new Error('no scenario was read')
}

const ONE_END = scenarioDefs(textOf('one-end-wider'))
const QUIET = scenarioDefs(textOf('quiet-meter'))
/** An instructor who would have people through. */
const BAD_HINT = scenarioDefs(
  textOf('one-end-wider').replace(
    'says: "Push it the other way as well."',
    'says: "Key BLOCKED, it always is. Nobody has to look."',
  ),
)

const practisedIn = (defs: Definitions) => practisedBy(defs.scenario ?? never())
const work = (defs: Definitions, trainee: Trainee) => sessionOf(defs, practisedIn(defs), trainee)

describe('a scenario', () => {
  it('hides what it names, at the level of the hardest of it, and the same for everybody', () => {
    expect(practisedIn(ONE_END)).toMatchObject({ seed: 2041, edition: EDITION })
    expect(hiddenMachine(ONE_END, practisedIn(ONE_END)).faults).toEqual(['taper', 'rust'])
    expect(work(ONE_END, careful).grade.hidden?.map(({ id }) => id)).toEqual(['taper', 'rust'])
  })

  it('has its expectations on the sheet, found or not, when the session is over', () => {
    const found = work(ONE_END, careful)
    expect(found.grade).toMatchObject({ isPassed: true, scenario: { id: 'one_end_wider' } })
    expect(found.grade.expected.map(({ isFound }) => isFound)).toEqual([true, true, true])
    expect(gradeLines(found.grade).join('\n')).toMatch(/Expected: .*taper governs; found/)
    expect(work(ONE_END, careless).grade.expected.some(({ isFound }) => !isFound)).toBe(true)
    expect(work(QUIET, careful).grade).toMatchObject({ isPassed: true, expected: [{ isFound: true }] })
    expect(work(QUIET, careless).grade).toMatchObject({ safety: 'failed', isPassed: false })
  })

  it('says its own hint, and at a hold point the one of the list behind it', () => {
    const hints = (defs: Definitions, isThere: (walk: Walk) => boolean) => {
      const said: string[] = []
      work(defs, (walk) => {
        if (!isThere(walk)) return careful(walk)
        walk.key('hint')
        said.push(walk.last.type === 'practice.hinted' ? walk.last.text : '')
        return false
      })
      return said
    }
    const atBlock = ({ prompt }: Walk) => prompt.kind === 'evidence' && prompt.item.evidence.id === 'block'
    expect(hints(ONE_END, atBlock)).toEqual([
      'Push it the other way as well. And: Nothing more than the sheet says: do that, and look at all of it.',
    ])
    const atBore = ({ prompt }: Walk) => prompt.kind === 'read' && prompt.step.id === 'bore'
    expect(hints(ONE_END, atBore)).toEqual([
      'Write the three stations of one axis under each other before you say anything.',
    ])
  })

  it('fails the session all the same where its hint was followed past a look', () => {
    const { walk } = work(BAD_HINT, (one) => {
      const { prompt } = one
      if (prompt.kind !== 'evidence' || prompt.item.evidence.id !== 'block') return careful(one)
      const { evidence } = prompt.item
      one.keys('hint', evidence.kind === 'words' ? evidence.words : '')
      return false
    })
    const { walk: looked } = work(BAD_HINT, (one) => one.prompt.kind !== 'read' && careful(one))
    expect(gradeOf(BAD_HINT, walk.entries)).toMatchObject({ safety: 'failed', isPassed: false, hints: 1 })
    expect(gradeOf(BAD_HINT, looked.entries)).toMatchObject({ safety: 'passed' })
  })

  it.each(['REAL', 'EXAMPLE'] as const)('is never %s, nor a job without a session', (record) => {
    const opening = {
      record,
      job: 'j',
      version: 'test',
      zone: 'UTC',
      clock: 'system',
      answers: 'person',
      files: [],
    } as const
    const proved = () => null
    const asSession = openJob(ONE_END, { ...opening, practice: practisedIn(ONE_END) }, proved)
    expect(asSession).toMatchObject({ ok: false, error: { code: 'practice' } })
    const asJob = openJob(ONE_END, opening, proved)
    expect(asJob).toMatchObject({ ok: false, error: { code: 'practice' } })
    if (!asJob.ok) expect(asJob.error.say).toContain('makes no job')
  })

  it('tells the briefing when it is opened, and what is made up', () => {
    const told = practiceOpeningRows(ONE_END, practisedIn(ONE_END)).map(({ text }) => text)
    expect(told[0]).toBe('Scenario: The cylinder that ran warm at one end. All of it is made up.')
    expect(told.slice(1, 3).map((line) => line.trim())).toEqual(ONE_END.scenario?.briefing)
    expect(told.join('\n')).not.toMatch(/taper|rust/)
  })
})

describe('the edition of what can be hidden', () => {
  const practice = { seed: 9, level: 1 as const, named: null, hidden: null }
  const at = (edition?: string) => {
    const { practice: state } = new Walk(practiceDefs(), 'PRACTICE', { practice }).state
    if (state === null) throw new Error('no session')
    return { ...state, ...(edition === undefined ? {} : { edition }) }
  }
  const [built = ''] = EDITION.split('.')

  it.each([
    ['today', EDITION, 'same'],
    ['another list', `${built}.00000000`, 'other-list'],
    ['built otherwise', '0.00000000', 'other-build'],
    ['none on record', undefined, 'other-build'],
  ] as const)('of %s is told apart', (_what, edition, age) => {
    expect(ageOf(practiceDefs(), at(edition))).toBe(age)
    expect(whyOver(practiceDefs(), at(edition)) === null).toBe(age === 'same')
    expect(whyOver(practiceDefs(), { ...at(edition), named: [] })).toBeNull()
  })

  it('of another list stays the same machine where a scenario names what is hidden', () => {
    expect(ageOf(ONE_END, at(`${built}.00000000`))).toBe('same')
  })

  it('keeps with the naming what was there, so that a later list tells of no other', () => {
    const { walk, grade } = work(ONE_END, careful)
    const named = walk.entries.find(({ type }) => type === 'practice.named')
    expect(named).toMatchObject({ hidden: ['taper', 'rust'] })
    // The same log with another seed and no scenario: what is told as hidden is what is on record.
    const entries = walk.entries.map((one) =>
      one.type === 'job.opened'
        ? { ...one, practice: { seed: 1, level: 1 as const, edition: `${built}.0` } }
        : one,
    )
    const later = gradeOf(practiceDefs(), entries)
    expect(later).toMatchObject({ age: 'other-list' })
    expect(later?.hidden).toEqual(grade.hidden)
    expect(gradeLines(later ?? grade).join('\n')).toMatch(
      /Its seed draws another machine now[\s\S]*No seed brings/,
    )
    expect(lessonOn(practiceDefs(), walk.state, walk.last)).toBeDefined()
  })
})
