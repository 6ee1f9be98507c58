// Little oxygen where a limit asks for no least: nobody can breathe it, whatever passes there. No limit of its own: what is little is
// the least that the record of the machine asks for where people breathe.
import type { GasLimit } from '../definition/machine.ts'
import { type Definitions, gasLimitById, type PlacedStep } from './definitions.ts'
import { evidenceByKey, type GateStep, gateState, gatesBefore, gatesOf } from './gate.ts'
import type { Given, State } from './state.ts'

/** Whether a figure that passes is one that nobody can breathe. At the end of a purge as little as can be is wanted. */
export function isLittleOxygen(defs: Definitions, limit: GasLimit, si: number): boolean {
  const least = breathedLeast(defs)
  if (limit.gas !== 'oxygen' || limit.at_least !== undefined || least === null) return false
  if (limit.at_most !== undefined && limit.at_most.si < least.si) return false
  return !(si >= least.si)
}

/** The most that any limit of oxygen asks for at least: that of people who breathe there. */
function breathedLeast(defs: Definitions): { readonly si: number } | null {
  const least = defs.machine.site.gas.limits.flatMap(({ gas, at_least }) =>
    gas === 'oxygen' && at_least !== undefined ? [at_least] : [],
  )
  return least.reduce<{ readonly si: number } | null>(
    (most, one) => (most === null || one.si > most.si ? one : most),
    null,
  )
}

export interface LittleOxygen {
  readonly gate: GateStep
  /** Of its line. */
  readonly key: string
  readonly given: Given
}

/** Lines that stand, of hold points before the step and of itself, whose oxygen nobody can breathe: the least first. */
export function littleOxygenAt(defs: Definitions, state: State, placed: PlacedStep): LittleOxygen[] {
  const before = gatesBefore(defs, placed)
  return gatesOf(defs)
    .filter((gate) => gate.id === placed.id || before.includes(gate))
    .flatMap((gate) => littleOxygenOf(defs, state, gate))
    .sort((a, b) => (a.given.si ?? 0) - (b.given.si ?? 0))
}

export function littleOxygenOf(defs: Definitions, state: State, gate: GateStep): LittleOxygen[] {
  return Object.entries(gateState(state, gate.id).given).flatMap(([key, given]) => {
    const evidence = evidenceByKey(gate, key)
    const limit = evidence?.kind === 'gas' ? gasLimitById(defs, evidence.limit) : undefined
    if (limit === undefined || given.si === null || !isLittleOxygen(defs, limit, given.si)) return []
    return [{ gate, key, given }]
  })
}
