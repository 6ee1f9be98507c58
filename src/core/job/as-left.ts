// From a verdict as found to the part as it was left: what a lead decided about it, and the verdict of a later measurement of
// the same thing, where there is one. What was to be renewed or worked on and was not measured again has no verdict as left; nor
// has what was read again and held against no limit, which is told apart from it.
import { assertNever } from '../lib/result.ts'
import { type VerdictWord, worst } from '../metrology/verdict.ts'
import { type Change, changesOf } from './changes.ts'
import { asKind, type Definitions, type PlacedStep } from './definitions.ts'
import { applicability } from './next.ts'
import { decidedAbout } from './nonconformance.ts'
import { placeResult } from './places.ts'
import { type DispositionState, type State, standingVerdict } from './state.ts'
import { refersTo } from './values.ts'

export interface Course {
  readonly judge: PlacedStep
  readonly found: VerdictWord
  readonly decided: DispositionState | null
  /** The last judge step that looked at the same thing again. */
  readonly again: PlacedStep | null
  /** It is itself the second look at what an earlier step judged. */
  readonly isAgain: boolean
  /** Null: it was to be worked on or renewed, and no verdict tells how it went back. */
  readonly left: VerdictWord | null
  /** With no verdict as left: what was read as left behind the decision all the same. */
  readonly readAgain: readonly Change[]
}

/** Choices after which a part is another than the one that was judged. */
export const CHANGES_IT: readonly string[] = ['rework', 'repair', 'replace']

/** Every standing verdict, in the order of the job. */
export function coursesOf(defs: Definitions, state: State): Course[] {
  const judged = defs.steps.flatMap((judge) => {
    if (judge.step.kind !== 'judge' || applicability(defs, state, judge) === 'skip') return []
    const stands = standingVerdict(state, judge.id)
    return stands === null ? [] : [{ judge, found: stands.verdict.result.verdict }]
  })
  return judged.map(({ judge, found }, at) => {
    const again = judged.slice(at + 1).findLast((later) => looksAgain(defs, judge, later.judge))
    const decided = decidedAbout(state, judge.id)
    const own = decided !== null && CHANGES_IT.includes(decided.choice) ? null : found
    const left = again === undefined ? own : again.found
    return {
      judge,
      found,
      decided,
      again: again?.judge ?? null,
      isAgain: judged.slice(0, at).some((earlier) => looksAgain(defs, earlier.judge, judge)),
      left,
      readAgain: left === null ? readAgain(defs, state, judge, decided) : [],
    }
  })
}

/** Places read as left behind the decision, of the things that the judge looked at. */
function readAgain(
  defs: Definitions,
  state: State,
  judge: PlacedStep,
  decided: DispositionState | null,
): Change[] {
  const looked = new Set(refersTo(defs, judge))
  const changes = changesOf(defs, state)
  const things = new Set(
    changes.flatMap(({ of, found }) => (found !== null && looked.has(found.step.id) ? [of] : [])),
  )
  return changes.filter(({ of, left }) => {
    if (left === null || looked.has(left.step.id) || !things.has(of)) return false
    return placeResult(left.step, left.place, state).readings.every(({ seq }) => seq > (decided?.seq ?? 0))
  })
}

/** All that the earlier one was held against, measured once more: as left, or as the same part of the procedure asks anew. */
function looksAgain(defs: Definitions, earlier: PlacedStep, later: PlacedStep): boolean {
  const seen = new Set(heldAgainst(later))
  if (!heldAgainst(earlier).every((one) => seen.has(one))) return false
  if (earlier.scope === later.scope) return true
  const ids = refersTo(defs, later)
  return defs.steps.some(
    ({ id, step }) => step.kind === 'read' && step.stage === 'as_left' && ids.includes(id),
  )
}

/** Characteristics without their side: a least and a most bound the same thing. */
function heldAgainst(judge: PlacedStep): string[] {
  const { step } = asKind(judge, 'judge')
  switch (step.compute) {
    case 'bore_form':
      return [...step.against]
    case 'figures':
      return step.figures.map(({ characteristic }) => characteristic.replace(/-least$/, ''))
    case 'pocket_setting':
      return ['pocket setting']
    default:
      return assertNever(step)
  }
}

export interface Whole {
  readonly found: VerdictWord
  /** Worst of what was left and judged; null where nothing of it was. */
  readonly left: VerdictWord | null
  /** How many were to be worked on or renewed and not measured again. */
  readonly unmeasured: number
  /** How many of them were read again, and held against no limit. */
  readonly unjudged: number
  /** Something was done about a verdict: as found and as left are two things. */
  readonly changed: boolean
}

/** Null where nothing was judged. */
export function wholeOf(courses: readonly Course[]): Whole | null {
  const found = courses.filter(({ isAgain }) => !isAgain).map((one) => one.found)
  if (found.length === 0) return null
  const last = courses.filter(({ again }) => again === null)
  const left = last.flatMap((one) => one.left ?? [])
  const without = last.filter((one) => one.left === null)
  const unjudged = without.filter((one) => one.readAgain.length > 0).length
  return {
    found: worst(found),
    left: left.length === 0 ? null : worst(left),
    unmeasured: without.length - unjudged,
    unjudged,
    changed: courses.some((one) => one.again !== null || one.left !== one.found),
  }
}

const NOT_MEASURED = 'not measured again'
const NOT_JUDGED = 'read again, not judged'

/** `ACCEPT`, `ACCEPT, and 1 not measured again`, `ACCEPT, and 1 read again, not judged`. */
export function leftText({ left, unmeasured, unjudged }: Whole): string {
  const counted = [
    ...(unmeasured === 0 ? [] : [`${unmeasured} ${NOT_MEASURED}`]),
    ...(unjudged === 0 ? [] : [`${unjudged} ${NOT_JUDGED}`]),
  ].join(' and ')
  if (left !== null) return counted === '' ? left : `${left}, and ${counted}`
  if (unjudged === 0) return NOT_MEASURED
  return unmeasured === 0 ? NOT_JUDGED : counted
}

/** Of one part without a verdict as left. */
export function withoutVerdict(wasRead: boolean): string {
  return wasRead ? NOT_JUDGED : NOT_MEASURED
}

/** The same, as a log holds it, behind `REWORK as found, `: a word alone stands first, and what is counted stands last. */
export function leftBehind(asLeft: string): string {
  return /^[A-Z]+$/.test(asLeft) ? `${asLeft} as left` : `as left ${asLeft}`
}

/** Steps read before the part was worked on: their judge had it reworked or renewed, or looked at it again afterwards. */
export function readBeforeWork(defs: Definitions, state: State): ReadonlySet<string> {
  return new Set(
    coursesOf(defs, state)
      .filter(({ decided }) => decided !== null && CHANGES_IT.includes(decided.choice))
      .flatMap(({ judge }) => refersTo(defs, judge)),
  )
}
