// The start by the record: what was decided by then, what hung on the machine, and what it ran on that fell since. It says what the
// record tells, and no word of what that is good for.
import { type Course, coursesOf } from '../job/as-left.ts'
import { hazardName, type PlacedStep } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { hanging, type Keyed } from '../job/locks-on.ts'
import { type Nonconformance, nonconformances } from '../job/nonconformance.ts'
import type { State } from '../job/state.ts'
import { type Going, goingOf } from '../job/trade-words.ts'
import { list } from '../lib/wording.ts'
import { clearBefore, clearText } from './clear-before.ts'
import { byWhom, count, type Look, type Move } from './look.ts'

export interface Start {
  readonly placed: PlacedStep
  readonly move: Move
}

/** What a review says of the start, on its head. */
export interface Started {
  /** One line. */
  readonly what: string
  /** What each thing hung on that was on by the record, as it was asked for. */
  readonly hung: readonly string[]
}

/** Every step answered that sets something going, in the order they were. */
export function startsOf({ defs, moves }: Look): Start[] {
  return moves.flatMap((move) => {
    const { entry } = move
    if (entry.type !== 'step.confirmed' && entry.type !== 'step.done') return []
    const placed = defs.steps.find(({ id }) => id === entry.step)
    return placed !== undefined && startsIt(defs, placed) ? [{ placed, move }] : []
  })
}

/**
 * A step that sets going what it exposes people to: one that only lets it in again, as a part sent to the shop with the locks
 * left to be asked anew, starts nothing.
 */
export function startsIt(defs: Look['defs'], placed: PlacedStep): boolean {
  return goings(defs, placed).length > 0
}

/** One by which the machine runs, and not only gas let in on the way to it. */
export function runsIt(defs: Look['defs'], placed: PlacedStep): boolean {
  return goings(defs, placed).includes('start')
}

function goings(defs: Look['defs'], { step }: PlacedStep): Going[] {
  const lets = 'lets_in' in step ? (step.lets_in ?? []) : []
  return lets.flatMap((id) =>
    (step.exposes ?? []).includes(id) ? (goingOf({ id, name: hazardName(defs, id) }, step.title) ?? []) : [],
  )
}

/** The one that the machine runs by: the last start, and no gas let in on the way to it. Null: none. */
export function lastStart(look: Look): Start | null {
  const all = startsOf(look)
  return all.findLast(({ placed }) => runsIt(look.defs, placed)) ?? null
}

/** Of a sheet the order of keying tells nothing of it: what was decided by then stands on the sheet, with its time. */
export function undecidedAt(look: Look, { before }: Move): Nonconformance[] {
  if (look.state.paper !== null) return []
  return nonconformances(look.defsAt(before), before).filter(isUndecided)
}

/** A lead who decides to hold has put it off. */
export function isUndecided({ stands, decided }: Nonconformance): boolean {
  return stands && (decided === null || decided.choice === 'hold')
}

/**
 * On by the record when it was started. Whoever started it had gone on behind all words of locks that came off, as at the end of
 * a job; what was told off afterwards was on then.
 */
export function onAt(look: Look, { move }: Start): Keyed[] {
  const { before } = move
  return [...hanging(look.defsAt(before), { ...before, closed: before.closed ?? 'NONE' }).on]
}

export interface FellSince {
  readonly course: Course
  /** What made it fall, where the log tells. */
  readonly by: Entry | undefined
}

/** Last verdicts about what it was started on that are void by now, and were not given anew. */
export function fellSince(look: Look, { move: { before } }: Start): FellSince[] {
  const { state } = look
  return coursesOf(look.defsAt(before), before).flatMap((course) => {
    const { judge, again, left } = course
    if (again !== null || left === null || state.verdicts[judge.id]?.void !== true) return []
    const at = state.verdicts[judge.id]?.seq
    return [{ course, by: look.entries[voidedBy(state, judge.id, at) ?? -1] }]
  })
}

function voidedBy({ raised }: State, step: string, seq: number | undefined): number | null {
  return raised.find((one) => one.step === step && one.seq === seq)?.voidBy ?? null
}

/** Null where nothing in the procedure starts anything, or nobody has yet. */
export function startedOf(look: Look): Started | null {
  const start = lastStart(look)
  if (start === null) {
    const isAsked = look.defs.steps.some((one) => runsIt(look.defs, one))
    return isAsked && look.state.closed !== null ? { what: 'Not started, by the record.', hung: [] } : null
  }
  const open = undecidedAt(look, start.move).map(({ name }) => name)
  const fell = fellSince(look, start).map(({ course }) => String(course.judge.number))
  const on = onAt(look, start)
  const parts = [
    look.state.paper !== null
      ? 'what was decided by then stands on the sheet'
      : open.length === 0
        ? 'every finding decided'
        : `${list(open)} UNDECIDED`,
    ...(fell.length === 0 ? [] : [`${list(fell)} VOID SINCE`]),
    on.length === 0
      ? 'nothing left on by the record'
      : `${thingsText(on)} not told off: ${on.map(({ shown }) => shown).join(', ')}`,
    clearText(clearBefore(look, start.move)),
  ]
  return {
    what: `Started ${startedBy(look, start.move.entry)}: ${parts.join('; ')}`,
    hung: on.map((one) => `${one.shown}: ${hungOn(one)}`),
  }
}

/** By the sheet where it is one: when it was keyed tells nothing of the machine. */
function startedBy(look: Look, entry: Entry): string {
  const sheet = 'paper' in entry && typeof entry.paper === 'object' ? entry.paper : null
  return sheet === null
    ? byWhom(look, entry)
    : `${sheet.who ?? 'nobody named'} ${sheet.time ?? 'at no time'} by the sheet`
}

/** `6 locks, 2 blinds and 3 tags`. */
export function thingsText(on: readonly Keyed[]): string {
  const sorts = on.map(({ item: { evidence } }) =>
    evidence.kind === 'numbers' && (evidence.of === 'tag' || evidence.of === 'blind') ? evidence.of : 'lock',
  )
  const sums = (['lock', 'blind', 'tag'] as const).map((sort) => ({
    sort,
    n: sorts.filter((one) => one === sort).length,
  }))
  return list(sums.flatMap(({ sort, n }) => (n === 0 ? [] : [count(n, sort)])))
}

/** A lock by its point; a tag by what its hold point asked for, without the words that ask for a number. */
function hungOn({ item: { point, person, evidence }, gate }: Keyed): string {
  if (point !== null) return point.name
  if (person !== null) return `of ${person}, at ${gate.number} ${gate.step.title}`
  const asked = 'ask' in evidence ? evidence.ask.replace(/^the numbers? of /i, '') : ''
  const [first = ''] = asked.split(/[.,]/)
  return `${first.trim()}, at ${gate.number} ${gate.step.title}`
}
