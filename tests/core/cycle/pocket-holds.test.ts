import { describe, expect, test } from 'vitest'
import { completeMachine } from '../../../src/core/cycle/machine-holds.ts'
import type { CylinderModel, MachineModel, MachineRecord } from '../../../src/core/cycle/machine-model.ts'
import { operate } from '../../../src/core/cycle/operate.ts'
import { pocketCurve } from '../../../src/core/cycle/pocket-curve.ts'
import { type PocketSetting, pocketSetting } from '../../../src/core/cycle/pocket-setting.ts'
import { checkSetting } from '../../../src/core/cycle/setting-checks.ts'
import { end, FIRST_HEAD, get, idealSingle, si, twoStage, WHEEL } from './sample-machine.ts'

const reasons = (setting: PocketSetting) => (setting.is === 'hold' ? setting.reasons.join(' ') : setting.is)

/** The sample with one leaf changed, by its path. */
function changed(path: readonly (string | number)[], value: unknown): MachineRecord {
  const copy = structuredClone(twoStage()) as unknown
  const last = path.at(-1) as string
  const holder = path.slice(0, -1).reduce((at, key) => (at as Record<string, unknown>)[key], copy)
  ;(holder as Record<string, unknown>)[last] = value
  return copy as MachineRecord
}

/** Every leaf of the sample that a number, word or answer stands at. */
function leaves(value: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [path]
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, [...path, key]))
}

/** Left out, these change the sense and are no gap: a limit not given (then warned), a wheel's step, a stage's name. */
const OPTIONAL = /pinLimitN|stages,\d,name/

describe('what is missing', () => {
  const all = leaves(twoStage()).filter((path) => !OPTIONAL.test(path.join(',')))

  test('the complete record has no gap', () => {
    expect(completeMachine(twoStage()).ok).toBe(true)
    expect(all.length).toBeGreaterThan(60)
  })

  test.each(all.map((path) => [path.join(' '), path] as const))(
    '%s: HOLD, for missing and for NaN',
    (_, path) => {
      for (const bad of [undefined, null, Number.NaN, Number.POSITIVE_INFINITY])
        expect(pocketSetting(changed(path, bad), FIRST_HEAD).is).toBe('hold')
    },
  )

  test('the stage is named, and the mass says why a gas-only figure is no check', () => {
    const noK = pocketSetting(changed(['stages', '1', 'k'], undefined), FIRST_HEAD)
    expect(reasons(noK)).toContain('Stage 2')
    const noMass = changed(['stages', '1', 'cylinders', '0', 'reciprocatingKg'], null)
    expect(reasons(pocketSetting(noMass, FIRST_HEAD))).toMatch(
      /Stage 2, cylinder 2: .*mass.*screen.* missing/,
    )
    const curve = pocketCurve(noMass, FIRST_HEAD, 10)
    expect(curve.ok ? '' : curve.error.code).toBe('hold')
  })

  test('RG-27 (invented) as it stands on record, without clearances and masses, is HOLD for both stages', () => {
    const bare = (boreM: number) => ({ cylinders: [{ name: 'x', boreM, rodM: 0.076 }], k: 1.24 })
    const said = reasons(pocketSetting({ strokeM: 0.28, stages: [bare(0.381), bare(0.235)] }, FIRST_HEAD))
    for (const words of [
      'Stage 1, cylinder x, head end: the clearance',
      'Stage 2, cylinder x, crank end: the clearance',
    ])
      expect(said).toContain(words)
    expect(reasons(pocketSetting({}, FIRST_HEAD))).toContain('No stage')
  })
})

describe('what does not fit', () => {
  test('computed and measured load apart by more than the site figure: HOLD; on the figure: not', () => {
    const computed = get(operate(twoStage())).driverW
    const measured = (part: number) => twoStage({ measuredLoadW: computed / part, agreement: 0.05 })
    for (const part of [0.949, 1.051])
      expect(reasons(pocketSetting(measured(part), FIRST_HEAD))).toContain('apart')
    for (const part of [0.951, 1.049]) expect(pocketSetting(measured(part), FIRST_HEAD).is).not.toBe('hold')
  })

  test('a pocket that is not there, is fixed, idle or of two kinds', () => {
    const cases: [MachineModel, 'head' | 'crank' | 'both'][] = [
      [twoStage(), 'crank'],
      [firstCylinder({ head: end(0.14, { pocket: { is: 'fixed', volumeM3: 1e-4 } }) }), 'head'],
      [firstCylinder({ head: end(0.14, { ...WHEEL, acts: false }) }), 'head'],
      [
        firstCylinder({ crank: end(0.15, { pocket: { is: 'open-or-shut', volumeM3: 1e-4 }, opening: 0 }) }),
        'both',
      ],
    ]
    for (const [machine, ends] of cases) {
      const setting = pocketSetting({ ...machine, agreement: 0.5 }, { ...FIRST_HEAD, ends })
      expect(setting.is).toBe('hold')
    }
    expect(reasons(pocketSetting(twoStage(), { stage: 3, cylinder: 1, ends: 'head' }))).toContain(
      'no such stage',
    )
  })
})

function firstCylinder(more: Partial<CylinderModel>): MachineModel {
  const machine = twoStage()
  const stages = machine.stages.map((stage, s) => ({
    ...stage,
    cylinders: stage.cylinders.map((one) => (s === 0 ? { ...one, ...more } : one)),
  }))
  return { ...machine, stages }
}

describe('every cylinder is checked at the setting', () => {
  const faultsOf = (machine: MachineModel) =>
    get(checkSetting(machine, get(operate(machine)))).faults.map((fault) => `${fault.grade} ${fault.about}`)
  const settingOf = (machine: MachineModel) => {
    const setting = pocketSetting(machine, FIRST_HEAD)
    if (setting.is !== 'opening') throw new Error(reasons(setting))
    return setting
  }

  test('all within: nothing is said and the setting is clear', () => {
    expect(faultsOf(twoStage())).toEqual([])
    expect(settingOf(twoStage()).clear).toBe(true)
  })

  test('rod load in compression and in tension, each against its own limit', () => {
    expect(faultsOf(firstCylinder({ compressionLimitN: si(8000, 'lbf') }))).toEqual(['hold rod-load'])
    expect(faultsOf(firstCylinder({ tensionLimitN: si(7000, 'lbf') }))).toEqual(['hold rod-load'])
    expect(settingOf(firstCylinder({ compressionLimitN: si(8000, 'lbf') })).clear).toBe(false)
  })

  test('gas plus inertia at the pin: against its limit, or said to be unjudged', () => {
    expect(faultsOf(firstCylinder({ pinLimitN: si(5000, 'lbf') }))).toEqual(['hold pin-load'])
    const machine = twoStage()
    const unlimited = ({ pinLimitN: _, ...rest }: CylinderModel): CylinderModel => rest
    const stages = machine.stages.map((stage) => ({ ...stage, cylinders: stage.cylinders.map(unlimited) }))
    expect(faultsOf({ ...machine, stages })).toEqual(['warn pin-load', 'warn pin-load'])
  })

  test('lost reversal and discharge temperature', () => {
    const strict = { reversal: { leastAngle: Math.PI, leastShare: 0.9 } }
    expect(faultsOf(twoStage(strict))).toEqual(['hold reversal', 'hold reversal'])
    expect(settingOf(twoStage(strict)).clear).toBe(false)
    const machine = twoStage()
    const stages = machine.stages.map((stage) => ({ ...stage, temperatureLimitK: si(220, 'degF') }))
    expect(faultsOf({ ...machine, stages })).toEqual(['hold discharge-temperature'])
  })

  test('low volumetric efficiency warns at the end that draws little, and says so when it draws nothing', () => {
    expect(faultsOf(twoStage({ leastVe: 0.9 }))).toEqual(Array(4).fill('warn volumetric-efficiency'))
    const machine = firstCylinder({ head: end(3) })
    const faults = get(checkSetting(machine, get(operate(machine)))).faults
    expect(faults.map((fault) => fault.say).join(' ')).toContain('head end draws nothing')
  })

  test('valve losses in the cylinder raise the rod load', () => {
    const load = (suctionDrop: number, dischargeRise: number) => {
      const machine = idealSingle()
      const stages = machine.stages.map((stage) => ({ ...stage, suctionDrop, dischargeRise }))
      const at = { ...machine, stages }
      return get(checkSetting(at, get(operate(at)))).cylinders[0]?.gas.compressionN ?? 0
    }
    const [none, suction, discharge] = [load(0, 0), load(0.03, 0), load(0, 0.05)]
    // 3 % of 74.7 psi on 66.906 in2, 5 % of 199.7 psi on 70.882 in2.
    expect((suction - none) / si(1, 'lbf')).toBeCloseTo(0.03 * 74.7 * 66.906, 1)
    expect((discharge - none) / si(1, 'lbf')).toBeCloseTo(0.05 * 199.7 * 70.882, 1)
  })
})
