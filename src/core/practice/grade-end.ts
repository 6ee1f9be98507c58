// The end of a session in a few lines: what it came to, what it failed by, and what is next. For a screen that the whole sheet is longer than.
import { ENOUGH, type Grade, isEnough } from './grade.ts'
import { cameTo, nextTold } from './grade-lines.ts'

/** Each a sentence or less; the word it came to first. */
export function endLines(grade: Grade): readonly string[] {
  const failed = failedBy(grade)
  return [
    `${cameTo(grade)}`,
    ...(failed.length === 0 ? [] : [`Not enough: ${failed.join('; ')}.`]),
    nextTold(grade),
  ]
}

/** What keeps it from being passed; nothing of a session that is not over, as its marks are not all there. */
function failedBy(grade: Grade): readonly string[] {
  if (!grade.isOver || grade.isPassed) return []
  const { safety, scores, mended, hidden, lost } = grade
  const low = scores
    .filter((one) => !isEnough(one, mended))
    .map(({ skill, right, of }) => `${skill} ${right} of ${of}, ${ENOUGH * 100} % wanted`)
  const missed = (hidden ?? []).filter(({ isNamed }) => !isNamed).length
  const isExtra = missed === 0 && lost.some(({ at }) => at === NAMING)
  return [
    ...(safety === 'passed' ? [] : [`safety ${safety}`]),
    ...low,
    ...(missed === 0 ? [] : [`${missed} hidden and NOT named`]),
    ...(isExtra ? ['something named that was not hidden'] : []),
  ]
}

/** Where the marks of naming stand on a sheet. */
const NAMING = 'what was hidden'
