// What is improbable of a whole step: asked once on the sheet, on record, with nothing blocked and nothing changed by it.
import { describe, expect, it } from 'vitest'
import { asKind, stepById } from '../../../src/core/job/definitions.ts'
import type { Entry } from '../../../src/core/job/entries.ts'
import { readEntries } from '../../../src/core/job/entry-schema.ts'
import { fold, opening } from '../../../src/core/job/fold.ts'
import { questionsOf } from '../../../src/core/job/questions.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { openItems } from '../../../src/core/talk/open-items.ts'
import { AFTER_LINES, BORE_LINES, exampleDefs, noOverhauls, Walk } from '../../helpers/example.ts'

type Question = Extract<Entry, { type: 'readings.questioned' }>

const asked = (walk: Walk): Question[] =>
  walk.entries.filter((e): e is Question => e.type === 'readings.questioned')
const twice = (...figures: string[]) => figures.flatMap((figure) => [figure, figure])
const DEFS = exampleDefs({ machine: noOverhauls })
/** Top to bottom and side to side at the head end, the centre and the crank end. */
const bore = (...figures: string[]) => new Walk(DEFS).toBore().keys(...twice(...figures))

describe('top to bottom and side to side', () => {
  it.each([
    [
      'changed round at one station',
      ['9.5033', '9.5021', '9.5034', '9.5068', '9.5027', '9.5018'],
      'at CENTRE of ring travel, and',
    ],
    [
      'changed round at two',
      ['9.5021', '9.5033', '9.5034', '9.5068', '9.5027', '9.5018'],
      'at HEAD END of ring travel, CENTRE of ring travel, and',
    ],
    [
      'changed round everywhere',
      ['9.5021', '9.5033', '9.5034', '9.5068', '9.5018', '9.5027'],
      'at every station, and',
    ],
  ])('%s are asked about, once', (_what, figures, says) => {
    const walk = bore(...figures)
    expect(asked(walk)).toMatchObject([{ step: 'bore', about: 'axes', text: expect.stringContaining(says) }])
    expect(walk.prompt).toMatchObject({ kind: 'observe' })
    walk.keys(...AFTER_LINES)
    expect(asked(walk)).toHaveLength(1)
  })

  it.each([
    ['as weight wears them', ['9.5033', '9.5021', '9.5068', '9.5034', '9.5027', '9.5018']],
    [
      'over by no more than two figures may differ',
      ['9.5033', '9.5021', '9.5028', '9.5034', '9.5027', '9.5018'],
    ],
    ['alike at the others', ['9.5021', '9.5021', '9.5034', '9.5054', '9.5019', '9.5019']],
  ])('%s are not', (_what, figures) => {
    expect(asked(bore(...figures))).toEqual([])
  })

  it('of a cylinder that stands are not: weight wears neither side there', () => {
    const upright = {
      ...DEFS,
      machine: { ...DEFS.machine, cylinder: { ...DEFS.machine.cylinder, orientation: 'vertical' as const } },
    }
    const walk = bore('9.5021', '9.5033', '9.5034', '9.5068', '9.5018', '9.5027')
    const placed = asKind(stepById(DEFS, 'bore'), 'read')
    expect(questionsOf(DEFS, walk.state, placed)).toHaveLength(1)
    expect(questionsOf(upright, walk.state, placed)).toEqual([])
  })
})

describe('figures all alike', () => {
  const ALIKE = ['9.5033', '9.5033', '9.5033', '9.5033', '9.5033', '9.5033']

  it('to the last place are asked about, block nothing, and change no figure and no verdict', () => {
    const walk = bore(...ALIKE)
    expect(asked(walk)).toMatchObject([
      { about: 'alike', text: expect.stringContaining('all 12 readings of 6 places are 9.5033') },
    ])
    expect(walk.prompt).toMatchObject({ kind: 'observe' })
    const without = walk.entries.filter((e) => e.type !== 'readings.questioned')
    const [first, ...rest] = without
    if (first?.type !== 'job.opened') throw new Error('not opened')
    const { seq: _seq, ...folded } = rest.reduce(fold, opening(first))
    const { seq: _same, ...live } = walk.state
    expect(folded).toEqual(live)
  })

  it('but for one are not', () => {
    expect(asked(bore(...ALIKE.slice(1), '9.5034'))).toEqual([])
  })

  it('of fewer than six places are not', () => {
    const walk = new Walk(DEFS).toBore().keys(...twice(...ALIKE.slice(1)), 'n/a', 'a lamp is in the way')
    expect(asked(walk)).toEqual([])
    expect(walk.prompt).toMatchObject({ kind: 'observe' })
  })

  it('come up again at the end while they stand, and not after one was put right', () => {
    const walk = bore(...ALIKE)
    const open = () => openItems(walk.engine.defs, walk.state).filter((line) => line.includes('asked,'))
    expect(open()).toHaveLength(1)
    for (const one of walk.state.readings['bore.centre.vertical'] ?? [])
      walk.bring({ do: 'correct', of: one.seq, typed: '9.5034', why: 'read once more' })
    expect(open()).toEqual([])
    expect(asked(walk)).toHaveLength(1)
  })
})

describe('readings faster than anyone measures', () => {
  const fast = (stepMs: number, change: (walk: Walk) => void = () => {}, defs = DEFS) => {
    const walk = new Walk(defs).toBore()
    walk.state = { ...walk.state, scripted: false }
    change(walk)
    walk.stepMs = stepMs
    return asked(walk.keys(...BORE_LINES))
  }

  it('are asked about, with their time', () => {
    expect(fast(1_800)).toMatchObject([
      { about: 'fast', text: expect.stringMatching(/^12 readings in 20 s\./) },
    ])
  })

  it('are not from five seconds each on', () => {
    expect(fast(4_999)).toHaveLength(1)
    expect(fast(5_000)).toEqual([])
  })

  it('are not where a gauge types for itself, nor where answers come from a file', () => {
    const typing = exampleDefs({
      machine: noOverhauls,
      instruments: (t) => t.replaceAll('    set_check:\n', '    types_itself: true\n    set_check:\n'),
    })
    expect(fast(100, undefined, typing)).toEqual([])
    expect(
      fast(100, (walk) => {
        walk.state = { ...walk.state, scripted: true }
      }),
    ).toEqual([])
  })

  it('from a file are known by the opening of the job', () => {
    expect(new Walk(DEFS).state.scripted).toBe(true)
    const [first] = new Walk(DEFS).entries
    if (first?.type !== 'job.opened') throw new Error('not opened')
    expect(opening({ ...first, answers: 'person' }).scripted).toBe(false)
  })
})

describe('a question', () => {
  it('reads back from disk and is shown as a question, not as a finding', () => {
    const walk = bore('9.5021', '9.5033', '9.5034', '9.5068', '9.5018', '9.5027')
    const stored = walk.entries.map((e): unknown =>
      JSON.parse(JSON.stringify({ ...e, prev: '0', hash: '0' })),
    )
    const read = readEntries(stored)
    expect(read.ok && read.value).toEqual(walk.entries)
    const [question] = asked(walk)
    if (question === undefined) throw new Error('not asked')
    const rows = entryBlock(walk.engine.defs, walk.state, question)?.rows.map((r) => r.text)
    expect(rows).toEqual([
      `Question for the review: ${question.text}`,
      '  A question and no finding: what you know of it, put down with note.',
    ])
  })
})
