import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { jointShare } from '../../../src/core/fastening/joint-share.ts'
import { tighteningPasses } from '../../../src/core/fastening/passes.ts'
import { metricStressArea, unifiedStressArea } from '../../../src/core/fastening/stress-area.ts'
import { compliance, nutAngle, stretch } from '../../../src/core/fastening/stretch.ts'
import {
  nutFactorFromFriction,
  PRELOAD_SCATTER,
  type ScatterName,
  tensionFromTorque,
  torqueForTension,
} from '../../../src/core/fastening/torque.ts'
import type { Result } from '../../../src/core/lib/result.ts'

const IN = 0.0254
const LBF = 4.4482216152605
const PSI = LBF / IN ** 2
const code = (result: Result<unknown>) => (result.ok ? 'taken' : result.error.code)
function got<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}
const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('stress area', () => {
  test('inch and metric constants differ: one for the other is off by more than the printed digits', () => {
    const metric = got(metricStressArea({ diameterM: 0.024, pitchM: 0.003 })) * 1e6
    const wrong = got(unifiedStressArea({ diameterM: 0.024, threadsPerInch: 25.4 / 3 })) * 1e6
    expect(metric).toBeCloseTo(352.5, 1)
    expect(Math.abs(wrong - metric)).toBeGreaterThan(1)
  })
  test('second method: the circle of the mean of pitch and minor diameter; less than the bolt, more than the root', () => {
    fc.assert(
      fc.property(figure(6, 100), figure(0.02, 0.12), (d, share) => {
        const P = d * share
        const area = got(metricStressArea({ diameterM: d / 1000, pitchM: P / 1000 })) * 1e6
        // ISO 68-1: d2 = d - 0.649519 P, d3 = d - 1.226869 P.
        const mean = (d - 0.649519 * P + (d - 1.226869 * P)) / 2
        expect(area).toBeCloseTo((Math.PI / 4) * mean ** 2, 6)
        expect(area).toBeLessThan((Math.PI / 4) * d ** 2)
        expect(area).toBeGreaterThan((Math.PI / 4) * (d - 1.3 * P) ** 2)
      }),
    )
  })
  test('a pitch in the wrong unit, or missing: refused', () => {
    expect(code(metricStressArea({ diameterM: 0.024, pitchM: 3 }))).toBe('thread-too-coarse')
    expect(code(unifiedStressArea({ diameterM: 0.75 * IN, threadsPerInch: 0.0625 }))).toBe(
      'thread-too-coarse',
    )
    expect(code(unifiedStressArea({ diameterM: null, threadsPerInch: 16 }))).toBe('figure-missing')
    expect(code(unifiedStressArea({ diameterM: 0.02, threadsPerInch: Number.NaN }))).toBe('figure-unsound')
  })
})

describe('torque and tension', () => {
  const m12 = (method: ScatterName) =>
    tensionFromTorque({ torqueNm: 82.14, diameterM: 0.012, nutFactor: 0.2, method })
  test('82 N m on M12, K 0.2: 34.2 kN, by torque wrench 25.7 to 42.8', () => {
    const found = got(m12('torque-wrench-25'))
    expect([found.meantN, found.leastN, found.mostN].map((n) => Math.round(n / 100) / 10)).toEqual([
      34.2, 25.7, 42.8,
    ])
  })
  test('ultrasonic: 1 % by one list and 10 % by the other, both kept, never averaged', () => {
    const spread = (method: ScatterName) => got(m12(method)).mostN / got(m12(method)).meantN - 1
    expect(spread('strain-gauge-or-ultrasonic-1')).toBeCloseTo(0.01, 12)
    expect(spread('nasa-ultrasonic-10')).toBeCloseTo(0.1, 12)
    expect(Object.values(PRELOAD_SCATTER).some(({ part }) => part === 0.055)).toBe(false)
  })
  test('there and back: the torque for a tension gives that tension', () => {
    fc.assert(
      fc.property(
        figure(1e3, 1e6),
        figure(0.005, 0.1),
        figure(0.05, 0.5),
        (tensionN, diameterM, nutFactor) => {
          const torqueNm = got(torqueForTension({ tensionN, diameterM, nutFactor }))
          const back = got(tensionFromTorque({ torqueNm, diameterM, nutFactor, method: 'feel-35' }))
          expect(back.meantN / tensionN).toBeCloseTo(1, 12)
          expect(back.leastN).toBeLessThan(back.meantN)
          expect(back.mostN).toBeGreaterThan(back.meantN)
        },
      ),
    )
  })
  test('friction against the short form: more friction, more torque; Shigley’s bolt is 0.189', () => {
    const bolt = { diameterM: 0.75 * IN, meanDiameterM: 0.7094 * IN, pitchM: IN / 16, collarFriction: 0.15 }
    expect(got(nutFactorFromFriction({ ...bolt, threadFriction: 0.15 }))).toBeCloseTo(0.1894, 4)
    fc.assert(
      fc.property(figure(0.05, 0.4), figure(0.05, 0.4), (a, b) => {
        const factor = (threadFriction: number) => got(nutFactorFromFriction({ ...bolt, threadFriction }))
        if (Math.abs(a - b) > 1e-9) expect(Math.sign(factor(a) - factor(b))).toBe(Math.sign(a - b))
      }),
    )
    expect(code(nutFactorFromFriction({ ...bolt, threadFriction: 0.15, meanDiameterM: IN }))).toBe(
      'mean-not-below-major',
    )
    expect(code(nutFactorFromFriction({ ...bolt, threadFriction: 0.6 }))).toBe('friction-implausible')
  })
  test('no K, an absurd K, no method, no torque: refused', () => {
    const base = { torqueNm: 82, diameterM: 0.012, nutFactor: 0.2, method: 'feel-35' as const }
    expect(code(tensionFromTorque({ ...base, nutFactor: null }))).toBe('figure-missing')
    expect(code(tensionFromTorque({ ...base, nutFactor: 2 }))).toBe('nut-factor-implausible')
    expect(code(tensionFromTorque({ ...base, method: 'guess' as 'feel-35' }))).toBe('not-offered')
    expect(code(tensionFromTorque({ ...base, torqueNm: 0 }))).toBe('figure-unsound')
    expect(code(torqueForTension({ tensionN: -1, diameterM: 0.012, nutFactor: 0.2 }))).toBe('figure-unsound')
  })
})

const STEEL = 30e6 * PSI
const ROD_END = { lengthM: 8 * IN, areaM2: 2.770558 * IN ** 2, elasticityPa: STEEL }
const HUB = { lengthM: 8 * IN, areaM2: 6 * IN ** 2, elasticityPa: 15e6 * PSI }
const TENSION = 40_000 * 2.770558 * LBF

describe('stretch and nut angle', () => {
  test('2-8 at 40 ksi over 8 in: 0.01067 in, 30.7 degrees for the rod alone, 59.1 with the hub (our arithmetic)', () => {
    const found = got(nutAngle({ tensionN: TENSION, pitchM: 0.125 * IN, bolt: [ROD_END], joint: [HUB] }))
    expect(found.stretchM / IN).toBeCloseTo(0.010667, 6)
    expect(found.squeezeM / IN).toBeCloseTo(0.009851, 6)
    expect((found.boltOnlyRad * 180) / Math.PI).toBeCloseTo(30.72, 2)
    expect((found.angleRad * 180) / Math.PI).toBeCloseTo(59.09, 2)
  })
  test('the joint left out is refused: the nut would be turned too little', () => {
    expect(code(nutAngle({ tensionN: TENSION, pitchM: 0.003, bolt: [ROD_END], joint: [] }))).toBe(
      'no-segment',
    )
    expect(code(nutAngle({ tensionN: TENSION, pitchM: 0, bolt: [ROD_END], joint: [HUB] }))).toBe(
      'figure-unsound',
    )
  })
  test('second method: a section cut in two anywhere stretches the same; the order of sections does not matter', () => {
    fc.assert(
      fc.property(figure(0.01, 0.99), (cut) => {
        const near = { ...ROD_END, lengthM: ROD_END.lengthM * cut }
        const far = { ...ROD_END, lengthM: ROD_END.lengthM * (1 - cut) }
        const whole = got(stretch({ tensionN: TENSION, segments: [ROD_END] })).stretchM
        expect(got(stretch({ tensionN: TENSION, segments: [near, far] })).stretchM).toBeCloseTo(whole, 12)
        expect(got(compliance([near, HUB, far], 'bolt'))).toBeCloseTo(
          got(compliance([far, near, HUB], 'bolt')),
          18,
        )
      }),
    )
  })
  test('stress is that of the smallest section', () => {
    const shank = { ...ROD_END, areaM2: Math.PI * IN ** 2 }
    expect(got(stretch({ tensionN: TENSION, segments: [shank, ROD_END] })).stressPa / PSI).toBeCloseTo(
      40_000,
      3,
    )
    expect(code(stretch({ tensionN: TENSION, segments: [{ ...shank, areaM2: null }] }))).toBe(
      'figure-missing',
    )
    expect(code(stretch({ tensionN: null, segments: [shank] }))).toBe('figure-missing')
  })
})

const JOINT = { preloadN: 111e3, loadN: 26e3, boltStiffness: 6.5, jointStiffness: 13.8, stressAreaM2: 2.4e-4 }

describe('joint load share', () => {
  test('second method: springs in parallel stretch alike, and the load is in balance', () => {
    const stiff = figure(0.1, 100)
    fc.assert(
      fc.property(stiff, stiff, figure(0, 5e4), (boltStiffness, jointStiffness, loadN) => {
        const share = got(jointShare({ ...JOINT, boltStiffness, jointStiffness, loadN }))
        if (share.isOpen) return expect(share.boltN).toBe(loadN)
        expect(share.boltN - share.clampN).toBeCloseTo(loadN, 6)
        const boltMoves = (share.boltN - JOINT.preloadN) / boltStiffness
        const jointMoves = (JOINT.preloadN - share.clampN) / jointStiffness
        expect(boltMoves).toBeCloseTo(jointMoves, 5)
      }),
    )
  })
  test('it opens at Fi / (1 - C), and then the bolt takes all, without a jump', () => {
    const { opensAtN } = got(jointShare(JOINT))
    const just = got(jointShare({ ...JOINT, loadN: opensAtN * (1 - 1e-12) }))
    const open = got(jointShare({ ...JOINT, loadN: opensAtN * (1 + 1e-12) }))
    expect([just.isOpen, open.isOpen, open.clampN]).toEqual([false, true, 0])
    expect(open.boltN / just.boltN).toBeCloseTo(1, 9)
  })
  test('pressed together, a stiffness of nought, a load missing: refused', () => {
    expect(code(jointShare({ ...JOINT, loadN: -1 }))).toBe('joint-pressed')
    expect(code(jointShare({ ...JOINT, boltStiffness: 0 }))).toBe('figure-unsound')
    expect(code(jointShare({ ...JOINT, loadN: undefined }))).toBe('figure-missing')
  })
})

// Common practice, no source: a cross in three passes, then once round.
describe('passes', () => {
  test('8 nuts: 1 5 3 7 2 6 4 8 at 30, 60, 100 %, then round', () => {
    const passes = got(tighteningPasses({ nuts: 8, torqueNm: 400 }))
    expect(passes.map(({ torqueNm }) => torqueNm)).toEqual([120, 240, 400, 400])
    expect(passes[0]?.order).toEqual([1, 5, 3, 7, 2, 6, 4, 8])
    expect(passes[3]).toMatchObject({ pattern: 'round', order: [1, 2, 3, 4, 5, 6, 7, 8] })
  })
  test('7 nuts: just under half way round each time, so that neighbours do not follow one another', () => {
    expect(got(tighteningPasses({ nuts: 7, torqueNm: 400 }))[0]?.order).toEqual([1, 4, 7, 3, 6, 2, 5])
  })
  test('any count: each nut once a pass; an even count goes by opposite pairs', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 200 }), (nuts) => {
        for (const { order } of got(tighteningPasses({ nuts, torqueNm: 100 })))
          expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: nuts }, (_, i) => i + 1))
        const cross = got(tighteningPasses({ nuts, torqueNm: 100 }))[0]?.order ?? []
        if (nuts % 2 === 0)
          for (let i = 0; i < nuts; i += 2) expect((cross[i + 1] ?? 0) - (cross[i] ?? 0)).toBe(nuts / 2)
      }),
    )
  })
  test('no count, shares that fall or do not end at the whole: refused', () => {
    for (const nuts of [2, 4.5, Number.NaN, 201])
      expect(code(tighteningPasses({ nuts, torqueNm: 100 }))).toBe('nuts-uncounted')
    for (const shares of [[0.6, 0.3, 1], [0.3, 0.6], [], [0, 1], [Number.NaN, 1]])
      expect(code(tighteningPasses({ nuts: 8, torqueNm: 100, shares }))).toBe('shares-do-not-rise')
    expect(code(tighteningPasses({ nuts: 8, torqueNm: 0 }))).toBe('figure-unsound')
  })
})
