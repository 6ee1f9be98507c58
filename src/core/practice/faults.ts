// Every fault there is, and those that can be hidden in a job, in the order of the list that a trainee names them from.
import type { Definitions } from '../job/definitions.ts'
import type { Fault } from './fault.ts'
import { BORE_FAULTS } from './faults-bore.ts'
import { HOLLOW_FAULTS } from './faults-hollow.ts'
import { MEASURING_FAULTS } from './faults-measuring.ts'
import { NUT_FAULTS } from './faults-nut.ts'
import { OPEN_FAULTS } from './faults-open.ts'
import { POCKET_FAULTS } from './faults-pocket.ts'
import { PURGE_FAULTS } from './faults-purge.ts'
import { RING_FAULTS } from './faults-rings.ts'
import { ROD_FAULTS } from './faults-rod.ts'
import { SET_FAULTS } from './faults-set.ts'
import { STOP_FAULTS } from './faults-stop.ts'
import { procedureOf } from './procedure-of.ts'

export const FAULTS: readonly Fault[] = [
  ...STOP_FAULTS,
  ...PURGE_FAULTS,
  ...OPEN_FAULTS,
  ...HOLLOW_FAULTS,
  ...BORE_FAULTS,
  ...ROD_FAULTS,
  ...RING_FAULTS,
  ...NUT_FAULTS,
  ...SET_FAULTS,
  ...POCKET_FAULTS,
  ...MEASURING_FAULTS,
]

/** By the procedures that the job is made of. */
export function faultsFor(defs: Definitions): readonly Fault[] {
  const made = new Set(defs.steps.map((placed) => procedureOf(defs, placed)))
  return FAULTS.filter(({ procedures }) => procedures.some((one) => made.has(one)))
}

export function faultById(id: string): Fault {
  const found = FAULTS.find((fault) => fault.id === id)
  if (found === undefined) throw new Error(`there is no fault ${id}`)
  return found
}

export function isFault(id: string): boolean {
  return FAULTS.some((fault) => fault.id === id)
}
