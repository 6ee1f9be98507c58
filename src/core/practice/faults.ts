// Every fault there is, in the order of the list that a trainee names them from.
import type { Fault } from './fault.ts'
import { BORE_FAULTS } from './faults-bore.ts'
import { MEASURING_FAULTS } from './faults-measuring.ts'
import { STOP_FAULTS } from './faults-stop.ts'

export const FAULTS: readonly Fault[] = [...STOP_FAULTS, ...BORE_FAULTS, ...MEASURING_FAULTS]

export function faultById(id: string): Fault {
  const found = FAULTS.find((fault) => fault.id === id)
  if (found === undefined) throw new Error(`there is no fault ${id}`)
  return found
}

export function isFault(id: string): boolean {
  return FAULTS.some((fault) => fault.id === id)
}
