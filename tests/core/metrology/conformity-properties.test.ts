import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { judgeAgainst } from '../../../src/core/metrology/conformity.ts'
import type { JudgeInput } from '../../../src/core/metrology/judge-input.ts'
import type { Limit } from '../../../src/core/metrology/limit.ts'
import { chanceInside, normalBelow } from '../../../src/core/statistics/normal.ts'
import { IN, sampleLimit } from './sample-limit.ts'

const STEPS = [1e-6, 2e-6, 5e-6, 1e-5, 0.0001 * IN, 0.0002 * IN, 0.00005 * IN, 0.001 * IN]
const step = fc.constantFrom(...STEPS)
const bound = fc.constantFrom<Limit['bound']>('at-most', 'at-least')
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** From well inside to well outside; the order a worsening value must pass through the words in. */
const ORDER = ['ACCEPT', 'MONITOR', 'HOLD', 'REWORK']

describe('on the limit', () => {
  test('10,000 random pairs never flip: the integer count of steps decides, whatever the floating path', () => {
    const pair = fc.record({
      step,
      limitSteps: fc.integer({ min: 40, max: 4000 }),
      guardSteps: fc.integer({ min: 0, max: 30 }),
      baseSteps: fc.integer({ min: 0, max: 400_000 }),
      off: fc.integer({ min: -2, max: 2 }),
      at: fc.constantFrom('accept', 'reject'),
      inclusive: fc.boolean(),
      bound,
    })
    let onIt = 0
    fc.assert(
      fc.property(pair, (p) => {
        const worse = p.bound === 'at-most' ? 1 : -1
        const bar =
          p.at === 'accept' ? p.limitSteps - worse * p.guardSteps : p.limitSteps + worse * p.guardSteps
        const steps = bar + worse * p.off
        if (p.off === 0) onIt += 1
        // A difference of two large sizes, as out-of-round and taper are: the worst floating path there is.
        const value = (p.baseSteps + steps) * p.step - p.baseSteps * p.step
        const limit = sampleLimit({ value: p.limitSteps * p.step, inclusive: p.inclusive, bound: p.bound })
        const word = judgeAgainst({
          value: Math.max(0, value),
          expandedU: p.guardSteps * p.step,
          resolution: p.step,
          limit,
        }).verdict
        const beyond = worse * (steps - p.limitSteps)
        const accepted = p.inclusive ? beyond <= -p.guardSteps : beyond < -p.guardSteps
        const rejected = beyond > p.guardSteps
        expect(word).toBe(accepted ? 'ACCEPT' : rejected ? 'REWORK' : 'HOLD')
      }),
      { numRuns: 10_000 },
    )
    expect(onIt).toBeGreaterThan(1000)
  })

  test('10,000 decimals keyed in inches, on and one step beside a guarded limit', () => {
    const pair = fc.record({
      limit: fc.integer({ min: 20, max: 999 }),
      guard: fc.integer({ min: 0, max: 9 }),
    })
    fc.assert(
      fc.property(pair, ({ limit, guard }) => {
        const metres = (tenths: number) => Number(`${tenths}e-4`) * IN
        const word = (tenths: number) =>
          judgeAgainst({
            value: metres(tenths),
            expandedU: metres(guard),
            resolution: metres(1),
            limit: sampleLimit({ value: metres(limit) }),
          }).verdict
        expect(word(limit - guard)).toBe('ACCEPT')
        expect(word(limit + guard + 1)).toBe('REWORK')
        if (guard > 0) expect([word(limit - guard + 1), word(limit + guard)]).toEqual(['HOLD', 'HOLD'])
      }),
      { numRuns: 10_000 },
    )
  })
})

test('judgement is monotonic in the value', () => {
  const world = fc.record({
    a: size(0, 0.002),
    b: size(0, 0.002),
    u: size(0, 0.0005),
    limit: size(1e-5, 0.001),
    monitorFrom: fc.option(size(0.05, 0.95), { nil: undefined }),
    inclusive: fc.boolean(),
    simple: fc.boolean(),
    bound,
    step,
  })
  fc.assert(
    fc.property(world, (w) => {
      const limit = sampleLimit({
        value: w.limit,
        bound: w.bound,
        monitorFrom: w.monitorFrom,
        inclusive: w.inclusive,
      })
      const rank = (value: number) => {
        const judged = judgeAgainst({
          value,
          expandedU: w.simple ? undefined : w.u,
          resolution: w.step,
          limit,
          simpleAcceptance: w.simple ? { by: 'A. Owner' } : undefined,
        })
        return ORDER.indexOf(judged.verdict)
      }
      const [better, worse] = (w.bound === 'at-most' ? [w.a, w.b] : [-w.a, -w.b]).sort((x, y) => x - y)
      expect(rank(Math.abs(better ?? 0))).toBeLessThanOrEqual(rank(Math.abs(worse ?? 0)))
    }),
    { numRuns: 3000 },
  )
})

test('whatever is accepted lies inside the limit with at least the stated chance, rounding included', () => {
  const world = fc.record({
    value: size(0, 0.001),
    u: size(1e-7, 0.0003),
    k: size(1.65, 3.5),
    limit: size(1e-5, 0.001),
    bound,
    step,
  })
  let accepted = 0
  fc.assert(
    fc.property(world, (w) => {
      const limit = sampleLimit({ value: w.limit, bound: w.bound, monitorFrom: 0.7 })
      const judged = judgeAgainst({ value: w.value, expandedU: w.u, k: w.k, resolution: w.step, limit })
      if (judged.verdict !== 'ACCEPT' && judged.verdict !== 'MONITOR') return
      accepted += 1
      const risk = 1 - chanceInside(w.bound, w.value, w.u / w.k, w.limit)
      // A millionth of a step of floating noise is allowed for, in standard uncertainties.
      expect(risk).toBeLessThanOrEqual(normalBelow(-w.k + (2e-6 * w.step * w.k) / w.u) + 1e-12)
    }),
    { numRuns: 5000 },
  )
  expect(accepted).toBeGreaterThan(500)
})

test('beyond is said only outside by more than the guard band', () => {
  const world = fc.record({ value: size(0, 0.002), u: size(0, 0.0003), limit: size(1e-5, 0.001), step })
  fc.assert(
    fc.property(world, ({ value, u, limit, step: resolution }) => {
      const judged = judgeAgainst({ value, expandedU: u, resolution, limit: sampleLimit({ value: limit }) })
      if (judged.verdict === 'REWORK') expect(value - limit).toBeGreaterThan(u)
    }),
    { numRuns: 3000 },
  )
})

describe('missing, unsound and contradictory input', () => {
  const bad = fc.constantFrom(
    null,
    undefined,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    -1e-6,
  )
  const good: JudgeInput = {
    value: 1e-5,
    expandedU: 1e-6,
    resolution: 1e-6,
    limit: sampleLimit(),
    simpleAcceptance: { by: 'A. Owner' },
  }

  test('the good input does pass, so that the refusals below mean something', () => {
    expect(judgeAgainst(good).verdict).toBe('ACCEPT')
  })

  test.each(['value', 'resolution'] as const)('a bad %s is HOLD with a reason', (field) => {
    fc.assert(
      fc.property(bad, (x) => {
        const judged = judgeAgainst({ ...good, [field]: x })
        expect(judged.verdict).toBe('HOLD')
        expect(judged.reasons.length).toBeGreaterThan(0)
        expect(judged.used).toBeNull()
      }),
    )
  })

  test('a resolution of zero, a U that is negative or not finite: HOLD even with simple acceptance', () => {
    expect(judgeAgainst({ ...good, resolution: 0 }).reasons).toEqual([
      'the resolution is not a number above zero',
    ])
    expect(judgeAgainst({ ...good, value: Number.POSITIVE_INFINITY }).reasons).toEqual([
      'the value is not a number',
    ])
    for (const u of [Number.NaN, Number.POSITIVE_INFINITY, -1e-9])
      expect(judgeAgainst({ ...good, expandedU: u }).verdict).toBe('HOLD')
  })

  test('no limit, a limit of zero, below zero, not finite, or with a bad share: HOLD', () => {
    for (const limit of [null, undefined]) expect(judgeAgainst({ ...good, limit }).verdict).toBe('HOLD')
    for (const value of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(judgeAgainst({ ...good, limit: sampleLimit({ value }) }).verdict).toBe('HOLD')
    for (const monitorFrom of [0, 1, -0.5, 1.2, Number.NaN])
      expect(judgeAgainst({ ...good, limit: sampleLimit({ monitorFrom }) }).verdict).toBe('HOLD')
    const odd = { bound: 'within', beyond: 'SCRAP', inclusive: 'yes' }
    for (const [key, value] of Object.entries(odd))
      expect(judgeAgainst({ ...good, limit: { ...sampleLimit(), [key]: value } as Limit }).verdict).toBe(
        'HOLD',
      )
  })

  test('figures that overflow when counted in steps: HOLD', () => {
    expect(judgeAgainst({ ...good, value: 1e308, resolution: 1e-9 }).verdict).toBe('HOLD')
    expect(judgeAgainst({ ...good, expandedU: 1e308, resolution: 1e-9 }).verdict).toBe('HOLD')
  })
})
