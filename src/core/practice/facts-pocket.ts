// What the load of a hidden machine is made around: suction pressures at which its pocket need not be opened, has to be, and is not
// enough, found with the solver of every load question. Only facts, no chance.
import { completeMachine } from '../cycle/machine-holds.ts'
import { operate } from '../cycle/operate.ts'
import type { Machine } from '../definition/machine.ts'
import { pocketRecord, recordHolds } from '../job/pocket-record.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

/** Two suction pressures over the air outside, Pa, and everything between them. */
export type Span = readonly [from: number, to: number]

export interface PocketFacts {
  readonly machine: Machine
  readonly dischargePa: number
  readonly suctionK: readonly number[]
  /** Under the target with the pocket shut. */
  readonly easy: Span
  /** Over it shut, under it full open. */
  readonly saved: Span
  /** Over it full open. */
  readonly lost: Span
  readonly turns: number
  readonly stem: { readonly shut: number; readonly open: number } | null
  /** Least step of the setting, as a share of its travel. */
  readonly step: number
}

export interface Running {
  readonly suctionPa: number
  readonly dischargePa: number
  readonly suctionK: readonly number[]
  readonly opening: number
}

/** Driver load in truth, W; null where the machine finds no balance there. */
export function loadAt(machine: Machine, running: Running): number | null {
  const whole = machine.whole_compressor
  if (whole === undefined) return null
  const { si } = machine.site.barometer
  const complete = completeMachine(
    pocketRecord(machine, whole, {
      suctionPa: running.suctionPa + si,
      dischargePa: running.dischargePa + si,
      suctionK: running.suctionK,
      loadW: 1,
      opening: running.opening,
    }),
  )
  if (!complete.ok) return null
  const point = operate(complete.value)
  return point.ok ? point.value.driverW : null
}

/** A day in the mild part of the year behind a cooler that works. K; invented for practice. */
const FIRST_K = 301
const LATER_K = 312

/** Discharge over first suction at the lower end of what is looked at: invented for practice. */
const RATIO = 11
/** Steps of the suction pressure that is looked for. */
const STEPS = 60

export function pocketFacts(machine: Machine): Result<PocketFacts> {
  const { pocket, driver, whole_compressor: whole } = machine
  if (whole === undefined || driver === undefined || recordHolds(machine, whole).length > 0)
    return refuse(
      'no-load',
      'Practice of the load question needs a machine record that has all of the compressor.',
    )
  if (pocket?.kind !== 'hand_wheel' || pocket.turns === undefined)
    return refuse(
      'no-wheel',
      'Practice of the load question needs a pocket with a hand-wheel, and its turns, in the machine record.',
    )
  const target = driver.rating.si * (1 - (whole.site_rules?.margin?.si ?? Number.NaN))
  const suctionK = [FIRST_K, ...Array.from({ length: whole.stages_in_all - 1 }, () => LATER_K)]
  const leastStep = whole.pocket?.least_step?.si ?? Number.NaN
  const spans = spansOf(machine, suctionK, target)
  if (spans === null)
    return refuse(
      'no-span',
      'Practice of the load question needs a pocket that can bring an overloaded driver down.',
    )
  return ok({
    machine,
    suctionK,
    ...spans,
    turns: pocket.turns,
    stem:
      whole.pocket?.stem === undefined
        ? null
        : { shut: whole.pocket.stem.shut.si, open: whole.pocket.stem.open.si },
    step: leastStep / (2 * Math.PI * pocket.turns),
  })
}

/** How far from the target the load has to lie, as shares of it, so that no gauge and no meter brings it back: invented for practice. */
const CLEAR = { under: 0.955, over: 1.035, saved: 0.965, lost: 1.045 } as const

function spansOf(
  machine: Machine,
  suctionK: readonly number[],
  target: number,
): Pick<PocketFacts, 'dischargePa' | 'easy' | 'saved' | 'lost'> | null {
  const dischargePa = BAR * DISCHARGE_BAR
  const loads = Array.from({ length: STEPS }, (_, n) => {
    const suctionPa = (dischargePa / RATIO) * (0.6 + (n / STEPS) * 1.4)
    const at = (opening: number) =>
      (loadAt(machine, { suctionPa, dischargePa, suctionK, opening }) ?? Number.NaN) / target
    return { suctionPa, shut: at(0), open: at(1) }
  })
  const easy = spanOf(loads.filter(({ shut }) => shut < CLEAR.under && shut > CLEAR.under - 0.12))
  const saved = spanOf(loads.filter(({ shut, open }) => shut > CLEAR.over && open < CLEAR.saved))
  const lost = spanOf(loads.filter(({ open }) => open > CLEAR.lost && open < CLEAR.lost + 0.06))
  return easy === null || saved === null || lost === null ? null : { dischargePa, easy, saved, lost }
}

const BAR = 1e5
/** Last discharge over the air outside, bar: invented for practice. */
const DISCHARGE_BAR = 22.75

function spanOf(found: readonly { readonly suctionPa: number }[]): Span | null {
  const [first] = found
  const last = found.at(-1)
  return first === undefined || last === undefined ? null : [first.suctionPa, last.suctionPa]
}
