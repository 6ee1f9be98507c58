// What there is to be seen or read at one place of a hidden machine. Told by tables, a step of a procedure at a time: what stands in
// none of them cannot be practised yet, and `uncovered` says so.
import type { Instrument } from '../definition/instruments.ts'
import type { Step } from '../definition/procedure.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import type { Item } from '../job/gate.ts'
import type { Place } from '../job/places.ts'
import type { HiddenMachine } from './machine.ts'
import { procedureOf } from './procedure-of.ts'
import { BORE_INSPECTION } from './tell-bore-inspection.ts'
import { ROD_SIZES } from './tell-rod-sizes.ts'

export type Gas = 'oxygen' | 'flammable' | 'hydrogen_sulfide'

export type Truth =
  /** At a hold point: what is seen there, and what may be typed for it; null: nothing, and nobody goes in. */
  | { readonly kind: 'line'; readonly seen: string; readonly mayType: string | null }
  /** Shares of the volume where the meter is held; `oxygen` there, as some sensors need it. */
  | { readonly kind: 'gas'; readonly gas: Gas; readonly share: number; readonly oxygen: number }
  /** What a faultless instrument would show, SI, and how far a hurried hand may be off. */
  | {
      readonly kind: 'figure'
      readonly si: number
      readonly isKnocked: boolean
      readonly hurried: readonly [number, number]
      /** The instrument shows nothing below this, as a swing is none below nought; left out: it may. */
      readonly least?: number
    }
  /** What the eye sees, and the conditions of the step that it is. */
  | { readonly kind: 'eye'; readonly seen: string; readonly conditions: readonly string[] }

/** Where the machine is asked. */
export interface Spot {
  readonly defs: Definitions
  readonly machine: HiddenMachine
  readonly placed: PlacedStep
  readonly item: Item | null
  readonly place: Place | null
  readonly instrument: Instrument | null
  /** Since the first gas test, s; null: there was none. */
  readonly sinceGasS: number | null
}

/** Null: it has nothing for this line or place. */
export type Teller = (spot: Spot) => Truth | null

/** By procedure, by step. */
const TELLERS: Readonly<Record<string, Readonly<Record<string, Teller>>>> = {
  bore_inspection: BORE_INSPECTION,
  rod_sizes: ROD_SIZES,
}

/** Steps at which a machine is asked. */
const ASKED: readonly Step['kind'][] = ['gate', 'read', 'observe']

export function truthAt(spot: Spot): Truth | null {
  return tellerOf(spot.defs, spot.placed)?.(spot) ?? null
}

function tellerOf(defs: Definitions, placed: PlacedStep): Teller | undefined {
  return TELLERS[procedureOf(defs, placed)]?.[placed.step.id]
}

/** Titles of the steps that a hidden machine could not answer; empty: the whole job can be practised. */
export function uncovered(defs: Definitions): readonly string[] {
  return defs.steps.flatMap((placed) =>
    ASKED.includes(placed.step.kind) && tellerOf(defs, placed) === undefined
      ? [`${placed.number} ${placed.step.title}`]
      : [],
  )
}
