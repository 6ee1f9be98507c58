// The sheet of a practice session in lines: what it came to, each mark that was lost and whether it was put right since, and what is next.
import { EDITION, editionTold } from './edition.ts'
import { ENOUGH, type Grade, IN_A_ROW, isEnough, type Lost, type Mended, type Score } from './grade.ts'
import type { Skill } from './marks.ts'

/** The sheet in lines. */
export function gradeLines(grade: Grade): string[] {
  const { seed, level, safety, unsafe, scores, hints, mended, hidden, who, scenario } = grade
  return [
    `Sheet of the session${who === null ? '' : ` of ${who}`}: seed ${seed}, level ${level}`,
    ...(scenario === null ? [] : [`Scenario of an instructor: ${scenario.title}`]),
    ...ageLines(grade),
    `Safety, apart from all else: ${safety.toUpperCase()}`,
    ...unsafe.map((one) => `  entry ${one.seq}: ${one.says}`),
    ...scores.map((one) => `  ${one.skill.padEnd(11)} ${scoreTold(one, mended)}${mendedTold(one, mended)}`),
    `Pass mark: ${ENOUGH * 100} % of each of them that came up, safety not failed, and what was hidden named: all of it, and nothing else.`,
    ...lostLines(grade.lost),
    ...(hints === 0 ? [] : [`  ${hints} ${hints === 1 ? 'hint' : 'hints'}, each counted as one not known`]),
    ...hiddenLines(hidden),
    ...(grade.isOver ? grade.expected : []).map(
      ({ says, isFound }) => `Expected: ${says}; ${isFound ? 'found' : 'NOT found'}`,
    ),
    cameTo(grade),
    ...(grade.isShort && grade.isOver
      ? ['It ended before anything else was practised: no level is raised by it.']
      : []),
    nextTold(grade),
    againTold(grade),
  ]
}

/** The same of one sheet stands once, with how often: a hurried hand loses a mark at each repeat. */
function lostLines(lost: readonly Lost[]): string[] {
  const times = new Map<string, number>()
  for (const { skill, at, says, isMended } of lost) {
    const line = JSON.stringify([
      `  lost, ${skill}, ${at}`,
      `${says}${isMended === true ? '; put right since' : ''}`,
    ])
    times.set(line, (times.get(line) ?? 0) + 1)
  }
  return [...times].map(([line, often]) => {
    const [where, says] = JSON.parse(line) as [string, string]
    return `${where}${often === 1 ? '' : `, ${often} times`}: ${says}`
  })
}

/** What it is worth in one word, as on every other sheet in brackets. */
export function cameTo({ isOver, isPassed }: Pick<Grade, 'isOver' | 'isPassed'>): string {
  if (!isOver) return '( NOT OVER )  Nothing was named yet: it counts for nothing until then.'
  return isPassed ? '( PASSED )' : '( NOT PASSED )'
}

function hiddenLines(hidden: Grade['hidden']): string[] {
  if (hidden === null)
    return ['What is hidden is told once it was named: take the session up again, and key fault.']
  if (hidden.length === 0) return ['Hidden on this machine: nothing']
  return hidden.map(({ name, isNamed }) => `Hidden: ${name}; ${isNamed ? 'named' : 'NOT named'}`)
}

/** Plainly, where its number stands for another machine today. */
function ageLines({ age, edition }: Grade): string[] {
  if (age === 'same') return []
  const was = `Opened with ${editionTold(edition)} of what can be hidden; today it is ${EDITION}.`
  return age === 'other-list'
    ? [`${was} Its seed draws another machine now.`]
    : [`${was} Its seed and its figures are of another machine now: its marks are not to be relied on.`]
}

export function againTold({ scenario, age, procedure, seed, level }: Grade): string {
  if (scenario !== null) return `The same machine again: barover practice with the file of ${scenario.id}`
  if (age !== 'same') return 'No seed brings the same machine again.'
  return `The same machine again: barover practice ${procedure.replaceAll('_', '-')} --seed ${seed} --level ${level}`
}

/** `1 of 2 right, 50 %: BELOW the pass mark`. */
function scoreTold(score: Score, mended: Mended): string {
  const { right, of } = score
  if (of === 0) return 'did not come up'
  // Down to a whole one: nobody reads 80 % who has less.
  const share = Math.floor((right / of) * 100 + 1e-9)
  return `${right} of ${of} right, ${share} %${isEnough(score, mended) ? '' : ': BELOW the pass mark'}`
}

function mendedTold({ skill }: Score, mended: Mended): string {
  const often = mended[skill] ?? 0
  if (often === 0) return ''
  const many =
    often === 1
      ? 'one slip was put right: the mark it cost'
      : `${often} slips were put right: the mark of one`
  return `; ${many} is not counted against the pass mark`
}

const NEXT: Readonly<Record<Skill, string>> = {
  safety: 'the hold point: look at each line before you key it, and key what is there',
  measuring: 'measuring: as the sheet says how, each repeat anew',
  judging:
    'judging: how much of its own limit each figure has used, a size counted from nominal; the largest share governs',
  diagnosing: 'diagnosing: what each look and each pair of figures says of the machine',
  recording: 'recording: what the instrument shows, as it shows it',
}

export function nextTold({
  weakest,
  safety,
  level,
  isOver,
  isShort: endedEarly,
}: Pick<Grade, 'weakest' | 'safety' | 'level' | 'isOver' | 'isShort'>): string {
  if (safety === 'failed') return `Practise next: ${NEXT.safety}.`
  if (!isOver) return 'Practise next: the rest of this one.'
  if (weakest !== null) return `Practise next: ${NEXT[weakest]}.`
  if (safety === 'not reached') return 'Practise next: this level, as far as its first hold point.'
  if (endedEarly) return 'Practise next: another seed of this level, for what lies behind the STOP.'
  // Whether it was passed before nobody knows here: as `progressOf` counts.
  return level < 5
    ? `Practise next: another seed of level ${level}. Level ${level + 1} comes once level ${level} was passed ${IN_A_ROW} times in a row.`
    : 'Practise next: another seed of this level.'
}
