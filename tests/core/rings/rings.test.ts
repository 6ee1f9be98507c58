import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Result } from '../../../src/core/lib/result.ts'
import {
  END_GAP_RULES,
  type EndGapRuleName,
  JOINT_FACTOR,
  MEANINGS_OF_T,
  newEndGap,
  RING_EXPANSION_PER_K,
  type RingJoint,
  type RingMaterial,
  thermalEndGap,
} from '../../../src/core/rings/end-gap.ts'
import { gapGrowth, gapLimit, radialWear } from '../../../src/core/rings/gap-wear.ts'
import { type OVERSIZE_RING_RULES, oversizeRingTrigger } from '../../../src/core/rings/oversize-ring.ts'
import { riderClearance, riderGroove } from '../../../src/core/rings/rider.ts'
import { sideClearance } from '../../../src/core/rings/side-clearance.ts'

const IN = 0.0254
const code = (result: Result<unknown>) => (result.ok ? 'taken' : result.error.code)
function got<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}

const gapIn = (material: RingMaterial, rule: EndGapRuleName, joint: RingJoint = 'butt', boreIn = 10) =>
  got(newEndGap({ boreM: boreIn * IN, material, rule, joint })).gapM / IN

// Bloch & Hoefner 1996, p. 228 and table 4-4 p. 272; figures for 10 in are our arithmetic on the printed ratios.
describe('end gap of a new ring', () => {
  test.each([
    ['cast-iron', 'handbook-p228', 0.03],
    ['carbon', 'handbook-p228', 0.03],
    ['bronze', 'handbook-p228', 0.04],
    ['ptfe', 'handbook-p228', 0.24],
    ['phenolic', 'handbook-p228', 0.05],
    ['cast-iron', 'handbook-table-4-4', 0.02],
    ['bronze', 'handbook-table-4-4', 0.03],
    ['ptfe', 'handbook-table-4-4', 0.17],
    ['carbon', 'handbook-table-4-4', 0.02],
  ] as const)('%s by %s in a 10 in bore: %f in', (material, rule, inches) => {
    expect(gapIn(material, rule)).toBeCloseTo(inches, 12)
  })

  test('the two rules stay apart for every material both have, and only one is a minimum', () => {
    for (const material of ['cast-iron', 'bronze', 'ptfe', 'carbon'] as const)
      expect(gapIn(material, 'handbook-p228')).toBeGreaterThan(gapIn(material, 'handbook-table-4-4'))
    expect(END_GAP_RULES['handbook-p228'].isMinimum).toBe(false)
    expect(END_GAP_RULES['handbook-table-4-4'].isMinimum).toBe(true)
  })

  test('angle cuts: PTFE 10 in, 0.121 and 0.148 in, under the table they are printed with and no other', () => {
    expect(gapIn('ptfe', 'handbook-table-4-4', 'angle-cut-0.71')).toBeCloseTo(0.1207, 10)
    expect(gapIn('ptfe', 'handbook-table-4-4', 'angle-cut-0.87')).toBeCloseTo(0.1479, 10)
    expect(gapIn('ptfe', 'handbook-table-4-4', 'step')).toBe(gapIn('ptfe', 'handbook-table-4-4'))
    const other = newEndGap({
      boreM: 0.254,
      material: 'ptfe',
      rule: 'handbook-p228',
      joint: 'angle-cut-0.71',
    })
    expect(code(other)).toBe('joint-not-in-rule')
    // Our reading of the figure: 0.71 and 0.87 are the cosines of 45 and 30 degrees to two figures.
    expect(JOINT_FACTOR['angle-cut-0.71']).toBeCloseTo(Math.cos(Math.PI / 4), 2)
    expect(JOINT_FACTOR['angle-cut-0.87']).toBeCloseTo(Math.cos(Math.PI / 6), 2)
  })

  test('what is missing or not offered is refused', () => {
    const base = { boreM: 0.254, material: 'ptfe', rule: 'handbook-p228', joint: 'butt' } as const
    for (const boreM of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(code(newEndGap({ ...base, boreM }))).toBe('figure-unsound')
    expect(code(newEndGap({ ...base, boreM: null }))).toBe('figure-missing')
    expect(code(newEndGap({ ...base, rule: 'toString' as 'handbook-p228' }))).toBe('not-offered')
    expect(code(newEndGap({ ...base, joint: 'lap' as 'butt' }))).toBe('not-offered')
    const phenolic = newEndGap({ ...base, material: 'phenolic', rule: 'handbook-table-4-4' })
    expect(code(phenolic)).toBe('material-not-in-rule')
    expect(code(newEndGap({ ...base, material: 'constructor' as 'ptfe' }))).toBe('material-not-in-rule')
  })
})

// The Tribology Handbook, table 17.9: S = pi D alpha T. The book does not say what T is.
describe('thermal gap', () => {
  const base = { boreM: 0.254, alphaPerK: 55e-6, operatingC: 100, meaning: MEANINGS_OF_T[0] }
  test('254 mm: 4.39 mm at 55e-6 and 6.38 mm at 80e-6, T taken as 100', () => {
    expect(got(thermalEndGap(base)).gapM * 1000).toBeCloseTo(4.389, 3)
    const glass = thermalEndGap({ ...base, alphaPerK: RING_EXPANSION_PER_K['glass-filled-ptfe'] })
    expect(got(glass).gapM * 1000).toBeCloseTo(6.384, 3)
  })

  test('as a rise from 20 C the same ring gets a smaller gap, by the share of the rise', () => {
    const rise = got(thermalEndGap({ ...base, fittedC: 20, meaning: 't-is-rise-above-fitting' }))
    expect(rise.T).toBe(80)
    expect(rise.gapM).toBeCloseTo(0.8 * got(thermalEndGap(base)).gapM, 15)
  })

  test('no fitting temperature, no rise, an absurd expansion: refused', () => {
    expect(code(thermalEndGap({ ...base, meaning: 't-is-rise-above-fitting' }))).toBe('figure-missing')
    const cold = thermalEndGap({ ...base, fittedC: 100, meaning: 't-is-rise-above-fitting' })
    expect(code(cold)).toBe('no-rise')
    expect(code(thermalEndGap({ ...base, operatingC: -10 }))).toBe('no-rise')
    expect(code(thermalEndGap({ ...base, alphaPerK: 55 }))).toBe('expansion-implausible')
    expect(code(thermalEndGap({ ...base, meaning: 'T' as 't-is-rise-above-fitting' }))).toBe('not-offered')
  })
})

const wear = fc.double({ min: 0, max: 0.01, noNaN: true })

describe('wear and growth of the gap', () => {
  test('bore 0.010 in or face 0.005 in: the gap grows 0.0314 in', () => {
    const bore = got(gapGrowth({ boreGrowthM: 0.01 * IN, radialWearM: 0 })).growthM / IN
    const face = got(gapGrowth({ boreGrowthM: 0, radialWearM: 0.005 * IN })).growthM / IN
    expect(bore).toBeCloseTo(0.031416, 6)
    expect(face).toBeCloseTo(bore, 12)
  })

  test('second method: the growth is the difference of two circles, whichever of bore and ring wears', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 1, noNaN: true }), wear, wear, (boreM, growthM, radialM) => {
        // Length of the ring does not change; it closes the circle of its neutral line at any radius.
        const gapBefore = Math.PI * boreM - (Math.PI * boreM - 0.001)
        const mean = boreM + growthM + 2 * radialM
        const gapAfter = Math.PI * mean - (Math.PI * boreM - 0.001)
        const grown = got(gapGrowth({ boreGrowthM: growthM, radialWearM: radialM })).growthM
        expect(grown).toBeCloseTo(gapAfter - gapBefore, 10)
      }),
    )
  })

  test('monotonic: more wear never means less gap', () => {
    fc.assert(
      fc.property(wear, wear, wear, (a, b, radialWearM) => {
        const [small, large] = [Math.min(a, b), Math.max(a, b)]
        const grown = (boreGrowthM: number) => got(gapGrowth({ boreGrowthM, radialWearM })).growthM
        expect(grown(large)).toBeGreaterThanOrEqual(grown(small))
      }),
    )
  })

  test('three times new put back: the bore growth it allows brings exactly that gap', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-5, max: 0.02, noNaN: true }), (newGapM) => {
        const { greatestM, boreGrowthM } = got(gapLimit({ newGapM, rule: 'three-times-new' }))
        const grown = got(gapGrowth({ boreGrowthM, radialWearM: 0 })).growthM
        expect(newGapM + grown).toBeCloseTo(greatestM, 12)
      }),
    )
  })

  test('three times is not the only rule: a stated factor is one, and must be stated', () => {
    const stated = gapLimit({ newGapM: 0.018 * IN, rule: 'stated-factor', statedFactor: 1.38 })
    expect(got(stated).greatestM / IN).toBeCloseTo(0.02484, 10)
    expect(code(gapLimit({ newGapM: 0.01, rule: 'stated-factor' }))).toBe('figure-missing')
    expect(code(gapLimit({ newGapM: 0.01, rule: 'stated-factor', statedFactor: 1 }))).toBe('factor-too-small')
    expect(code(gapLimit({ newGapM: 0.01, rule: 'twice' as 'stated-factor' }))).toBe('not-offered')
    expect(code(gapLimit({ newGapM: Number.NaN, rule: 'three-times-new' }))).toBe('figure-unsound')
  })

  test('radial wear: a ring thicker than new is refused beyond U, and nought within it', () => {
    const ring = { newM: 0.5 * IN, nowM: 0.462 * IN, differenceU: 0.001 * IN }
    expect(got(radialWear(ring)).wearM / IN).toBeCloseTo(0.038, 12)
    expect(got(radialWear({ ...ring, nowM: 0.5005 * IN })).wearM).toBe(0)
    expect(code(radialWear({ ...ring, nowM: 0.502 * IN }))).toBe('ring-thicker-than-new')
    expect(code(radialWear({ ...ring, differenceU: null }))).toBe('figure-missing')
    expect(code(gapGrowth({ boreGrowthM: -0.001, radialWearM: 0 }))).toBe('figure-unsound')
  })
})

describe('side clearance, riders, oversize rings', () => {
  const side = (material: RingMaterial, rule: Parameters<typeof sideClearance>[0]['rule'], widthIn: number) =>
    got(sideClearance({ widthM: widthIn * IN, material, rule }))

  test('the three rules for PTFE stay apart: 0.010, 0.018, 0.025 per in of width', () => {
    const rules = ['handbook-p228', 'handbook-table-4-4', 'tribology-t17-8'] as const
    expect(rules.map((rule) => side('ptfe', rule, 1).leastM / IN)).toEqual([
      expect.closeTo(0.01, 12),
      expect.closeTo(0.018, 12),
      expect.closeTo(0.025, 12),
    ])
  })

  test('cast iron: a band by p. 228, a floor of 0.002 in by table 4-4', () => {
    expect(side('cast-iron', 'handbook-p228', 0.5)).toMatchObject({
      leastM: expect.closeTo(0.0015 * IN, 12),
      mostM: expect.closeTo(0.002 * IN, 12),
    })
    expect(side('cast-iron', 'handbook-table-4-4', 0.5)).toMatchObject({ isFloor: false })
    expect(side('cast-iron', 'handbook-table-4-4', 0.5).leastM / IN).toBeCloseTo(0.003, 12)
    expect(side('cast-iron', 'handbook-table-4-4', 0.25)).toMatchObject({ isFloor: true })
    expect(side('cast-iron', 'handbook-table-4-4', 0.25).leastM / IN).toBeCloseTo(0.002, 12)
    expect(code(sideClearance({ widthM: 0.01, material: 'bronze', rule: 'tribology-t17-8' }))).toBe(
      'material-not-in-rule',
    )
    expect(code(sideClearance({ widthM: 0, material: 'ptfe', rule: 'handbook-p228' }))).toBe('figure-unsound')
  })

  test.each([
    ['iron', 'handbook-p269', 10, 0.02, 0.02],
    ['aluminium', 'handbook-p269', 10, 0.03, 0.03],
    ['iron', 'handbook-p269', 20, 0.035, 0.035],
    ['aluminium', 'handbook-p269', 20, 0.055, 0.055],
    ['iron', 'handbook-p228', 10, 0.0125, 0.015],
    ['aluminium', 'handbook-p228', 10, 0.02, 0.02],
  ] as const)('rider, %s by %s, %f in: %f to %f in', (pistonMaterial, rule, bore, least, most) => {
    const found = got(riderClearance({ boreM: bore * IN, pistonMaterial, rule }))
    expect(found.leastM / IN).toBeCloseTo(least, 12)
    expect(found.mostM / IN).toBeCloseTo(most, 12)
  })

  test('rider groove: PTFE in 10 in 0.350 in at the ends; iron has a floor at the sides', () => {
    expect(got(riderGroove({ boreM: 10 * IN, widthM: 2 * IN, material: 'ptfe' })).endM / IN).toBeCloseTo(
      0.35,
      12,
    )
    expect(got(riderGroove({ boreM: 10 * IN, widthM: IN, material: 'iron' })).sideM / IN).toBeCloseTo(
      0.002,
      12,
    )
    expect(code(riderGroove({ boreM: 10 * IN, widthM: null, material: 'iron' }))).toBe('figure-missing')
  })

  test('oversize rings in 10 in: 0.040, 0.030, 0.019 or 0.013 in, each by its own name', () => {
    const trigger = (rule: keyof typeof OVERSIZE_RING_RULES, newGapIn?: number) =>
      got(
        oversizeRingTrigger({
          nominalM: 10 * IN,
          rule,
          newGapM: newGapIn === undefined ? null : newGapIn * IN,
        }),
      ).growthM / IN
    expect(trigger('handbook-table-4-2')).toBeCloseTo(0.04, 12)
    expect(trigger('navy-0.003-per-in')).toBeCloseTo(0.03, 12)
    expect(trigger('gap-tripled', 0.03)).toBeCloseTo(0.0190986, 7)
    expect(trigger('gap-tripled', 0.02)).toBeCloseTo(0.0127324, 7)
  })

  test.each([
    [3, 0.015],
    [4, 0.015],
    [5.999, 0.015],
    [6, 0.02],
    [9.5, 0.03],
    [14.999, 0.04],
    [15, 0.05],
    [42, 0.12],
  ])('table 4-2 at %f in: %f in', (bore, growth) => {
    const found = oversizeRingTrigger({ nominalM: bore * IN, rule: 'handbook-table-4-2' })
    expect(got(found).growthM / IN).toBeCloseTo(growth, 12)
  })

  test('between two rows, past the end, no new gap, no such rule: refused', () => {
    const at = (nominalM: number, rule: keyof typeof OVERSIZE_RING_RULES) =>
      code(oversizeRingTrigger({ nominalM, rule }))
    expect(at(3.995 * IN, 'handbook-table-4-2')).toBe('bore-not-in-table')
    expect(at(9.9995 * IN, 'handbook-table-4-2')).toBe('bore-not-in-table')
    expect(at(42.1 * IN, 'handbook-table-4-2')).toBe('bore-not-in-table')
    expect(at(10 * IN, 'gap-tripled')).toBe('figure-missing')
    expect(at(10 * IN, 'valueOf' as 'gap-tripled')).toBe('not-offered')
    expect(at(Number.NaN, 'navy-0.003-per-in')).toBe('figure-unsound')
  })
})
