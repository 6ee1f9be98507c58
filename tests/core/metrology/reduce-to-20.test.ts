import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { reduceTo20, type WarmReading } from '../../../src/core/metrology/reduce-to-20.ts'

const IRON = 10.8e-6
const STEEL = 11.5e-6

function reduced(change: Partial<WarmReading>): number {
  const result = reduceTo20({
    readingM: 0.254,
    instrumentAlpha: STEEL,
    instrumentC: 20,
    partAlpha: IRON,
    partC: 20,
    ...change,
  })
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}

const offMm = (size: number, at20: number) => (size - at20) * 1000

describe('published and reckoned rows', () => {
  // Coefficient 10.8e-6 per C for grey iron read in a general table; .0411 and .0027 mm are our arithmetic on it.
  test('254 mm of iron 15 C hot reads .0411 mm large; a steel micrometer as hot leaves .0027 mm', () => {
    expect(offMm(0.254, reduced({ partC: 35 }))).toBeCloseTo(0.0411, 4)
    expect(offMm(0.254, reduced({ partC: 35, instrumentC: 35 }))).toBeCloseTo(-0.0027, 4)
  })

  // Swyt, J. Res. NIST 99(1) 31 (1994): steel 11.5, aluminium 23.1 ppm per C; 34.5 um is our arithmetic.
  test('300 mm of steel 10 C hot is 34.5 um long; 500 mm at 26 C: steel .0345, aluminium .0693, iron .0324 mm', () => {
    expect(offMm(0.3, reduced({ readingM: 0.3, partAlpha: STEEL, partC: 30 }))).toBeCloseTo(0.0345, 4)
    const half = (partAlpha: number) => offMm(0.5, reduced({ readingM: 0.5, partAlpha, partC: 26 }))
    expect([half(STEEL), half(23.1e-6), half(IRON)].map((x) => Math.round(x * 1e4) / 1e4)).toEqual([
      0.0345, 0.0693, 0.0324,
    ])
  })

  // Bloch & Hoefner 1996, p. 228: .000006 in per in per F; 0.0023 in is our arithmetic.
  test('a 9.5 in bore 40 F hot reads 0.0023 in large', () => {
    const at20 = reduced({ readingM: 9.5 * 0.0254, partAlpha: 6e-6 * 1.8, partC: 20 + 40 / 1.8 })
    expect((9.5 * 0.0254 - at20) / 0.0254).toBeCloseTo(0.0023, 4)
  })
})

describe('GUM H.1 end gauge (JCGM 100:2008, values read second-hand)', () => {
  const lsM = 50.000623e-3
  const dM = 215e-9
  const gauge = (theta: number, dAlpha: number, dTheta: number) =>
    reduced({
      readingM: lsM + dM,
      instrumentAlpha: STEEL,
      instrumentC: 20 + theta - dTheta,
      partAlpha: STEEL + dAlpha,
      partC: 20 + theta,
    })

  test('gives the printed 50.000838 mm', () => {
    expect(gauge(-0.1, 0, 0) * 1000).toBeCloseTo(50.000838, 6)
  })

  test('moves with each temperature and coefficient as the printed first-order model does', () => {
    const model = (theta: number, dAlpha: number, dTheta: number) =>
      lsM + dM - lsM * (dAlpha * theta + STEEL * dTheta)
    for (const [theta, dAlpha, dTheta] of [
      [-0.1, 0.58e-6, 0],
      [0.41, 0.58e-6, 0.029],
      [-0.51, -0.58e-6, -0.029],
    ] as const)
      expect(Math.abs(gauge(theta, dAlpha, dTheta) - model(theta, dAlpha, dTheta))).toBeLessThan(0.05e-9)
  })
})

describe('properties and refusals', () => {
  test('at 20 C nothing changes; equal metals at one temperature nothing changes', () => {
    expect(reduced({})).toBe(0.254)
    fc.assert(
      fc.property(fc.double({ min: -40, max: 120, noNaN: true }), (c) => {
        expect(reduced({ partAlpha: STEEL, partC: c, instrumentC: c })).toBeCloseTo(0.254, 14)
      }),
    )
  })

  test('a hot part comes down, a hot instrument goes up', () => {
    expect(reduced({ partC: 30 })).toBeLessThan(0.254)
    expect(reduced({ instrumentC: 30 })).toBeGreaterThan(0.254)
  })

  test.each([
    [{ partC: undefined }, 'temperature-unknown'],
    [{ instrumentC: null }, 'temperature-unknown'],
    [{ partC: 121 }, 'temperature-implausible'],
    [{ instrumentC: -41 }, 'temperature-implausible'],
    [{ partC: Number.NaN }, 'temperature-implausible'],
    [{ partC: 293.15 }, 'temperature-implausible'],
    [{ partAlpha: 41e-6 }, 'expansion-implausible'],
    [{ instrumentAlpha: -1e-9 }, 'expansion-implausible'],
    [{ partAlpha: Number.NaN }, 'expansion-implausible'],
    [{ readingM: Number.NaN }, 'reading-not-a-size'],
    [{ readingM: 0 }, 'reading-not-a-size'],
  ])('%o is refused as %s', (change, code) => {
    const base = { readingM: 0.254, instrumentAlpha: STEEL, instrumentC: 20, partAlpha: IRON, partC: 20 }
    const result = reduceTo20({ ...base, ...change })
    expect(result.ok ? 'taken' : result.error.code).toBe(code)
  })
})
