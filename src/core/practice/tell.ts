// What a hidden machine can answer at one place, and where it is asked.
import type { Instrument } from '../definition/instruments.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import type { Item } from '../job/gate.ts'
import type { Place } from '../job/places.ts'
import type { Inside } from './inside-air.ts'
import type { HiddenMachine } from './machine.ts'

export type Gas = 'oxygen' | 'flammable' | 'flammable_in_inert' | 'hydrogen_sulfide'

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
  /** What the eye sees, and the conditions of the step that it is. `unsafe`: those that would hurt somebody if they were said instead. */
  | {
      readonly kind: 'eye'
      readonly seen: string
      readonly conditions: readonly string[]
      readonly unsafe?: readonly string[]
    }
  /** At a step that is confirmed: what is seen there, and whether it is as the step has it. */
  | { readonly kind: 'done'; readonly seen: string; readonly isSo: boolean }

/** Where the machine is asked. */
export interface Spot {
  readonly defs: Definitions
  readonly machine: HiddenMachine
  readonly placed: PlacedStep
  readonly item: Item | null
  readonly place: Place | null
  readonly instrument: Instrument | null
  /** Since the last gas test, s; null: there was none. */
  readonly sinceGasS: number | null
  /** Since the wait of this line was begun, s; null: it was not. */
  readonly begunS: number | null
  /** What is in the cylinder by now. */
  readonly inside: Inside
  /** How often this line or place was answered before. */
  readonly answered: number
}

/** Null: it has nothing for this line or place. */
export type Teller = (spot: Spot) => Truth | null

/** By step. */
export type Tellers = Readonly<Record<string, Teller>>

export function eye(seen: string, ...conditions: readonly string[]): Truth {
  return { kind: 'eye', seen, conditions }
}

/** What an instrument shows that is not set on a standard. `least`: it shows nothing below. */
export function figure(si: number, hurried: readonly [number, number], least?: number): Truth {
  return { kind: 'figure', si, isKnocked: false, hurried, ...(least === undefined ? {} : { least }) }
}
