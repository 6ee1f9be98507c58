// A place that carries a measuring error of its own holds up what is told from it, and nothing else.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { axisForm } from '../../../src/core/bore/axis-form.ts'
import { judgeBore } from '../../../src/core/bore/bore-judge.ts'
import type { BoreJudgeInput } from '../../../src/core/bore/bore-judge-input.ts'
import { type BoreReading, boreGrid } from '../../../src/core/bore/bore-readings.ts'
import { boreInput, boreLimit, boreOf, IN, LIMITS, SOUND_ROWS } from './sample-bore.ts'

const U = 0.0003 * IN
/** The sound bore, one place with a U of its own, in inches. */
function withOwn(station: string, axis: string, own: number, change: Partial<BoreJudgeInput> = {}) {
  const readings = boreOf(SOUND_ROWS).map(
    (one): BoreReading =>
      one.station === station && one.axis === axis ? { ...one, expandedU: own * IN } : one,
  )
  return judgeBore(boreInput({ readings, ...change }))
}
const word = (verdict: ReturnType<typeof judgeBore>, characteristic: string) =>
  verdict.judged.find((one) => one.characteristic === characteristic)

describe('a place with an error of its own', () => {
  it('gives a difference the U of its own two places', () => {
    const own = withOwn('S2', 'vertical', 0.0008)
    expect(word(own, 'out-of-round')?.judgement.guard).toBeCloseTo(Math.hypot(0.0008 * IN, U), 12)
    expect(word(own, 'largest-diameter')?.judgement.guard).toBeCloseTo(0.0008 * IN, 12)
    expect(own.verdict).toBe('ACCEPT')
  })

  it('leaves the figures of other places with the common one', () => {
    const own = withOwn('S3', 'horizontal', 0.002)
    expect(word(own, 'taper')?.judgement.guard).toBeCloseTo(U * Math.SQRT2, 12)
    expect(word(own, 'largest-diameter')?.judgement.guard).toBeCloseTo(U, 12)
  })

  it('is HOLD where it may be the worst in truth, though another place is the greatest as read', () => {
    // S1 is out of round by 0.0004 only, and may be by 0.0104: the greatest, 0.0006 at S2, does not settle it.
    const own = withOwn('S1', 'vertical', 0.01)
    expect(word(own, 'out-of-round')).toMatchObject({
      places: [
        { station: 'S1', axis: 'vertical' },
        { station: 'S1', axis: 'horizontal' },
      ],
      judgement: { verdict: 'HOLD' },
    })
    expect(own.verdict).toBe('HOLD')
  })

  it('is beyond where a sounder place is beyond for sure', () => {
    const limits = { ...LIMITS, taper: boreLimit('taper', 0.0002) }
    const own = withOwn('S1', 'horizontal', 0.01, { limits })
    expect(word(own, 'taper')).toMatchObject({
      places: [
        { station: 'S2', axis: 'vertical' },
        { station: 'S3', axis: 'vertical' },
      ],
      judgement: { verdict: 'REWORK' },
    })
  })

  it('says nothing of the part where no common error is stated', () => {
    const own = withOwn('S2', 'vertical', 0.0008, { readingU: null, differenceU: null })
    expect(own.verdict).toBe('HOLD')
    expect(own.judged.map(({ judgement }) => judgement.verdict)).not.toContain('ACCEPT')
  })

  it('tells a form by the errors of the places it is told from', () => {
    const grid = (own: number | undefined) => {
      const found = boreGrid(
        boreOf(SOUND_ROWS).map((one) =>
          one.station === 'S2' && one.axis === 'vertical' ? { ...one, expandedU: own } : one,
        ),
      )
      if (!found.ok) throw new Error(found.error.say)
      return axisForm(found.value, 'vertical', {
        readingU: U,
        differenceU: U * Math.SQRT2,
        centreU: U * Math.sqrt(1.5),
      }).form
    }
    expect(grid(undefined)).toBe('barrel')
    // 0.0009 in wider in the middle: its own 0.0008 with two ends of 0.0003 by a half each comes to 0.00083.
    expect(grid(0.0008 * IN)).toBe('barrel')
    expect(grid(0.0009 * IN)).toBe('uneven')
    expect(grid(0.001 * IN)).toBe('not told apart from measuring error')
  })

  it('that grows never turns a verdict into a better one', () => {
    const rank = ['ACCEPT', 'MONITOR', 'HOLD']
    const at = fc.constantFrom(...boreOf(SOUND_ROWS))
    fc.assert(
      fc.property(
        at,
        fc.double({ min: 0.0003, max: 0.02, noNaN: true }),
        fc.double({ min: 1, max: 5, noNaN: true }),
        (one, own, by) => {
          const [less, more] = [own, own * by].map((u) => withOwn(one.station, one.axis, u).verdict)
          expect(rank.indexOf(more ?? '')).toBeGreaterThanOrEqual(rank.indexOf(less ?? ''))
        },
      ),
      { numRuns: 60 },
    )
  })
})
