// Wear along the bore: exact pictures, bars that say what the figures say, and gaps that stay gaps.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type BoreProfile, drawBoreProfile } from '../../../src/core/drawing/bore-profile.ts'
import { expectSound, HE_CENTRE_CE, picture, stations } from './arbitrary.ts'

const usual = {
  stations: HE_CENTRE_CE,
  rows: [
    { axisLabel: '12-6', values: [9.5062, 9.5063, 9.505] },
    { axisLabel: '9-3', values: [9.5041, 9.5042, undefined] },
  ],
  unit: 'in',
  decimals: 4,
}
const one = (values: readonly (number | undefined)[]) => ({ ...usual, rows: [{ axisLabel: '12-6', values }] })
const lines = (profile: BoreProfile, width = 40, ascii = true): string[] =>
  drawBoreProfile(profile, { ascii, width }).lines

describe('the usual bore', () => {
  it('has a line for each reading', () => {
    expect(lines(usual, 50, false)).toEqual(
      picture(`
12-6 HE     9.5062  │━━━━━━━━━━━━━━━━━━━━━━━━━━━━
     CENTRE 9.5063  │━━━━━━━━━━━━━━━━━━━━━━━━━━━━━
     CE     9.5050  │━━━━━━━━━━━━
9-3  HE     9.5041  │
     CENTRE 9.5042  │━
     CE     -
[in] not to scale, bars from the smallest reading
`),
    )
  })

  it('is drawn in ASCII in 26 columns', () => {
    expect(lines(usual, 26)).toEqual(
      picture(`
12-6 HE     9.5062  |=====
     CENTRE 9.5063  |=====
     CE     9.5050  |==
9-3  HE     9.5041  |
     CENTRE 9.5042  |=
     CE     -
[in] not to scale, bars
from the smallest reading
`),
    )
  })

  it('has a column for each station when there are more readings than lines', () => {
    const rows = ['12-6', '9-3', '1:30'].map((axisLabel, i) => ({
      axisLabel,
      values: [1, 1.1, 1.2 + i / 10],
    }))
    expect(lines({ ...usual, rows, decimals: 1 }, 50)).toEqual(
      picture(`
     HE             CENTRE         CE
12-6 1.0            1.1            1.2
     |              |===           |=======
9-3  1.0            1.1            1.3
     |              |===           |==========
1:30 1.0            1.1            1.4
     |              |===           |=============
[in] not to scale, bars from the smallest reading
`),
    )
  })

  it('in words alone says of how many places it is, where that has room', () => {
    const low = (width: number) =>
      drawBoreProfile(one([9.5034, 9.5069, undefined]), { width, height: 1, ascii: true }).lines
    expect(low(40)).toEqual(['12-6, 2 places: 9.5034 to 9.5069'])
    expect(low(24)).toEqual(['12-6 9.5034 to 9.5069'])
  })

  it('gives what stands above the smallest where whole figures have no room', () => {
    const nine = Array.from({ length: 9 }, (_, i) => ({ id: `${i}`, label: `STATION ${i}`, at: i / 8 }))
    const values = [0, 26, 52, 13, undefined, 0, 26, 52, 13].map((n) =>
      n === undefined ? n : 241.457 + n / 1000,
    )
    const profile = { stations: nine, rows: [{ axisLabel: '12-6', values }], unit: 'mm', decimals: 3 }
    expect(drawBoreProfile(profile, { ascii: true, width: 66 }).lines).toEqual(
      picture(`
     1     2     3     4     5     6     7     8     9
12-6 +0    +26   +52   +13   -     +0    +26   +52   +13
     |     |==   |==== |=          |     |==   |==== |=
[mm] 1 to 9 from HE to CE, +1 is 0.001 above 241.457, not to
scale, bars from the smallest reading
`),
    )
    expect(drawBoreProfile(profile, { ascii: true, width: 30 }).lines).toEqual(['12-6 241.457 to 241.509'])
    // One figure is no range.
    const alike = {
      ...profile,
      rows: profile.rows.map((one) => ({ ...one, values: one.values.map(() => 241.5) })),
    }
    expect(drawBoreProfile(alike, { ascii: true, width: 30 }).lines).toEqual(['12-6 241.500'])
  })
})

describe('readings that are not there', () => {
  it('draw nothing before two stations have one', () => {
    expect(lines(one([9.5, undefined, undefined]))).toEqual([])
    expect(lines(one([9.5, Number.NaN, Number.POSITIVE_INFINITY]))).toEqual([])
    expect(lines(one([]))).toEqual([])
    expect(lines(one([9.5, 9.5]))).not.toEqual([])
  })

  it('two readings at one station are not two stations', () => {
    const rows = [9.5, 9.6].map((value, i) => ({ axisLabel: `${i}`, values: [value] }))
    expect(lines({ ...usual, rows })).toEqual([])
  })

  it('are a gap, also when not finite', () => {
    expect(lines(one([9.5, Number.NaN, 9.6]))[1]).toBe('     CENTRE -')
  })
})

describe('readings that are alike', () => {
  it('have no bars, and it says so', () => {
    expect(lines(one([9.5, 9.5, 9.50001]))).toEqual([
      '12-6 HE     9.5000  |',
      '     CENTRE 9.5000  |',
      '     CE     9.5000  |',
      '[in] all readings the same, no bars',
    ])
  })

  it('round a half as it is rounded everywhere else, whatever it is in binary', () => {
    // Each is a little under its half as the machine holds it.
    for (const [value, written] of [
      [9.50315, '9.5032'],
      [9.50335, '9.5034'],
      [9.50385, '9.5039'],
    ] as const) {
      expect(value.toFixed(4)).not.toBe(written)
      expect(lines(one([value, 9.6, 9.7]))[0]).toContain(written)
    }
  })

  it('never read minus nothing', () => {
    expect(lines(one([-0.00001, 0.1, 0]))[0]).toBe('12-6 HE     0.0000  |')
  })
})

it('leaves the counterbore out: it is larger by design', () => {
  const deep = [...HE_CENTRE_CE, { id: 'd', label: 'DEEP', at: 1.2, inCounterbore: true }]
  const drawn = lines({
    ...usual,
    stations: deep,
    rows: [{ axisLabel: '12-6', values: [9.5, 9.6, 9.7, 11] }],
  })
  expect(drawn.join('\n')).not.toContain('11')
  expect(drawn).toHaveLength(4 + 1)
})

it('takes whole decimals only', () => {
  expect(() => lines({ ...usual, decimals: Number.NaN })).toThrow('decimals')
  expect(() => lines({ ...usual, decimals: 1.5 })).toThrow('decimals')
})

describe('any profile', () => {
  const value = fc.option(
    fc.oneof(
      fc.integer({ min: -20, max: 20 }).map((n) => 9.5 + n / 10_000),
      fc.double(),
    ),
    { nil: undefined },
  )
  const rows = fc.array(
    fc.record({ axisLabel: fc.string({ maxLength: 14 }), values: fc.array(value, { maxLength: 10 }) }),
    { maxLength: 9 },
  )

  it('is sound', () => {
    fc.assert(
      fc.property(
        stations,
        rows,
        fc.string({ maxLength: 6 }),
        fc.integer({ min: 0, max: 6 }),
        fc.boolean(),
        fc.integer({ min: 1, max: 70 }),
        (list, given, unit, decimals, ascii, width) => {
          const drawn = drawBoreProfile({ stations: list, rows: given, unit, decimals }, { ascii, width })
          expectSound(drawn, ascii, Math.min(66, width), 8)
          expect(drawn.lines.join('\n')).not.toMatch(/NaN|Infinity|undefined/)
        },
      ),
    )
  })

  it('has the longer bar for the larger figure, and equal bars for equal figures', () => {
    const reading = fc.integer({ min: 0, max: 30 }).map((n) => 9.5 + n / 10_000)
    fc.assert(
      fc.property(fc.tuple(reading, reading, reading), fc.integer({ min: 30, max: 66 }), (values, width) => {
        const bars = lines(one(values), width)
          .slice(0, 3)
          .map((line) => ({
            figure: Number(line.match(/\d+\.\d{4}/)?.[0]),
            bar: line.length - line.indexOf('|') - 1,
          }))
        const least = Math.min(...bars.map(({ figure }) => figure))
        for (const a of bars) {
          expect(a.bar > 0).toBe(a.figure > least)
          for (const b of bars) if (a.figure <= b.figure) expect(a.bar).toBeLessThanOrEqual(b.bar)
        }
      }),
    )
  })
})
