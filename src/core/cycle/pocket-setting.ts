// The pocket solver: the smallest opening that brings the driver under its rating with the stated margin, every
// cylinder
// checked there, or a plain statement that no opening does. It proposes; a person decides.
import { formatNumber } from '../lib/decimal.ts'
import { ok, type Result } from '../lib/result.ts'
import { completeMachine } from './machine-holds.ts'
import type { MachineModel, MachineRecord } from './machine-model.ts'
import { type OperatingPoint, operate } from './operate.ts'
import { type PocketChoice, type PocketTravel, pocketTravel, withOpening } from './pocket-choice.ts'
import { frictionOf } from './pocket-curve.ts'
import { checkSetting, type SettingChecks } from './setting-checks.ts'

export interface SettingFound {
  readonly opening: number
  readonly point: OperatingPoint
  /** Driver load with the correction below, watts: what is held against the target. */
  readonly loadW: number
  readonly checks: SettingChecks
  /** Capacity here over capacity at the present setting. */
  readonly capacityShare: number
}

interface Common {
  readonly targetW: number
  readonly present: OperatingPoint
  /** Measured over computed load at the present setting, never below 1: every computed load is raised by it. */
  readonly correction: number
}

export type PocketSetting =
  | { readonly is: 'hold'; readonly reasons: readonly string[] }
  /** Shut is enough; `opening` is 0. */
  | (Common & { readonly is: 'shut-is-enough'; readonly found: SettingFound; readonly clear: boolean })
  | (Common & { readonly is: 'opening'; readonly found: SettingFound; readonly clear: boolean })
  /** No opening does. `best` is the one with the least load; `shortW` is what is still over the target there. */
  | (Common & {
      readonly is: 'no-opening'
      readonly best: SettingFound
      readonly shortW: number
      readonly left: readonly string[]
    })

/** Even steps looked at before the crossing is closed in on: the load need not fall all the way. */
const SCAN = 200
const HALVINGS = 60

/** What is left when no opening is enough: for the lead to weigh, none of it free. Common practice, no source. */
export const WHAT_IS_LEFT: readonly string[] = [
  'another pocket, or the other end of this cylinder',
  'an end or a cylinder taken off load, with rod load and reversal worked out anew',
  'a lower first suction pressure or a lower last discharge pressure, if the plant can give it',
  'a lower speed, if driver and maker allow',
  'the driver itself: whether it gives its rating, and whether valves or rings leak',
]

/**
 * Target = rating (1 - margin). For each opening the gas is balanced through all stages, the driver load worked out and
 * raised by the correction, and the smallest opening at or under the target found: a scan from shut, then halving
 * of the
 * first interval that crosses; for a wheel set in steps, the first whole step at or above it that holds the target.
 * Source: balance.ts, power.ts. Not modelled: pulsation, valve dynamics, leakage, heat to the jacket, efficiencies
 * and Z
 * that change with the setting, cooler temperatures that change with the flow.
 * HOLD: anything missing for any stage; computed and measured load apart by more than the site's figure; no balance.
 * `clear` is false when a rod load, the pin load, reversal or a discharge temperature is out of its limit there.
 */
export function pocketSetting(record: MachineRecord, choice: PocketChoice): PocketSetting {
  const complete = completeMachine(record)
  if (!complete.ok) return { is: 'hold', reasons: complete.error }
  const machine = complete.value
  const travel = pocketTravel(machine, choice)
  if (!travel.ok) return hold(travel.error.say)
  const present = operate(machine)
  if (!present.ok) return hold(present.error.say)
  const apart = Math.abs(present.value.driverW - machine.measuredLoadW) / machine.measuredLoadW
  if (apart > machine.agreement) return hold(apartWords(machine, present.value))
  const common: Common = {
    targetW: machine.driverRatingW * (1 - machine.margin),
    present: present.value,
    correction: Math.max(1, machine.measuredLoadW / present.value.driverW),
  }
  const result = search(machine, choice, travel.value, common)
  return result.ok ? result.value : hold(result.error.say)
}

function hold(reason: string): PocketSetting {
  return { is: 'hold', reasons: [reason] }
}

function apartWords(machine: MachineModel, present: OperatingPoint): string {
  const kW = (watts: number) => `${formatNumber(watts / 1000, 1)} kW`
  return (
    `The computed driver load (${kW(present.driverW)}) and the measured one (${kW(machine.measuredLoadW)}) are apart ` +
    'by more than the site allows: find out why before any pocket is moved.'
  )
}

type LoadAt = (opening: number) => number | null

function search(
  machine: MachineModel,
  choice: PocketChoice,
  travel: PocketTravel,
  common: Common,
): Result<PocketSetting> {
  const frictionW = frictionOf(machine, common.present)
  const loadAt: LoadAt = (opening) => {
    const at = operate(withOpening(machine, choice, opening), frictionW)
    return at.ok ? at.value.driverW * common.correction : null
  }
  const opening = smallestOpening(travel, common.targetW, loadAt)
  const best = opening ?? leastLoad(travel, loadAt)
  const found = foundAt(machine, choice, common, best, frictionW)
  if (!found.ok) return found
  if (opening === null)
    return ok({
      is: 'no-opening',
      ...common,
      best: found.value,
      shortW: found.value.loadW - common.targetW,
      left: WHAT_IS_LEFT,
    })
  const clear = found.value.checks.faults.every((fault) => fault.grade !== 'hold')
  return ok({ is: opening === 0 ? 'shut-is-enough' : 'opening', ...common, found: found.value, clear })
}

function foundAt(
  machine: MachineModel,
  choice: PocketChoice,
  common: Common,
  opening: number,
  frictionW: number | undefined,
): Result<SettingFound> {
  const at = withOpening(machine, choice, opening)
  const point = operate(at, frictionW)
  if (!point.ok) return point
  const checks = checkSetting(at, point.value)
  if (!checks.ok) return checks
  return ok({
    opening,
    point: point.value,
    loadW: point.value.driverW * common.correction,
    checks: checks.value,
    capacityShare: point.value.molPerS / common.present.molPerS,
  })
}

/** Every opening looked at, from shut to full open. */
export function places(travel: PocketTravel): readonly number[] {
  if (travel.is === 'open-or-shut') return [0, 1]
  if (travel.step === null) return Array.from({ length: SCAN + 1 }, (_, i) => i / SCAN)
  const whole = Math.floor(1 / travel.step + 1e-9)
  const steps = Array.from({ length: whole + 1 }, (_, i) => Math.min(1, i * (travel.step ?? 1)))
  return steps.at(-1) === 1 ? steps : [...steps, 1]
}

/** Null when none of the places looked at holds the target. */
export function smallestOpening(travel: PocketTravel, targetW: number, loadAt: LoadAt): number | null {
  const holds = (opening: number) => {
    const load = loadAt(opening)
    return load !== null && load <= targetW
  }
  const all = places(travel)
  const index = all.findIndex(holds)
  if (index === -1) return null
  const first = all[index] as number
  const before = all[index - 1]
  const isStepped = travel.is === 'open-or-shut' || travel.step !== null
  return before === undefined || isStepped ? first : closeIn(before, first, holds)
}

/** `most` holds and `least` does not; the answer always holds. */
function closeIn(least: number, most: number, holds: (opening: number) => boolean): number {
  let [low, high] = [least, most]
  for (let i = 0; i < HALVINGS; i++) {
    const middle: number = (low + high) / 2
    if (holds(middle)) high = middle
    else low = middle
  }
  return high
}

/** The place with the least load; shut, where none can be worked out (which is then refused with its reason). */
function leastLoad(travel: PocketTravel, loadAt: LoadAt): number {
  let best = 0
  let least = Number.POSITIVE_INFINITY
  for (const opening of places(travel)) {
    const load = loadAt(opening)
    if (load !== null && load < least) {
      least = load
      best = opening
    }
  }
  return best
}
