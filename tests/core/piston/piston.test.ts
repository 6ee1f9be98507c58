import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Result } from '../../../src/core/lib/result.ts'
import { METAL_DENSITY, type PistonWeighing, weightFact } from '../../../src/core/piston/mass-density.ts'
import {
  type OversizePistonColumn,
  otherOversizePistonTriggers,
  oversizePistonTrigger,
} from '../../../src/core/piston/oversize-piston.ts'
import {
  judgePistonClearance,
  measuredClearance,
  type RunningClearanceInput,
  runningClearance,
} from '../../../src/core/piston/running-clearance.ts'
import { factFromWeight, type PistonFact, pistonKind } from '../../../src/core/piston/solid-or-hollow.ts'
import { sampleLimit } from '../metrology/sample-limit.ts'

const IN = 0.0254
const LB = 0.45359237
const code = (result: Result<unknown>) => (result.ok ? 'taken' : result.error.code)
function got<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}

// Bloch & Hoefner 1996, p. 227, 268 and table 4-3 p. 269.
describe('running clearance', () => {
  const table = (boreIn: number, onEdge?: RunningClearanceInput['onEdge']) =>
    runningClearance({ boreM: boreIn * IN, material: 'iron', rule: 'rider-or-oil-free', onEdge })

  test('with a rider: 6 in 0.156, 10 in 0.188, 16 in 0.219', () => {
    for (const [bore, inches] of [
      [6, 0.156],
      [10, 0.188],
      [16, 0.219],
    ] as const)
      expect(got(table(bore)).clearanceM / IN).toBeCloseTo(inches, 12)
  })

  test('8 in stands in two rows: refused until a row is named, and never the mean of both', () => {
    expect(code(table(8))).toBe('bore-on-edge')
    expect(got(table(8, 'row-below')).clearanceM / IN).toBeCloseTo(0.156, 12)
    expect(got(table(8, 'row-above')).clearanceM / IN).toBeCloseTo(0.188, 12)
    expect(got(table(5, 'row-below')).clearanceM / IN).toBeCloseTo(0.125, 12)
    expect(got(table(12, 'row-above')).clearanceM / IN).toBeCloseTo(0.219, 12)
  })

  test('below 5 in the row has no legible edge, above 16 in there is none: refused', () => {
    expect(code(table(4.5))).toBe('bore-not-in-table')
    expect(code(table(4.5, 'row-below'))).toBe('bore-not-in-table')
    expect(code(table(16.1))).toBe('bore-not-in-table')
    expect(code(runningClearance({ boreM: null, material: 'iron', rule: 'rider-or-oil-free' }))).toBe(
      'figure-missing',
    )
    const steel = { boreM: 0.25, material: 'steel' as 'iron', rule: 'lubricated-no-rider' as const }
    expect(code(runningClearance(steel))).toBe('not-offered')
  })

  test('measured: bore less piston; a piston larger than the bore is a wrong size', () => {
    const sizes = { smallestBoreM: 9.502 * IN, largestPistonM: 9.49 * IN }
    expect(got(measuredClearance(sizes)) / IN).toBeCloseTo(0.012, 10)
    expect(code(measuredClearance({ ...sizes, largestPistonM: 9.503 * IN }))).toBe('piston-larger-than-bore')
    expect(code(measuredClearance({ ...sizes, largestPistonM: null }))).toBe('figure-missing')
  })

  test('judged on both sides', () => {
    const own = { characteristic: 'piston-clearance' }
    const least = sampleLimit({ ...own, bound: 'at-least', value: 0.01 * IN })
    const most = sampleLimit({ ...own, value: 0.03 * IN, beyond: 'REPLACE' })
    const word = (inches: number, most_: typeof most | null = most) =>
      judgePistonClearance({
        value: inches * IN,
        expandedU: 0.001 * IN,
        resolution: 0.001 * IN,
        least,
        most: most_,
      }).verdict
    expect([0.005, 0.02, 0.04].map((x) => word(x))).toEqual(['REWORK', 'ACCEPT', 'REPLACE'])
    expect(word(0.02, null)).toBe('HOLD')
  })
})

// Bloch & Hoefner 1996, table 4-6 p. 278.
describe('oversize piston', () => {
  const at = (nominalIn: number, column: OversizePistonColumn) =>
    oversizePistonTrigger({ nominalM: nominalIn * IN, column })
  test('10 in: iron 0.125, aluminium 0.085, PTFE rings and riders 0.050', () => {
    expect(got(at(10, 'iron-on-bore')) / IN).toBeCloseTo(0.125, 12)
    expect(got(at(10, 'aluminium-on-bore')) / IN).toBeCloseTo(0.085, 12)
    expect(got(at(10, 'non-metallic-rings-and-riders')) / IN).toBeCloseTo(0.05, 12)
  })
  test('an empty place in the table is refused, not filled from beside it', () => {
    expect(code(at(30, 'non-metallic-rings-and-riders'))).toBe('table-is-empty')
    expect(got(at(30, 'iron-on-bore')) / IN).toBeCloseTo(0.125, 12)
    expect(code(at(43, 'iron-on-bore'))).toBe('bore-not-in-table')
    expect(code(at(10, 'bronze' as 'iron-on-bore'))).toBe('not-offered')
  })
  test('the other triggers stand apart', () => {
    const found = (gapIn: number | null, runoutCorrectable: boolean) =>
      otherOversizePistonTriggers({ rodToFlangeM: gapIn === null ? null : gapIn * IN, runoutCorrectable })
    expect(got(found(0.015, true))).toEqual([])
    expect(got(found(0.014, false))).toHaveLength(2)
    expect(code(found(null, true))).toBe('figure-missing')
  })
})

const WEIGHING: PistonWeighing = {
  weighedKg: 75 * LB,
  rodKg: 0,
  diameterM: 10 * IN,
  lengthM: 6 * IN,
  rodHoleM: 0,
  groovesM3: 0,
  metal: 'grey-iron',
  ratioU: 0.05,
}
const weigh = (change: Partial<PistonWeighing>) => weightFact({ ...WEIGHING, ...change })

// Density of grey iron 0.260 lb/in3: Elements of Metric Gear Technology, table 18-10.
describe('weight of a piston', () => {
  test('10 x 6 in of grey iron: solid 122.5 lb; 75 lb is 0.159 lb/in3, towards hollow', () => {
    const fact = got(weigh({}))
    expect(fact.solidKg / LB).toBeCloseTo(122.5, 1)
    expect((fact.meanDensity * IN ** 3) / LB).toBeCloseTo(0.159, 3)
    expect(fact.says).toBe('hollow')
  })
  test('122 lb points to solid, and says how large a cavity could still hide', () => {
    const fact = got(weigh({ weighedKg: 122 * LB }))
    expect(fact.says).toBe('solid')
    expect(fact.hiddenCavityM3 / (Math.PI / 4) / (10 * IN) ** 2 / (6 * IN)).toBeCloseTo(0.0542, 3)
  })
  test('rod and hole: the rod is taken off before, the hole out of the volume', () => {
    const bare = got(weigh({ rodHoleM: 2 * IN }))
    const withRod = got(weigh({ rodHoleM: 2 * IN, weighedKg: 145 * LB, rodKg: 70 * LB }))
    expect(withRod.ratio).toBeCloseTo(bare.ratio, 12)
    expect(bare.ratio).toBeGreaterThan(got(weigh({})).ratio)
  })
  test('missing, unknown metal, rod heavier than the whole, denser than its metal: no fact', () => {
    for (const key of [
      'weighedKg',
      'rodKg',
      'diameterM',
      'lengthM',
      'rodHoleM',
      'groovesM3',
      'ratioU',
    ] as const) {
      expect(code(weigh({ [key]: null }))).toBe('figure-missing')
      expect(code(weigh({ [key]: Number.NaN }))).toBe('figure-unsound')
      expect(code(weigh({ [key]: -1 }))).toBe('figure-unsound')
    }
    expect(code(weigh({ metal: null }))).toBe('metal-not-known')
    expect(code(weigh({ metal: 'toString' as 'grey-iron' }))).toBe('metal-not-known')
    expect(code(weigh({ rodKg: 80 * LB }))).toBe('rod-heavier-than-whole')
    expect(code(weigh({ weighedKg: 140 * LB }))).toBe('denser-than-its-metal')
    expect(code(weigh({ metal: 'wrought-aluminium' }))).toBe('denser-than-its-metal')
    expect(code(weigh({ rodHoleM: 11 * IN }))).toBe('no-volume')
    expect(code(weigh({ ratioU: 1 }))).toBe('weight-says-nothing')
  })
  test('second method: a cavity cut out of a solid is the cavity the ratio gives back; heavier is never more hollow', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.9, noNaN: true }), (hollowShare) => {
        const volume = (Math.PI / 4) * (10 * IN) ** 2 * 6 * IN
        const weighedKg = METAL_DENSITY['grey-iron'] * volume * (1 - hollowShare)
        const fact = got(weigh({ weighedKg, ratioU: 0 }))
        expect(fact.hiddenCavityM3).toBeCloseTo(hollowShare * volume, 12)
        expect(got(weigh({ weighedKg: weighedKg * 0.99, ratioU: 0 })).ratio).toBeLessThan(fact.ratio)
      }),
    )
  })
})

const says = (...facts: [PistonFact['from'], PistonFact['says']][]) =>
  pistonKind(facts.map(([from, said]) => ({ from, says: said })))

describe('solid or hollow', () => {
  test('nothing known, or one fact: hollow', () => {
    expect(says().handleAs).toBe('hollow')
    expect(says(['weight', 'solid']).handleAs).toBe('hollow')
  })
  test('record, tag and drawing copy one another: together they are one fact', () => {
    const paper = says(['record', 'solid'], ['tag', 'solid'], ['drawing', 'solid'])
    expect(paper).toMatchObject({ handleAs: 'hollow', towardsSolid: ['record, tag or drawing'] })
    expect(says(['record', 'solid'], ['weight', 'solid']).handleAs).toBe('solid')
  })
  test('one fact towards hollow settles it, and the contradiction is told', () => {
    const found = says(['record', 'solid'], ['ultrasonic', 'solid'], ['weight', 'hollow'])
    expect(found.handleAs).toBe('hollow')
    expect(found.open.join(' ')).toContain('hollow stands')
    const split = says(['record', 'solid'], ['tag', 'hollow'], ['weight', 'solid'], ['ultrasonic', 'solid'])
    expect(split.handleAs).toBe('hollow')
    expect(split.open.join(' ')).toContain('both solid and hollow')
  })
  test('no plugs or vents seen is no fact towards solid; seen ones say hollow', () => {
    expect(says(['plugs-or-vents', 'solid'], ['weight', 'solid']).handleAs).toBe('hollow')
    expect(says(['plugs-or-vents', 'hollow']).towardsHollow).toEqual(['plugs-or-vents'])
  })
  test('a weighing that was refused is an unknown fact, with its reason kept', () => {
    const { fact, hold } = factFromWeight(weigh({ metal: null }))
    expect(fact).toEqual({ from: 'weight', says: 'unknown' })
    expect(hold?.code).toBe('metal-not-known')
    expect(says(['weight', 'unknown'], ['record', 'solid']).handleAs).toBe('hollow')
    expect(factFromWeight(weigh({})).fact.says).toBe('hollow')
  })
  test('symmetric and safe: order never matters, and adding a fact towards hollow never makes it solid', () => {
    const from = fc.constantFrom<PistonFact['from']>(
      'record',
      'tag',
      'weight',
      'sounding',
      'ultrasonic',
      'plugs-or-vents',
    )
    const fact = fc.record({ from, says: fc.constantFrom<PistonFact['says']>('solid', 'hollow', 'unknown') })
    fc.assert(
      fc.property(fc.array(fact, { maxLength: 8 }), from, (facts, where) => {
        expect(pistonKind([...facts].reverse()).handleAs).toBe(pistonKind(facts).handleAs)
        expect(pistonKind([...facts, { from: where, says: 'hollow' }]).handleAs).toBe('hollow')
      }),
    )
  })
})
