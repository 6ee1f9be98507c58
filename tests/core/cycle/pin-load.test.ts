import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { pistonAreas } from '../../../src/core/cycle/cylinder-ends.ts'
import { PIN_STEPS, pinLoad } from '../../../src/core/cycle/pin-load.ts'
import { meetsReversal, reversalOf } from '../../../src/core/cycle/reversal.ts'
import { gasRodLoad } from '../../../src/core/cycle/rod-load.ts'
import { get, si } from './sample-machine.ts'

const SIZE = { boreM: 0.3, rodM: 0.06 }
const AREAS = get(pistonAreas(SIZE))
const END = { clearance: 0.15, suctionPa: 5e5, dischargePa: 13e5, n: 1.27, acts: true }
const GEAR = { crankM: 0.14, conRodM: 0.7, omega: 40 }
const INPUTS = { areas: AREAS, gear: GEAR, head: END, crank: END, outsidePa: 1e5, reciprocatingKg: 120 }
const DEG = Math.PI / 180
const wave = (at: (angle: number) => number, count = PIN_STEPS) =>
  Array.from({ length: count }, (_, i) => at((2 * Math.PI * i) / count))

describe('load at the crosshead pin', () => {
  test('without mass its extremes are the gas rod loads', () => {
    const loads = get(pinLoad({ ...INPUTS, reciprocatingKg: 0 })).map((point) => point.pinN)
    const gas = get(gasRodLoad({ areas: AREAS, suctionPa: 5e5, dischargePa: 13e5, outsidePa: 1e5 }))
    expect(Math.max(...loads)).toBeCloseTo(gas.compressionN, 6)
    expect(-Math.min(...loads)).toBeCloseTo(gas.tensionN, 6)
  })

  test('at outer dead centre inertia pulls: m w2 r (1 + r/l) comes off the push', () => {
    const [outer] = get(pinLoad(INPUTS))
    expect(outer?.inertiaN).toBeCloseTo(-120 * 40 * 40 * 0.14 * (1 + 0.14 / 0.7), 6)
    expect(outer?.pinN).toBeCloseTo((outer?.gasN ?? 0) + (outer?.inertiaN ?? 0), 9)
    const inner = get(pinLoad(INPUTS))[PIN_STEPS / 2]
    expect(inner?.inertiaN).toBeCloseTo(120 * 40 * 40 * 0.14 * (1 - 0.14 / 0.7), 6)
  })

  test('second method: gas work round the turn is that of the two cycles, and inertia does none', () => {
    const points = get(pinLoad(INPUTS))
    const place = (angle: number) => {
      const reach = Math.sqrt(0.7 ** 2 - (0.14 * Math.sin(angle)) ** 2)
      return 0.14 * (1 - Math.cos(angle)) + 0.7 - reach
    }
    const around = (force: (i: number) => number) =>
      points.reduce((sum, point, i) => {
        const next = points[(i + 1) % PIN_STEPS]
        const dx = place(next?.angle ?? 0) - place(point.angle)
        return sum + ((force(i) + force((i + 1) % PIN_STEPS)) / 2) * dx
      }, 0)
    const swept = (AREAS.headM2 + AREAS.crankM2) * 0.28
    const drawn = swept * (1 - 0.15 * (2.6 ** (1 / 1.27) - 1))
    const closed = 5e5 * drawn * (1.27 / 0.27) * (2.6 ** (0.27 / 1.27) - 1)
    expect(-around((i) => points[i]?.gasN ?? 0) / closed).toBeCloseTo(1, 4)
    expect(around((i) => points[i]?.inertiaN ?? 0) / closed).toBeCloseTo(0, 6)
  })

  test('the load does not jump between one point and the next', () => {
    const loads = get(pinLoad(INPUTS)).map((point) => point.pinN)
    const range = Math.max(...loads) - Math.min(...loads)
    for (const [i, load] of loads.entries())
      expect(Math.abs((loads[(i + 1) % PIN_STEPS] ?? 0) - load) / range).toBeLessThan(0.02)
  })

  test('refuses missing or negative mass and a discharge below suction', () => {
    for (const reciprocatingKg of [Number.NaN, -1])
      expect(pinLoad({ ...INPUTS, reciprocatingKg }).ok).toBe(false)
    expect(pinLoad({ ...INPUTS, head: { ...END, dischargePa: 1e5 } }).ok).toBe(false)
  })
})

describe('reversal', () => {
  test('a plain wave reverses for half the turn with equal peaks', () => {
    const found = get(reversalOf(wave(Math.sin)))
    expect(found.angle / DEG).toBeCloseTo(180, 3)
    expect(found.share).toBeCloseTo(1, 6)
  })

  test('cos t - c is above zero for 2 acos c: the arc is found to a thousandth of a degree', () => {
    for (const c of [-0.9, -0.3, 0.2, 0.7, 0.95]) {
      const found = get(reversalOf(wave((angle) => Math.cos(angle) - c)))
      const arc = Math.min(2 * Math.acos(c), 2 * Math.PI - 2 * Math.acos(c))
      expect(Math.abs(found.angle - arc) / DEG).toBeLessThan(1e-3)
      expect(found.share).toBeCloseTo((1 - Math.abs(c)) / (1 + Math.abs(c)), 4)
    }
  })

  test('two short arcs are not one long one', () => {
    const found = get(reversalOf(wave((angle) => Math.cos(2 * angle) - 0.5)))
    expect(found.angle / DEG).toBeCloseTo(60, 2)
  })

  test('a load in one direction only never reverses, whatever the criterion', () => {
    const found = get(reversalOf(wave((angle) => 2 + Math.sin(angle))))
    expect(found).toMatchObject({ angle: 0, share: 0, tensionPeakN: 0 })
    expect(get(meetsReversal(found, { leastAngle: 0, leastShare: 0 }))).toBe(false)
  })

  test('needs both angle and size, on the limit counts, and a criterion that is missing is refused', () => {
    const found = { compressionPeakN: 100, tensionPeakN: 3, angle: 15 * DEG, share: 0.03 }
    expect(get(meetsReversal(found, { leastAngle: 15 * DEG, leastShare: 0.03 }))).toBe(true)
    expect(get(meetsReversal(found, { leastAngle: 16 * DEG, leastShare: 0.03 }))).toBe(false)
    expect(get(meetsReversal(found, { leastAngle: 15 * DEG, leastShare: 0.031 }))).toBe(false)
    expect(meetsReversal(found, { leastAngle: Number.NaN, leastShare: 0.03 }).ok).toBe(false)
  })

  test('is the same from whatever angle the turn is begun, and with push and pull changed over', () => {
    const loads = get(pinLoad(INPUTS)).map((point) => point.pinN)
    const whole = get(reversalOf(loads))
    fc.assert(
      fc.property(fc.integer({ min: 0, max: PIN_STEPS - 1 }), (start) => {
        const turned = get(reversalOf([...loads.slice(start), ...loads.slice(0, start)]))
        expect(turned.angle).toBeCloseTo(whole.angle, 9)
      }),
      { numRuns: 40 },
    )
    const over = get(reversalOf(loads.map((load) => -load)))
    expect(over.angle).toBeCloseTo(whole.angle, 9)
    expect(over.compressionPeakN).toBe(whole.tensionPeakN)
  })

  test('two ends at work reverse; with the crank end held open the gas only pushes, and reversal is lost', () => {
    const good = get(reversalOf(get(pinLoad(INPUTS)).map((point) => point.pinN)))
    expect(get(meetsReversal(good, { leastAngle: si(15, 'deg'), leastShare: 0.03 }))).toBe(true)
    const oneSided = { ...INPUTS, crank: { ...END, acts: false }, reciprocatingKg: 5 }
    const bad = get(reversalOf(get(pinLoad(oneSided)).map((point) => point.pinN)))
    expect(get(meetsReversal(bad, { leastAngle: si(15, 'deg'), leastShare: 0.03 }))).toBe(false)
  })
})
