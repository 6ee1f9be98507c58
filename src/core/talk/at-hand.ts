// What goes with an answer that touches a hazard: the hazard of the sheet that lies open, what to do in trouble, and how the hold points
// before it stand. None of it says that anything is good.
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { type GateStep, gatesBefore, gatesOf } from '../job/gate.ts'
import { current, next } from '../job/next.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { stopLine } from './stop-lines.ts'
import { gateLine } from './where.ts'

/** The step or hold point that is asked; null before the first and after the last. */
export function stepAtHand(defs: Definitions, state: State): PlacedStep | null {
  const prompt = next(defs, state)
  if ('gate' in prompt && prompt.gate !== undefined) return prompt.gate
  return 'step' in prompt ? prompt.step : (current(defs, state)?.placed ?? null)
}

/** Those that stand before what is asked, and the one that is asked itself. */
export function gatesAtHand(defs: Definitions, state: State): readonly GateStep[] {
  const at = stepAtHand(defs, state)
  if (at === null) return []
  const before = gatesBefore(defs, at)
  return gatesOf(defs).filter((gate) => gate.id === at.id || before.includes(gate))
}

/** An open STOP, the hazard, what to do in trouble, and each hold point before it with its age and lapse. */
export function atHandLines(defs: Definitions, state: State, now: Instant): string[] {
  const at = stepAtHand(defs, state)
  const { hazard = null, trouble = null } = at?.step ?? {}
  return [
    ...stopLine(state),
    ...(hazard === null ? [] : [`Hazard of sheet ${at?.number}: ${hazard}`]),
    ...(trouble === null ? [] : [`In trouble: ${trouble}`]),
    ...gatesAtHand(defs, state).flatMap((gate) => gateLine(defs, state, gate, now)),
  ]
}
