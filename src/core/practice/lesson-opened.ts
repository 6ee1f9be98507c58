// A hold point that is complete: with a line of it that is not so, the session is failed.
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { evidenceByKey, gateState } from '../job/gate.ts'
import { keyLabel } from '../job/item-label.ts'
import type { State } from '../job/state.ts'
import { untrueLines } from './false-lines.ts'
import { FALSE, faultAt, unsafe } from './lesson-gate.ts'
import type { Lesson } from './marks.ts'

/**
 * Null: each line was looked at and is so, or the session was failed by it before: when it was keyed, or when the hold point was complete
 * with it the first time. One slip is told once, however often people come out and go in again on it.
 */
export function openedLesson(
  defs: Definitions,
  state: State,
  entry: Extract<Entry, { type: 'gate.opened' }>,
): Lesson | null {
  const { practice } = state
  const gate = asKind(stepById(defs, entry.step), 'gate')
  if (practice === null) return null
  const { given } = gateState(state, gate.id)
  const before = (practice.opened[gate.id] ?? []).findLast((seq) => seq < entry.seq) ?? -1
  const lines = untrueLines(defs, state, gate).filter(
    ({ item, lesson }) => lesson.isToMend === true && !((given[item]?.seq ?? Number.NaN) < before),
  )
  if (lines.length === 0) return null
  const told = lines.map(({ item, lesson }) => {
    const scene = { defs, state, practice, asked: null }
    const fault = faultAt(scene, `${gate.id}/${evidenceByKey(gate, item)?.id ?? ''}`)
    const why = `${keyLabel(defs, gate, item)}: ${(lesson.says[0] ?? '').replace(/^WRONG\. /, '')}`
    return unsafe(FALSE, fault, why)
  })
  return {
    marks: told.flatMap(({ marks }) => marks),
    isUnsafe: true,
    says: [...told.flatMap(({ says }) => says.slice(0, -1)), FALSE],
  }
}
