// The sheet of a practice session: safety apart, then a score by skill, what was hidden, and what to practise next. From the log alone.
import type { Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { fold, opening } from '../job/fold.ts'
import { gatesOf } from '../job/gate.ts'
import { askedOf, type PracticeState } from '../job/practice.ts'
import { allOf } from '../job/seen.ts'
import type { State } from '../job/state.ts'
import { hiddenMachine } from './ask.ts'
import { type Age, ageOf } from './edition.ts'
import { type ExpectedFound, expectedFound } from './expected-found.ts'
import { faultById } from './faults.ts'
import { readingMade, type Slip, slipsAfter } from './grade-slips.ts'
import { lessonOn } from './lesson.ts'
import { type Lesson, SKILLS, type Skill } from './marks.ts'

export interface Score {
  readonly skill: Skill
  readonly right: number
  readonly of: number
}

export interface Lost {
  readonly skill: Skill
  readonly at: string
  readonly says: string
  /** It was put right since. */
  readonly isMended?: true
}

export type Mended = Readonly<Partial<Record<Skill, number>>>

export interface Grade {
  readonly procedure: string
  readonly seed: number
  readonly level: number
  /** Initials of whoever practised: the first who signed on; null: nobody did. */
  readonly who: string | null
  /** Of the list of faults it was opened with, and how that stands to today's. */
  readonly edition: string | null
  readonly age: Age
  /** Of a scenario that an instructor wrote. */
  readonly scenario: { readonly id: string; readonly title: string } | null
  /** What its instructor expected, and whether it was found; nothing is graded by it. */
  readonly expected: readonly ExpectedFound[]
  /** `failed`: a line of a hold point on false or missing evidence. `not reached`: none was complete, and nothing seen called for a STOP. */
  readonly safety: 'passed' | 'failed' | 'not reached'
  /** Entries by which it was failed, with the first sentence on each. */
  readonly unsafe: readonly { readonly seq: number; readonly says: string }[]
  readonly scores: readonly Score[]
  /** Each mark that was lost: of which skill, where, and the first sentence on it. */
  readonly lost: readonly Lost[]
  /** It ended at a STOP before what the procedure is for: the rest was not practised, and no level is raised by it. */
  readonly isShort: boolean
  readonly hints: number
  /** Slips of the keys, and figures that nobody measured, which were put right: of these one fails nobody in its skill, however little came up. */
  readonly mended: Mended
  /** What was hidden, and whether it was named; null before anything was named, as the session can be taken up again. */
  readonly hidden: readonly { readonly id: string; readonly name: string; readonly isNamed: boolean }[] | null
  /** The weakest skill of those that came up; null where all was right, or nothing came up. */
  readonly weakest: Skill | null
  /** Never of a session that is not over, nor of one in which what was hidden was not named. */
  readonly isPassed: boolean
  /** What was hidden was named: what came of it counts. */
  readonly isOver: boolean
}

/** A skill is passed from this share on, hints counted: our own figure, invented for practice. */
export const ENOUGH = 0.8

/** Passed this often in a row at a level, the next one is due. Invented for practice. */
export const IN_A_ROW = 2

/** Entries by which nobody goes in. */
const STOPPING: readonly Entry['type'][] = ['stop.raised', 'evidence.failed', 'machine.mismatched']

/** Null for a log that is no practice session. */
export function gradeOf(defs: Definitions, entries: readonly Entry[]): Grade | null {
  const [first, ...rest] = entries
  if (first === undefined || first.type !== 'job.opened' || first.practice === undefined) return null
  let state: State = opening(first)
  const marks = Object.fromEntries(SKILLS.map((skill) => [skill, { right: 0, of: 0 }])) as Record<
    Skill,
    { right: number; of: number }
  >
  const unsafe: { seq: number; says: string }[] = []
  const lost: LostAt[] = []
  let isStopped = false
  let slips: readonly Slip[] = []
  const mended: Partial<Record<Skill, number>> = {}
  let who: string | null = null
  const seen = new Map<string, readonly string[]>()
  for (const entry of rest) {
    state = fold(state, entry)
    who ??= state.doer
    if (entry.type === 'finding.observed' || entry.type === 'finding.corrected')
      seen.set(entry.step, allOf(entry))
    const lesson = lessonOn(defs, state, entry)
    let wrongs = 0
    const of = askedOf(entry) ?? state.practice?.kept?.place ?? null
    const reading = readingMade(state, entry, of)
    for (const { skill, isRight } of lesson?.marks ?? []) {
      marks[skill].of += 1
      if (isRight) marks[skill].right += 1
      else
        lost.push({
          skill,
          at: whereOf(defs, state, entry),
          says: lostTold(lesson?.says ?? [], wrongs++),
          of,
          reading,
        })
    }
    // What was keyed at a hold point as it was there is recording as well: one slip that was put right is one of them all.
    if (entry.type === 'evidence.given' && wrongs === 0 && (lesson?.marks.length ?? 0) > 0) {
      marks.recording.of += 1
      marks.recording.right += 1
    }
    if (lesson?.isPutRight === true) markMended(lost, { of, reading: null, skills: ['diagnosing'] })
    const slip = of === null || wrongs === 0 ? null : { of, reading, skills: slipsOf(lesson) }
    const now = slipsAfter(slips, state, entry, of, slip)
    slips = now.open
    for (const one of now.mended) {
      for (const skill of one.skills) mended[skill] = (mended[skill] ?? 0) + 1
      markMended(lost, one)
    }
    if (entry.type === 'practice.hinted')
      lost.push({
        skill: 'diagnosing',
        at: whereOf(defs, state, entry),
        says: 'a hint was asked for',
        of: null,
        reading: null,
      })
    if (lesson?.isUnsafe === true) unsafe.push({ seq: entry.seq, says: lesson.says[0] ?? '' })
    if (STOPPING.includes(entry.type) && lesson?.marks.some(({ isRight }) => isRight) === true)
      isStopped = true
  }
  const { practice } = state
  if (practice === null) return null
  // A hint counts as one answer of its skill that was not known: it is told under diagnosing, where most are asked for.
  marks.diagnosing.of += practice.hints
  const { faults } = hiddenMachine(defs, practice)
  // Where a procedure has no hold point the plate is all there is of it.
  const wasIn =
    gatesOf(defs).length === 0
      ? state.machineNamed
      : Object.values(state.gates).some(({ status }) => status !== 'never')
  const safety = unsafe.length > 0 ? 'failed' : wasIn || isStopped ? 'passed' : 'not reached'
  const scores = SKILLS.map((skill) => ({ skill, ...marks[skill] }))
  const weak = scores.filter(({ of, right }) => of > 0 && right < of).sort((a, b) => shareOf(a) - shareOf(b))
  return {
    procedure: defs.procedure.procedure,
    seed: practice.seed,
    level: practice.level,
    who,
    edition: practice.edition ?? null,
    age: ageOf(defs, practice),
    scenario: defs.scenario === undefined ? null : { id: defs.scenario.scenario, title: defs.scenario.title },
    expected: expectedFound(defs, practice, seen, isStopped),
    safety,
    unsafe,
    scores,
    lost: lost.map(({ of: _of, reading: _reading, ...one }) => one),
    isShort: isShort(defs, practice, marks.measuring.of),
    hints: practice.hints,
    mended,
    hidden: hiddenIn(practice.named, faults),
    weakest: weak[0]?.skill ?? null,
    isOver: practice.named !== null,
    isPassed:
      isAllNamed(practice.named, faults) &&
      safety === 'passed' &&
      scores.every((one) => isEnough(one, mended)),
  }
}

interface LostAt extends Lost {
  readonly of: string | null
  readonly reading: number | null
}

/** All marks that were lost by one reading; of all else the last of each skill that was lost there. */
function markMended(
  lost: LostAt[],
  { of, reading, skills }: Omit<Slip, 'of'> & { readonly of: string | null },
): void {
  const met = new Set(
    reading === null
      ? skills.map((skill) => lost.findLast((one) => one.of === of && one.skill === skill))
      : lost.filter((one) => one.reading === reading),
  )
  for (const [at, one] of lost.entries()) if (met.has(one)) lost[at] = { ...one, isMended: true }
}

/** What can be put right of an answer as a slip: a figure keyed otherwise than it was shown, or never measured. */
function slipsOf(lesson: Lesson | null): readonly Skill[] {
  const wrongs = (lesson?.marks ?? []).filter(({ isRight }) => !isRight).map(({ skill }) => skill)
  return wrongs.filter(
    (skill) => skill === 'recording' || (skill === 'measuring' && lesson?.isUnmeasured === true),
  )
}

/** All that was hidden, and nothing else: to name the whole list finds nothing. */
function isAllNamed(named: readonly string[] | null, hidden: readonly string[]): boolean {
  return named !== null && named.length === hidden.length && hidden.every((id) => named.includes(id))
}

/** Nothing was measured where the procedure measures; or not a line of a hold point was keyed where it has one. */
function isShort(defs: Definitions, { answered }: PracticeState, measured: number): boolean {
  const hasReadings = defs.steps.some(({ step }) => step.kind === 'read')
  const wasAtGate = Object.keys(answered).some((of) => of.includes('/'))
  return (hasReadings && measured === 0) || (gatesOf(defs).length > 0 && !wasAtGate)
}

/** `sheet 11`, or what else it was about. */
function whereOf(defs: Definitions, { practice }: State, entry: Entry): string {
  if (entry.type === 'practice.named') return 'what was hidden'
  if (entry.type === 'machine.named' || entry.type === 'machine.mismatched') return 'the plate'
  const id = 'step' in entry ? entry.step : (practice?.kept?.step ?? null)
  const placed = defs.steps.find((one) => one.id === id)
  return placed === undefined ? `entry ${entry.seq}` : `sheet ${placed.number}`
}

/** Why the nth of them is wrong, without that word; of what was named that is the sentence behind it. */
function lostTold(says: readonly string[], nth: number): string {
  const wrong = says.filter((one) => /^wrong\b/i.test(one))
  const told = (wrong[nth] ?? wrong[0] ?? says[0] ?? '').replace(/^wrong[.:]? */i, '')
  const named = says.filter((one) => one.startsWith('Not '))
  return (named.length > 0 ? named.join(' ') : told).replace(/\.$/, '')
}

function hiddenIn(named: readonly string[] | null, faults: readonly string[]): Grade['hidden'] {
  return named === null
    ? null
    : faults.map((id) => ({ id, name: faultById(id).name, isNamed: named.includes(id) }))
}

/** Whether a skill is passed, or did not come up. A STOP ends some sessions after two lines: one slip there, put right, is half of all. */
export function isEnough({ skill, right, of }: Score, mended: Mended): boolean {
  const spared = Math.min(1, mended[skill] ?? 0)
  return right + spared >= of * ENOUGH
}

function shareOf({ right, of }: Score): number {
  return of === 0 ? 1 : right / of
}
