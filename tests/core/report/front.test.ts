// The cover of a report: whoever turns two pages has seen what is not ACCEPT, what is open and the worst of the rest.
import { describe, expect, it } from 'vitest'
import { paperOf } from '../../../src/core/report/paper-of.ts'
import type { Report } from '../../../src/core/report/schema.ts'
import { exampleWalk, reported } from '../../helpers/reported.ts'

const report = reported(exampleWalk())
const [judged] = report.verdicts
if (judged === undefined) throw new Error('the example has a verdict')

const textsOf = (of: Report, id: string): string[] =>
  paperOf(of)
    .sections.filter((section) => section.id === id)
    .flatMap(({ pieces }) => pieces)
    .flatMap((piece) => (piece.is === 'lines' ? piece.lines.map(({ text }) => text) : []))

const accepted = {
  ...judged,
  word: 'ACCEPT',
  title: 'Rod judged',
  because: ['taper governs: 1 of 2, 50 % used; the book'],
}

describe('verdicts on a cover', () => {
  it('of ACCEPT stand in a line each where there are many, below those that are not, and whole in a section', () => {
    const many: Report = {
      ...report,
      verdicts: [accepted, accepted, judged, accepted, accepted] as Report['verdicts'],
    }
    const cover = textsOf(many, 'cover').filter((text) => text.startsWith('( '))
    expect(cover).toEqual([
      '( MONITOR )  Bore judged',
      ...Array(4).fill('( ACCEPT )  Rod judged: taper, 50 % used'),
    ])
    expect(
      textsOf(many, 'verdicts').filter((text) => text.includes('1 of 2, 50 % used; the book')),
    ).toHaveLength(4)
  })

  it('stand whole where there are few, and are not told twice', () => {
    const few: Report = { ...report, verdicts: [accepted, judged] as Report['verdicts'] }
    expect(textsOf(few, 'cover')).toContain('  taper governs: 1 of 2, 50 % used; the book')
    expect(textsOf(few, 'verdicts')).toEqual([])
  })
})

describe('exceptions on a cover', () => {
  it('are the worst, and every one that is open, in a line each; the others are counted', () => {
    const [one] = report.exceptions
    if (one === undefined) throw new Error('the example has exceptions')
    const exceptions = Array.from({ length: 40 }, (_, n) => ({
      ...one,
      number: n + 1,
      what: `thing ${n + 1}`,
      open: n === 39,
    }))
    const cover = textsOf({ ...report, exceptions }, 'cover').filter((text) => /thing|more/.test(text))
    expect(cover.slice(-3)).toEqual([
      'thing 18',
      'OPEN: thing 40',
      'and 21 more, in the section of that name',
    ])
  })
})
