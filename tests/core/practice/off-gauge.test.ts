// A gauge that its check shows to be off: kept as it is shown it is recorded right, measured on with it costs a mark, and put aside there is
// none to be held against anything.
import { describe, expect, it } from 'vitest'
import { gradeOf } from '../../../src/core/practice/grade.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import type { Walk } from '../../helpers/example.ts'
import { careful, look, seedHiding, session, type Trainee } from '../../helpers/trainees.ts'

const SEED = seedHiding('gauge-off', 2)

const upTo = (stopsAt: (walk: Walk) => boolean): Walk => {
  const stops: Trainee = (walk) => (walk.talk.ask === null && stopsAt(walk) ? false : careful(walk))
  return session(SEED, 2, stops).walk
}

const atDoubt = () => upTo(({ prompt }) => prompt.kind === 'doubt')
const atBore = () =>
  upTo(
    ({ prompt }) =>
      prompt.kind === 'read' &&
      !['set_before', 'part_temp_before', 'gauge_temp_before'].includes(prompt.step.id),
  )
const lostAt = (walk: Walk) =>
  (gradeOf(walk.engine.defs, walk.entries)?.lost ?? []).filter(({ says }) =>
    says.includes('off its standard'),
  )

describe('a gauge that is off its standard', () => {
  it('kept with a reason is told at once what comes of it, on any job', () => {
    const walk = atDoubt().keys('3', 'read twice and it is so')
    expect(walk.last.type).toBe('doubt.settled')
    const rows = entryBlock(walk.engine.defs, walk.state, walk.last)?.rows.map(({ text }) => text) ?? []
    expect(rows.join(' ')).toMatch(
      /0\.00\d+ in (?:over|under) the standard, and 0\.0002 in is allowed: .*puts it aside/,
    )
    expect(rows.join(' ')).toContain('the verdict is HOLD')
    const lesson = lessonOn(walk.engine.defs, walk.state, walk.last)
    expect(lesson?.marks.map(({ isRight }) => isRight)).toEqual([true, true])
  })

  it('measured on with costs one mark of measuring, at the first size and at no other', () => {
    const walk = atBore()
    expect(lostAt(walk)).toEqual([])
    careful(walk)
    expect(lostAt(walk)).toHaveLength(1)
    expect(lostAt(walk)[0]?.skill).toBe('measuring')
    careful(walk)
    careful(walk)
    expect(lostAt(walk)).toHaveLength(1)
  })

  it('put aside costs nothing: none is left to hold against anything, and no figure of one is taken', () => {
    const walk = atDoubt()
    const list = walk.keys('1', 'instrument').said
    const at = list.findLast((text) => /^\d+ {2}M-3/.test(text))?.split(' ')[0] ?? ''
    walk.keys(at, 'off its standard by a thousandth', 'RO')
    // Its temperature is asked anew, of one that is there.
    expect(walk.prompt).toMatchObject({ kind: 'read', step: { id: 'gauge_temp_before' } })
    walk.key('measure')
    expect(walk.said.at(-1)).toMatch(
      /^No gauge of the register may be used for the bore, so none has a temperature/,
    )
    expect(lostAt(walk)).toEqual([])
    // Nor is one taken that somebody keys all the same, in a session or on a job.
    expect(walk.key('75.0')).toBe('no-gauge')
    expect(walk.state.doubt).toBeNull()
  })

  it('of a sound one nothing is lost', () => {
    const { grade } = session(seedHiding('barrel', 1), 1, careful)
    expect(grade.lost).toEqual([])
  })

  it('is there to be measured where one may be used', () => {
    const walk = upTo(({ prompt }) => prompt.kind === 'read' && prompt.step.id === 'gauge_temp_before')
    expect(look(walk, 'measure').figure).toMatch(/^\d/)
  })
})
