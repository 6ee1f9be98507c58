import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { indicatedPower } from '../../../src/core/cycle/power.ts'
import { cycleWork, enclosedWork, pressureAt, pvCorners, pvPoints } from '../../../src/core/cycle/pv-cycle.ts'
import { get } from './sample-machine.ts'

const CYCLE = {
  sweptM3: 1e-3,
  clearance: 0.1,
  suctionPa: 1e5,
  dischargePa: 3e5,
  compressionN: 1.3,
  expansionN: 1.3,
}
const some = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('the ideal cycle', () => {
  test('corners of the worked example', () => {
    const { suctionStart, dischargeStart, suctionEnd } = get(pvCorners(CYCLE))
    expect(suctionStart.volumeM3 * 1000).toBeCloseTo(0.2328, 4)
    expect(dischargeStart.volumeM3 * 1000).toBeCloseTo(0.4725, 4)
    expect(suctionEnd.volumeM3 * 1000).toBeCloseTo(1.1, 9)
  })

  test('second method: the area of the points agrees with the closed form, for one exponent and for two', () => {
    fc.assert(
      fc.property(some(0.02, 0.4), some(1.2, 5), some(1.05, 1.6), some(1.05, 1.6), (clearance, r, nc, ne) => {
        const cycle = { ...CYCLE, clearance, dischargePa: 1e5 * r, compressionN: nc, expansionN: ne }
        const points = pvPoints(cycle, 2000)
        fc.pre(points.ok)
        const swing = cycle.sweptM3 * cycle.dischargePa
        expect(Math.abs(enclosedWork(get(points)) - get(cycleWork(cycle))) / swing).toBeLessThan(2e-5)
      }),
      { numRuns: 60 },
    )
  })

  test('third method: with one exponent the work is that of the gas drawn in, whatever the clearance', () => {
    const perCycle = (clearance: number) => {
      const { suctionStart, suctionEnd } = get(pvCorners({ ...CYCLE, clearance }))
      const inletM3PerS = suctionEnd.volumeM3 - suctionStart.volumeM3
      return get(
        indicatedPower({ suctionPa: 1e5, inletM3PerS, ratio: 3, n: 1.3, zSuction: 1, zDischarge: 1 }),
      )
    }
    for (const clearance of [0, 0.05, 0.2, 0.6])
      expect(get(cycleWork({ ...CYCLE, clearance }))).toBeCloseTo(perCycle(clearance), 9)
  })

  test('the loop closes and stays between its corners', () => {
    const points = get(pvPoints(CYCLE, 50))
    expect(points[0]).toEqual(points.at(-1))
    for (const { volumeM3, pressurePa } of points) {
      expect(volumeM3).toBeGreaterThanOrEqual(1e-4)
      expect(volumeM3).toBeLessThanOrEqual(1.1e-3)
      expect(pressurePa).toBeGreaterThanOrEqual(1e5 * (1 - 1e-12))
      expect(pressurePa).toBeLessThanOrEqual(3e5)
    }
  })

  test('refuses a clearance that swallows the stroke, and steps that draw nothing', () => {
    const big = pvCorners({ ...CYCLE, clearance: 0.8 })
    expect(big.ok ? '' : big.error.code).toBe('no-flow')
    expect(pvPoints(CYCLE, 1).ok).toBe(false)
    expect(pvCorners({ ...CYCLE, dischargePa: Number.NaN }).ok).toBe(false)
  })
})

describe('pressure at a place of the piston', () => {
  const END = { clearance: 0.1, suctionPa: 1e5, dischargePa: 3e5, n: 1.3, acts: true }

  test('meets at both dead centres and follows the corners', () => {
    expect(pressureAt(END, 0, true)).toBe(3e5)
    expect(pressureAt(END, 0, false)).toBe(3e5)
    expect(pressureAt(END, 1, true)).toBe(1e5)
    expect(pressureAt(END, 1, false)).toBe(1e5)
    expect(pressureAt(END, 0.2328 - 0.1, true) / 1e5).toBeCloseTo(1, 3)
    expect(pressureAt(END, 0.4725 - 0.1, false) / 1e5).toBeCloseTo(3, 3)
  })

  test('a pocket so large that suction never opens rides one curve both ways', () => {
    const wide = { ...END, clearance: 1 }
    for (const travel of [0, 0.3, 0.7, 1])
      expect(pressureAt(wide, travel, true)).toBe(pressureAt(wide, travel, false))
    expect(pressureAt(wide, 1, true)).toBeGreaterThan(1e5)
  })

  test('an end that does not act stays at suction', () => {
    expect(pressureAt({ ...END, acts: false }, 0, false)).toBe(1e5)
  })
})
