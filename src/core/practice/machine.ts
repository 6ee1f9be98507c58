// What a hidden machine is like in truth. Sizes are those at 20 degC, in metres; temperatures in degC; gases as shares of the volume.
import type { Level } from '../job/practice.ts'
import type { Parts } from './parts.ts'

export interface Lock {
  readonly number: string
  readonly hangs: 'shut' | 'open' | 'nowhere'
}

/**
 * A worn bore. Each of the fields below is a wear on the diameter at the place where it is greatest, metres, never below zero; they
 * add up. `bottom`, `top` and `side` wear one side only, so that they show in full on one axis.
 */
export interface BoreTruth {
  /** Diameter as made, where no ring runs. */
  readonly madeM: number
  readonly counterboreM: number
  /** All round, the same at every station. */
  readonly evenM: number
  /** All round, greatest in the middle of ring travel, none at its ends. */
  readonly middleM: number
  /** All round, greatest at both ends of ring travel, none in the middle. */
  readonly endsM: number
  /** All round, greatest at one end of ring travel, none at the other. */
  readonly headM: number
  readonly crankM: number
  readonly bottomM: number
  readonly topM: number
  readonly sideM: number
  /** Where a strip is left that no ring ever swept; at the head end there may be one at the other too. */
  readonly strip: 'head end' | 'crank end' | 'gone'
  /** The marks at the flange stand a quarter turn round: what is read along one axis is the other. */
  readonly isTurned: boolean
  readonly surface: readonly ('scored' | 'ridge' | 'cracked')[]
  readonly jacket: 'none' | 'rust' | 'damp' | 'leak'
}

/**
 * A worn rod, metres at 20 degC. Each wear is on the diameter, where it is greatest, and never below zero; they add up. The packing runs
 * from a fifth to four fifths of the rod, and only there it is worn.
 */
export interface RodTruth {
  readonly madeM: number
  /** Where the piston sits. */
  readonly fitM: number
  /** All round, the same all along the packing run. */
  readonly evenM: number
  /** All round, none at the piston end of the run, greatest at its crosshead end. */
  readonly crossheadM: number
  /** From top to bottom only. */
  readonly ovalM: number
  /** Whole swing of a dial in the middle, turned between centres. */
  readonly bendM: number
  readonly pistonThreadM: number
  readonly crossheadThreadM: number
  readonly shoulderM: number
}

/** Shares of the volume, 0 to 1. */
export interface Air {
  readonly oxygen: number
  readonly methane: number
  readonly sulfide: number
}

/** Clean air, dry: 20.9 %vol oxygen (common practice; 20.95 in tables of the standard atmosphere, ISO 2533:1975). */
export const CLEAN_AIR: Air = { oxygen: 0.209, methane: 0, sulfide: 0 }

export type AirPlace = 'breathing_zone' | 'in_the_opening' | 'at_the_vent'

/** Air that is another once it was tested there: the next test of the same line finds it. */
export interface Later {
  readonly place: AirPlace
  readonly air: Air
}

/** Gas that comes back through a valve once the air was tested: at both places, from nothing, at an even rate. */
export interface Returning {
  /** How long after the last gas test, s. */
  readonly afterS: number
  /** Share of the volume per second. */
  readonly methanePerS: number
}

export interface Warmth {
  readonly boreBefore: number
  readonly boreAfter: number
  readonly gaugeBefore: number
  readonly gaugeAfter: number
}

/** How one instrument is off, in SI. */
export interface Off {
  /** Always by this much. */
  readonly bias: number
  /** By this much more from the middle of the job on: it was dropped. */
  readonly knocked: number
  /** Standard deviation of one reading. */
  readonly scatter: number
}

export interface HiddenMachine {
  readonly seed: number
  readonly level: Level
  /** Ids of what is wrong with it. */
  readonly faults: readonly string[]
  readonly plate: string
  /** By isolation point. */
  readonly locks: Readonly<Record<string, Lock>>
  readonly driver: 'still' | 'turns'
  readonly bleeds: Readonly<Record<'head' | 'crank' | 'between', 'still' | 'blows' | 'plugged'>>
  readonly block: 'both-ways' | 'one-way' | 'loose'
  readonly meterAnswers: boolean
  readonly air: Readonly<Record<AirPlace, Air>>
  readonly returning: Returning | null
  readonly later: Later | null
  /** Null where the procedure judges none. */
  readonly bore: BoreTruth | null
  readonly rod: RodTruth | null
  readonly parts: Parts
  readonly warmth: Warmth
  /** Of each instrument that shows a figure, by its id. */
  readonly off: Readonly<Record<string, Off>>
}
