// What instruments show, against their stated model; a statistics library as second opinion.
import { mean, quantile, sampleKurtosis, sampleSkewness, standardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { reduceTo20 } from '../../../src/core/metrology/reduce-to-20.ts'
import { SCATTER, STEADY, soundMachine } from '../../../src/core/practice/build.ts'
import { chanceOf } from '../../../src/core/practice/chance.ts'
import { factsOf } from '../../../src/core/practice/facts.ts'
import { exactOf, shownWarm } from '../../../src/core/practice/sample.ts'
import { practiceDefs } from '../../helpers/trainees.ts'

const N = 4000

describe('chance', () => {
  it('is even, and the same for the same names', () => {
    const draws = Array.from({ length: N }, (_, n) => chanceOf(n, 'even').between(0, 1))
    // Standard error of the mean of N even draws: sqrt(1/12/N).
    expect(Math.abs(mean(draws) - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / N))
    expect(standardDeviation(draws)).toBeCloseTo(Math.sqrt(1 / 12), 2)
    expect(chanceOf(5, 'a', 1).between(0, 1)).toBe(chanceOf(5, 'a', 1).between(0, 1))
    expect(chanceOf(5, 'a', 1).between(0, 1)).not.toBe(chanceOf(5, 'a', 2).between(0, 1))
  })

  it('of neighbouring seeds is not alike', () => {
    const pairs = Array.from({ length: N }, (_, n) => [
      chanceOf(n, 'x').normal(),
      chanceOf(n + 1, 'x').normal(),
    ])
    const product = mean(pairs.map(([a = 0, b = 0]) => a * b))
    expect(Math.abs(product)).toBeLessThan(4 / Math.sqrt(N))
  })

  it('is normal where it says so', () => {
    const chance = chanceOf(11, 'normal')
    const draws = Array.from({ length: N }, () => chance.normal())
    expect(Math.abs(mean(draws))).toBeLessThan(4 / Math.sqrt(N))
    expect(Math.abs(standardDeviation(draws) - 1)).toBeLessThan(4 / Math.sqrt(2 * N))
    expect(Math.abs(sampleSkewness(draws))).toBeLessThan(4 * Math.sqrt(6 / N))
    expect(Math.abs(sampleKurtosis(draws))).toBeLessThan(4 * Math.sqrt(24 / N))
    // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1: 97.5 % lie below 1.96.
    expect(quantile(draws, 0.975)).toBeCloseTo(1.96, 1)
  })
})

describe('an instrument', () => {
  const off = { bias: 0.3, knocked: -2, scatter: 0.5 }
  const many = (isKnocked: boolean, manner: 'sheet' | 'quick') => {
    const chance = chanceOf(3, 'many', String(isKnocked), manner)
    return Array.from({ length: N }, () =>
      exactOf({ truth: 10, off, isKnocked, manner, hurried: [-4, -2] }, chance),
    )
  }

  it('shows the truth, its bias and its scatter; one that was knocked, and a hurried hand, as much more', () => {
    const error = (4 * off.scatter) / Math.sqrt(N)
    expect(Math.abs(mean(many(false, 'sheet')) - 10.3)).toBeLessThan(error)
    expect(Math.abs(standardDeviation(many(false, 'sheet')) - 0.5)).toBeLessThan(0.03)
    expect(Math.abs(mean(many(true, 'sheet')) - 8.3)).toBeLessThan(error)
    expect(Math.abs(mean(many(false, 'quick')) - 7.3)).toBeLessThan(2 * error)
  })

  it('is off by no more than its certificate and half of what its standard allows', () => {
    const facts = factsOf(practiceDefs())
    if (!facts.ok) throw new Error(facts.error.say)
    for (let seed = 1; seed <= 100; seed++)
      for (const one of facts.value.instruments) {
        const { bias = Number.NaN, scatter = Number.NaN } =
          soundMachine(facts.value, seed, 1).off[one.id] ?? {}
        expect(Math.abs(bias)).toBeLessThanOrEqual(STEADY * one.standardU)
        if (one.setWithin !== null) expect(Math.abs(bias)).toBeLessThanOrEqual(one.setWithin / 2)
        // Even within +-a has a standard deviation of a/sqrt(3).
        expect(Math.hypot((STEADY * one.standardU) / Math.sqrt(3), scatter)).toBeLessThan(one.standardU)
        expect(scatter).toBe(SCATTER * one.standardU)
      }
  })

  it('shows of a warm part what brings it back to its size at 20 degC', () => {
    const warm = { partAlpha: 10.8e-6, partC: 41, instrumentAlpha: 11.5e-6, instrumentC: 23 }
    const readingM = shownWarm({ sizeM: 0.2413, ...warm })
    const back = reduceTo20({ readingM, ...warm })
    expect(back.ok && back.value).toBeCloseTo(0.2413, 12)
    // Grey iron of 9.5 in, 21 K warm, less the growth of the gauge by 3 K: 0.0018 in larger.
    expect((readingM - 0.2413) / 0.0254).toBeCloseTo(9.5 * (10.8e-6 * 21 - 11.5e-6 * 3), 5)
  })
})
