// What a session said of a trainee, held against the one thing that the trainee did on purpose.
import type { Grade } from '../../src/core/practice/grade.ts'
import { SKILLS, type Skill } from '../../src/core/practice/marks.ts'
import type { Deed } from './slipping-trainees.ts'

export type Name =
  | 'careful'
  | 'careless'
  | 'mends'
  | 'leaves'
  | 'skips'
  | 'misjudges'
  | 'misnames'
  | 'passesFalse'
  | 'asksHints'

type Lost = Readonly<Partial<Record<Skill, number>>>

/** Why the sheet is not what the deed calls for; null: it is. */
export function unfairness(name: Name, deeds: readonly Deed[], grade: Grade): string | null {
  const wrongs = [
    ...accused(grade, lostFor(name, deeds, grade)),
    ...(mayPass(name, deeds, grade) === grade.isPassed
      ? []
      : [`it is ${grade.isPassed ? '' : 'NOT '}passed`]),
    ...(grade.safety === 'failed' && grade.unsafe.length === 0 ? ['failed, and not said by what'] : []),
  ]
  if (wrongs.length === 0) return null
  const told = grade.lost.map(({ skill, at, says }) => `${skill}, ${at}: ${says}`)
  return `${name} [${deeds.join(' ')}]: ${wrongs.join('; ')}; ${told.join(' | ')}`
}

/** Null: nothing is held against it here, as such a trainee loses marks all over. */
function lostFor(name: Name, deeds: readonly Deed[], { unsafe, lost }: Grade): Lost | null {
  const [deed] = deeds
  if (name === 'careful' || (deed === undefined && name !== 'careless')) return {}
  switch (name) {
    case 'mends':
      return { recording: 1 }
    // Told when it is keyed, and once more when people are let in with it. What is judged by a wrong figure is judged wrong.
    case 'leaves':
      return deed === 'reading'
        ? { recording: 1, judging: lost.filter(({ skill }) => skill === 'judging').length }
        : { recording: 1, safety: Math.min(1, unsafe.length) }
    // What was not looked at cannot be told either, and the name of it is another deed.
    case 'skips':
      return deed === 'look' ? { safety: 1 } : null
    case 'misjudges':
      return { judging: lost.filter(({ skill }) => skill === 'judging').length }
    case 'misnames':
      return { diagnosing: 1 }
    case 'asksHints':
      return { diagnosing: deeds.length }
    default:
      return null
  }
}

function accused({ lost }: Grade, due: Lost | null): string[] {
  if (due === null) return []
  return SKILLS.flatMap((skill) => {
    const marks = lost.filter((one) => one.skill === skill).length
    return marks === (due[skill] ?? 0) ? [] : [`${marks} marks of ${skill} lost, ${due[skill] ?? 0} due`]
  })
}

function mayPass(name: Name, deeds: readonly Deed[], grade: Grade): boolean {
  const [deed] = deeds
  const isHiding = (grade.hidden ?? []).length > 0
  switch (name) {
    case 'careful':
    case 'mends':
      return true
    case 'careless':
      return isHiding ? false : grade.isPassed
    case 'misnames':
      return false
    case 'passesFalse':
      return deed === undefined
        ? true
        : deed === 'false'
          ? false
          : grade.isPassed && grade.unsafe.length === 0
    case 'leaves':
    case 'skips':
    case 'misjudges':
    case 'asksHints':
      if (deed === undefined) return true
      if (deed === 'look') return false
      // By the share of the marks, which the rules of the sheet are tested for.
      return grade.isPassed && grade.safety !== 'failed'
  }
}
