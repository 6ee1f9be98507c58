// Progress of one person over sessions: what each came to, which skill is weakest of late, the level to go on with, and which faults are to come back.
// Worked out anew from the sheets each time; nothing of it is kept.
import { LEVELS, type Level } from '../job/practice.ts'
import { drawFaults } from './draw.ts'
import type { Fault, Shows } from './fault.ts'
import { type Grade, IN_A_ROW, isEnough, type Score } from './grade.ts'
import { SKILLS, type Skill } from './marks.ts'

export interface Progress {
  /** Whose it is: initials; null: of sessions in which nobody signed on. */
  readonly who: string | null
  /** In the order they were worked. */
  readonly sessions: readonly Grade[]
  /** Of the last few sessions together. */
  readonly scores: readonly Score[]
  readonly weakest: Skill | null
  /** To go on with. */
  readonly level: Level
  /** Ids of faults that were missed and are to be met again now, the longest due first. */
  readonly due: readonly string[]
  /** Skills that were not enough and are to be asked for again now, the longest due first. */
  readonly dueSkills: readonly Skill[]
}

/** Sessions that a skill is told from: the last ones. Invented for practice. */
const OF_LATE = 5
/**
 * What was missed comes back after so many sessions; each time it is then found, after the next of these; found after the last,
 * no more. Widening spaces as in graduated recall (P. Pimsleur, Modern Language Journal 51(2), 1967, from memory); the numbers are invented for practice.
 */
const SPACES = [1, 3, 8] as const

/** Everybody who practised, whoever did it last first. */
export function peopleIn(all: readonly Grade[]): readonly (string | null)[] {
  return [
    ...new Set(
      all
        .filter(({ isOver }) => isOver)
        .map(({ who }) => who)
        .reverse(),
    ),
  ]
}

/**
 * Of one person. Sessions in the order they were worked; those that were left before their end count for nothing, and of one whose
 * machine is built otherwise today nothing but that it was.
 */
export function progressOf(all: readonly Grade[], who: string | null): Progress {
  const sessions = all.filter((one) => one.isOver && one.who === who)
  const counted = sessions.filter(({ age }) => age !== 'other-build')
  const late = counted.slice(-OF_LATE)
  const scores = SKILLS.map((skill): Score => {
    const own = late.flatMap((one) => one.scores.filter((score) => score.skill === skill))
    const sum = (of: 'right' | 'of') => own.reduce((total, one) => total + one[of], 0)
    return { skill, right: sum('right'), of: sum('of') }
  })
  const [weakest] = scores
    .filter(({ right, of }) => right < of)
    .sort((a, b) => a.right / a.of - b.right / b.of)
  return {
    who,
    sessions,
    scores,
    weakest: weakest?.skill ?? null,
    level: levelAfter(counted),
    due: dueAfter(
      counted.map(({ hidden }) => (hidden ?? []).map(({ id, isNamed }) => [id, isNamed] as const)),
    ),
    dueSkills: dueAfter(counted.map(skillsIn)),
  }
}

/** Skills that came up, and whether they were enough. */
function skillsIn({ scores, safety, mended }: Grade): (readonly [Skill, boolean])[] {
  return scores.flatMap((score) => {
    const { skill, of } = score
    if (of === 0) return []
    return [[skill, isEnough(score, mended) && !(skill === 'safety' && safety === 'failed')] as const]
  })
}

/** One above the highest that was passed often enough in a row; never below one that was passed, as somebody may begin where they are. */
function levelAfter(sessions: readonly Grade[]): Level {
  const passed = Math.max(
    0,
    ...sessions.filter((one) => one.isPassed && !one.isShort).map(({ level }) => level),
  )
  const ready = LEVELS.filter((level) => {
    // One that ended at its STOP was right, and says nothing of the rest of its level.
    const last = sessions
      .filter((one) => one.level === level && !(one.isShort && one.isPassed))
      .slice(-IN_A_ROW)
    return last.length === IN_A_ROW && last.every(({ isPassed }) => isPassed)
  }).at(-1)
  const due = Math.max(passed, (ready ?? 0) + 1)
  return LEVELS.find((level) => level === due) ?? LEVELS[LEVELS.length - 1] ?? 5
}

/** Of what came up in each session, and whether it was found. */
function dueAfter<T extends string>(sessions: readonly (readonly (readonly [T, boolean])[])[]): T[] {
  const standing = new Map<T, { last: number; found: number }>()
  for (const [n, came] of sessions.entries())
    for (const [id, isFound] of came) {
      const before = standing.get(id)
      if (!isFound) standing.set(id, { last: n, found: 0 })
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

/** How what a skill is for shows; what is recorded right or wrong is recorded on every machine. */
const SHOWN_BY: Readonly<Record<Skill, Shows | null>> = {
  safety: 'stop',
  measuring: 'measuring',
  judging: 'figures',
  diagnosing: 'seen',
  recording: null,
}

/**
 * A seed from `from` on that hides what is due, a fault before a skill, or `from` itself where nothing is, or where none of the next
 * ones does at that level.
 */
export function seedFor(
  { due, dueSkills }: Pick<Progress, 'due' | 'dueSkills'>,
  all: readonly Fault[],
  level: Level,
  from: number,
): number {
  const first = due.find((id) => all.some((fault) => fault.id === id))
  const [shows] = dueSkills.flatMap((skill) => SHOWN_BY[skill] ?? [])
  const wanted = all.filter((fault) => (first === undefined ? fault.shows === shows : fault.id === first))
  if (wanted.length === 0) return from
  for (let seed = from; seed < from + SEEDS_TRIED; seed++) {
    const drawn = drawFaults(all, seed, level)
    if (wanted.some(({ id }) => drawn.includes(id))) return seed
  }
  return from
}

const SEEDS_TRIED = 5000

export function progressLines({ who, sessions, scores, weakest, level, due, dueSkills }: Progress): string[] {
  if (sessions.length === 0)
    return [
      'No practice session in this folder has come to its sheet yet. One that is open counts once it has.',
    ]
  const counted = sessions.filter(({ age }) => age !== 'other-build').length
  const again = due.length + dueSkills.length
  return [
    `Progress of ${who ?? 'nobody who signed on'}: ${sessions.length} practice ${sessions.length === 1 ? 'session' : 'sessions'}, in the order they were worked`,
    ...sessions.map(sessionLine),
    `Of the last ${Math.min(OF_LATE, counted)} together`,
    ...scores.map(
      ({ skill, right, of }) =>
        `  ${skill.padEnd(11)} ${of === 0 ? 'did not come up' : `${right} of ${of} right`}`,
    ),
    ...(weakest === null ? [] : [`Weakest: ${weakest}`]),
    `Go on with level ${level}.`,
    // Which ones is not told: they are to be found.
    ...(again === 0 ? [] : [`${again} of what was missed ${again === 1 ? 'comes' : 'come'} back now.`]),
  ]
}

function sessionLine({ procedure, seed, level, safety, isPassed, age, scenario }: Grade): string {
  const machine = scenario === null ? `seed ${seed}` : `scenario ${scenario.id}`
  const what = `${procedure.replaceAll('_', '-')}  level ${level}  ${machine}`
  const came = `safety ${safety}  ${isPassed ? 'passed' : 'NOT passed'}`
  switch (age) {
    case 'same':
      return `  ${what}  ${came}`
    case 'other-list':
      return `  ${what}  ${came}  older edition: that seed draws another machine now`
    case 'other-build':
      return `  ${what}  older edition: its machine is built otherwise now, so it counts for nothing`
  }
}
