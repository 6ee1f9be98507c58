// The end of a job on the sheet: the verdict as found, what was done about it, the verdict as left.
import { type Course, coursesOf, leftText, wholeOf, withoutVerdict } from '../job/as-left.ts'
import { type Definitions, type PlacedStep, stepById } from '../job/definitions.ts'
import { nonconformances } from '../job/nonconformance.ts'
import type { DispositionState, State } from '../job/state.ts'
import { endText, validityText } from '../job/validity.ts'
import { deciderText, fellText, findingText } from '../talk/names.ts'
import { type Row, row } from './block.ts'

/** One line: the verdict, or both where something was done in between. */
export function closingLine(defs: Definitions, state: State, outcome: string): string {
  const runsOn = concessionText(defs, state)
  if (outcome === 'NONE') return `Job closed. Nothing in it was to be judged.${runsOn}`
  const whole = outcome === 'STOP' ? null : wholeOf(coursesOf(defs, state))
  if (whole === null || !whole.changed) return `Job closed with ${outcome}.${runsOn}`
  const held = outcome === 'HOLD' ? ' with HOLD' : ''
  return `Job closed${held}. Verdict as found ${whole.found}, as left ${leftText(whole)}.${runsOn}`
}

/** What runs on by concession, and until when: the end belongs to the word that it closed with. */
function concessionText(defs: Definitions, state: State): string {
  const ends = decidedOnes(defs, state).flatMap(({ nc, decided: { choice, valid } }) =>
    choice === 'concession' && valid !== null ? [`${nc.name} ${endText(valid)}`] : [],
  )
  return ends.length === 0 ? '' : ` Runs on by concession: ${ends.join('; ')}.`
}

function decidedOnes(defs: Definitions, state: State) {
  return nonconformances(defs, state).flatMap((nc) =>
    nc.stands && nc.decided !== null ? [{ nc, decided: nc.decided }] : [],
  )
}

/** Each that stands and was decided on, with the words of whoever found it; those whose course is told above have it there. */
export function decidedRows(defs: Definitions, state: State): Row[] {
  const told = new Set(wholeOf(coursesOf(defs, state))?.changed === true ? judgesOf(defs) : [])
  const rows = decidedOnes(defs, state)
    .filter(({ nc }) => !told.has(nc.step))
    .map(({ nc, decided }) => {
      // Of a finding it was said to be put right in this job; a verdict is decided on for work still to come.
      const isSaidDone = stepById(defs, nc.step).step.kind === 'observe'
      return row(`  ${findingText(defs, state, nc)}; ${doneText(decided, isSaidDone)}`)
    })
  return rows.length === 0
    ? []
    : [row('What did not conform, and what was decided on it:', 'strong'), ...rows]
}

const judgesOf = ({ steps }: Definitions) =>
  steps.flatMap(({ id, step }) => (step.kind === 'judge' ? [id] : []))

/** Those that no longer stand, apart from those that do, each with what made it fall. */
export function fellAtClose(defs: Definitions, state: State): Row[] {
  const rows = nonconformances(defs, state).flatMap((nc) => {
    const text = fellText(defs, state, nc)
    return text === null ? [] : [row(`  ${text}`)]
  })
  return rows.length === 0 ? [] : [row('What does not stand any more:', 'strong'), ...rows]
}

/** A line for each verdict that was not ACCEPT, where something was done about any. */
export function courseRows(defs: Definitions, state: State): Row[] {
  const courses = coursesOf(defs, state)
  if (wholeOf(courses)?.changed !== true) return []
  return courses
    .filter(({ found }) => found !== 'ACCEPT')
    .map((course) => row(`  ${courseText(course)}`, course.left === 'ACCEPT' ? 'plain' : 'caution'))
}

/** `29 Ring gaps judged: as found REPLACE; renewed, decided by KH; as left ACCEPT at 301 New gaps judged`. */
function courseText({ judge, found, decided, again, isAgain, left, readAgain }: Course): string {
  const first = `${named(judge)}: ${isAgain ? 'measured again' : 'as found'} ${found}`
  const isRead = again !== null || readAgain.length > 0
  const done = decided === null ? 'no disposition' : doneText(decided, isRead)
  const last =
    left === null
      ? withoutVerdict(readAgain.length > 0)
      : again === null
        ? `left at ${left}`
        : `as left ${left} at ${named(again)}`
  return `${first}; ${done}; ${last}`
}

const DONE: Readonly<Record<string, string>> = {
  accept: 'accepted as it is',
  rework: 'reworked',
  repair: 'repaired',
  replace: 'renewed',
  concession: 'runs on by concession',
  hold: 'on hold',
}

/** Where nothing tells that it was done: who reads it is not to take the part as cut. */
const TO_DO: Readonly<Record<string, string>> = {
  rework: 'to be reworked',
  repair: 'to be repaired',
  replace: 'to be renewed',
}

/** What a lead decided, as the trade says it of the part. `isDone`: it was said to be done, or read again since. */
export function doneText(decided: DispositionState, isDone: boolean): string {
  const { choice, authority, valid } = decided
  const terms = authority === null || valid === null ? '' : ` of ${authority}, ${validityText(valid)}`
  const word = (isDone ? undefined : TO_DO[choice]) ?? DONE[choice] ?? choice
  return `${word}${terms}, decided by ${deciderText(decided)}`
}

const named = ({ number, step }: PlacedStep) => `${number} ${step.title}`
