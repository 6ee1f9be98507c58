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
    expect(report.limits.slice(0, 1)).toMatchObject([
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
    expect(loaded('216').limits[0]).toMatchObject({ judged: 'driver load', word: 'HOLD' })
  })
})

describe('the cylinders of the load question', () => {
  const { limits } = loaded('222')
  const one = (judged: string) => limits.find((each) => each.judged === judged)

  it('have each limit of the record that they were held against, at the opening that is spoken of', () => {
    expect(limits.filter(({ judged }) => judged.endsWith('throw 1')).map(({ judged }) => judged)).toEqual(
      [
        ...['rod pushed', 'rod pulled', 'load at the pin', 'reversal at the pin', 'reversed peak'],
        'ideal discharge temperature',
      ].map((judged) => `${judged}, throw 1`),
    )
    expect(one('rod pushed, throw 1')).toMatchObject({
      number: '14',
      bound: 'at most',
      limit: { text: '100.0 kN' },
      word: 'ACCEPT',
      governs: false,
      source: expect.stringMatching(/^Machine book rev\. 2, page 1-5/),
      page: 'page 1-5',
      approvedBy: 'nobody named',
      since: 'no day named',
      rule: expect.stringMatching(/^Worked out with the pocket 1\d\.\d\d turns from shut/),
    })
    expect(one('reversal at the pin, throw 1')).toMatchObject({
      approvedBy: 'VN, lead (invented)',

      bound: 'at least',
      limit: { text: '15 deg' },
    })
    expect(one('ideal discharge temperature, throw 1')).toMatchObject({
      used: null,
      limit: { text: '150 degC' },
    })
  })

  it('say HOLD of what is over, and of nothing else', () => {
    const defs = pocketDefs('rg-27')
    const whole = defs.machine.whole_compressor
    const kN = 1000
    const tight = {
      ...defs,
      machine: {
        ...defs.machine,
        whole_compressor: {
          ...whole,
          stages: whole?.stages.map((stage) => ({
            ...stage,
            cylinders: stage.cylinders?.map((each) => ({
              ...each,
              tension_limit:
                each.tension_limit === undefined || each.throw !== 1
                  ? each.tension_limit
                  : { ...each.tension_limit, si: 60 * kN },
            })),
          })),
        },
      },
    } as typeof defs
    const report = reported(new Walk(tight).keys(...rg27Lines({ load: '222' })))
    const held = report.limits.filter(({ word, judged }) => word === 'HOLD' && judged !== 'driver load')
    expect(held.map(({ judged, governs }) => [judged, governs])).toEqual([['rod pulled, throw 1', true]])
  })
})

describe('a share in the table', () => {
  it('is what its figure and limit come to of a cylinder too', () => {
    const told = loaded('222').limits.filter(({ used }) => used !== null)
    expect(told.length).toBeGreaterThan(8)
    for (const { value, limit, bound, used } of told) {
      const [a, b] = [Number(value?.shown), Number(limit.shown)]
      expect(Math.abs((bound === 'at most' ? a / b : b / a) - (used ?? Number.NaN))).toBeLessThan(0.01)
    }
  })

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
