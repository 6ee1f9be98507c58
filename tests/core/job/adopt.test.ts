// What a closed job left, adopted by a lead as the baseline of the next overhaul; and a lead's words after the close.
import { describe, expect, it } from 'vitest'
import { leftFigures } from '../../../src/core/job/adopt.ts'
import { readEntries } from '../../../src/core/job/entry-schema.ts'
import { fold, opening } from '../../../src/core/job/fold.ts'
import type { Input } from '../../../src/core/job/input.ts'
import type { State } from '../../../src/core/job/state.ts'
import { layOut, plainText } from '../../../src/core/sheet/block.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { wouldFall } from '../../../src/core/talk/would-fall.ts'
import { Walk } from '../../helpers/example.ts'
import { reviewed } from '../../helpers/reviewed.ts'

/** Closed with MONITOR, accepted by KH; RO read. */
const closed = () => new Walk().toVerdict().keys('1', 'KH', 'read again, none given', '')
const FILE = { name: 'machine-5.yaml', sha256: '00' }
type Adopt = Extract<Input, { do: 'adopt' }>
const adopting = (more: Partial<Adopt> = {}): Adopt => ({
  do: 'adopt',
  hours: 60_000,
  renewed: [],
  without: [],
  file: FILE,
  person: 'PB',
  proved: true,
  ...more,
})

/** The gauge of the bore is found out of calibration after the close. */
const foundOut = (walk: Walk) =>
  walk.bring({
    do: 'doubt-instrument',
    instrument: 'M-3',
    why: 'reads 2 thou long',
    says: 'the laboratory',
    person: 'ML',
    proved: true,
  })

describe('what a job left', () => {
  it('is each bore figure at 20 degC as its verdict had it, where a lead let the part go back as it was', () => {
    const walk = closed()
    const { figures, not } = leftFigures(walk.engine.defs, walk.state)
    const verdict = walk.state.verdicts.bore_judged?.verdict
    const at20 =
      verdict?.compute === 'bore_form'
        ? verdict.inputs.readings.map(({ valueM }) => `${(valueM / 0.0254).toFixed(5)} in`)
        : []
    expect(figures.map(({ value }) => value)).toEqual(at20)
    expect(figures).toHaveLength(6)
    expect(figures[0]).toMatchObject({
      of: 'bore diameter',
      station: 'head_end',
      axis: 'vertical',
      u: `${((verdict?.compute === 'bore_form' ? (verdict.inputs.readingU ?? 0) : 0) / 0.0254).toFixed(5)} in`,
      wears: 'larger',
      from: 'found',
    })
    expect(not).toEqual([])
  })

  it('is nothing of a part that was to be worked on and was not measured again', () => {
    const walk = new Walk().toVerdict().keys('2', 'KH', 'hone it', '')
    const { figures, not } = leftFigures(walk.engine.defs, walk.state)
    expect(figures).toEqual([])
    expect(not).toEqual([{ of: 'bore diameter', why: 'it was to be worked on or renewed' }])
  })

  it('is nothing that fell: an instrument found out takes its figures along', () => {
    const walk = closed()
    foundOut(walk)
    expect(leftFigures(walk.engine.defs, walk.state).figures).toEqual([])
  })
})

describe('adopting it', () => {
  it('is refused where a part is as found and said to be made new or cut', () => {
    expect(closed().bring(adopting({ renewed: ['bore'] }))).toBe('contradiction')
    expect(closed().bring(adopting({ renewed: ['liner'] }))).toBe('contradiction')
    expect(closed().bring(adopting({ renewed: ['rod', 'rings'] }))).toBeNull()
  })

  it('goes on record with each figure, the parts renewed and the file, and changes nothing of the outcome', () => {
    const walk = closed()
    expect(walk.bring(adopting({ renewed: ['rod', 'rings'], without: [2] }))).toBeNull()
    expect(walk.last).toMatchObject({
      type: 'left.adopted',
      by: 'PB',
      person: 'PB',
      signed: 'pin',
      hours: 60_000,
      renewed: ['rings', 'rod'],
      file: FILE,
    })
    if (walk.last.type !== 'left.adopted') throw new Error('not adopted')
    expect(walk.last.figures).toHaveLength(5)
    expect(walk.last.without.map(({ axis }) => axis)).toEqual(['horizontal'])
    expect(walk.state.adopted).toMatchObject({ person: 'PB', void: false })
    expect(walk.state.closed).toBe('MONITOR')
    const block = entryBlock(walk.engine.defs, walk.state, walk.last)
    const shown = plainText(
      layOut(block ?? { margin: '', rows: [] }, { width: 100, record: 'EXAMPLE', ascii: true }),
    )
    expect(shown).toMatch(/AS LEFT ADOPTED as the next baseline by PB/)
    expect(shown).toMatch(/bore diameter, centre, vertical: 9\.50\d+ in, U 0\.000\d+ in, as found/)
    expect(shown).toMatch(/not adopted: bore diameter, head end, horizontal/)
    expect(replayed(walk)).toStrictEqual(walk.state)
  })

  it.each([
    ['by a mechanic', { person: 'ML' }, 'not-lead'],
    ['by a trainee', { person: 'TS' }, 'not-lead'],
    ['by nobody of the crew', { person: 'XX' }, 'unknown-person'],
    ['without a PIN that fits', { proved: false }, 'pin-needed'],
    ['with no figure left', { without: [1, 2, 3, 4, 5, 6] }, 'nothing'],
    ['with hours that are none', { hours: Number.NaN }, 'no-hours'],
    ['with fewer hours than the last overhaul had', { hours: 10 }, 'hours-back'],
  ] as const)('is refused %s', (_what, more, code) => {
    const walk = closed()
    const before = walk.entries.length
    expect(walk.bring(adopting(more))).toBe(code)
    expect(walk.entries).toHaveLength(before)
  })

  it('is refused to the lead whose own readings they are', () => {
    const walk = closed()
    const readings = Object.fromEntries(
      Object.entries(walk.state.readings).map(([k, l]) => [k, l.map((r) => ({ ...r, by: 'PB' }))]),
    )
    walk.state = { ...walk.state, readings }
    expect(walk.bring(adopting())).toBe('own-work')
    expect(walk.bring(adopting({ person: 'KH' }))).toBeNull()
  })

  it('is refused for a job that is open, and for one that ended in STOP', () => {
    expect(new Walk().toVerdict().bring(adopting())).toBe('open')
    const stopped = closed()
    stopped.state = { ...stopped.state, closed: 'STOP' }
    expect(stopped.bring(adopting())).toBe('stopped')
  })

  it('is refused a second time, until an instrument it rests on is found out; the review says so', () => {
    const walk = closed()
    walk.bring(adopting())
    expect(walk.bring(adopting({ person: 'KH' }))).toBe('adopted')
    expect(reviewed(walk).adopted).toMatchObject({ person: 'PB' })
    expect(wouldFall(walk.engine.defs, walk.state, walk.entries, 'M-3').voids).toContainEqual(
      expect.stringMatching(/^the baseline that PB adopted on /),
    )
    foundOut(walk)
    expect(walk.state.adopted?.void).toBe(true)
    const block = entryBlock(walk.engine.defs, walk.state, walk.last)
    expect(block?.rows.map(({ text }) => text).join('\n')).toMatch(
      /The baseline that PB adopted from it falls/,
    )
    const review = reviewed(walk)
    expect(review.adopted).toBeNull()
    expect(review.exceptions.find(({ kind }) => kind === 'baseline')).toMatchObject({
      what: expect.stringMatching(/^BASELINE ADOPTED FROM FIGURES THAT FELL SINCE.*machine-5\.yaml$/),
      open: true,
    })
    expect(walk.bring(adopting({ person: 'KH' }))).toBe('nothing')
  })
})

describe('a remark of a lead', () => {
  it('stands in the log and the review of a closed job', () => {
    const walk = closed()
    expect(walk.bring({ do: 'remark', text: 'valve on order', person: 'KH', proved: true })).toBeNull()
    expect(walk.state.remarks).toMatchObject([{ person: 'KH', text: 'valve on order' }])
    expect(reviewed(walk).exceptions.find(({ kind }) => kind === 'remark')?.what).toMatch(
      /^Remark after the close, .*KH.*: valve on order$/,
    )
    expect(replayed(walk)).toStrictEqual(walk.state)
  })

  it.each([
    ['of a mechanic', { person: 'ML' }, 'not-lead'],
    ['without words', { text: ' . ' }, 'no-words'],
    ['without a PIN that fits', { proved: false }, 'pin-needed'],
  ] as const)('is refused %s', (_what, more, code) => {
    const walk = closed()
    expect(walk.bring({ do: 'remark', text: 'valve on order', person: 'KH', proved: true, ...more })).toBe(
      code,
    )
  })

  it('is a note while the job is open', () => {
    expect(new Walk().toVerdict().bring({ do: 'remark', text: 'so', person: 'KH', proved: true })).toBe(
      'open',
    )
  })
})

function replayed(walk: Walk): State {
  const stored = walk.entries.map(
    (e) => JSON.parse(JSON.stringify({ ...e, prev: '00', hash: '00' })) as unknown,
  )
  const read = readEntries(stored)
  if (!read.ok) throw new Error(read.error.say)
  const [first, ...rest] = read.value
  if (first?.type !== 'job.opened') throw new Error('not opened')
  return rest.reduce((state, e) => fold(state, e), opening(first))
}
