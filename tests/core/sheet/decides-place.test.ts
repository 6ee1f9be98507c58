// The figure that decides is not always the greatest of its kind: places whose repeats lie apart may hold a verdict up with a small one. The
// row says of which place it is then, and which is the greatest.
import { expect, it } from 'vitest'
import type { Entry } from '../../../src/core/job/entries.ts'
import { becauseRows, verdictBlock } from '../../../src/core/sheet/verdict-block.ts'
import { Walk } from '../../helpers/example.ts'

const walk = new Walk().toVerdict()
const { defs } = walk.engine
const given = walk.entries.find(
  (one): one is Extract<Entry, { type: 'verdict.given' }> => one.type === 'verdict.given',
)
if (given === undefined || given.verdict.compute !== 'bore_form') throw new Error('no verdict of a bore')
const record = given.verdict
const [round, ...others] = record.result.judged
if (round === undefined) throw new Error('nothing judged')

const heldUp = {
  ...record,
  result: {
    ...record.result,
    verdict: 'HOLD' as const,
    judged: [
      {
        ...round,
        valueM: 0.0008 * 0.0254,
        places: [
          { station: 'crank_end', axis: 'vertical' },
          { station: 'crank_end', axis: 'horizontal' },
        ],
        judgement: { ...round.judgement, verdict: 'HOLD' as const, used: 0.08 },
      },
      ...others,
    ],
  },
}
const rowsOf = (one: typeof record) =>
  verdictBlock(defs, walk.state, 'Bore judged', one, {
    step: given.step,
    margin: '18',
    right: '',
    columns: 60,
  }).rows.map(({ text }) => text)

it('a small figure that holds the verdict up is told with its place, and with the greatest', () => {
  const rows = rowsOf(heldUp)
  const at = rows.findIndex((text) => /^out of round +0\.0008/.test(text))
  expect(rows[at]).toMatch(/8\s%/)
  expect(rows[at + 1]?.trim()).toBe('of crank end; the greatest is 0.0034, of centre')
  expect(
    becauseRows(defs, heldUp)
      .map(({ text }) => text)
      .join('\n'),
  ).toContain('of crank end; the greatest is 0.0034, of centre')
})

it('the greatest of its kind needs no place beside it', () => {
  expect(rowsOf(record).filter((text) => text.includes('the greatest is'))).toEqual([])
})
