// Whole jobs as sheets: what a live crew keyed is written down, keyed in from paper and closed, and comes to the same; then reviewed and
// reported. `PULLS=1` does the whole piston pull on both machines too, which takes minutes.
import { describe, expect, it } from 'vitest'
import { nonconformances } from '../../../src/core/job/nonconformance.ts'
import type { State } from '../../../src/core/job/state.ts'
import { reportText } from '../../../src/core/report/forms.ts'
import { paperOf } from '../../../src/core/report/paper-of.ts'
import { Walk } from '../../helpers/example.ts'
import { fromDisk } from '../../helpers/filled-sheet.ts'
import { reported } from '../../helpers/reported.ts'
import { reviewed } from '../../helpers/reviewed.ts'
import { shippedDefs } from '../../helpers/shipped-jobs.ts'
import { transcribed } from '../../helpers/transcribed.ts'
import { playAnswers } from '../../helpers/walked.ts'

type Case = readonly [
  'tc-401' | 'rg-27',
  procedure: string,
  answers: string,
  decides: string,
  compares: string,
]

const SMALL: readonly Case[] = [
  ['tc-401', 'bore-inspection.yaml', 'answers.txt', 'KH', 'PB'],
  ['tc-401', 'rod-sizes.yaml', 'rod-answers.txt', 'KH', 'PB'],
  ['rg-27', 'pocket-load.yaml', 'pocket-load-answers.txt', 'VN', 'LP'],
]
const PULLS: readonly Case[] =
  process.env.PULLS === undefined
    ? []
    : [
        ['tc-401', 'piston-pull.yaml', 'piston-pull-answers.txt', 'KH', 'PB'],
        ['rg-27', 'piston-pull.yaml', 'piston-pull-answers.txt', 'VN', 'LP'],
      ]

/** The live job, as the plain driver walks it. */
function worked([site, procedure, answers]: Case): Walk {
  return playAnswers(new Walk(shippedDefs(procedure, site)), [site, answers])
}

const verdicts = ({ verdicts: all }: State) =>
  Object.entries(all).map(([step, { verdict }]) => `${step} ${verdict.result.verdict}`)

describe.each([...SMALL, ...PULLS])('on %s, %s', (...of) => {
  it('comes to the same verdicts from paper as live, closes, and is reviewed and reported as what it is', () => {
    const live = worked(of)
    expect(live.state.closed).not.toBeNull()
    const sheet = transcribed(live, { decides: of[3], compares: of[4] })
    const { defs } = sheet.engine
    expect([sheet.state.closed, sheet.state.asLeft]).toEqual([live.state.closed, live.state.asLeft])
    expect(verdicts(sheet.state)).toEqual(verdicts(live.state))
    expect(sheet.state.gates).toEqual({})
    expect(fromDisk(sheet.entries).ok).toBe(true)

    const review = reviewed(sheet)
    expect(review.exceptions[0]?.what).toBe('From paper: gates not enforced by Barover')
    expect(review.exceptions.filter(({ kind }) => kind === 'log')).toEqual([])
    const said = review.exceptions.map(({ what }) => what)
    for (const { name } of nonconformances(defs, sheet.state))
      expect(said.some((what) => what.includes(`${name} `))).toBe(true)

    const text = reportText(paperOf(reported(sheet)))
    for (const line of text.trimEnd().split('\n')) expect(line).toMatch(/^EXAMPLE from paper/)
    expect(text).toContain('gates not enforced by Barover')
  }, 400_000)
})
