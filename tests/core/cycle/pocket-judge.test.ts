// The load question against arithmetic of its own: a single stage in closed form, two stages by a bisection written here, and what
// must never come to anything but HOLD.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { MachineModel, MachineRecord } from '../../../src/core/cycle/machine-model.ts'
import { judgePocket } from '../../../src/core/cycle/pocket-judge.ts'
import type { PocketJudgeInput } from '../../../src/core/cycle/pocket-judge-input.ts'
import { runs } from '../../helpers/runs.ts'
import { end, FIRST_HEAD, idealSingle, si, twoStage } from './sample-machine.ts'

const NO_ERROR = { suctionPa: 0, dischargePa: 0, suctionK: [0, 0], loadW: 0, opening: 0 }

const input = (record: MachineRecord, more: Partial<PocketJudgeInput> = {}): PocketJudgeInput => ({
  record,
  choice: FIRST_HEAD,
  turns: 100,
  holds: [],
  errors: NO_ERROR,
  k: 2,
  simpleAcceptance: null,
  ...more,
})

/** Suction and discharge as read, and up or down by their errors. */
const CORNERS = [
  [0, 0],
  [-1, 1],
  [1, -1],
  [1, 1],
  [-1, -1],
] as const
const PER_TURN = si(2, 'in3')
/** The sample's wheel, set in whole steps of this many turns. */
const wheel = (turnStep: number, opening = 0) => ({
  pocket: { is: 'variable' as const, volumePerTurnM3: PER_TURN, turns: 100, turnStep },
  opening,
})
const valve = (cubicInches: number, opening: 0 | 1) => ({
  pocket: { is: 'open-or-shut' as const, volumeM3: si(cubicInches, 'in3') },
  opening,
})

type Pocketed = ReturnType<typeof wheel> | ReturnType<typeof valve>

/** The machine with another pocket at the head end of its first cylinder. */
function fitted(machine: MachineModel, pocketed: Pocketed): MachineModel {
  const stages = machine.stages.map((stage, i) => ({
    ...stage,
    cylinders: stage.cylinders.map((one) =>
      i === 0 ? { ...one, head: end(one.head.clearance, pocketed) } : one,
    ),
  }))
  return { ...machine, stages }
}

// --- One stage in closed form. ---

/**
 * At unchanged pressures the flow of the ideal cycle, and with it the load, is linear in the clearance of an end:
 * V = Dh (1 - (C + v/Sh) e) + Dc (1 - Cc e), e = r^(1/k) - 1 (P. K. Nag, Engineering Thermodynamics, ch. 18). The volume v that
 * brings a load W down to T follows without any search.
 */
function volumeFor(machine: MachineModel, loadW: number, targetW: number): number {
  const [stage] = machine.stages
  const one = stage?.cylinders[0]
  if (stage === undefined || one === undefined) throw new Error('no stage')
  const e = (machine.dischargePa / machine.suctionPa) ** (1 / stage.k) - 1
  const sweptHead = (Math.PI / 4) * one.boreM ** 2 * machine.strokeM
  const sweptCrank = (Math.PI / 4) * (one.boreM ** 2 - one.rodM ** 2) * machine.strokeM
  const drawn = sweptHead * (1 - one.head.clearance * e) + sweptCrank * (1 - one.crank.clearance * e)
  return (drawn * (1 - targetW / loadW)) / e
}

describe('one stage, ideal cycle, friction in proportion', () => {
  const single = (measuredHp: number, step: number) =>
    fitted(idealSingle({ measuredLoadW: si(measuredHp, 'hp'), driverRatingW: si(108, 'hp') }), wheel(step))
  const TARGET = si(108, 'hp') * 0.95

  it.each([0.25, 1, 3])('is set to the first whole step of %s turns that closed form asks for', (step) => {
    const machine = single(112, step)
    const turns = volumeFor(machine, si(112, 'hp'), TARGET) / PER_TURN
    const wanted = Math.ceil(turns / step) * step
    const result = judgePocket(input(machine))
    expect(result.verdict).toBe('REWORK')
    expect((result.recommended ?? 0) * 100).toBeCloseTo(wanted, 9)
    expect(wanted).toBeGreaterThanOrEqual(turns)
    const row = result.table.find(({ opening }) => opening === result.recommended)
    // Load falls exactly as capacity falls, and only here.
    expect(row?.loadW).toBeCloseTo(si(112, 'hp') * (row?.capacityShare ?? 0), 4)
    expect(row?.loadW).toBeLessThanOrEqual(TARGET)
  })

  it('counts the error of the power meter on top of the measured load', () => {
    const machine = single(112, 0.25)
    const turns = volumeFor(machine, si(115, 'hp'), TARGET) / PER_TURN
    const result = judgePocket(input(machine, { errors: { ...NO_ERROR, loadW: si(3, 'hp') } }))
    expect((result.recommended ?? 0) * 100).toBeCloseTo(Math.ceil(turns / 0.25) * 0.25, 9)
  })

  it('counts the error of the setting: the pocket may stand further open than it was read', () => {
    const machine = single(112, 0.25)
    const share = TARGET / si(112, 'hp')
    // By the closed form again: what was measured may be the load ten turns open, and falls from there.
    const turns = volumeFor(machine, si(112, 'hp'), TARGET) / PER_TURN + share * 10
    const result = judgePocket(input(machine, { errors: { ...NO_ERROR, opening: 0.1 } }))
    expect((result.recommended ?? 0) * 100).toBeCloseTo(Math.ceil(turns / 0.25) * 0.25, 9)
  })

  it('says nothing where the load is too close to the target to call, on either side of it', () => {
    const rated = (hp: number) => ({ ...single(112, 1), driverRatingW: si(hp, 'hp'), margin: 0 })
    const at = (hp: number, u: number) =>
      judgePocket(input(rated(hp), { errors: { ...NO_ERROR, loadW: si(u, 'hp') } }))
    expect(at(111, 2)).toMatchObject({ verdict: 'HOLD', holds: [expect.stringContaining('too close')] })
    expect(at(113, 2)).toMatchObject({ verdict: 'HOLD', holds: [expect.stringContaining('too close')] })
    expect(at(113, 0.5).verdict).toBe('ACCEPT')
    expect(at(111, 0.5).verdict).toBe('REWORK')
  })

  it('does not take a measured load under the target for it where the computed one is over', () => {
    const machine = {
      ...single(112, 1),
      driverRatingW: si(107, 'hp'),
      margin: 0,
      measuredLoadW: si(105.5, 'hp'),
    }
    const result = judgePocket(input(machine))
    expect((result.computedW ?? 0) / si(1, 'hp')).toBeGreaterThan(107)
    expect(result).toMatchObject({ verdict: 'HOLD', holds: [expect.stringContaining('too close')] })
  })
})

// --- Two stages by other arithmetic. ---

/**
 * Pressure between the stages by halving in that pressure (not in the flow, as the program does): what stage 1 passes falls with
 * it, what stage 2 draws rises. VE = 0.96 - r/100 - C (Zs/Zd r^(1/k) - 1) as GPSA Engineering Data Book, section 13, has it (from
 * memory); work P V k/(k-1) (r^((k-1)/k) - 1): P. K. Nag, Engineering Thermodynamics, ch. 18.
 */
function twoStageLoad(
  machine: MachineModel,
  addedM3: number,
): { loadW: number; flow: number; middlePa: number } {
  const { suctionPa, dischargePa, speedPerS, strokeM } = machine
  const flowOf = (i: number, fromPa: number, toPa: number) => {
    const stage = machine.stages[i]
    const one = stage?.cylinders[0]
    if (stage === undefined || one === undefined) throw new Error('no stage')
    const r = toPa / fromPa
    const e = (stage.zSuction / stage.zDischarge) * r ** (1 / stage.k) - 1
    const headM3 = 0.25 * Math.PI * one.boreM * one.boreM * strokeM
    const crankM3 = headM3 - 0.25 * Math.PI * one.rodM * one.rodM * strokeM
    const headC = one.head.clearance + (i === 0 ? addedM3 / headM3 : 0)
    const ve = (c: number) => 0.96 - r / 100 - c * e
    const volume = speedPerS * (headM3 * ve(headC) + crankM3 * ve(one.crank.clearance))
    const moles = (fromPa * volume) / (stage.zSuction * 8.314462618 * stage.suctionK)
    const k = stage.k
    const work = ((fromPa * volume * k) / (k - 1)) * (r ** ((k - 1) / k) - 1)
    return { moles, watts: work / stage.compressionEfficiency }
  }
  const kept = 1 - (machine.between[0]?.drop ?? 0)
  let [low, high] = [suctionPa, dischargePa / kept]
  for (let n = 0; n < 200; n++) {
    const middle = (low + high) / 2
    const spare = flowOf(0, suctionPa, middle).moles - flowOf(1, middle * kept, dischargePa).moles
    if (spare > 0) low = middle
    else high = middle
  }
  const [first, second] = [flowOf(0, suctionPa, low), flowOf(1, low * kept, dischargePa)]
  return {
    loadW: (first.watts + second.watts) / machine.mechanicalEfficiency,
    flow: first.moles,
    middlePa: low,
  }
}

describe('two stages', () => {
  const machine = fitted(twoStage({ driverRatingW: si(255, 'hp') }), wheel(1))

  it('come to the opening, the loads and the capacities that another bisection finds', () => {
    const now = twoStageLoad(machine, 0)
    const target = machine.driverRatingW * 0.95
    const raised = Math.max(1, machine.measuredLoadW / now.loadW)
    const turns = Array.from({ length: 101 }, (_, n) => n).find(
      (n) => twoStageLoad(machine, n * PER_TURN).loadW * raised <= target,
    )
    const result = judgePocket(input(machine))
    expect(result.verdict).toBe('REWORK')
    expect(turns).toBeGreaterThan(5)
    expect((result.recommended ?? 0) * 100).toBeCloseTo(turns ?? -1, 9)
    for (const row of result.table) {
      const other = twoStageLoad(machine, row.opening * 100 * PER_TURN)
      expect(row.loadW / (other.loadW * raised)).toBeCloseTo(1, 6)
      expect(row.capacityShare).toBeCloseTo(other.flow / now.flow, 6)
      // Rod load pushed: Pd A(head) - Ps A(crank), barometer on the rod (Bloch & Hoefner 1996, p. 83-85). Stage 1 sees the middle.
      const [one] = row.cylinders
      const [head, rod] = [9.5, 2.25].map((inch) => 0.25 * Math.PI * si(inch, 'in') ** 2) as [number, number]
      const pushed = other.middlePa * head - machine.suctionPa * (head - rod) - machine.barometerPa * rod
      expect(one?.compressionN).toBeCloseTo(pushed, 0)
      const stage = machine.stages[0]
      const hot = (stage?.suctionK ?? 0) * (other.middlePa / machine.suctionPa) ** (0.27 / 1.27)
      expect(one?.dischargeK).toBeCloseTo(hot, 3)
    }
  })

  it('hold what the shifted machine does not: a rod load that is only just inside its limit as read', () => {
    const errors = { ...NO_ERROR, dischargePa: si(5, 'psi'), suctionPa: si(1, 'psi') }
    const free = judgePocket(input(machine, { errors }))
    expect(free.verdict).toBe('REWORK')
    const second = free.table.find((row) => row.opening === free.recommended)?.cylinders[1]
    const limit = (second?.compressionN ?? 0) * 1.002
    const tight = {
      ...machine,
      stages: machine.stages.map((stage, i) => ({
        ...stage,
        cylinders: stage.cylinders.map((one) => (i === 1 ? { ...one, compressionLimitN: limit } : one)),
      })),
    }
    expect(judgePocket(input(tight)).verdict).toBe('REWORK')
    const held = judgePocket(input(tight, { errors }))
    expect(held.verdict).toBe('HOLD')
    expect(held.holds.join(' ')).toMatch(
      /Too close to call.*Stage 2, cylinder 2: the gas rod load in compression/,
    )
  })

  it('hold where computed and measured load are apart by more than the site allows, and say by how much', () => {
    const off = { ...machine, measuredLoadW: si(300, 'hp') }
    const result = judgePocket(input(off))
    expect(result.verdict).toBe('HOLD')
    expect(result.holds.join(' ')).toMatch(
      /apart by 1\d\.\d % of the measured one, and the site allows 5\.0 %/,
    )
  })

  it('hold where the power meter is further off than the loads may be apart', () => {
    const result = judgePocket(input(machine, { errors: { ...NO_ERROR, loadW: si(14, 'hp') } }))
    expect(result.holds).toEqual([expect.stringContaining('that they agree says nothing')])
  })
})

it('several cylinders in one stage share its pressures, and each is looked at', () => {
  const whole = fitted(twoStage({ driverRatingW: si(300, 'hp') }), wheel(1))
  // One cylinder as two of half its section each: the same gas, the same load.
  const half = (metres: number) => metres / Math.SQRT2
  const stages = whole.stages.map((stage, i) => ({
    ...stage,
    cylinders: stage.cylinders.flatMap((one) =>
      i === 0
        ? ['1', '3'].map((name) => ({
            ...one,
            name,
            boreM: half(one.boreM),
            rodM: half(one.rodM),
            head: name === '1' ? one.head : end(one.head.clearance),
          }))
        : [one],
    ),
  }))
  const [one, two] = [judgePocket(input(whole)), judgePocket(input({ ...whole, stages }))]
  expect(two.computedW).toBeCloseTo(one.computedW ?? 0, 4)
  expect(two.judged.map(({ cylinder }) => cylinder)).toEqual(['1', '3', '2'])
  expect(two.judged[0]?.compressionN).toBeCloseTo((one.judged[0]?.compressionN ?? 0) / 2, 4)
})

describe('a pocket that is open or shut', () => {
  const machine = (driverHp: number, opening: 0 | 1, measuredHp: number) =>
    fitted(
      twoStage({ driverRatingW: si(driverHp, 'hp'), measuredLoadW: si(measuredHp, 'hp') }),
      valve(120, opening),
    )
  const at = (...given: Parameters<typeof machine>) => judgePocket(input(machine(...given), { turns: null }))

  it('is opened where that is enough, left where it is not needed, and never set between', () => {
    const now = twoStageLoad(machine(255, 0, 252), 0)
    const open = twoStageLoad(machine(255, 0, 252), si(120, 'in3'))
    expect(open.loadW).toBeLessThan(now.loadW)
    expect(at(258, 0, 252)).toMatchObject({ verdict: 'REWORK', recommended: 1 })
    expect(at(300, 0, 252)).toMatchObject({ verdict: 'ACCEPT', recommended: null })
    expect(at(258, 0, 252).table.map(({ opening }) => opening)).toEqual([0, 1])
  })

  it('is no cure where open is not enough: HOLD, with what is left to weigh', () => {
    const result = at(230, 0, 252)
    expect(result).toMatchObject({ verdict: 'HOLD', at: 1, recommended: null })
    expect(result.holds.join(' ')).toContain('No opening')
    expect(result.cautions.join(' ')).toContain('another pocket')
  })
})

describe('what does not hold the verdict is said beside it, and is never ACCEPT', () => {
  const machine = fitted(twoStage({ driverRatingW: si(300, 'hp') }), wheel(1))

  it('no limit of the pin on record', () => {
    const bare = {
      ...machine,
      stages: machine.stages.map((stage) => ({
        ...stage,
        cylinders: stage.cylinders.map(({ pinLimitN: _none, ...one }) => one),
      })),
    }
    expect(judgePocket(input(machine)).verdict).toBe('ACCEPT')
    expect(judgePocket(input(bare))).toMatchObject({ verdict: 'MONITOR' })
  })

  it('an error that nobody stated: HOLD, or MONITOR where the owner recorded that it is not allowed for', () => {
    const errors = { ...NO_ERROR, loadW: null }
    expect(judgePocket(input(machine, { errors }))).toMatchObject({
      verdict: 'HOLD',
      holds: ['Nobody has stated how far the reading of the driver load may be off.'],
    })
    const accepted = judgePocket(input(machine, { errors, simpleAcceptance: { by: 'KH' } }))
    expect(accepted.verdict).toBe('MONITOR')
    expect(accepted.cautions.join(' ')).toContain('not allowed for')
  })

  it('an end that draws nothing is no setting to run at', () => {
    const dead = fitted(idealSingle(), valve(900, 0))
    const result = judgePocket(input(dead, { turns: null }))
    expect(result.verdict).toBe('HOLD')
    expect(result.holds.join(' ')).toContain('draws nothing')
  })

  it('a hand-wheel without a least step names no setting that nobody can set', () => {
    const { turnStep: _none, ...pocket } = wheel(1).pocket
    const stepless = fitted(twoStage(), { pocket, opening: 0 } as unknown as Pocketed)
    expect(judgePocket(input(stepless)).holds).toEqual([expect.stringContaining('least step')])
  })
})

/** Every leaf of the record, as a path. */
function leaves(value: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [path]
  return Object.entries(value).flatMap(([key, inner]) =>
    leaves(inner, [...path, Array.isArray(value) ? Number(key) : key]),
  )
}

function replaced(value: unknown, [key, ...rest]: readonly (string | number)[], by: unknown): unknown {
  if (key === undefined) return by
  if (Array.isArray(value)) return value.map((one, i) => (i === key ? replaced(one, rest, by) : one))
  return Object.fromEntries(
    Object.entries(value as object).map(([name, one]) => [
      name,
      name === key ? replaced(one, rest, by) : one,
    ]),
  )
}

describe('properties', () => {
  const machine = fitted(twoStage({ driverRatingW: si(300, 'hp') }), wheel(1))
  /** A limit that need not be on record, and names. */
  const FREE = ['pinLimitN', 'name']
  const needed = leaves(machine).filter((path) => !FREE.includes(String(path.at(-1))))

  it.each([
    ['missing', null],
    ['not a number', Number.NaN],
    ['infinite', Number.POSITIVE_INFINITY],
  ] as const)('with any one figure %s it is HOLD, and never ACCEPT', (_what, by) => {
    for (const path of needed) {
      const result = judgePocket(input(replaced(machine, path, by) as MachineRecord))
      expect([path.join('.'), result.verdict]).toEqual([path.join('.'), 'HOLD'])
      expect(result.holds.length).toBeGreaterThan(0)
    }
    const spoiled = replaced(machine, ['stages', 0, 'cylinders', 0, 'pinLimitN'], by) as MachineRecord
    expect(judgePocket(input(spoiled)).verdict).not.toBe('ACCEPT')
  })

  it('an error that is not a number, or below zero, is HOLD', () => {
    for (const bad of [Number.NaN, -1, Number.POSITIVE_INFINITY])
      for (const key of ['suctionPa', 'dischargePa', 'loadW', 'opening', 'suctionK'] as const)
        expect(
          judgePocket(input(machine, { errors: { ...NO_ERROR, [key]: key === 'suctionK' ? [bad, 0] : bad } }))
            .verdict,
        ).toBe('HOLD')
  })

  it('a recommended opening holds the target with the readings off either way, and stands on a whole step', {
    timeout: 120_000,
  }, () => {
    const given = fc.record({
      rating: fc.double({ min: 225, max: 275, noNaN: true }),
      load: fc.double({ min: 245, max: 258, noNaN: true }),
      step: fc.constantFrom(0.5, 1, 2, 5),
      now: fc.integer({ min: 0, max: 20 }),
      u: fc.double({ min: 0, max: 4, noNaN: true }),
      pressure: fc.double({ min: 0, max: 2, noNaN: true }),
    })
    const seen = new Set<string>()
    fc.assert(
      fc.property(given, ({ rating, load, step, now, u, pressure }) => {
        const one = fitted(
          twoStage({ driverRatingW: si(rating, 'hp'), measuredLoadW: si(load, 'hp'), margin: 0.02 }),
          wheel(step, now / 100),
        )
        const errors = {
          suctionPa: si(pressure, 'psi'),
          dischargePa: si(pressure, 'psi'),
          suctionK: [0.5, 0.5],
          loadW: si(u, 'hp'),
          opening: 0,
        }
        const result = judgePocket(input(one, { errors }))
        seen.add(result.verdict)
        const target = si(rating, 'hp') * 0.98
        const at = result.table.find((row) => row.opening === result.at)
        if (result.verdict === 'ACCEPT') {
          expect(load + u).toBeLessThanOrEqual(rating * 0.98 * (1 + 1e-12))
          expect(at?.loadW).toBeLessThanOrEqual(target)
        }
        if (result.verdict !== 'REWORK') return
        expect(at?.loadW).toBeLessThanOrEqual(target)
        const turns = (result.recommended ?? 0) * 100
        expect(Math.abs(turns / step - Math.round(turns / step))).toBeLessThan(1e-6)
        // By the other arithmetic, as read and at each corner of the errors.
        for (const [s, d] of CORNERS) {
          const off = {
            ...one,
            suctionPa: (one.suctionPa ?? Number.NaN) + s * errors.suctionPa,
            dischargePa: (one.dischargePa ?? Number.NaN) + d * errors.dischargePa,
            stages: (one.stages ?? []).map((stage) => ({
              ...stage,
              suctionK: (stage.suctionK ?? Number.NaN) + d * 0.5,
            })),
          }
          const raised = Math.max(1, si(load + u, 'hp') / twoStageLoad(off, now * PER_TURN).loadW)
          expect(twoStageLoad(off, turns * PER_TURN).loadW * raised).toBeLessThanOrEqual(target * (1 + 1e-9))
        }
      }),
      { numRuns: runs(6), seed: 20260518 },
    )
    expect([...seen]).toEqual(expect.arrayContaining(['ACCEPT', 'REWORK']))
  })

  it('comes to the same once more from what a journal holds', () => {
    const given = input(machine, { errors: { ...NO_ERROR, loadW: si(2, 'hp') } })
    const back = JSON.parse(JSON.stringify(given)) as PocketJudgeInput
    expect(JSON.stringify(judgePocket(back))).toBe(JSON.stringify(judgePocket(given)))
  })
})
