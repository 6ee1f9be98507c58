// The machine as read, and as it may really stand: pressures, gas temperatures and load each off by their errors. A setting
// is good only where it is good in all of them.
import { ok, type Result } from '../lib/result.ts'
import { completeMachine } from './machine-holds.ts'
import type { MachineModel } from './machine-model.ts'
import { type OperatingPoint, operate } from './operate.ts'
import { type PocketChoice, withOpening } from './pocket-choice.ts'
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

const SHIFTS: readonly Shift[] = [
  { suction: 0, discharge: 0, gas: 0, behind: 0 },
  { suction: -1, discharge: 1, gas: 1, behind: 1 },
  { suction: 1, discharge: -1, gas: -1, behind: -1 },
  { suction: 1, discharge: 1, gas: 1, behind: 1 },
  { suction: -1, discharge: -1, gas: -1, behind: -1 },
  { suction: 1, discharge: 1, gas: -1, behind: 1 },
  { suction: -1, discharge: 1, gas: 1, behind: -1 },
]

/**
 * As read, and at each corner of what the two pressures may really be (expanded errors, k = 2), the gas of all stages hotter or
 * colder with it, and the first against the others, as the pressure between them goes with the temperatures.
 * An error that nobody stated counts as none, and the caller says so.
 * Refuses: what completeMachine and operate refuse for the machine so moved.
 */
export function pocketCases(machine: MachineModel, errors: PocketErrors): Result<readonly PocketCase[]> {
  const cases: PocketCase[] = []
  for (const shift of SHIFTS) {
    const moved = completeMachine(movedBy(machine, errors, shift))
    if (!moved.ok) return { ok: false, error: { code: 'hold', say: moved.error.join(' ') } }
    const present = operate(moved.value)
    if (!present.ok) return present
    cases.push({
      machine: moved.value,
      present: present.value,
      frictionW: frictionOf(moved.value, present.value),
      correction: Math.max(1, (machine.measuredLoadW + (errors.loadW ?? 0)) / present.value.driverW),
    })
  }
  return ok(cases)
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
  const faults: SettingFault[] = []
  let first: Pick<CheckedOpening, 'point' | 'checks'> | null = null
  for (const { machine, frictionW } of cases) {
    const at = withOpening(machine, choice, opening)
    const point = operate(at, frictionW)
    if (!point.ok) return point
    const checks = checkSetting(at, point.value)
    if (!checks.ok) return checks
    const more = checks.value.faults.filter((fault) => !faults.some(alike(fault)))
    faults.push(...(first === null ? more : more.map(tooClose)))
    first ??= { point: point.value, checks: checks.value }
  }
  if (first === null) throw new Error('an opening was checked in no case')
  return ok({ ...first, faults })
}

/** The same is out, as read or only when moved. */
function alike(fault: SettingFault) {
  return (other: SettingFault) => other.say.endsWith(fault.say)
}

function tooClose(fault: SettingFault): SettingFault {
  return { ...fault, say: `Too close to call, the readings being off by their errors: ${fault.say}` }
}
