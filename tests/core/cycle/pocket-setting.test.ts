import { describe, expect, test } from 'vitest'
import type { MachineModel } from '../../../src/core/cycle/machine-model.ts'
import { operate } from '../../../src/core/cycle/operate.ts'
import { type PocketChoice, withOpening } from '../../../src/core/cycle/pocket-choice.ts'
import { frictionOf, pocketCurve } from '../../../src/core/cycle/pocket-curve.ts'
import { type PocketSetting, pocketSetting } from '../../../src/core/cycle/pocket-setting.ts'
import { end, FIRST_HEAD, get, idealSingle, SECOND_HEAD, si, twoStage, WHEEL } from './sample-machine.ts'

type Opened = Extract<PocketSetting, { is: 'opening' }>

function opened(machine: MachineModel, choice: PocketChoice): Opened {
  const setting = pocketSetting(machine, choice)
  if (setting.is !== 'opening')
    throw new Error(`expected an opening: ${JSON.stringify(setting).slice(0, 300)}`)
  return setting
}

/** Load at an opening, straight from operate. */
function loadAt(machine: MachineModel, choice: PocketChoice, opening: number, correction: number): number {
  const frictionW = frictionOf(machine, get(operate(machine)))
  return get(operate(withOpening(machine, choice, opening), frictionW)).driverW * correction
}

const shares = (machine: MachineModel, choice: PocketChoice) => {
  const points = get(pocketCurve(machine, choice, 20)).map(({ point }) => {
    if (point === null) throw new Error('a point without balance')
    return point
  })
  const [shut] = points
  return points.map((point) => ({
    capacity: point.molPerS / (shut?.molPerS ?? 1),
    load: point.driverW / (shut?.driverW ?? 1),
  }))
}

describe('the curve', () => {
  test('one stage, ideal, unchanged pressures, friction in proportion: load falls exactly as capacity', () => {
    for (const { capacity, load } of shares(idealSingle(), FIRST_HEAD)) expect(load).toBeCloseTo(capacity, 12)
  })

  test('two stages: the pressure between them moves, and load does not fall as capacity falls', () => {
    const curve = shares(twoStage({ veForm: 'ideal' }), FIRST_HEAD)
    const open = curve.at(-1)
    expect(open?.capacity).toBeLessThan(0.9)
    expect(Math.abs((open?.load ?? 0) - (open?.capacity ?? 0))).toBeGreaterThan(0.003)
    const at = (opening: number) => get(operate(withOpening(twoStage(), FIRST_HEAD, opening))).stages[0]
    expect(at(1)?.dischargePa).toBeLessThan((at(0)?.dischargePa ?? 0) * 0.95)
  })

  test('friction that stays makes the load fall less than capacity', () => {
    for (const { capacity, load } of shares(idealSingle({ friction: 'constant' }), FIRST_HEAD).slice(1))
      expect(load).toBeGreaterThan(capacity)
  })

  test('capacity and load fall all the way as a first-stage pocket opens', () => {
    for (const machine of [idealSingle(), twoStage(), twoStage({ friction: 'constant' })]) {
      const curve = shares(machine, FIRST_HEAD)
      for (const [i, { capacity, load }] of curve.slice(1).entries()) {
        expect(capacity).toBeLessThan(curve[i]?.capacity ?? 0)
        expect(load).toBeLessThan(curve[i]?.load ?? 0)
      }
    }
  })

  test('a second-stage pocket raises the pressure between the stages, and sheds less for the same volume', () => {
    const at = (opening: number) => get(operate(withOpening(twoStage(), SECOND_HEAD, opening)))
    const [shut, open] = [at(0), at(1)]
    expect(open.stages[0]?.dischargePa).toBeGreaterThan((shut.stages[0]?.dischargePa ?? 0) * 1.05)
    expect(open.stages[0]?.dischargeK).toBeGreaterThan(shut.stages[0]?.dischargeK ?? 0)
    const first = get(operate(withOpening(twoStage(), FIRST_HEAD, 1)))
    expect(open.driverW).toBeGreaterThan(first.driverW)
  })
})

describe('the solver', () => {
  test('substituted back: the load there is the target, and flow balances through both stages', () => {
    const machine = twoStage()
    const { found, targetW, correction } = opened(machine, FIRST_HEAD)
    expect(targetW).toBeCloseTo(si(250, 'hp') * 0.95, 6)
    expect(loadAt(machine, FIRST_HEAD, found.opening, correction) / targetW).toBeCloseTo(1, 9)
    expect(loadAt(machine, FIRST_HEAD, found.opening, correction)).toBeLessThanOrEqual(targetW)
    expect(loadAt(machine, FIRST_HEAD, found.opening * 0.999, correction)).toBeGreaterThan(targetW)
    const [first, second] = found.point.stages
    expect((second?.molPerS ?? 0) / (first?.molPerS ?? 1)).toBeCloseTo(1, 10)
    expect((second?.dischargePa ?? 0) / machine.dischargePa).toBeCloseTo(1, 10)
  })

  test.each([
    ['one stage', idealSingle(), FIRST_HEAD],
    ['two stages, first head end', twoStage(), FIRST_HEAD],
    ['friction constant', twoStage({ friction: 'constant' }), FIRST_HEAD],
  ] as const)('second method: a search of 500 places agrees, %s', (_, machine, choice) => {
    const { found, targetW, correction } = opened(machine, choice)
    const places = Array.from({ length: 501 }, (_unused, i) => i / 500)
    const first = places.find((place) => loadAt(machine, choice, place, correction) <= targetW)
    expect(first).toBeDefined()
    expect((first ?? 0) - found.opening).toBeGreaterThanOrEqual(-1e-9)
    expect((first ?? 0) - found.opening).toBeLessThanOrEqual(1 / 500)
  })

  test('a higher measured load raises every computed one, and asks for more opening; a lower one gives nothing', () => {
    const level = get(operate(twoStage())).driverW
    const [low, same, high] = [0.97, 1, 1.03].map((part) =>
      opened(twoStage({ measuredLoadW: level * part }), FIRST_HEAD),
    )
    expect(high?.found.opening).toBeGreaterThan(same?.found.opening ?? 1)
    expect(low?.found.opening).toBe(same?.found.opening)
    expect(high?.correction).toBeCloseTo(1.03, 12)
  })

  test('both ends share the work, so each is opened less', () => {
    const machine = idealSingle()
    const [first] = machine.stages
    const cylinders = (first?.cylinders ?? []).map((one) => ({ ...one, crank: end(0.15, WHEEL) }))
    const both = { ...machine, stages: [{ ...(first as MachineModel['stages'][number]), cylinders }] }
    const one = opened(both, FIRST_HEAD).found.opening
    const two = opened(both, { ...FIRST_HEAD, ends: 'both' }).found.opening
    // Each in3 takes the same gas at either end, so the two together need half the travel.
    expect(two).toBeCloseTo(one / 2, 9)
  })

  test('a wheel set in whole steps goes to the first step that holds', () => {
    const exact = opened(idealSingle(), FIRST_HEAD).found.opening
    const machine = idealSingle()
    const stepped = stepTurns(machine, 5)
    const { found, targetW } = opened(stepped, FIRST_HEAD)
    expect(found.opening * 20).toBeCloseTo(Math.ceil(exact * 20), 9)
    expect(found.loadW).toBeLessThanOrEqual(targetW)
  })

  test('open or shut: there is no place between', () => {
    const { found } = opened(withPocket(idealSingle(), si(190, 'in3')), FIRST_HEAD)
    expect(found.opening).toBe(1)
    const small = pocketSetting(withPocket(idealSingle(), si(180, 'in3')), FIRST_HEAD)
    expect(small.is).toBe('no-opening')
  })

  test('already under the target: shut is enough', () => {
    const setting = pocketSetting(twoStage({ driverRatingW: si(300, 'hp') }), FIRST_HEAD)
    expect(setting).toMatchObject({ is: 'shut-is-enough', found: { opening: 0 } })
  })

  test('no opening does: says so, how much is short, and what is left', () => {
    const machine = twoStage({ driverRatingW: si(150, 'hp') })
    const setting = pocketSetting(machine, FIRST_HEAD)
    if (setting.is !== 'no-opening') throw new Error(setting.is)
    expect(setting.best.opening).toBe(1)
    expect(setting.shortW).toBeCloseTo(setting.best.loadW - si(150, 'hp') * 0.95, 6)
    expect(setting.shortW).toBeGreaterThan(0)
    expect(setting.left.length).toBeGreaterThan(2)
    expect(pocketSetting(twoStage({ driverRatingW: si(230, 'hp') }), SECOND_HEAD).is).toBe('no-opening')
  })
})

function withPocket(machine: MachineModel, volumeM3: number): MachineModel {
  return mapFirstHead(machine, { pocket: { is: 'open-or-shut', volumeM3 }, opening: 0 })
}

function stepTurns(machine: MachineModel, turnStep: number): MachineModel {
  return mapFirstHead(machine, { pocket: { ...WHEEL.pocket, turnStep }, opening: 0 })
}

function mapFirstHead(machine: MachineModel, more: Parameters<typeof end>[1]): MachineModel {
  const stages = machine.stages.map((stage, s) => ({
    ...stage,
    cylinders: stage.cylinders.map((one) => (s === 0 ? { ...one, head: end(0.14, more) } : one)),
  }))
  return { ...machine, stages }
}

describe('a pocket problem worked by hand', () => {
  // One stage, ideal gas and cycle, no losses but friction in proportion, mechanical efficiency 0.95. Bore 9.5 in, rod
  // 2.25 in, stroke 11 in, 400 rpm, 74.7 to 199.7 psia, k 1.27, clearance 14 and 15 %. Driver 95 hp, 5 % kept free.
  // 2 in3 a turn on the head end. Every figure below is plain arithmetic; nothing of the program is called.
  test('agrees with the solver to a thousandth of a turn', () => {
    // 1. Areas: 0.785398 x 9.5^2 = 70.8822 in2; rod 0.785398 x 2.25^2 = 3.97608; crank 66.9061 in2.
    const head = 0.7853981634 * 9.5 * 9.5
    const crank = head - 0.7853981634 * 2.25 * 2.25
    // 2. Swept each stroke: 70.8822 x 11 = 779.704 in3; 66.9061 x 11 = 735.967 in3.
    const sweptHead = head * 11
    const sweptCrank = crank * 11
    // 3. r = 199.7 / 74.7 = 2.673360; r^(1/1.27) = 2.169031; so 1.169031 strokes of clearance come back.
    const r = 199.7 / 74.7
    const back = r ** (1 / 1.27) - 1
    // 4. Gas drawn each turn, shut: 779.704 (1 - 0.14 x 1.169031) + 735.967 (1 - 0.15 x 1.169031) = 1259.01 in3.
    const drawn = sweptHead * (1 - 0.14 * back) + sweptCrank * (1 - 0.15 * back)
    // 5. Work of each in3 drawn: 74.7 x (1.27/0.27) x (r^(0.27/1.27) - 1) = 74.7 x 4.703704 x 0.232514 = 81.70 in lbf.
    const each = 74.7 * (1.27 / 0.27) * (r ** (0.27 / 1.27) - 1)
    // 6. Shaft power shut: 1259.01 x 81.70 x 400 / (12 x 33000) / 0.95 = 109.365 hp.
    const shut = (drawn * each * 400) / 12 / 33000 / 0.95
    // 7. Allowed: 95 x 0.95 = 90.25 hp, so gas drawn may be 1259.01 x 90.25 / 109.365 in3, 220.05 in3 less.
    const less = drawn * (1 - (95 * 0.95) / shut)
    // 8. Each in3 of pocket takes 1.169031 in3 off, so 188.23 in3, and at 2 in3 a turn 94.12 turns of 100.
    const pocket = less / back
    const turns = pocket / 2
    expect([drawn, each, shut].map((value) => Math.round(value * 10) / 10)).toEqual([1259, 81.7, 109.4])

    const { found, present, correction } = opened(idealSingle(), FIRST_HEAD)
    expect(present.driverW / si(1, 'hp')).toBeCloseTo(shut, 3)
    expect(correction).toBe(1)
    expect(Math.abs(found.opening * 100 - turns)).toBeLessThan(0.001)
    expect(found.capacityShare).toBeCloseTo(90.25 / shut, 9)
  })
})
