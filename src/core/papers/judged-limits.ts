// Which limits a job judges by, and whether a question asks for them without naming one: how much wear is allowed.
import { characteristicOf } from '../definition/characteristics.ts'
import type { Definitions } from '../job/definitions.ts'
import { aboutOf, asksLimit, stem } from './ask-words.ts'
import { judgedIds } from './limit-passages.ts'
import { type Passage, passagesOf } from './passages.ts'

/** Words that ask how far a part may go and name no limit of their own. */
const GENERAL = new Set(
  (
    'wear worn wearing bore cylinder liner size diameter limit tolerance maximum max minimum min permitted permissible ' +
    'acceptable accepted accept verdict judged judge wrong biggest largest smallest highest lowest'
  )
    .split(' ')
    .map(stem),
)

/** Without one of these, how far and how many may be after anything. */
const FOR_A_LIMIT =
  /\b(?:limits?|allow(?:ed)?|tolera\w+|permi\w+|max(?:imum)?|worn|wear|acceptable|too (?:much|many|big|far|large|small|little|worn|bad)|still (?:good|ok|okay|right)|(?:biggest|largest|smallest|highest|lowest) (?:it|this|that|the \w+) (?:can|may|could|should) (?:be|go))\b/i

/** Whether a question is for a limit and leaves open for which. */
export function asksAnyLimit(question: string): boolean {
  return (
    asksLimit(question) && FOR_A_LIMIT.test(question) && aboutOf(question).every((word) => GENERAL.has(word))
  )
}

/** The limits that count in this job, those of the verdict to come next before the others. */
export function judgedLimits(defs: Definitions, from: number | null): Passage[] {
  const all = passagesOf(defs)
  return judgedIds(defs, from).flatMap((id) => all.filter(({ limits }) => limits === id))
}

/** What is judged and has no limit on record: it is HOLD, and nobody may think of a figure for it. */
export function unlimited(defs: Definitions, from: number | null): string[] {
  const has = new Set(judgedLimits(defs, from).map(({ limits }) => limits))
  return judgedIds(defs, from).flatMap((id) => (has.has(id) ? [] : [characteristicOf(id).label]))
}
