import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ok, type Result } from '../../../src/core/lib/result.ts'
import { rodSag, sagRunoutBeam, sagRunoutTwoHalves } from '../../../src/core/rod/rod-sag.ts'
import {
  expectedRunoutU,
  expectedVerticalRunout,
  RUNOUT_PER_STROKE,
  type RunoutConvention,
  type RunoutGeometry,
} from '../../../src/core/rod/runout-expected.ts'
import { judgeRunout, type RunoutReading } from '../../../src/core/rod/runout-judge.ts'
import { sampleLimit } from '../metrology/sample-limit.ts'

const IN = 0.0254
const OUTER: RunoutConvention = 'zero-at-outer-end-read-at-inner'
const INNER: RunoutConvention = 'zero-at-inner-end-read-at-outer'
const code = (result: Result<unknown>) => (result.ok ? 'taken' : result.error.code)
function got<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}

const GEOMETRY: RunoutGeometry = {
  strokeM: 9 * IN,
  rodLengthM: 70 * IN,
  pistonClearanceM: 0.06 * IN,
  crossheadClearanceM: 0.008 * IN,
  convention: OUTER,
}
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('vertical runout to expect', () => {
  test('9 in stroke, 70 in, 0.060 and 0.008 in: 0.0033 in, minus when read at the inner end', () => {
    expect(got(expectedVerticalRunout(GEOMETRY)) / IN).toBeCloseTo(-0.0033429, 7)
    expect(got(expectedVerticalRunout({ ...GEOMETRY, convention: INNER })) / IN).toBeCloseTo(0.0033429, 7)
  })

  test('second method: a straight rod lying low at the piston, read by a pin that stays where it is', () => {
    fc.assert(
      fc.property(
        size(0.1, 0.4),
        size(1, 3),
        size(0, 0.004),
        size(0, 0.004),
        size(0, 1),
        (s, L, p, x, place) => {
          // Height of the rod over the line of guide and bore, x from the crosshead pin.
          const height = (at: number) => -x / 2 + ((-p / 2 + x / 2) / L) * at
          const atOuter = place * (L - s)
          const rise = height(atOuter + s) - height(atOuter)
          const geometry = { strokeM: s, rodLengthM: L, pistonClearanceM: p, crossheadClearanceM: x }
          expect(got(expectedVerticalRunout({ ...geometry, convention: OUTER }))).toBeCloseTo(rise, 12)
          expect(got(expectedVerticalRunout({ ...geometry, convention: INNER }))).toBeCloseTo(-rise, 12)
        },
      ),
    )
  })

  test('antisymmetric: the clearances exchanged turn the sign; equal ones give nought without a sign', () => {
    const turned = { ...GEOMETRY, pistonClearanceM: 0.008 * IN, crossheadClearanceM: 0.06 * IN }
    expect(got(expectedVerticalRunout(turned))).toBeCloseTo(-got(expectedVerticalRunout(GEOMETRY)), 15)
    const equal = got(expectedVerticalRunout({ ...GEOMETRY, pistonClearanceM: 0.008 * IN }))
    expect(Object.is(equal, 0)).toBe(true)
  })

  test('no convention, a figure missing, a stroke as long as the rod: refused', () => {
    expect(code(expectedVerticalRunout({ ...GEOMETRY, convention: 'up' as typeof OUTER }))).toBe(
      'not-offered',
    )
    expect(code(expectedVerticalRunout({ ...GEOMETRY, pistonClearanceM: null }))).toBe('figure-missing')
    expect(code(expectedVerticalRunout({ ...GEOMETRY, crossheadClearanceM: -0.001 }))).toBe('figure-unsound')
    expect(code(expectedVerticalRunout({ ...GEOMETRY, strokeM: 70 * IN }))).toBe('stroke-longer-than-rod')
  })

  test('its uncertainty: 0.002 in on each clearance is 0.00018 in', () => {
    const u = {
      strokeM: 9 * IN,
      rodLengthM: 70 * IN,
      pistonClearanceU: 0.002 * IN,
      crossheadClearanceU: 0.002 * IN,
    }
    expect(got(expectedRunoutU(u)) / IN).toBeCloseTo(0.0001818, 6)
    expect(code(expectedRunoutU({ ...u, pistonClearanceU: null }))).toBe('figure-missing')
  })
})

const BEAM = { lengthM: 45 * IN, diameterM: 2.25 * IN, density: 7850, elasticityPa: 207e9 }

describe('sag', () => {
  test('steel 2.25 x 45 in: 0.0016 in', () => {
    expect(got(rodSag(BEAM)) / IN).toBeCloseTo(0.001594, 6)
  })
  test('second method: the curve integrated from the bending moment gives the same sag', () => {
    const { lengthM: L, diameterM: d, density, elasticityPa } = BEAM
    const w = (density * 9.80665 * Math.PI * d ** 2) / 4
    const stiffness = (elasticityPa * Math.PI * d ** 4) / 64
    const steps = 20_000
    const h = L / 2 / steps
    // Slope is nought in the middle; walk from there to the end, where the rod is held.
    let slope = 0
    let rise = 0
    for (let i = 0; i < steps; i += 1) {
      const x = L / 2 - (i + 0.5) * h
      const before = slope
      slope += (((w * x * (L - x)) / 2) * h) / stiffness
      rise += ((before + slope) / 2) * h
    }
    expect(got(rodSag(BEAM))).toBeCloseTo(rise, 10)
  })
  test('the handbook model near the packing: plus at the inner end, minus at the outer (p. 190)', () => {
    const halves = { strokeM: 9 * IN, lengthM: 70 * IN, sagM: 0.023 * IN }
    expect(got(sagRunoutTwoHalves({ ...halves, convention: OUTER })) / IN).toBeCloseTo(0.005914, 6)
    expect(got(sagRunoutTwoHalves({ ...halves, convention: INNER })) / IN).toBeCloseTo(-0.005914, 6)
  })
  test('bent beam: signs as p. 190 says, plus near the crosshead and minus near the packing read outward, nought in the middle', () => {
    const at = (place: number) =>
      got(sagRunoutBeam({ ...BEAM, strokeM: 9 * IN, touchesAtOuterM: place * IN, convention: INNER }))
    expect(at(0)).toBeGreaterThan(0)
    expect(at(36)).toBeLessThan(0)
    expect(at(18)).toBeCloseTo(0, 12)
    // Symmetric about the middle of the rod.
    expect(at(0)).toBeCloseTo(-at(36), 12)
  })
  test('the two models do not agree and are not forced to', () => {
    const halves = got(
      sagRunoutTwoHalves({ strokeM: 9 * IN, lengthM: 45 * IN, sagM: got(rodSag(BEAM)), convention: OUTER }),
    )
    const bent = got(sagRunoutBeam({ ...BEAM, strokeM: 9 * IN, touchesAtOuterM: 36 * IN, convention: OUTER }))
    expect(bent / halves).toBeGreaterThan(1.2)
  })
  test('stubby, off the rod, over half the rod, missing: refused', () => {
    expect(code(rodSag({ ...BEAM, diameterM: 5 * IN }))).toBe('rod-not-slender')
    expect(code(rodSag({ ...BEAM, density: null }))).toBe('figure-missing')
    const off = { ...BEAM, strokeM: 9 * IN, touchesAtOuterM: 40 * IN, convention: OUTER }
    expect(code(sagRunoutBeam(off))).toBe('indicator-off-the-rod')
    expect(code(sagRunoutBeam({ ...off, convention: 'up' as typeof OUTER }))).toBe('not-offered')
    const half = { strokeM: 40 * IN, lengthM: 70 * IN, sagM: 0.02 * IN, convention: OUTER }
    expect(code(sagRunoutTwoHalves(half))).toBe('stroke-over-half-rod')
    expect(code(sagRunoutTwoHalves({ ...half, sagM: Number.NaN }))).toBe('figure-unsound')
  })
})

const limit = (direction: string) =>
  sampleLimit({ characteristic: `runout-${direction}`, value: RUNOUT_PER_STROKE * 9 * IN })
const VERTICAL: RunoutReading = {
  direction: 'vertical',
  halfTurnM: -0.003 * IN,
  fullTurnM: 0,
  zeroReturnM: 0.0001 * IN,
  expected: expectedVerticalRunout(GEOMETRY),
  expectedU: 0.0002 * IN,
  expandedU: 0.0001 * IN,
  resolution: 0.0001 * IN,
  limit: limit('vertical'),
}
const HORIZONTAL: RunoutReading = {
  ...VERTICAL,
  direction: 'horizontal',
  halfTurnM: 0.0003 * IN,
  limit: limit('horizontal'),
}

describe('runout judged', () => {
  test('one reading of -0.0030 in is good up and down and beyond the limit sideways', () => {
    const vertical = judgeRunout(VERTICAL)
    expect(vertical.judgement.verdict).toBe('ACCEPT')
    expect((vertical.deviationM ?? 0) / IN).toBeCloseTo(0.000343, 6)
    expect(judgeRunout({ ...HORIZONTAL, halfTurnM: -0.003 * IN }).judgement.verdict).toBe('REWORK')
    expect(judgeRunout(HORIZONTAL).judgement.verdict).toBe('ACCEPT')
  })
  test('a vertical reading of nought is NOT good here, and a lost sign is beyond the limit', () => {
    expect(judgeRunout({ ...VERTICAL, halfTurnM: 0 }).judgement.verdict).toBe('REWORK')
    expect(judgeRunout({ ...VERTICAL, halfTurnM: 0.003 * IN }).judgement.verdict).toBe('REWORK')
  })
  test('the dial must come back to zero: else void, not averaged', () => {
    const back = judgeRunout({ ...VERTICAL, fullTurnM: 0.002 * IN })
    expect(back.judgement.verdict).toBe('HOLD')
    expect(back.judgement.reasons.join()).toContain('void')
    expect(back.deviationM).toBeNull()
    expect(judgeRunout({ ...VERTICAL, fullTurnM: -0.0001 * IN }).judgement.verdict).toBe('ACCEPT')
    for (const change of [{ fullTurnM: null }, { zeroReturnM: null }, { halfTurnM: Number.NaN }])
      expect(judgeRunout({ ...VERTICAL, ...change }).judgement.verdict).toBe('HOLD')
  })
  test('nothing reckoned, or a refusal, or no U of it: HOLD up and down', () => {
    const refused = expectedVerticalRunout({ ...GEOMETRY, strokeM: null })
    for (const change of [
      { expected: null },
      { expected: refused },
      { expected: ok(Number.NaN) },
      { expectedU: null },
    ])
      expect(judgeRunout({ ...VERTICAL, ...change }).judgement.verdict).toBe('HOLD')
    expect(judgeRunout({ ...HORIZONTAL, expected: null, expectedU: null }).judgement.verdict).toBe('ACCEPT')
    expect(judgeRunout({ ...VERTICAL, expectedU: -1 }).judgement.verdict).toBe('HOLD')
  })
  test('the limit of the other direction, or none, or no direction: HOLD', () => {
    expect(judgeRunout({ ...VERTICAL, limit: limit('horizontal') }).judgement.verdict).toBe('HOLD')
    expect(judgeRunout({ ...VERTICAL, limit: null }).judgement.verdict).toBe('HOLD')
    expect(judgeRunout({ ...VERTICAL, direction: 'up' as 'vertical' }).judgement.verdict).toBe('HOLD')
  })
  test('symmetric: as far above as below is the same word', () => {
    const expectedM = got(expectedVerticalRunout(GEOMETRY))
    fc.assert(
      fc.property(size(0, 0.004), (off) => {
        const word = (sign: number) =>
          judgeRunout({ ...VERTICAL, halfTurnM: expectedM + sign * off * IN }).judgement.verdict
        expect(word(1)).toBe(word(-1))
      }),
    )
  })
})
