import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { spreadAt } from '../../../src/core/statistics/line.ts'
import type { WearHistory } from '../../../src/core/wear/history.ts'
import { type HoursLeft, hoursToLimits } from '../../../src/core/wear/hours-left.ts'
import { wearRate } from '../../../src/core/wear/rate.ts'
import { normalDraws, seeded } from '../../helpers/random.ts'
import { everyFiveThousand, history, MM } from './histories.ts'

function left(of: WearHistory, ...limitsMm: number[]): readonly HoursLeft[] {
  const found = hoursToLimits(
    of,
    limitsMm.map((mm) => mm * MM),
    'no',
  )
  if (!found.ok) throw new Error(found.error.say)
  return found.value.limits
}
function one(of: WearHistory, limitMm: number): HoursLeft {
  const [first] = left(of, limitMm)
  if (first === undefined) throw new Error('no limit came back')
  return first
}
const TWO = history([
  [0, 300],
  [8000, 300.08],
])
const FOUR = history([
  [0, 300],
  [8100, 300.09],
  [16300, 300.15],
  [24000, 300.25],
])

describe('hours left', () => {
  // Straight line, derived: gap 0.030 new, 0.060 at 6000 h, limit 0.090: 6000 h left.
  test('half the wear used in 6000 h leaves 6000 h', () => {
    const gap = history(
      [
        [0, 0.762],
        [6000, 1.524],
      ],
      0.001,
    )
    expect(one(gap, 2.286).expected).toBeCloseTo(6000, 6)
  })

  test('two overhauls: each end put back in meets the limit with the errors of both readings carried forward', () => {
    const { earliest, latest, expected } = one(TWO, 300.2)
    expect(expected).toBeCloseTo(12000, 6)
    for (const [h, side] of [
      [earliest, 1],
      [latest ?? Number.NaN, -1],
    ] as const) {
      const [first, last] = [h / 8000, 1 + h / 8000]
      const u = 0.01 * Math.hypot(first, last)
      expect(300.08 * last - 300 * first + side * u).toBeCloseTo(300.2, 7)
    }
  })

  test('a line: each end put back in meets the limit with the band of the line', () => {
    const rate = wearRate(FOUR)
    if (!rate.ok || rate.value.line === null || rate.value.band === null) throw new Error('no line')
    const { line, band } = rate.value
    const { earliest, latest } = one(FOUR, 300.4)
    for (const [h, side] of [
      [earliest, 1],
      [latest ?? Number.NaN, -1],
    ] as const) {
      const at = 24000 + h
      const fit = line.yMean + line.slope * (at - line.xMean)
      expect(fit + side * band * spreadAt(line, at)).toBeCloseTo(0.3004, 9)
    }
  })

  test('seeded trials: the line crosses the limit before earliest in 2.3 of 100, after latest in 2.3', () => {
    const draw = normalDraws(seeded(1000))
    const { earliest, latest } = one(TWO, 300.2)
    const trials = 200_000
    let [early, late] = [0, 0]
    for (let i = 0; i < trials; i += 1) {
      const [first, last] = [300 + draw() * 0.005, 300.08 + draw() * 0.005]
      const at = (h: number) => last + ((last - first) * h) / 8000
      if (at(earliest) >= 300.2) early += 1
      if (at(latest ?? Number.NaN) < 300.2) late += 1
    }
    const off = 4 * Math.sqrt((0.02275 * 0.97725) / trials)
    expect(Math.abs(early / trials - 0.02275)).toBeLessThan(off)
    expect(Math.abs(late / trials - 0.02275)).toBeLessThan(off)
  })

  test('wear as slow as none has no late end; none at all has no expected one, and still an early one', () => {
    const slow = one(
      history([
        [0, 300],
        [8000, 300.005],
      ]),
      300.2,
    )
    expect(slow.latest).toBeNull()
    expect(slow.expected).toBeGreaterThan(slow.earliest)
    const none = one(
      history([
        [0, 300],
        [8000, 300],
      ]),
      300.2,
    )
    expect([none.expected, none.latest]).toEqual([null, null])
    expect(none.earliest).toBeGreaterThan(0)
    expect(none.beyondRecord).toBe(true)
  })

  test('near the limit the early end is now; at or past it all three are', () => {
    expect(one(TWO, 300.085)).toMatchObject({ earliest: 0 })
    expect(one(TWO, 300.085).latest).toBeGreaterThan(0)
    expect(one(TWO, 300.08)).toMatchObject({ earliest: 0, expected: 0, latest: 0 })
    expect(one(TWO, 300.05)).toMatchObject({ earliest: 0, expected: 0, latest: 0 })
  })

  test('several limits keep their order, and further ahead than the record is long is said', () => {
    const [near, far] = left(TWO, 300.1, 300.3)
    expect(near?.limit).toBeCloseTo(0.3001, 12)
    expect(near?.beyondRecord).toBe(false)
    expect(far?.beyondRecord).toBe(true)
  })

  test('earliest, expected, latest in order; a further limit or a better instrument never brings earliest nearer', () => {
    const wear = fc.array(fc.double({ min: 0, max: 0.1, noNaN: true }), { minLength: 1, maxLength: 6 })
    const error = fc.double({ min: 0.001, max: 0.03, noNaN: true })
    fc.assert(
      fc.property(wear, error, fc.double({ min: 0.001, max: 0.5, noNaN: true }), (steps, u, room) => {
        const pairs = everyFiveThousand(steps)
        const size = pairs[pairs.length - 1]?.[1] ?? Number.NaN
        const [near, far] = left(history(pairs, u), size + room, size + 2 * room)
        if (near === undefined || far === undefined) throw new Error('limits went missing')
        expect(near.earliest).toBeGreaterThanOrEqual(0)
        if (near.expected !== null) expect(near.earliest).toBeLessThanOrEqual(near.expected + 1e-6)
        if (near.latest !== null)
          expect(near.latest).toBeGreaterThanOrEqual((near.expected ?? Number.NaN) - 1e-6)
        expect(far.earliest).toBeGreaterThanOrEqual(near.earliest - 1e-6)
        expect(one(history(pairs, u * 2), size + room).earliest).toBeLessThanOrEqual(
          near.earliest * (1 + 1e-9) + 1e-6,
        )
      }),
      { numRuns: 500 },
    )
  })

  test('a part that thins is its mirror', () => {
    const thins = one(
      history(
        [
          [0, 12],
          [8000, 11.92],
        ],
        0.01,
        'smaller',
      ),
      11.8,
    )
    const grows = one(
      history([
        [0, 12],
        [8000, 12.08],
      ]),
      12.2,
    )
    expect(thins.earliest).toBeCloseTo(grows.earliest, 5)
    expect(thins.latest).toBeCloseTo(grows.latest ?? Number.NaN, 4)
  })
})

describe('no hours are reckoned (HOLD)', () => {
  const code = (of: WearHistory, limits: number[], first: 'yes' | 'no' | 'unknown' = 'no') => {
    const found = hoursToLimits(of, limits, first)
    return found.ok ? 'given' : found.error.code
  }

  test('for the first set of a new material, or where nobody knows', () => {
    expect(code(TWO, [0.3002], 'yes')).toBe('first-set')
    expect(code(TWO, [0.3002], 'unknown')).toBe('first-set')
  })

  test('without a sound limit, or with one on the unworn side', () => {
    expect(code(TWO, [])).toBe('no-limit')
    expect(code(TWO, [Number.NaN])).toBe('limit-unsound')
    expect(code(TWO, [0])).toBe('limit-unsound')
    expect(code(TWO, [0.2999])).toBe('limit-side')
    expect(code(TWO, [0.3002, 0.3])).toBe('limit-side')
  })

  test('where no rate is taken', () => {
    expect(code(history([[0, 300]]), [0.3002])).toBe('too-few-readings')
    expect(
      code(
        history(
          [
            [0, 300],
            [8000, 300.1],
          ],
          0.01,
          'larger',
          'reline',
        ),
        [0.3002],
      ),
    ).toBe('renewed-between')
    expect(
      code(
        history([
          [0, 300],
          [8000, 299.9],
        ]),
        [0.3002],
      ),
    ).toBe('contradiction')
  })

  test('wear back by just its error: an early end or HOLD, never a figure that is not one', () => {
    const edge = hoursToLimits(
      history([
        [0, 300],
        [8000, 300 - 0.01 * Math.SQRT2],
      ]),
      [0.3002],
      'no',
    )
    const earliest = edge.ok ? edge.value.limits[0]?.earliest : null
    expect(edge.ok ? Number.isFinite(earliest) : edge.error.code === 'no-telling').toBe(true)
  })
})
