// Capacity and driver load against the opening of one pocket, the whole machine re-balanced at every point.
import { ok, type Result, refuse } from '../lib/result.ts'
import { completeMachine } from './machine-holds.ts'
import type { MachineModel, MachineRecord } from './machine-model.ts'
import { type OperatingPoint, operate } from './operate.ts'
import { type PocketChoice, pocketTravel, withOpening } from './pocket-choice.ts'

export interface CurvePoint {
  readonly opening: number
  /** Null where the machine draws no gas or finds no balance at this opening; `why` says which. */
  readonly point: OperatingPoint | null
  readonly why: string
}

/** Friction in watts at the present setting, where it is held constant; undefined where it follows the load. */
export function frictionOf(machine: MachineModel, present: OperatingPoint): number | undefined {
  if (machine.friction === 'in-proportion') return undefined
  return present.indicatedW * (1 / machine.mechanicalEfficiency - 1)
}

/**
 * Points at `steps` + 1 even openings from shut to full open (both places only, for one that is open or shut).
 * At unchanged pressures, one stage, ideal cycle and friction in proportion, load falls exactly as capacity falls; with
 * more stages the pressures between them move, and it does not.
 * Refuses: `hold` naming what is missing; a pocket that cannot be moved; no balance at the present setting; steps not a
 * whole number from 1 to 500.
 */
export function pocketCurve(
  record: MachineRecord,
  choice: PocketChoice,
  steps: number,
): Result<readonly CurvePoint[]> {
  if (!Number.isInteger(steps) || steps < 1 || steps > 500)
    return refuse('steps', 'The points on the curve are not a whole number from 1 to 500.')
  const complete = completeMachine(record)
  if (!complete.ok) return refuse('hold', complete.error.join(' '))
  const machine = complete.value
  const travel = pocketTravel(machine, choice)
  if (!travel.ok) return travel
  const present = operate(machine)
  if (!present.ok) return present
  const frictionW = frictionOf(machine, present.value)
  const count = travel.value.is === 'open-or-shut' ? 1 : steps
  return ok(
    Array.from({ length: count + 1 }, (_, i) => {
      const opening = i / count
      const at = operate(withOpening(machine, choice, opening), frictionW)
      return { opening, point: at.ok ? at.value : null, why: at.ok ? '' : at.error.say }
    }),
  )
}
