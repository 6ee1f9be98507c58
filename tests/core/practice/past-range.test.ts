// An instrument that has not the range for what is there says so in its own way and shows no figure, and another is taken by the word instrument.
import { describe, expect, it } from 'vitest'
import type { GasMeter, Reader } from '../../../src/core/definition/instruments.ts'
import { beyondItsScale } from '../../../src/core/job/plausible.ts'
import { chanceOf } from '../../../src/core/practice/chance.ts'
import { gasShown } from '../../../src/core/practice/gas-shown.ts'
import { lessonOn } from '../../../src/core/practice/lesson.ts'
import { pastRange, pastTold } from '../../../src/core/practice/past-range.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import type { Walk } from '../../helpers/example.ts'
import { careful, defsOf, session, type Trainee } from '../../helpers/trainees.ts'

const IN = 0.0254

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

/** What is measured first at a step with this instrument in the hand. */
function measuredWith(procedure: string, step: string, instrument: string): Walk {
  const own = defsOf(procedure)
  const stops: Trainee = (walk) => {
    const { prompt } = walk
    if (prompt.kind === 'pick' && prompt.options.some(({ id }) => id === instrument)) {
      walk.key(instrument)
      return true
    }
    return prompt.kind === 'read' && prompt.step.id === step ? false : careful(walk)
  }
  return session(3, 1, stops, own).walk.keys('measure')
}

describe('an outside micrometer of 2 to 3 in', () => {
  it('does not go over a piston of nine, and nothing is keyed for it', () => {
    const walk = measuredWith('ring-fit', 'piston_od', 'M-5')
    expect(shown(walk)?.shown).toContain(
      'M-5 is open to its last mark, 3.0000 in, and does not go over the part',
    )
    expect(shown(walk)?.figure).toBeUndefined()
    walk.keys('3.0000')
    const entry = walk.entries.findLast(({ type }) => type.startsWith('reading.'))
    expect(entry).toMatchObject({ type: 'reading.doubted' })
  })

  it('is doubted at what it does not span on a job, and is no measurement if that is kept', () => {
    const walk = measuredWith('ring-fit', 'piston_od', 'M-5').keys('9.4841')
    expect(walk.prompt).toMatchObject({
      kind: 'doubt',
      doubt: { why: 'beyond what M-5 reads, 2 in to 3 in' },
    })
    expect(beyondItsScale(defsOf('ring-fit'), { instrument: 'M-5', si: 9.4841 * IN })).not.toBeNull()
  })

  it('reads its standard at its first mark, a little past it too, and tells it', () => {
    const walk = measuredWith('ring-fit', 'mic_set_before', 'M-5')
    expect(shown(walk)?.figure).toMatch(/^(?:2\.000\d|1\.999\d)$/)
    expect(beyondItsScale(defsOf('ring-fit'), { instrument: 'M-5', si: 1.9995 * IN })).toBeNull()
    expect(beyondItsScale(defsOf('ring-fit'), { instrument: 'M-5', si: 1.98 * IN })).not.toBeNull()
  })
})

describe('past the range of the register', () => {
  const { instruments } = defsOf('bore-inspection').instruments
  const of = (id: string) => instruments.find((one) => one.id === id) as Reader

  it.each([
    ['T-2', 500, 'over', /T-2 shows no figure, only a mark that it is over its range/],
    ['T-2', 200, 'under', /under its range/],
    ['M-3', 13 * IN, 'over', /falls short of the wall/],
    ['M-3', 7 * IN, 'under', /does not go in/],
    ['F-1', 0.001 * IN, 'under', /thinnest leaf of F-1, END, does not go in/],
    ['I-4', 0.6 * IN, 'over', /run to the end of its travel/],
    ['W-1', 2000, 'over', /stands at the end of its scale, END: over range/],
  ] as const)('%s at %d tells so in its own way', (id, si, past, told) => {
    expect(pastRange(of(id), si)).toBe(past)
    expect(pastTold(of(id), past, 'END')).toMatch(told)
    expect(pastRange(of(id), (of(id).range.from.si + of(id).range.to.si) / 2)).toBeNull()
  })

  it('what is no number is past it', () => {
    expect(pastRange(of('T-2'), Number.NaN)).toBe('over')
  })
})

describe('a meter in %LEL', () => {
  const { instruments } = defsOf('bore-inspection').instruments
  const meter = instruments.find(({ id }) => id === 'G-7') as GasMeter
  const shows = (share: number, oxygen = 0.2) =>
    gasShown({ kind: 'gas', gas: 'flammable', share, oxygen }, meter, 0.05, {
      unit: '%LEL',
      manner: 'sheet',
      chance: chanceOf(1, 'test'),
    })

  it('shows what is there up to what burns', () => {
    expect(shows(0.025)).toEqual({ keyed: '50', text: '50 %LEL' })
    expect(shows(0.05)).toEqual({ keyed: '100', text: '100 %LEL' })
  })

  it.each([0.051, 0.4, Number.NaN])(
    'stands at the end of its scale at a share of %d, and says so',
    (share) => {
      expect(shows(share)).toMatchObject({
        keyed: '100',
        past: expect.stringContaining('G-7 stands at 100 %LEL with the mark that it is over its range'),
      })
    },
  )

  it('is blind without air, and shows no end of a scale then', () => {
    expect(shows(0.4, 0.01)).toEqual({ keyed: '0', text: '0 %LEL' })
  })
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

it('back says how another gauge is taken while nothing was read with this one, and so does the answer to a question', () => {
  expect(withSmallGauge().keys('back').said.join('\n')).toContain(
    'Another instrument than B-51 is taken by the word instrument, not by back.',
  )
  const told = withSmallGauge().keys('how do I take another gauge?').said.join('\n')
  expect(told).toContain('B-51 is in use here. Another is taken by the word instrument')
  expect(told).toContain('B-51 has read nothing so far, so nothing falls')
})
