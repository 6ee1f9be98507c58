// The machine as read, and as it may really stand: pressures, gas temperatures and load each off by their errors. A setting
// is good only where it is good in all of them.
import { ok, type Result } from '../lib/result.ts'
import { completeMachine } from './machine-holds.ts'
import type { MachineModel } from './machine-model.ts'
import { type OperatingPoint, operate } from './operate.ts'
import { openingNow, type PocketChoice, withOpening } from './pocket-choice.ts'
import { frictionOf } from './pocket-curve.ts'
import type { PocketErrors } from './pocket-judge-input.ts'
import { checkSetting, type SettingChecks, type SettingFault } from './setting-checks.ts'

export interface PocketCase {
  readonly machine: MachineModel
  readonly present: OperatingPoint
  readonly frictionW: number | undefined
  /** Measured load and its error over the computed one, never below 1: every computed load is raised by it. */
  readonly correction: number
}

/** Each figure as read, or moved by its error up (1) or down (-1). `behind`: the gas of all stages but the first. */
interface Shift {
  readonly suction: number
  readonly discharge: number
  readonly gas: number
  readonly behind: number
}

const SIGNS = [-1, 1] as const
const SHIFTS: readonly Shift[] = [
  { suction: 0, discharge: 0, gas: 0, behind: 0 },
  ...SIGNS.flatMap((suction) =>
    SIGNS.flatMap((discharge) =>
      SIGNS.flatMap((gas) => SIGNS.map((behind) => ({ suction, discharge, gas, behind }))),
    ),
  ),
]

/**
 * As read, and at each corner of what the two pressures and the gas temperatures of the first and of the other stages may really
 * be (expanded errors, k = 2): the pressure between two stages goes with the temperatures. The load measured now is held against
 * the least that is computed within the error of the setting, so that a pocket that stands further open than read hides nothing.
 * An error that nobody stated counts as none, and the caller says so.
 * Refuses: what completeMachine and operate refuse for the machine so moved.
 */
export function pocketCases(
  machine: MachineModel,
  choice: PocketChoice,
  errors: PocketErrors,
): Result<readonly PocketCase[]> {
  const cases: PocketCase[] = []
  for (const shift of SHIFTS) {
    const moved = completeMachine(movedBy(machine, errors, shift))
    if (!moved.ok) return { ok: false, error: { code: 'hold', say: moved.error.join(' ') } }
    const present = operate(moved.value)
    if (!present.ok) return present
    const least = leastNow(moved.value, choice, errors.opening ?? 0)
    if (!least.ok) return least
    cases.push({
      machine: moved.value,
      present: present.value,
      frictionW: frictionOf(moved.value, present.value),
      correction: Math.max(1, (machine.measuredLoadW + (errors.loadW ?? 0)) / least.value),
    })
  }
  return ok(cases)
}

/** The least driver load computed with the pocket anywhere between the ends of what its setting may really be, watts. */
function leastNow(machine: MachineModel, choice: PocketChoice, u: number): Result<number> {
  const now = openingNow(machine, choice)
  let least = Number.POSITIVE_INFINITY
  for (const opening of new Set([now, Math.max(0, now - u), Math.min(1, now + u)])) {
    const at = operate(withOpening(machine, choice, opening))
    if (!at.ok) return at
    least = Math.min(least, at.value.driverW)
  }
  return ok(least)
}

function movedBy(machine: MachineModel, errors: PocketErrors, shift: Shift): MachineModel {
  return {
    ...machine,
    suctionPa: machine.suctionPa + shift.suction * (errors.suctionPa ?? 0),
    dischargePa: machine.dischargePa + shift.discharge * (errors.dischargePa ?? 0),
    stages: machine.stages.map((stage, i) => ({
      ...stage,
      suctionK: stage.suctionK + (i === 0 ? shift.gas : shift.behind) * (errors.suctionK[i] ?? 0),
    })),
  }
}

/**
 * Driver load at an opening, watts: the greatest of all cases, each computed load raised by its correction. Null where one
 * of them finds no balance: such an opening never counts as holding the target.
 */
export function worstLoad(
  cases: readonly PocketCase[],
  choice: PocketChoice,
  opening: number,
): number | null {
  let worst = 0
  for (const { machine, frictionW, correction } of cases) {
    const at = operate(withOpening(machine, choice, opening), frictionW)
    if (!at.ok) return null
    worst = Math.max(worst, at.value.driverW * correction)
  }
  return worst
}

export interface CheckedOpening {
  /** As read. */
  readonly point: OperatingPoint
  readonly checks: SettingChecks
  readonly faults: readonly SettingFault[]
}

/** Every cylinder looked at in every case. What is out only when moved says so. Refuses: what operate refuses in any. */
export function checkedOpening(
  cases: readonly PocketCase[],
  choice: PocketChoice,
  opening: number,
): Result<CheckedOpening> {
  const faults = new Map<string, SettingFault>()
  let first: Pick<CheckedOpening, 'point' | 'checks'> | null = null
  for (const { machine, frictionW } of cases) {
    const at = withOpening(machine, choice, opening)
    const point = operate(at, frictionW)
    if (!point.ok) return point
    const checks = checkSetting(at, point.value)
    if (!checks.ok) return checks
    for (const fault of checks.value.faults)
      if (!faults.has(fault.say)) faults.set(fault.say, first === null ? fault : tooClose(fault))
    first ??= { point: point.value, checks: checks.value }
  }
  if (first === null) throw new Error('an opening was checked in no case')
  return ok({ ...first, faults: [...faults.values()] })
}

function tooClose(fault: SettingFault): SettingFault {
  return { ...fault, say: `Too close to call, the readings being off by their errors: ${fault.say}` }
}
