// Limits in a report: of the load question too, and with each share as it comes out of the figures beside it.
import { describe, expect, it } from 'vitest'
import { paperOf } from '../../../src/core/report/paper-of.ts'
import { reportCsv } from '../../../src/core/report/write/csv.ts'
import { reportText } from '../../../src/core/report/write/text.ts'
import { Walk } from '../../helpers/example.ts'
import { pocketDefs, rg27Lines } from '../../helpers/pocket-job.ts'
import { exampleWalk, reported } from '../../helpers/reported.ts'

const loaded = (load: string) => reported(new Walk(pocketDefs('rg-27')).keys(...rg27Lines({ load })))

describe('the load question', () => {
  const report = loaded('222')

  it('has its limit with the sources in the machine record, in each form', () => {
    expect(report.limits).toMatchObject([
      {
        number: '14',
        judged: 'driver load',
        bound: 'at most',
        value: { text: '222.0 kW' },
        limit: { text: '213.8 kW' },
        word: 'REWORK',
        governs: true,
        from: 'machine',
        source: expect.stringMatching(
          /^Plate of the motor \(invented\); margin: Site rule P-12 \(invented\)/,
        ),
        rule: 'rating 225.0 kW less margin 5\u00a0%',
        approvedBy: 'VN, lead (invented)',
        since: '2026-02-02',
      },
    ])
    const text = reportText(paperOf(report)).replace(/\n[A-Z]+ +\d* *[│|] +/g, ' ')
    expect(text).not.toContain('No limit was judged against')
    expect(text).toMatch(
      /value: 222\.0\skW; U: \d\.\d\skW; limit: at most 213\.8\skW; used: 104\s%; word: REWORK/,
    )
    const csv = reportCsv(report)
    expect(csv).toMatch(/"judged",,,,14,,"driver load",.*222\.0/)
    expect(csv).toMatch(/"limit",,,,14,,"driver load, at most",.*less margin 5\s%".*213\.8/)
  })

  it('that was never worked out has none; too close to call is HOLD and does not pass', () => {
    expect(loaded('150').limits).toEqual([])
    expect(loaded('216').limits).toMatchObject([{ word: 'HOLD' }])
  })
})

describe('a share in the table', () => {
  it('is what its figure and limit come to', () => {
    const { limits } = reported(exampleWalk())
    expect(limits.length).toBeGreaterThan(3)
    for (const { value, limit, used, countedFrom } of limits) {
      const start = Number(countedFrom?.shown ?? 0)
      const hand = (Number(value?.shown) - start) / (Number(limit.shown) - start)
      expect(Math.abs(hand - (used ?? Number.NaN))).toBeLessThan(0.01)
    }
  })
})
