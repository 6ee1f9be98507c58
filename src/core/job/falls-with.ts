// What falls with lines of evidence that are taken back, at every hold point, whether by `correct` or by `back`.
import { asKind, type Definitions, stepById } from './definitions.ts'
import { type GateStep, gateState, gatesOf } from './gate.ts'
import { heldTo, type LineAt, takenBackAt } from './held-to.ts'
import { fallsWith } from './lapse.ts'
import type { State } from './state.ts'
import { shownAfter, waitsAfter } from './voiding.ts'

export interface FallingAt {
  readonly gate: GateStep
  readonly items: readonly string[]
}

/**
 * What falls with these lines: what hangs on them at their gate, whoever vouched for them, and at whatever gate what was held against
 * a number among them, and what was shown after any of all these and proves nothing without it. The gate itself comes first; empty where none of the lines stands.
 */
export function fallsWithItems(
  defs: Definitions,
  state: State,
  gateId: string,
  keys: readonly string[],
): readonly FallingAt[] {
  const own = asKind(stepById(defs, gateId), 'gate')
  const { given, begun } = gateState(state, gateId)
  const lines = keys.flatMap((key): LineAt[] =>
    given[key] === undefined && begun[key] === undefined ? [] : [{ gate: own, key }],
  )
  if (lines.length === 0) return []
  const held = heldTo(defs, state, lines)
  const taken = [...lines, ...held].map((line) => takenBackAt(state, line))
  const others = gatesOf(defs).filter((gate) => gate.id !== own.id)
  return [own, ...others].flatMap((gate): FallingAt[] => {
    const first = gate.id === own.id ? [...keys, ...waitsAfter(state, gate, keys)] : []
    const also = held.flatMap((line) => (line.gate.id === gate.id ? [line.key] : []))
    const all = [...first, ...also, ...taken.flatMap((one) => shownAfter(defs, state, gate, one))]
    return all.length === 0 ? [] : [{ gate, items: fallsWith(defs, state, gate, all) }]
  })
}
