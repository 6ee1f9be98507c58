import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Result } from '../../../src/core/lib/result.ts'
import { cavityEnergy, ENERGY_MODELS, plugForce, TNT_J_PER_G } from '../../../src/core/piston/trapped-gas.ts'

const IN = 0.0254
const LBF = 4.4482216152605
const PSI = LBF / IN ** 2
const code = (result: Result<unknown>) => (result.ok ? 'taken' : result.error.code)
function got<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}

describe('force on a plug', () => {
  test.each([
    [100, 1.5, 177],
    [5, 9.5, 354],
    [12, 9.5, 850],
  ])('%f psi on %f in: %f lbf (trade figures, worked for these notes)', (psi, inches, lbf) => {
    const force = plugForce({ pressureDifferencePa: psi * PSI, diameterM: inches * IN })
    expect(Math.abs(got(force) / LBF - lbf)).toBeLessThan(0.6)
  })
  test('missing, vacuum, no diameter: refused', () => {
    expect(code(plugForce({ pressureDifferencePa: -1, diameterM: 0.04 }))).toBe('figure-unsound')
    expect(code(plugForce({ pressureDifferencePa: null, diameterM: 0.04 }))).toBe('figure-missing')
    expect(code(plugForce({ pressureDifferencePa: 1e5, diameterM: 0 }))).toBe('figure-unsound')
  })
})

const GAS = { volumeM3: 0.0124, insidePa: 8.01325e5, ambientPa: 1.01325e5, k: 1.24 }

describe('energy of the cavity', () => {
  test('12.4 L at 7 barg, k 1.24: 13.7 kJ isentropic, 11.1 kJ with k 1.4, about 3 g of TNT', () => {
    const energy = got(cavityEnergy({ ...GAS, model: 'isentropic-expansion' }))
    expect(energy / 1000).toBeCloseTo(13.656, 3)
    expect(energy / TNT_J_PER_G).toBeCloseTo(3.2, 1)
    expect(got(cavityEnergy({ ...GAS, k: 1.4, model: 'isentropic-expansion' })) / 1000).toBeCloseTo(11.08, 2)
  })

  const pressure = fc.double({ min: 1.02e5, max: 60e5, noNaN: true })
  const heatRatio = fc.double({ min: 1.05, max: 1.66, noNaN: true })

  test('second method: the work of expansion, summed in small steps along p V^k and p V', () => {
    const summed = (p1: number, k: number) => {
      const steps = 4000
      const lnEnd = Math.log(p1 / GAS.ambientPa) / k
      let work = 0
      for (let i = 0; i < steps; i += 1) {
        const s = ((i + 0.5) / steps) * lnEnd
        // dW = p dV with V = V1 e^s.
        work += ((p1 * Math.exp(-k * s) * GAS.volumeM3 * Math.exp(s)) / steps) * lnEnd
      }
      return work
    }
    fc.assert(
      fc.property(pressure, heatRatio, (insidePa, k) => {
        const isentropic = got(cavityEnergy({ ...GAS, insidePa, k, model: 'isentropic-expansion' }))
        expect(Math.abs(isentropic / summed(insidePa, k) - 1)).toBeLessThan(1e-5)
        const isothermal = got(cavityEnergy({ ...GAS, insidePa, model: 'isothermal' }))
        expect(Math.abs(isothermal / summed(insidePa, 1) - 1)).toBeLessThan(1e-5)
      }),
      { numRuns: 40 },
    )
  })

  test('in order: isothermal is the most, the available part of it less; more pressure is more energy', () => {
    fc.assert(
      fc.property(pressure, heatRatio, (insidePa, k) => {
        const of = (model: keyof typeof ENERGY_MODELS, inside = insidePa) =>
          got(cavityEnergy({ ...GAS, insidePa: inside, k, model }))
        expect(of('isothermal')).toBeGreaterThanOrEqual(of('isentropic-expansion') * (1 - 1e-12))
        expect(of('isothermal')).toBeGreaterThan(of('isothermal-available'))
        for (const model of Object.keys(ENERGY_MODELS) as (keyof typeof ENERGY_MODELS)[])
          expect(of(model, insidePa * 1.01)).toBeGreaterThan(of(model))
      }),
    )
  })

  test('no pressure, no energy, in every model', () => {
    for (const model of Object.keys(ENERGY_MODELS) as (keyof typeof ENERGY_MODELS)[])
      expect(got(cavityEnergy({ ...GAS, insidePa: GAS.ambientPa, model }))).toBeCloseTo(0, 9)
  })

  test('a missing k where the model needs it, a vacuum, an absurd k, no such model: refused', () => {
    expect(code(cavityEnergy({ ...GAS, k: null, model: 'isentropic-expansion' }))).toBe('figure-missing')
    expect(code(cavityEnergy({ ...GAS, k: 1, model: 'constant-volume' }))).toBe('k-implausible')
    expect(code(cavityEnergy({ ...GAS, k: 1.7, model: 'constant-volume' }))).toBe('k-implausible')
    expect(code(cavityEnergy({ ...GAS, k: null, model: 'isothermal' }))).toBe('taken')
    expect(code(cavityEnergy({ ...GAS, insidePa: 1e5, model: 'isothermal' }))).toBe('cavity-under-vacuum')
    expect(code(cavityEnergy({ ...GAS, ambientPa: 0, model: 'isothermal' }))).toBe('figure-unsound')
    expect(code(cavityEnergy({ ...GAS, model: 'tnt' as 'isothermal' }))).toBe('not-offered')
  })
})
