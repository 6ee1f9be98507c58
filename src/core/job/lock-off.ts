// A lock or a blind that comes off lets in what it held back, as a step with `lets_in` does: nobody of another job on the machine
// may be behind that. Before lockout devices come off, everybody is to be seen in a safe place and told (29 CFR 1910.147(e)(2)).
import type { Evidence } from '../definition/evidence.ts'
import { type Definitions, hazardName } from './definitions.ts'
import { holdsLetting, type NamedHazard } from './elsewhere.ts'
import { comesOff, type GateStep, gatesOf, hangs, provesAt } from './gate.ts'
import type { State } from './state.ts'
import { tellsOff } from './tells-off.ts'

/** Whether its number is asked as something comes off. Words tell of no number, and may speak of a lock that stays on. */
export function asksOff(evidence: Evidence): boolean {
  return comesOff(evidence) || (evidence.kind === 'numbers' && tellsOff(evidence))
}

/** What everything that comes off at the hold point holds back: by the lines that noted its numbers, and all where none did. */
export function letInByOff(defs: Definitions, gate: GateStep): readonly NamedHazard[] {
  const ids = new Set(gate.step.evidence.filter(asksOff).flatMap((evidence) => heldBy(defs, evidence)))
  return defs.procedure.hazards
    .filter(({ id }) => ids.has(id))
    .map(({ id }) => ({ id, name: hazardName(defs, id) }))
}

function heldBy(defs: Definitions, evidence: Evidence): readonly string[] {
  const name = 'same_as' in evidence ? evidence.same_as : undefined
  const noting = gatesOf(defs).flatMap((gate) =>
    gate.step.evidence
      .filter((one) => name !== undefined && 'notes' in one && one.notes === name && hangs(one))
      .flatMap((one) => provesAt(gate, one)),
  )
  return noting.length > 0 ? noting : defs.procedure.hazards.map(({ id }) => id)
}

/** How the others are told of it while it is asked, or waits for them. */
export function offTitle({ step }: GateStep): string {
  return `Locks or blinds off: ${step.title}`
}

/** Why nothing may come off at the hold point yet; null: nobody of another job rests on it. */
export function holdsOff(defs: Definitions, state: State, gate: GateStep): string | null {
  return holdsLetting(defs, state, letInByOff(defs, gate), 'what comes off here')
}
