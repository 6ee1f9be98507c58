// Progress over sessions: what each came to, which skill is weakest of late, the level to go on with, and which faults are to come back.
// Worked out anew from the sheets each time; nothing of it is kept.
import { LEVELS, type Level } from '../job/practice.ts'
import { drawFaults } from './draw.ts'
import type { Fault } from './fault.ts'
import type { Grade, Score } from './grade.ts'
import { SKILLS, type Skill } from './marks.ts'

export interface Progress {
  /** In the order they were worked. */
  readonly sessions: readonly Grade[]
  /** Of the last few sessions together. */
  readonly scores: readonly Score[]
  readonly weakest: Skill | null
  /** To go on with. */
  readonly level: Level
  /** Ids of faults that were missed and are to be met again now, the longest due first. */
  readonly due: readonly string[]
}

/** Sessions that a skill is told from: the last ones. Invented for practice. */
const OF_LATE = 5
/** Passed this often in a row at a level, the next one is due. Invented for practice. */
const IN_A_ROW = 2
/**
 * A fault that was missed comes back after so many sessions; each time it is then found, after the next of these; found after the last,
 * no more. Widening spaces as in graduated recall (P. Pimsleur, Modern Language Journal 51(2), 1967, from memory); the numbers are invented for practice.
 */
const SPACES = [1, 3, 8] as const

/** Sessions in the order they were worked; those that were left before their end count for nothing. */
export function progressOf(all: readonly Grade[]): Progress {
  const sessions = all.filter(({ isOver }) => isOver)
  const late = sessions.slice(-OF_LATE)
  const scores = SKILLS.map((skill): Score => {
    const own = late.flatMap((one) => one.scores.filter((score) => score.skill === skill))
    const sum = (of: 'right' | 'of') => own.reduce((total, one) => total + one[of], 0)
    return { skill, right: sum('right'), of: sum('of') }
  })
  const [weakest] = scores
    .filter(({ right, of }) => right < of)
    .sort((a, b) => a.right / a.of - b.right / b.of)
  return {
    sessions,
    scores,
    weakest: weakest?.skill ?? null,
    level: levelAfter(sessions),
    due: dueAfter(sessions),
  }
}

/** One above the highest that was passed often enough in a row. */
function levelAfter(sessions: readonly Grade[]): Level {
  const ready = LEVELS.filter((level) => {
    const last = sessions.filter((one) => one.level === level).slice(-IN_A_ROW)
    return last.length === IN_A_ROW && last.every(({ isPassed }) => isPassed)
  }).at(-1)
  return LEVELS.find((level) => level === (ready ?? 0) + 1) ?? LEVELS[LEVELS.length - 1] ?? 5
}

function dueAfter(sessions: readonly Grade[]): string[] {
  const standing = new Map<string, { last: number; found: number }>()
  for (const [n, { hidden }] of sessions.entries())
    for (const { id, isNamed } of hidden) {
      const before = standing.get(id)
      if (!isNamed) standing.set(id, { last: n, found: 0 })
      else if (before !== undefined) standing.set(id, { last: n, found: before.found + 1 })
    }
  return [...standing]
    .map(([id, { last, found }]) => ({
      id,
      over: sessions.length - last - (SPACES[found] ?? Number.POSITIVE_INFINITY),
    }))
    .filter(({ over }) => over >= 0)
    .sort((a, b) => b.over - a.over)
    .map(({ id }) => id)
}

/** A seed from `from` on that hides what is due, or `from` itself where nothing is, or where none of the next ones does at that level. */
export function seedFor(due: readonly string[], all: readonly Fault[], level: Level, from: number): number {
  const first = due.find((id) => all.some((fault) => fault.id === id))
  if (first === undefined) return from
  for (let seed = from; seed < from + SEEDS_TRIED; seed++)
    if (drawFaults(all, seed, level).includes(first)) return seed
  return from
}

const SEEDS_TRIED = 5000

export function progressLines({ sessions, scores, weakest, level, due }: Progress): string[] {
  if (sessions.length === 0) return ['No practice session is in this folder yet.']
  return [
    `${sessions.length} practice ${sessions.length === 1 ? 'session' : 'sessions'}, in the order they were worked`,
    ...sessions.map(
      ({ seed, level: at, safety, isPassed }) =>
        `  level ${at}  seed ${seed}  safety ${safety}  ${isPassed ? 'passed' : 'NOT passed'}`,
    ),
    `Of the last ${Math.min(OF_LATE, sessions.length)} together`,
    ...scores.map(
      ({ skill, right, of }) =>
        `  ${skill.padEnd(11)} ${of === 0 ? 'did not come up' : `${right} of ${of} right`}`,
    ),
    ...(weakest === null ? [] : [`Weakest: ${weakest}`]),
    `Go on with level ${level}.`,
    // Which ones is not told: they are to be found.
    ...(due.length === 0
      ? []
      : [`${due.length} of what was missed ${due.length === 1 ? 'comes' : 'come'} back now.`]),
  ]
}
