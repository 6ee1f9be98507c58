// A thing that is wrong with a hidden machine, as data: what it changes in truth, how hard it is to see, where it is met, and what
// there is to learn from it. What is right to find or to decide there is worked out from the machine, never written here.
import type { Level } from '../job/practice.ts'
import type { Chance } from './chance.ts'
import type { Facts } from './facts.ts'
import type { HiddenMachine } from './machine.ts'

/**
 * How it shows. `stop`: at a hold point, or by the monitor, and nobody goes in. `seen`: with the eye, at an observe step.
 * `figures`: in the verdict. `measuring`: in the readings that a verdict rests on.
 */
export type Shows = 'stop' | 'seen' | 'figures' | 'measuring'

export interface Fault {
  readonly id: string
  /** As a mechanic would say it. */
  readonly name: string
  readonly level: Level
  readonly shows: Shows
  /** Procedures it can be hidden in. */
  readonly procedures: readonly string[]
  /** The step, or the line of a hold point, where a careful trainee meets it first; one for each procedure that has another. */
  readonly at: readonly string[]
  /** Where to look, without saying what is there. */
  readonly hint: string
  /** What there is to learn. */
  readonly teaches: string
  readonly source: string
  /** Of one that stops the job: what happens to who goes in all the same. */
  readonly consequence?: string
  /** It hides what figures would tell, or ends the work: nothing else is drawn with it. */
  readonly isAlone?: true
  readonly apply: (machine: HiddenMachine, chance: Chance, facts: Facts) => HiddenMachine
}

export const BORE = 'bore_inspection'
export const ROD = 'rod_sizes'
export const RINGS = 'ring_fit'
export const GAPS = 'rings_in_bore'
export const ISOLATION = 'isolation'
export const PURGE = 'vent_and_purge'
export const HOLLOW = 'hollow_piston'
export const BENCH = 'bench_ready'
export const NUT = 'piston_on_rod'
export const PUT = 'put_back'
export const BAR = 'bar_over_once'
export const OPEN = 'open_cylinder'
export const LOAD = 'pocket_load'
export const SET = 'set_pocket'

export const COMMON = 'common practice, no source'
