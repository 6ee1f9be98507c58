// Lines of a hold point that count as shown in a practice session and are not so: what was typed for them was never seen, or was another
// thing. Nothing of it moves the job, which goes on as one goes on that nobody stops; it must only never look done.
import type { EvidenceOf } from '../definition/evidence.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import { evidenceByKey, type GateStep, gateState } from '../job/gate.ts'
import { lineOf } from '../job/practice.ts'
import type { State } from '../job/state.ts'
import { hiddenMachine } from './ask.ts'
import { evidenceLesson } from './lesson-gate.ts'
import { lookedAt } from './looks.ts'
import type { Lesson } from './marks.ts'

/** Keys of what stands as shown at a gate and is false; none in any other job. */
export function falseLines(defs: Definitions, state: State, gate: GateStep): readonly string[] {
  return untrueLines(defs, state, gate).map(({ item }) => item)
}

/** The same with what there is to say of each. */
export function untrueLines(
  defs: Definitions,
  state: State,
  gate: GateStep,
): readonly { readonly item: string; readonly lesson: Lesson }[] {
  const { practice } = state
  if (practice === null) return []
  const { given } = gateState(state, gate.id)
  return Object.entries(given).flatMap(([item, { seq, shown, si, instrument, atMs }]) => {
    const asked = lookedAt(practice, lineOf(gate.id, item), seq)
    const figure = si === null ? null : Number.parseFloat(shown)
    const line = { step: gate.id, item, shown, figure, instrument, atMs }
    const lesson = evidenceLesson({ defs, state, practice, asked }, line)
    return lesson?.isUnsafe === true || lesson?.isToMend === true ? [{ item, lesson }] : []
  })
}

/**
 * Keys of locks that nobody can count on any more: the start was tried, and the driver turned. Which of them hangs on the wrong breaker
 * nobody knows then.
 */
export function unprovedLocks(defs: Definitions, state: State, gate: GateStep): readonly string[] {
  const { practice } = state
  if (practice === null || hiddenMachine(defs, practice).driver === 'still') return []
  const isTried = practice.asked.some(({ of }) => of === lineOf(gate.id, 'try_start'))
  if (!isTried) return []
  return Object.keys(gateState(state, gate.id).given).filter(
    (key) => evidenceByKey(gate, key)?.kind === 'locks' && !isOff(evidenceByKey(gate, key)),
  )
}

function isOff(evidence: ReturnType<typeof evidenceByKey>): boolean {
  return evidence?.kind === 'locks' && (evidence as EvidenceOf<'locks'>).taken_off !== undefined
}

/** Of the gate with this id. */
export function falseAt(defs: Definitions, state: State, id: string): readonly string[] {
  return falseLines(defs, state, asKind(stepById(defs, id), 'gate'))
}
