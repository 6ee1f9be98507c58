import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { endClearanceMove } from '../../../src/core/end-clearance/correction.ts'
import { endClearanceSplit, growth, hotClearances } from '../../../src/core/end-clearance/split.ts'
import { judgeSum, type SumCheckInput, sumDifferenceU } from '../../../src/core/end-clearance/sum-check.ts'
import type { Result } from '../../../src/core/lib/result.ts'
import { sampleLimit } from '../metrology/sample-limit.ts'

const IN = 0.0254
const code = (result: Result<unknown>) => (result.ok ? 'taken' : result.error.code)
function got<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}
const clearance = fc.double({ min: 1e-5, max: 0.01, noNaN: true })

// Bloch & Hoefner 1996, p. 289: about two thirds at the head end, one third at the crank end.
describe('split', () => {
  test('0.120 in: 0.080 and 0.040', () => {
    const { headM, crankM } = got(endClearanceSplit(0.12 * IN))
    expect([headM / IN, crankM / IN]).toEqual([expect.closeTo(0.08, 12), expect.closeTo(0.04, 12)])
    expect(code(endClearanceSplit(0))).toBe('figure-unsound')
    expect(code(endClearanceSplit(null))).toBe('figure-missing')
  })
})

describe('growth', () => {
  const rod = { name: 'rod', lengthM: 60 * IN, alphaPerK: 6e-6 * 1.8, riseK: 100 / 1.8 }
  test('60 in of steel, 100 F: 0.036 in; cooling shrinks by as much; parts add', () => {
    expect(got(growth([rod])) / IN).toBeCloseTo(0.036, 12)
    expect(got(growth([{ ...rod, riseK: -rod.riseK }]))).toBeCloseTo(-got(growth([rod])), 15)
    expect(got(growth([rod, rod]))).toBeCloseTo(2 * got(growth([rod])), 15)
  })
  test('no part, an expansion in the wrong unit, an absurd rise, missing: refused', () => {
    expect(code(growth([]))).toBe('no-part')
    expect(code(growth([{ ...rod, alphaPerK: 10.8 }]))).toBe('expansion-implausible')
    expect(code(growth([{ ...rod, riseK: 900 }]))).toBe('rise-implausible')
    expect(code(growth([rod, { ...rod, riseK: null }]))).toBe('figure-missing')
    expect(code(growth([{ ...rod, lengthM: Number.NaN }]))).toBe('figure-unsound')
  })
})

describe('hot', () => {
  const cold = {
    headColdM: 0.08 * IN,
    crankColdM: 0.04 * IN,
    rodGrowthM: 0.024 * IN,
    pistonGrowthM: 0.006 * IN,
    casingToHeadM: 0.008 * IN,
    casingToCrankM: 0.004 * IN,
  }
  test('head 0.058, crank 0.060 in', () => {
    const hot = got(hotClearances(cold))
    expect([hot.headM / IN, hot.crankM / IN]).toEqual([expect.closeTo(0.058, 10), expect.closeTo(0.06, 10)])
    expect(hot.strikes).toBeNull()
  })
  test('a piston that would strike is told, at the end where it would', () => {
    expect(got(hotClearances({ ...cold, rodGrowthM: 0.09 * IN })).strikes).toBe('head')
    expect(got(hotClearances({ ...cold, casingToCrankM: 0.07 * IN })).strikes).toBe('crank')
  })
  test('second method: four faces moved one by one give the same two gaps', () => {
    const grow = fc.double({ min: -0.002, max: 0.002, noNaN: true })
    fc.assert(
      fc.property(
        clearance,
        clearance,
        grow,
        grow,
        grow,
        grow,
        (head, crank, rod, piston, toHead, toCrank) => {
          const length = 0.2
          // From the crank end face: crank gap, piston, head gap.
          const crankFace = toCrank
          const near = crank + rod
          const far = crank + length + rod + piston
          const headFace = crank + length + head + toHead
          const hot = got(
            hotClearances({
              headColdM: head,
              crankColdM: crank,
              rodGrowthM: rod,
              pistonGrowthM: piston,
              casingToHeadM: toHead,
              casingToCrankM: toCrank,
            }),
          )
          expect(hot.crankM).toBeCloseTo(near - crankFace, 12)
          expect(hot.headM).toBeCloseTo(headFace - far, 12)
        },
      ),
    )
  })
  test('a growth left out is refused, not taken as nought', () => {
    expect(code(hotClearances({ ...cold, casingToHeadM: undefined }))).toBe('figure-missing')
    expect(code(hotClearances({ ...cold, headColdM: -1 }))).toBe('figure-unsound')
  })
})

describe('correction', () => {
  const read = { headM: 0.06 * IN, crankM: 0.06 * IN, pitchM: 0.125 * IN, flats: 6 }
  test('0.060 and 0.060: 0.020 in towards the crank, into the crosshead, 0.16 turns, 57.6 degrees, 0.96 flats', () => {
    const move = got(endClearanceMove(read))
    expect(move.moveM / IN).toBeCloseTo(-0.02, 12)
    expect(move).toMatchObject({ towards: 'crank', screw: 'into the crosshead' })
    expect(move.turns).toBeCloseTo(0.16, 10)
    expect((move.angleRad * 180) / Math.PI).toBeCloseTo(57.6, 8)
    expect(move.flats).toBeCloseTo(0.96, 10)
  })
  test('put back: after the move the split is right and the sum as it was; a second move is none', () => {
    fc.assert(
      fc.property(clearance, clearance, (headM, crankM) => {
        const { moveM } = got(endClearanceMove({ headM, crankM, pitchM: 0.003 }))
        const [head, crank] = [headM - moveM, crankM + moveM]
        expect(head + crank).toBeCloseTo(headM + crankM, 14)
        // A move below a nanometre counts as none.
        expect(Math.abs(head - 2 * crank)).toBeLessThan(4e-9)
        const again = got(endClearanceMove({ headM: head, crankM: crank, pitchM: 0.003 }))
        expect(again).toMatchObject({
          moveM: 0,
          towards: 'neither',
          screw: 'not at all',
          turns: 0,
          flats: null,
        })
      }),
    )
  })
  test('monotonic: the more the crank end has, the more the piston goes towards it', () => {
    fc.assert(
      fc.property(clearance, clearance, clearance, (headM, a, b) => {
        const move = (crankM: number) => got(endClearanceMove({ headM, crankM, pitchM: 0.003 })).moveM
        if (a > b + 1e-8) expect(move(a)).toBeLessThan(move(b))
      }),
    )
  })
  test('a share the book states is used; unsound pitch, flats, share, both ends nought: refused', () => {
    expect(got(endClearanceMove({ ...read, crankShare: 0.5 })).moveM).toBe(0)
    expect(code(endClearanceMove({ ...read, crankShare: 1 }))).toBe('share-unsound')
    expect(code(endClearanceMove({ ...read, flats: 5.5 }))).toBe('flats-uncounted')
    expect(code(endClearanceMove({ ...read, pitchM: 0 }))).toBe('figure-unsound')
    expect(code(endClearanceMove({ ...read, pitchM: null }))).toBe('figure-missing')
    expect(code(endClearanceMove({ ...read, headM: 0, crankM: 0 }))).toBe('figure-unsound')
    expect(code(endClearanceMove({ ...read, headM: Number.NaN }))).toBe('figure-unsound')
  })
})

describe('sum check', () => {
  const input: SumCheckInput = {
    foundHeadM: 0.08 * IN,
    foundCrankM: 0.04 * IN,
    leftHeadM: 0.082 * IN,
    leftCrankM: 0.037 * IN,
    readingU: 0.0005 * IN,
    changed: [],
    resolution: 0.001 * IN,
    limit: sampleLimit({ characteristic: 'end-clearance-sum', value: 0.004 * IN }),
  }
  test('0.001 in apart with U 0.001 in: ACCEPT; 0.006 in apart: REWORK; 0.004: HOLD', () => {
    expect(judgeSum(input).judgement.verdict).toBe('ACCEPT')
    expect((judgeSum(input).differenceM ?? 0) / IN).toBeCloseTo(-0.001, 10)
    expect(judgeSum({ ...input, leftHeadM: 0.089 * IN }).judgement.verdict).toBe('REWORK')
    expect(judgeSum({ ...input, leftHeadM: 0.087 * IN }).judgement.verdict).toBe('HOLD')
  })
  test('U of the difference of two sums is twice that of a reading', () => {
    expect(sumDifferenceU(0.0005)).toBeCloseTo(0.001, 15)
    expect(sumDifferenceU(null)).toBeNull()
  })
  test('as found and as left exchanged: the same word, the sign turned', () => {
    const turned = {
      ...input,
      foundHeadM: input.leftHeadM,
      foundCrankM: input.leftCrankM,
      leftHeadM: input.foundHeadM,
      leftCrankM: input.foundCrankM,
    }
    expect(judgeSum(turned).judgement.verdict).toBe(judgeSum(input).judgement.verdict)
    expect(judgeSum(turned).differenceM).toBeCloseTo(-(judgeSum(input).differenceM ?? 0), 15)
  })
  test('a part changed, a reading, U or limit missing or of another kind: HOLD', () => {
    const held = (change: Partial<SumCheckInput>) =>
      expect(judgeSum({ ...input, ...change }).judgement.verdict).toBe('HOLD')
    held({ changed: ['head gasket'] })
    held({ leftCrankM: null })
    held({ foundHeadM: Number.NaN })
    held({ readingU: null })
    held({ readingU: -1 })
    held({ limit: null })
    held({ limit: sampleLimit() })
  })
})
