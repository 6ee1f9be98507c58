import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { WearHistory } from '../../../src/core/wear/history.ts'
import { type WearRate, wearRate } from '../../../src/core/wear/rate.ts'
import { everyFiveThousand, history, MM } from './histories.ts'

function rate(of: WearHistory): WearRate {
  const found = wearRate(of)
  if (!found.ok) throw new Error(found.error.say)
  return found.value
}
function code(of: WearHistory): string {
  const found = wearRate(of)
  return found.ok ? 'taken' : found.error.code
}

describe('wear rate', () => {
  test('two overhauls: wear over hours, with the measuring error of both and a label that says so', () => {
    const found = rate(
      history([
        [0, 300],
        [8000, 300.08],
      ]),
    )
    expect(found.perHour * 1000).toBeCloseTo(0.01 * MM, 12)
    expect(found.U).toBeCloseTo((Math.SQRT2 * 0.01 * MM) / 8000, 15)
    expect(found.basis).toBe('measuring error only')
    expect([found.line, found.band, found.t]).toEqual([null, null, null])
  })

  test('a ring that thins wears as a bore that grows', () => {
    const thins = rate(
      history(
        [
          [0, 12],
          [8000, 11.6],
          [16000, 11.3],
        ],
        0.01,
        'smaller',
      ),
    )
    const grows = rate(
      history([
        [0, 12],
        [8000, 12.4],
        [16000, 12.7],
      ]),
    )
    expect(thins.perHour).toBeCloseTo(grows.perHour, 15)
    expect(thins.U).toBeCloseTo(grows.U, 15)
  })

  test('three: the scatter decides where it is wide, the measuring error where the points happen to line up', () => {
    const scattered = rate(
      history([
        [0, 300],
        [8000, 300.12],
        [16000, 300.16],
      ]),
    )
    expect(scattered.basis).toBe('scatter about the line')
    const lined = rate(
      history([
        [0, 300],
        [8000, 300.08],
        [16000, 300.16],
      ]),
    )
    expect(lined.basis).toBe('measuring error, wider than the scatter')
    expect(lined.band).toBeCloseTo(0.01 * MM, 12)
    expect(lined.U).toBeGreaterThan(0)
  })

  // Student t for 1 degree of freedom, 12.706 (NIST/SEMATECH e-Handbook t table, second-hand).
  test('three overhauls have one degree of freedom, and the interval is as wide as that calls for', () => {
    const { line, t, U } = rate(
      history([
        [0, 300],
        [8000, 300.12],
        [16000, 300.16],
      ]),
    )
    expect(line?.df).toBe(1)
    expect(t).toBeCloseTo(12.706, 3)
    expect(U).toBeCloseTo(12.7062 * (line?.slopeSe ?? 0), 10)
  })

  test('a larger measuring error never narrows it; hours in other units only rescale it', () => {
    const wear = fc.array(fc.double({ min: 0, max: 0.1, noNaN: true }), { minLength: 1, maxLength: 6 })
    fc.assert(
      fc.property(wear, fc.double({ min: 0.001, max: 0.05, noNaN: true }), (steps, u) => {
        const pairs = everyFiveThousand(steps)
        const [small, large] = [rate(history(pairs, u)), rate(history(pairs, u * 3))]
        expect(large.U).toBeGreaterThanOrEqual(small.U * (1 - 1e-12))
        const slower = rate(
          history(
            pairs.map(([h, mm]) => [h * 2, mm] as const),
            u,
          ),
        )
        expect(slower.perHour).toBeCloseTo(small.perHour / 2, 12)
        expect(Number.isFinite(small.perHour) && small.U > 0).toBe(true)
      }),
    )
  })
})

describe('no rate is taken (HOLD)', () => {
  const good = [
    [0, 300],
    [8000, 300.08],
  ] as const

  test.each(['reline', 'rebore', 'material', 'unknown'] as const)('across %s', (since) => {
    const found = wearRate(history(good, 0.01, 'larger', since))
    expect(found.ok ? 'taken' : found.error.code).toBe('renewed-between')
    expect(found.ok ? '' : found.error.say).toMatch(/^HOLD: .*0 h and 8000 h/)
  })

  test('what was done before the first reading is of no account', () => {
    const { readings, wears } = history(good)
    const first = readings.map((r, i) => (i === 0 ? { ...r, since: 'reline' as const } : r))
    expect(code({ readings: first, wears })).toBe('taken')
  })

  test.each([
    ['no reading', history([]), 'too-few-readings'],
    ['one reading', history([[0, 300]]), 'too-few-readings'],
    [
      'hours that stand still',
      history([
        [8000, 300],
        [8000, 301],
      ]),
      'hours-order',
    ],
    [
      'hours that go back',
      history([
        [8000, 300],
        [100, 301],
      ]),
      'hours-order',
    ],
    [
      'hours below zero',
      history([
        [-1, 300],
        [100, 301],
      ]),
      'reading-unsound',
    ],
    [
      'a reading that is no number',
      history([
        [0, Number.NaN],
        [100, 301],
      ]),
      'reading-unsound',
    ],
    ['no measuring error', history(good, 0), 'reading-unsound'],
    ['a measuring error that is no number', history(good, Number.NaN), 'reading-unsound'],
    [
      'wear going back beyond its error',
      history([
        [0, 300],
        [8000, 299.9],
      ]),
      'contradiction',
    ],
    [
      'a step back within a rising record',
      history([
        [0, 300],
        [8000, 300.2],
        [16000, 300.15],
        [24000, 300.4],
      ]),
      'contradiction',
    ],
    [
      'the wrong way for a part that thins',
      history(
        [
          [0, 12],
          [8000, 12.4],
        ],
        0.01,
        'smaller',
      ),
      'contradiction',
    ],
    [
      'small steps back that add up',
      history([
        [0, 300],
        [1000, 299.99],
        [2000, 299.98],
        [3000, 299.97],
        [4000, 299.96],
        [5000, 299.95],
      ]),
      'contradiction',
    ],
  ])('%s', (_, of, expected) => {
    expect(code(of)).toBe(expected)
  })

  test('back by no more than its measuring error is no contradiction, and exactly on it neither', () => {
    expect(
      code(
        history([
          [0, 300],
          [8000, 299.995],
        ]),
      ),
    ).toBe('taken')
    expect(
      code(
        history([
          [0, 300],
          [8000, 300 - 0.01 * Math.SQRT2],
        ]),
      ),
    ).toBe('taken')
  })
})
