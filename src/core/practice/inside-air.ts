// What is in the cylinder by now, by what the session did to it: swept with inert gas it has next to no air, and through what was opened
// since air comes in bit by bit. All rates are invented for practice: none is a time after which anybody may breathe there.
import type { Definitions } from '../job/definitions.ts'
import type { PracticeState } from '../job/practice.ts'
import { OPEN, PURGE } from './fault.ts'
import type { Air, HiddenMachine } from './machine.ts'
import { procedureOf } from './procedure-of.ts'

export interface Inside {
  /** With what was in it when it was opened: inert gas, or the gas of the line where nobody swept it. */
  readonly isSwept: boolean
  /** Share of what was in it that air has taken the place of, 0 to 1. */
  readonly aired: number
}

/** Opened long ago, before the job began. */
export const AIRED: Inside = { isSwept: true, aired: 1 }

/** How long the air inside takes to be changed once through what a step opens, s. */
const CHANGED_IN: Readonly<Record<string, number>> = {
  valves_off: 60 * 60,
  valves_rest: 30 * 60,
  head_off: 8 * 60,
}

/** By the steps that were confirmed up to a moment. @param nowMs NaN: what is there has nothing to do with the moment. */
export function insideNow(defs: Definitions, { confirmed }: PracticeState, nowMs: number): Inside {
  const found = (procedure: string, step: string) =>
    defs.steps.find((placed) => placed.step.id === step && procedureOf(defs, placed) === procedure)
  const doneMs = (id: string | undefined) => {
    const atMs = id === undefined ? undefined : confirmed[id]
    return atMs !== undefined && atMs <= nowMs ? atMs : null
  }
  const sweep = found(PURGE, 'swept')
  const isSwept = sweep === undefined || doneMs(sweep.id) !== null
  const opens = Object.entries(CHANGED_IN).flatMap(([step, changedIn]) => {
    const placed = found(OPEN, step)
    return placed === undefined ? [] : [{ id: placed.id, changedIn }]
  })
  // A job that opens nothing itself works where others opened, and aired.
  if (opens.length === 0) return { isSwept, aired: 1 }
  const changes = opens.reduce((sum, { id, changedIn }) => {
    const atMs = doneMs(id)
    return atMs === null ? sum : sum + (nowMs - atMs) / 1000 / changedIn
  }, 0)
  return { isSwept, aired: 1 - Math.exp(-changes) }
}

/** Whether what is in it came from the sweep, and not yet from outside. */
export function isInert({ isSwept, aired }: Inside): boolean {
  return isSwept && aired < 1
}

/** As it comes down the line: shares invented for practice. */
function lineGas({ machine }: Definitions): Air {
  return { oxygen: 0, methane: 0.86, sulfide: isSour(machine.service.gas) ? 4e-4 : 0 }
}

export const isSour = (gas: string): boolean => /sour|h2s/i.test(gas)

/** At the far vent of the closed cylinder. */
export function ventAir(defs: Definitions, { air }: HiddenMachine, { isSwept }: Inside): Air {
  return isSwept ? air.at_the_vent : lineGas(defs)
}

/** What lies in the bore of itself comes on top of what was left, thinned by the air that came in. */
export function boreAir(defs: Definitions, machine: HiddenMachine, inside: Inside): Air {
  const { aired } = inside
  const left = ventAir(defs, machine, inside)
  const { oxygen, methane, sulfide } = machine.air.in_the_opening
  const mixed = (own: number, was: number) => own + was * (1 - aired)
  return {
    oxygen: mixed(oxygen * aired, left.oxygen),
    methane: Math.min(1, mixed(methane, left.methane)),
    sulfide: mixed(sulfide, left.sulfide),
  }
}
