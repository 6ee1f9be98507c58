// A gauge that is too small for what is there stands at the end of its scale, and another is taken by the word instrument.
import { expect, it } from 'vitest'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import type { Walk } from '../../helpers/example.ts'
import { careful, defsOf, session, type Trainee } from '../../helpers/trainees.ts'

const defs = defsOf('pocket-load')

/** As far as the suction pressure, with the gauge of 0 to 1 barg in the hand. */
function withSmallGauge(): Walk {
  const stops: Trainee = (walk) =>
    walk.prompt.kind === 'pick' && walk.prompt.seat.id === 'suction_gauge' ? false : careful(walk)
  return session(3, 1, stops, defs).walk.keys('B-51')
}

const shown = ({ last }: Walk) => (last.type === 'practice.asked' ? last : null)

it('a gauge over its range shows the end of its scale and no figure, and what is keyed for it is wrong', () => {
  const walk = withSmallGauge().keys('measure')
  expect(shown(walk)?.shown).toContain('B-51 stands at the end of its scale, 1.000 barg: over range.')
  expect(shown(walk)?.figure).toBeUndefined()
  walk.keys('1.000')
  const entry = walk.entries.findLast(({ type }) => type.startsWith('reading.'))
  if (entry === undefined) throw new Error('no reading')
  const lesson = lessonOn(defs, walk.state, entry)
  expect(lesson).toMatchObject({ marks: [{ skill: 'measuring', isRight: false }] })
  expect(lesson?.says[0]).toContain('B-51 cannot show what is there')
})

it('a gauge that has the range shows a figure', () => {
  const walk = withSmallGauge().keys('instrument')
  const at = walk.said.findIndex((line) => /^\d+ {2}.*B-51/.test(line))
  expect(at).toBeGreaterThan(0)
  walk.keys(walk.said[at]?.split(' ')[0] ?? '', 'its range is too small', 'EK')
  expect(walk.prompt).toMatchObject({ kind: 'pick', seat: { id: 'suction_gauge' } })
  walk.keys('B-52', 'measure')
  expect(shown(walk)?.figure).toMatch(/^\d\.\d+$/)
})

it('a figure beyond what the gauge reads is doubted, and the way to another stands there', () => {
  const walk = withSmallGauge().keys('2.300')
  const { engine, state, talk } = walk
  const style = { width: 79, record: 'PRACTICE', ascii: true } as const
  expect(walk.prompt.kind).toBe('doubt')
  expect(promptView(engine.defs, state, talk, style).ask.map(({ text }) => text)).toContain(
    'The word instrument takes another, which reads that far.',
  )
})

it('back puts it back while nothing was read with it, and the answer to a question says so', () => {
  expect(withSmallGauge().keys('back').prompt).toMatchObject({ kind: 'pick', seat: { id: 'suction_gauge' } })
  const told = withSmallGauge().keys('how do I take another gauge?').said.join('\n')
  expect(told).toContain(
    'B-51 is in use here and has read nothing. Key back: it goes back as picked by mistake',
  )
  expect(told).toContain('the word instrument takes it off the job; then it is not offered again')
})
