// A hold point that is complete: with a line of it that is not so, the session is failed.
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { evidenceByKey } from '../job/gate.ts'
import { keyLabel } from '../job/item-label.ts'
import type { State } from '../job/state.ts'
import { untrueLines } from './false-lines.ts'
import { FALSE, faultAt, unsafe } from './lesson-gate.ts'
import type { Lesson } from './marks.ts'

/** Null: each line was looked at and is so, or the session was failed by it when it was keyed. */
export function openedLesson(
  defs: Definitions,
  state: State,
  entry: Extract<Entry, { type: 'gate.opened' }>,
): Lesson | null {
  const { practice } = state
  const gate = asKind(stepById(defs, entry.step), 'gate')
  const lines = untrueLines(defs, state, gate).filter(({ lesson }) => lesson.isToMend === true)
  if (practice === null || lines.length === 0) return null
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
