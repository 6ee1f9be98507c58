// Whether nobody can be behind any hold point: only then is a slip at one that is still being filled in taken back calmly. In doubt
// somebody is, and everybody is called out.
import { type Definitions, type PlacedStep, stepById } from './definitions.ts'
import { openElsewhere } from './elsewhere.ts'
import { comesOff, evidenceByKey, type GateStep, gatesOf } from './gate.ts'
import type { State } from './state.ts'

/** What is keyed away from the place, before anybody goes near it. Figures are read, waits watched and loads hung at the place. */
const FROM_AFAR: readonly string[] = ['locks', 'numbers', 'words', 'witness']

/**
 * True where no hold point of the job was ever complete, nobody has still to come out, nothing that stands was read or watched at the
 * place, no lock was told to be off, and no other job on the machine is open, whose people may rest on the same locks.
 */
export function nobodyIn(defs: Definitions, state: State): boolean {
  if (openElsewhere(state).length > 0) return false
  return Object.entries(state.gates).every(([id, { status, mustClear, given, begun }]) => {
    const gate = stepById(defs, id)
    return (
      status === 'never' &&
      !mustClear &&
      isGate(defs, gate) &&
      Object.keys({ ...given, ...begun }).every((key) => isFromAfar(gate, key))
    )
  })
}

function isGate(defs: Definitions, placed: PlacedStep): placed is GateStep {
  return gatesOf(defs).some(({ id }) => id === placed.id)
}

function isFromAfar(gate: GateStep, key: string): boolean {
  const evidence = evidenceByKey(gate, key)
  return evidence !== null && FROM_AFAR.includes(evidence.kind) && !comesOff(evidence)
}
