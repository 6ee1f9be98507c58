// What there is to be seen or read at one place of a hidden machine. Told by tables, a step of a procedure at a time: what stands in
// none of them cannot be practised yet, and `uncovered` says so.
import type { Step } from '../definition/procedure.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { procedureOf } from './procedure-of.ts'
import type { Spot, Teller, Tellers, Truth } from './tell.ts'
import { BORE_INSPECTION } from './tell-bore-inspection.ts'
import { BENCH_READY, DRILL_PLUG, HOLLOW_PISTON, TURN_PLUG } from './tell-hollow.ts'
import { ISOLATION, VENT_AND_PURGE } from './tell-isolation.ts'
import { PISTON_ON_ROD } from './tell-nut.ts'
import { OPEN_CYLINDER } from './tell-open-cylinder.ts'
import { POCKET_LOAD, SET_POCKET } from './tell-pocket.ts'
import { BAR_OVER, PUT_BACK } from './tell-put-back.ts'
import { RING_FIT, RINGS_IN_BORE } from './tell-rings.ts'
import { ROD_SIZES } from './tell-rod-sizes.ts'

/** By procedure, by step. */
const TELLERS: Readonly<Record<string, Tellers>> = {
  bore_inspection: BORE_INSPECTION,
  rod_sizes: ROD_SIZES,
  ring_fit: RING_FIT,
  rings_in_bore: RINGS_IN_BORE,
  isolation: ISOLATION,
  vent_and_purge: VENT_AND_PURGE,
  hollow_piston: HOLLOW_PISTON,
  bench_ready: BENCH_READY,
  turn_plug: TURN_PLUG,
  drill_plug: DRILL_PLUG,
  pocket_load: POCKET_LOAD,
  open_cylinder: OPEN_CYLINDER,
  put_back: PUT_BACK,
  bar_over_once: BAR_OVER,
  piston_on_rod: PISTON_ON_ROD,
  set_pocket: SET_POCKET,
}

/** Steps at which a machine is asked. */
const ASKED: readonly Step['kind'][] = ['gate', 'read', 'observe']

export function truthAt(spot: Spot): Truth | null {
  return tellerOf(spot.defs, spot.placed)?.(spot) ?? null
}

function tellerOf(defs: Definitions, placed: PlacedStep): Teller | undefined {
  return TELLERS[procedureOf(defs, placed)]?.[placed.step.id]
}

/** Whether there is anything to be asked of the machine at a step. */
export function isAsked(defs: Definitions, placed: PlacedStep): boolean {
  return tellerOf(defs, placed) !== undefined
}

/** Titles of the steps that a hidden machine could not answer; empty: the whole job can be practised. */
export function uncovered(defs: Definitions): readonly string[] {
  return defs.steps.flatMap((placed) =>
    ASKED.includes(placed.step.kind) && tellerOf(defs, placed) === undefined
      ? [`${placed.number} ${placed.step.title}`]
      : [],
  )
}
