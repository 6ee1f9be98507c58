// The sheet of a practice session, for its report: what the session itself said at its end.
import type { Definitions } from '../../job/definitions.ts'
import type { Entry } from '../../job/entries.ts'
import { gradeOf } from '../../practice/grade.ts'
import { againTold, nextTold } from '../../practice/grade-lines.ts'
import type { Report } from '../schema.ts'

/** Undefined for a log that is no practice session. */
export function practiceOf(defs: Definitions, entries: readonly Entry[]): Report['practice'] {
  const grade = gradeOf(defs, entries)
  if (grade === null) return undefined
  const { who, seed, level, edition, age, scenario, safety, scores, hints, isOver, isPassed } = grade
  return {
    who,
    seed,
    level,
    edition,
    isSameMachine: age === 'same',
    scenario: scenario?.title ?? null,
    safety,
    unsafe: grade.unsafe.map((one) => ({ ...one })),
    scores: scores.map((one) => ({ ...one })),
    hints,
    isOver,
    isPassed,
    hidden: (grade.hidden ?? []).map(({ name, isNamed }) => ({ name, isNamed })),
    // Before anything was named it would tell what is hidden.
    expected: isOver ? grade.expected.map((one) => ({ ...one })) : [],
    next: nextTold(grade),
    again: againTold(grade),
  }
}
