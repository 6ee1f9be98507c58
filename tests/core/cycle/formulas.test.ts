import { describe, expect, test } from 'vitest'
import { flowAt, freeAirEfficiency, inletCapacity, molarFlow } from '../../../src/core/cycle/capacity.ts'
import { clearanceFromParts, fullPocketVolume, pocketVolume } from '../../../src/core/cycle/clearance.ts'
import { displacement, pistonAreas, pistonSpeed } from '../../../src/core/cycle/cylinder-ends.ts'
import { dischargeTemperature } from '../../../src/core/cycle/discharge-temperature.ts'
import { GASES, gasNamed, idealK } from '../../../src/core/cycle/gas-table.ts'
import {
  brakePower,
  indicatedPower,
  isothermalEfficiency,
  workFactor,
} from '../../../src/core/cycle/power.ts'
import { dischargeAtCompressionLimit, gasRodLoad } from '../../../src/core/cycle/rod-load.ts'
import { sliderCrank } from '../../../src/core/cycle/slider-crank.ts'
import { volumetricEfficiency } from '../../../src/core/cycle/volumetric-efficiency.ts'
import { get, si } from './sample-machine.ts'

const code = (result: { ok: boolean; error?: { code: string } }) => (result.ok ? 'ok' : result.error?.code)
const VE = { form: 'ideal', clearance: 0.12, ratio: 3, k: 1.27, zSuction: 1, zDischarge: 1 } as const

describe('size of the cylinder', () => {
  test('areas of 12 in with a 2.5 in rod (worked out, not published) and the tail rod off the head end', () => {
    const areas = get(pistonAreas({ boreM: si(12, 'in'), rodM: si(2.5, 'in') }))
    expect(areas.headM2 / si(1, 'in2')).toBeCloseTo(113.09734, 5)
    expect(areas.crankM2 / si(1, 'in2')).toBeCloseTo(108.1886, 4)
    const tailed = get(pistonAreas({ boreM: si(12, 'in'), rodM: si(2.5, 'in'), tailRodM: si(2.5, 'in') }))
    expect(tailed.headM2).toBe(tailed.crankM2)
  })

  test('40 x 50 cm with a 5 cm rod (inputs: Nag Ex 19.6; outputs worked out)', () => {
    const moved = get(displacement({ boreM: 0.4, rodM: 0.05 }, 0.5, 5))
    expect(moved.headM3).toBeCloseTo(0.0628319, 7)
    expect(moved.crankM3).toBeCloseTo(0.0618501, 7)
    expect(moved.totalM3PerS * 60).toBeCloseTo(37.4046, 4)
  })

  test('refuses what cannot be a cylinder', () => {
    expect(code(pistonAreas({ boreM: 0.1, rodM: 0.1 }))).toBe('rod-too-big')
    expect(code(pistonAreas({ boreM: 0.1, rodM: 0.02, tailRodM: 0.2 }))).toBe('rod-too-big')
    expect(code(pistonAreas({ boreM: 0, rodM: 0 }))).toBe('not-above-zero')
    expect(code(displacement({ boreM: 0.2, rodM: 0.05 }, -0.3, 5))).toBe('not-above-zero')
    expect(code(pistonSpeed(0.3, Number.NaN))).toBe('not-a-number')
  })
})

describe('clearance', () => {
  test('is the sum of its parts over the swept volume of its own end', () => {
    const parts = [20, 100, 38.5].map((cm3, i) => ({ name: `part ${i}`, volumeM3: cm3 * 1e-6 }))
    const found = get(clearanceFromParts(parts, 1000e-6))
    expect(found.volumeM3 * 1e6).toBeCloseTo(158.5, 9)
    expect(found.ratio).toBeCloseTo(0.1585, 12)
  })

  test('pockets: fixed is always there, open-or-shut has no middle, a hand-wheel counts turns', () => {
    const fixed = { is: 'fixed', volumeM3: 2e-4 } as const
    const valve = { is: 'open-or-shut', volumeM3: 3e-4 } as const
    const wheel = { is: 'variable', volumePerTurnM3: 32.77e-6, turns: 12 } as const
    expect([0, 1].map((opening) => get(pocketVolume(fixed, opening)))).toEqual([2e-4, 2e-4])
    expect([0, 1].map((opening) => get(pocketVolume(valve, opening)))).toEqual([0, 3e-4])
    expect(code(pocketVolume(valve, 0.5))).toBe('half-open')
    expect(get(pocketVolume(wheel, 0.5)) * 1e6).toBeCloseTo(196.62, 9)
    expect(get(fullPocketVolume(wheel)) * 1e6).toBeCloseTo(393.24, 9)
    expect(code(pocketVolume(wheel, 1.01))).toBe('out-of-range')
    expect(code(pocketVolume({ ...wheel, turns: 0 }, 0))).toBe('not-above-zero')
  })

  test('refuses no parts, a negative one, and five strokes of clearance', () => {
    expect(code(clearanceFromParts([], 1e-3))).toBe('no-parts')
    expect(code(clearanceFromParts([{ name: 'port', volumeM3: -1e-6 }], 1e-3))).toBe('out-of-range')
    expect(code(clearanceFromParts([{ name: 'port', volumeM3: 6e-3 }], 1e-3))).toBe('out-of-range')
  })
})

describe('volumetric efficiency', () => {
  test('each form gives its own figure (anchors worked out, not published)', () => {
    expect(get(volumetricEfficiency(VE))).toBeCloseTo(0.834985, 6)
    expect(get(volumetricEfficiency({ ...VE, form: '96-less-ratio' }))).toBeCloseTo(0.764985, 6)
    const co2 = { ...VE, ratio: 2, k: 1.3, zSuction: 0.312, zDischarge: 0.575 }
    expect(get(volumetricEfficiency({ ...co2, form: '96-less-ratio' }))).toBeCloseTo(0.94902, 5)
    const heavy = { ...VE, k: 1.25, clearance: 0.15, zSuction: 0.98, zDischarge: 0.95 }
    expect(get(volumetricEfficiency({ ...heavy, form: '96-less-ratio' }))).toBeCloseTo(0.70736, 5)
    expect(get(volumetricEfficiency({ ...VE, form: '97-less-loss', loss: 0.03 }))).toBeCloseTo(0.774985, 6)
    expect(get(volumetricEfficiency({ ...VE, form: '100-less-loss', loss: 0.03 }))).toBeCloseTo(0.804985, 6)
  })

  test('opening an end from 12 to 40 % (worked out, not published)', () => {
    const at = (clearance: number) => get(volumetricEfficiency({ ...VE, clearance }))
    const shares = [0.2, 0.3, 0.4].map((clearance) => at(clearance) / at(0.12))
    for (const [i, share] of [0.868249, 0.703561, 0.538873].entries()) expect(shares[i]).toBeCloseTo(share, 6)
  })

  test('never mixes: a loss only where the form has one, and always there', () => {
    expect(code(volumetricEfficiency({ ...VE, loss: 0.03 }))).toBe('loss-not-in-form')
    expect(code(volumetricEfficiency({ ...VE, form: '97-less-loss' }))).toBe('missing')
    expect(code(volumetricEfficiency({ ...VE, clearance: 0.9 }))).toBe('no-flow')
    expect(code(volumetricEfficiency({ ...VE, ratio: 0.9 }))).toBe('out-of-range')
  })
})

describe('capacity and power', () => {
  test('500 icfm at 100 psia, 100 F is 4.549 MMscfd (worked out, not published)', () => {
    const from = { pressurePa: si(100, 'psia'), temperatureK: si(100, 'degF'), z: 1 }
    const base = { pressurePa: si(14.696, 'psia'), temperatureK: si(60, 'degF'), z: 1 }
    const flow = get(flowAt(si(500, 'cfm'), from, base))
    expect((flow / si(1, 'cfm')) * 1440 * 1e-6).toBeCloseTo(4.54914, 5)
    expect(get(flowAt(flow, base, from))).toBeCloseTo(si(500, 'cfm'), 12)
    expect(get(freeAirEfficiency(1, from, base))).toBeCloseTo(6.318245, 6)
  })

  test('the amount of gas does not depend on where it is looked at', () => {
    const suction = { pressurePa: 5e5, temperatureK: 300, z: 0.95 }
    const base = { pressurePa: 101325, temperatureK: 288.7, z: 1 }
    const amount = get(molarFlow(0.1, suction))
    expect(get(molarFlow(get(flowAt(0.1, suction, base)), base))).toBeCloseTo(amount, 9)
    expect(get(inletCapacity(0.8, 0.2))).toBeCloseTo(0.16, 12)
  })

  test('1 MMscfd, k 1.27, r 3, 100 F takes 59.35 hp (worked out, 379.49 scf a lb mole)', () => {
    const molPerS = ((1e6 / 379.49) * 453.59237) / 86400
    const suctionPa = 3e5
    const inletM3PerS = (molPerS * 8.31446261815324 * si(100, 'degF')) / suctionPa
    const watts = get(
      indicatedPower({ suctionPa, inletM3PerS, ratio: 3, n: 1.27, zSuction: 1, zDischarge: 1 }),
    )
    expect(watts / si(1, 'hp')).toBeCloseTo(59.351, 2)
    expect(get(brakePower(watts, { compression: 0.82, mechanical: 1 })) / si(1, 'hp')).toBeCloseTo(72.38, 2)
  })

  test('the work factor runs smoothly into the isothermal one', () => {
    expect(workFactor(3, 1)).toBeCloseTo(Math.log(3), 12)
    expect(workFactor(3, 1 + 1e-9)).toBeCloseTo(Math.log(3), 8)
    expect(workFactor(1, 1.3)).toBe(0)
    expect(get(isothermalEfficiency(1, 1.3))).toBe(1)
    expect(get(isothermalEfficiency(3, 1))).toBeCloseTo(1, 12)
  })

  test('refuses an efficiency above 1 or missing', () => {
    expect(code(brakePower(1000, { compression: 1.1, mechanical: 0.9 }))).toBe('out-of-range')
    expect(code(brakePower(1000, { compression: 1, mechanical: Number.NaN }))).toBe('not-a-number')
  })
})

describe('temperature, rod load, gases', () => {
  test('no ratio, no heat', () => {
    expect(get(dischargeTemperature(300, 1, 1.3))).toBe(300)
    expect(get(dischargeTemperature(300, 5, 1))).toBe(300)
    expect(code(dischargeTemperature(-20, 3, 1.3))).toBe('out-of-range')
  })

  test('12 in, rod 2.5 in, 100 to 300 psia (worked out, not published); compression is the head end', () => {
    const areas = get(pistonAreas({ boreM: si(12, 'in'), rodM: si(2.5, 'in') }))
    const at = { areas, suctionPa: si(100, 'psia'), dischargePa: si(300, 'psia') }
    const load = get(gasRodLoad({ ...at, outsidePa: 0 }))
    expect(load.compressionN / si(1, 'lbf')).toBeCloseTo(23110.34, 2)
    expect(load.tensionN / si(1, 'lbf')).toBeCloseTo(21146.85, 2)
    const withAir = get(gasRodLoad({ ...at, outsidePa: si(14.7, 'psia') }))
    // The barometer on the rod's outer end takes as much off the push as it adds to the pull.
    expect(load.compressionN - withAir.compressionN).toBeCloseTo(withAir.tensionN - load.tensionN, 6)
    expect((load.compressionN - withAir.compressionN) / si(1, 'lbf')).toBeCloseTo(14.7 * 4.90874, 2)
  })

  test('the discharge pressure at the limit, put back, gives the limit', () => {
    const areas = get(pistonAreas({ boreM: 0.3, rodM: 0.06 }))
    const at = { areas, suctionPa: 5e5, outsidePa: 1e5 }
    const dischargePa = get(dischargeAtCompressionLimit(at, 80000))
    expect(get(gasRodLoad({ ...at, dischargePa })).compressionN).toBeCloseTo(80000, 6)
    expect(code(gasRodLoad({ ...at, dischargePa: 4e5 }))).toBe('out-of-range')
  })

  test('carbon dioxide is near the handbook (548 R, 1071 psia, k 1.3: Pipeline Rules of Thumb p. 271-272)', () => {
    const co2 = get(gasNamed('carbon dioxide'))
    expect(Math.abs(co2.criticalK * 1.8 - 548)).toBeLessThan(1)
    expect(Math.abs(co2.criticalPa / si(1, 'psi') - 1071)).toBeLessThan(2)
    expect(Math.abs(co2.k60F - 1.3)).toBeLessThan(0.01)
  })

  test('k lies between its two figures, and is not followed outside them', () => {
    expect(get(idealK('methane', si(105, 'degF')))).toBeCloseTo(1.2965, 4)
    for (const { name, k60F, k150F } of GASES) {
      expect(get(idealK(name, si(60, 'degF')))).toBeCloseTo(k60F, 9)
      expect(get(idealK(name, si(150, 'degF')))).toBeCloseTo(k150F, 9)
    }
    expect(code(idealK('methane', si(200, 'degF')))).toBe('out-of-range')
    expect(code(gasNamed('towngas'))).toBe('gas-unknown')
  })
})

describe('slider-crank', () => {
  const gear = { crankM: 0.15, conRodM: 0.6, omega: 47.12 }

  test('exact figures (worked out apart from the program)', () => {
    const motion = get(sliderCrank({ ...gear, omega: 15 * Math.PI }, Math.PI / 3))
    expect(motion.positionM).toBeCloseTo(0.0892313, 7)
    expect(motion.velocity).toBeCloseTo(6.90536, 4)
    expect(motion.acceleration).toBeCloseTo(124.9493, 3)
    const short = { crankM: 0.1, conRodM: 0.2, omega: 1 }
    expect(get(sliderCrank(short, (68.5 * Math.PI) / 180)).positionM).toBeCloseTo(0.0863097, 7)
    const four = { crankM: 1, conRodM: 4, omega: 1 }
    const at = [45, 60, 90].map((deg) => get(sliderCrank(four, (deg * Math.PI) / 180)).positionM)
    for (const [i, x] of [0.355889, 0.594875, 1.127017].entries()) expect(at[i]).toBeCloseTo(x, 6)
  })

  test('second method: velocity and acceleration are the slopes of position and velocity', () => {
    const step = 1e-5
    for (let degrees = 1; degrees < 360; degrees += 7) {
      const angle = (degrees * Math.PI) / 180
      const [before, here, after] = [angle - step, angle, angle + step].map((a) => get(sliderCrank(gear, a)))
      const slope = (a = 0, b = 0) => ((b - a) / (2 * step)) * gear.omega
      expect(slope(before?.positionM, after?.positionM)).toBeCloseTo(here?.velocity ?? Number.NaN, 5)
      expect(slope(before?.velocity, after?.velocity)).toBeCloseTo(here?.acceleration ?? Number.NaN, 4)
    }
  })

  test('a full stroke lies between the dead centres, where the piston stands still', () => {
    const [outer, inner] = [0, Math.PI].map((angle) => get(sliderCrank(gear, angle)))
    expect(outer?.positionM).toBe(0)
    expect(inner?.positionM).toBeCloseTo(0.3, 12)
    expect(inner?.velocity).toBeCloseTo(0, 9)
    expect(code(sliderCrank({ ...gear, conRodM: 0.15 }, 1))).toBe('rod-too-short')
  })
})
