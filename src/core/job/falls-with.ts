// What falls with lines of evidence that are taken back, at every hold point, whether by `correct` or by `back`.
import { asKind, type Definitions, stepById } from './definitions.ts'
import { evidenceByKey, type GateStep, gateState, gatesOf } from './gate.ts'
import { fallsWith } from './lapse.ts'
import type { State } from './state.ts'
import { shownAfter, type TakenBack, waitsAfter } from './voiding.ts'

export interface FallingAt {
  readonly gate: GateStep
  readonly items: readonly string[]
}

/**
 * What falls with these lines: what hangs on them at their gate, whoever vouched for them, and at whatever gate what was shown
 * after one of them and proves nothing without it. The gate itself comes first; empty where none of the lines stands.
 */
export function fallsWithItems(
  defs: Definitions,
  state: State,
  gateId: string,
  keys: readonly string[],
): readonly FallingAt[] {
  const own = asKind(stepById(defs, gateId), 'gate')
  const { given, begun } = gateState(state, gateId)
  const taken = keys.flatMap((key): TakenBack[] => {
    const seq = given[key]?.seq ?? begun[key]?.seq
    return seq === undefined ? [] : [{ gate: own, evidence: evidenceByKey(own, key), seq }]
  })
  if (taken.length === 0) return []
  const others = gatesOf(defs).filter((gate) => gate.id !== own.id)
  return [own, ...others].flatMap((gate): FallingAt[] => {
    const first = gate.id === own.id ? [...keys, ...waitsAfter(state, gate, keys)] : []
    const all = [...first, ...taken.flatMap((one) => shownAfter(defs, state, gate, one))]
    return all.length === 0 ? [] : [{ gate, items: fallsWith(defs, state, gate, all) }]
  })
}
