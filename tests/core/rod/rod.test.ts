import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Result } from '../../../src/core/lib/result.ts'
import { riderWearFromDrop } from '../../../src/core/rod/rod-drop.ts'
import { type RodReading, rodForm } from '../../../src/core/rod/rod-form.ts'
import { judgeRod, type RodCharacteristic, type RodJudgeInput } from '../../../src/core/rod/rod-judge.ts'
import { ROD_LIMITS, type UNDERSIZE_RULES, undersizeAllowed } from '../../../src/core/rod/rod-rules.ts'
import { sampleLimit } from '../metrology/sample-limit.ts'

const IN = 0.0254
const PSI = 6894.757293168
const code = (result: Result<unknown>) => (result.ok ? 'taken' : result.error.code)
function got<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}

function readings(vertical: readonly number[], horizontal: readonly number[]): RodReading[] {
  const on = (axis: string, list: readonly number[]) =>
    list.map((size, i) => ({ station: `s${i + 1}`, at: i, axis, valueM: size * IN }))
  return [...on('vertical', vertical), ...on('horizontal', horizontal)]
}
const ROD = readings([2.9985, 2.9962, 2.9984], [2.9986, 2.9965, 2.9985])
const NOMINAL = { nominalM: 3 * IN, readingU: 0.0001 * IN }

describe('form of a rod', () => {
  test('undersize from the greatest size of the drawing, roundness at a station, taper on an axis', () => {
    const form = got(rodForm(ROD, NOMINAL))
    expect(form.undersizeM / IN).toBeCloseTo(0.0038, 10)
    expect(form.outOfRoundM / IN).toBeCloseTo(0.0003, 10)
    expect(form.taperM / IN).toBeCloseTo(0.0023, 10)
    expect(form.smallest).toMatchObject({ station: 's2', axis: 'vertical' })
  })
  test('not whole, larger than nominal, no nominal: refused, and in words about a rod', () => {
    const short = rodForm(ROD.slice(0, 3), NOMINAL)
    expect(code(short)).toBe('rod-too-few')
    expect(short.ok ? '' : short.error.say).toMatch(/\brod\b/)
    expect(short.ok ? '' : short.error.say).not.toMatch(/\bbore\b/)
    expect(code(rodForm(ROD, { ...NOMINAL, nominalM: 2.998 * IN }))).toBe('rod-larger-than-nominal')
    expect(code(rodForm(ROD, { ...NOMINAL, nominalM: null }))).toBe('figure-missing')
    expect(code(rodForm(ROD, { ...NOMINAL, readingU: -1 }))).toBe('figure-unsound')
  })
  test('symmetric: turning the rod a quarter or end for end changes nothing', () => {
    const sizes = fc.array(fc.integer({ min: 29_950, max: 30_000 }), { minLength: 3, maxLength: 3 })
    fc.assert(
      fc.property(sizes, sizes, (v, h) => {
        const inches = (list: readonly number[]) => list.map((x) => x / 10_000)
        const numbers = (grid: RodReading[]) => {
          const { outOfRoundM, taperM, undersizeM } = got(rodForm(grid, NOMINAL))
          return [outOfRoundM, taperM, undersizeM].map((x) => Math.round(x * 1e12))
        }
        const as = numbers(readings(inches(v), inches(h)))
        expect(numbers(readings(inches(h), inches(v)))).toEqual(as)
        expect(numbers(readings(inches([...v].reverse()), inches([...h].reverse())))).toEqual(as)
      }),
    )
  })
})

// Bloch & Hoefner 1996, p. 186, 290-292.
describe('undersize rules', () => {
  const allowed = (rule: keyof typeof UNDERSIZE_RULES, psi?: number, diameterIn = 3) =>
    undersizeAllowed({ diameterM: diameterIn * IN, rule, pressurePa: psi === undefined ? null : psi * PSI })
  const band = (result: ReturnType<typeof allowed>) => [got(result).leastM / IN, got(result).mostM / IN]

  test('the contradictions stay apart: 0.005 to reuse, 0.002 for standard packing, 0.003 above 1000 psi', () => {
    expect(band(allowed('reuse-p290'))[0]).toBeCloseTo(0.005, 12)
    expect(band(allowed('standard-packing-p186'))[0]).toBeCloseTo(0.002, 12)
    expect(band(allowed('regrind-above-1000-psi-p292', 1500))[0]).toBeCloseTo(0.003, 12)
    const [least, most] = band(allowed('regrind-medium-pressure-p292', 400))
    expect([least, most]).toEqual([expect.closeTo(0.006, 12), expect.closeTo(0.009, 12)])
  })
  test('a rule printed for one pressure refuses another, and an unknown pressure', () => {
    expect(code(allowed('regrind-above-1000-psi-p292', 400))).toBe('pressure-outside-rule')
    expect(code(allowed('regrind-medium-pressure-p292', 1500))).toBe('pressure-outside-rule')
    expect(code(allowed('regrind-125-psi-air-p292', 400))).toBe('pressure-outside-rule')
    expect(code(allowed('regrind-medium-pressure-p292'))).toBe('figure-missing')
    expect(code(allowed('never' as 'reuse-p290'))).toBe('not-offered')
    expect(code(allowed('reuse-p290', 0, Number.NaN))).toBe('figure-unsound')
  })
})

describe('a rod judged', () => {
  const limit = (characteristic: RodCharacteristic, inches: number) =>
    sampleLimit({ characteristic, value: inches * IN })
  const input: RodJudgeInput = {
    form: rodForm(ROD, NOMINAL),
    straightnessM: 0.0005 * IN,
    limits: {
      'rod-out-of-round': limit('rod-out-of-round', ROD_LIMITS['rod-out-of-round'].valueM / IN),
      'rod-taper': limit('rod-taper', 0.003),
      'rod-undersize': limit('rod-undersize', 0.005),
      'rod-straightness': limit('rod-straightness', ROD_LIMITS['rod-straightness'].valueM / IN),
    },
    readingU: 0.0001 * IN,
    differenceU: 0.00015 * IN,
    straightnessU: 0.0002 * IN,
    resolutionM: 0.0001 * IN,
    straightnessResolutionM: 0.0001 * IN,
  }
  test('whole and inside: ACCEPT; bent by 0.0013 in: beyond', () => {
    expect(judgeRod(input).verdict).toBe('ACCEPT')
    expect(judgeRod({ ...input, straightnessM: 0.0013 * IN }).judged['rod-straightness'].verdict).toBe(
      'REWORK',
    )
  })
  test('anything missing is HOLD: a limit, the indicator reading, U, the form', () => {
    expect(judgeRod({ ...input, limits: {} }).verdict).toBe('HOLD')
    expect(judgeRod({ ...input, straightnessM: null }).verdict).toBe('HOLD')
    expect(judgeRod({ ...input, readingU: null }).verdict).toBe('HOLD')
    const noForm = judgeRod({ ...input, form: rodForm([], NOMINAL) })
    expect(noForm.judged['rod-taper'].verdict).toBe('HOLD')
    expect(noForm.judged['rod-straightness'].verdict).toBe('ACCEPT')
    const swapped = { ...input.limits, 'rod-taper': limit('rod-undersize', 0.005) }
    expect(judgeRod({ ...input, limits: swapped }).judged['rod-taper'].verdict).toBe('HOLD')
  })
})

// A trade article, first quarter 2004 (stored copy): wear = drop (L1 + L2) / L1.
describe('rod drop', () => {
  const drop = { dropM: 0.01 * IN, crossheadToProbeM: 40 * IN, probeToPistonM: 20 * IN }
  test('0.010 in at 40 of 60 in: 0.015 in', () => {
    expect(got(riderWearFromDrop(drop)) / IN).toBeCloseTo(0.015, 12)
  })
  test('second method: a straight rod from the pin through the probe reaches the piston', () => {
    const far = fc.double({ min: 0.1, max: 3, noNaN: true })
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.01, noNaN: true }), far, far, (dropM, near, rest) => {
        const wear = got(riderWearFromDrop({ dropM, crossheadToProbeM: near, probeToPistonM: rest }))
        const slope = wear / (near + rest)
        expect(slope * near).toBeCloseTo(dropM, 12)
        expect(wear).toBeGreaterThanOrEqual(dropM - 1e-15)
      }),
    )
  })
  test('a rise, a missing length: refused', () => {
    expect(code(riderWearFromDrop({ ...drop, dropM: -0.001 }))).toBe('figure-unsound')
    expect(code(riderWearFromDrop({ ...drop, crossheadToProbeM: 0 }))).toBe('figure-unsound')
    expect(code(riderWearFromDrop({ ...drop, probeToPistonM: undefined }))).toBe('figure-missing')
  })
})
