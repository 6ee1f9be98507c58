// The measuring error of a worked-out figure, against closed forms and a published example.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { propagate, type Source } from '../../../src/core/metrology/propagate.ts'

const source = (si: number, expandedU: number | null, group = 'M-1', resolution = 0.001): Source => ({
  si,
  expandedU,
  group,
  resolution,
})
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0)
const run = (sources: readonly Source[], work: (values: readonly number[]) => number | null) => {
  const base = work(sources.map((s) => s.si))
  if (base === null) throw new Error('no base')
  return propagate(sources, base, work)
}

describe('propagate', () => {
  it('adds what one instrument may have got wrong in all of them: ten resistors in series, 10 times 100 mohm', () => {
    // JCGM 100:2008 (GUM) 5.2.2, example; from memory. Ten of 1000 ohm on one standard with u 0.1 ohm: 1 ohm, not 0.32.
    const ten = Array.from({ length: 10 }, () => source(1000, 0.1, 'standard'))
    expect(run(ten, sum).expandedU).toBeCloseTo(1, 9)
    const apart = ten.map((one, n) => ({ ...one, group: String(n) }))
    expect(run(apart, sum).expandedU).toBeCloseTo(0.1 * Math.sqrt(10), 9)
  })

  it('gives no credit for a shared error that a difference would cancel', () => {
    const { expandedU, moves } = run([source(2.25, 0.0002), source(2.248, 0.0002)], ([a = 0, b = 0]) => a - b)
    expect(expandedU).toBeCloseTo(0.0002 * Math.SQRT2, 12)
    expect(moves.map((m) => Number(m?.toFixed(9)))).toEqual([0.0002, 0.0002])
  })

  it('takes the larger change where a greatest turns from one reading to another', () => {
    const { expandedU } = run([source(1, 0.01, 'a'), source(1, 0.01, 'b')], (v) => Math.max(...v))
    expect(expandedU).toBeCloseTo(0.01 * Math.SQRT2, 12)
    expect(run([source(1, 0.01, 'a'), source(0.5, 0.01, 'b')], (v) => Math.max(...v)).expandedU).toBeCloseTo(
      0.01,
      12,
    )
  })

  it('is unknown where a reading that moves the figure has no stated error, and known where it does not move it', () => {
    expect(run([source(1, 0.01), source(1, null)], sum).expandedU).toBeNull()
    expect(run([source(1, 0.01), source(0.2, null)], (v) => Math.max(...v)).expandedU).toBeCloseTo(0.01, 12)
  })

  it('is not a number where the figure cannot be worked out a little to the side', () => {
    const work = ([a = 0]: readonly number[]) => (a > 1 ? null : a)
    expect(run([source(1, 0.01)], work).expandedU).toBeNaN()
  })

  it('reads in the coarsest step behind the figure, and in none if nothing moves it', () => {
    const two = [source(3, 0.01, 'a', 0.5), source(5, 0.01, 'b', 0.1)]
    expect(run(two, ([a = 0, b = 0]) => 2 * a + b).resolution).toBeCloseTo(1, 12)
    expect(run(two, () => 7).resolution).toBeNull()
  })

  it('bounds every equal correlation between 0 and 1 of a straight-line figure', () => {
    const numbers = fc.array(
      fc.tuple(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: 0.001, max: 0.1, noNaN: true })),
      { minLength: 1, maxLength: 6 },
    )
    fc.assert(
      fc.property(numbers, fc.double({ min: 0, max: 1, noNaN: true }), (terms, r) => {
        const sources = terms.map(([, u]) => source(10, u))
        const work = (v: readonly number[]) => v.reduce((all, x, n) => all + (terms[n]?.[0] ?? 0) * x, 0)
        const parts = terms.map(([c, u]) => c * u)
        const variance = (1 - r) * sum(parts.map((p) => p * p)) + r * sum(parts) ** 2
        expect(run(sources, work).expandedU ?? -1).toBeGreaterThanOrEqual(
          Math.sqrt(Math.max(0, variance)) - 1e-9,
        )
      }),
    )
  })
})
