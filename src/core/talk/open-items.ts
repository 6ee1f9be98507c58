// What is still open in a job, in words: asked for with `open`, and listed when the job is closed.
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import { otherLines } from '../job/elsewhere-words.ts'
import { keptDoubts } from '../job/kept-doubts.ts'
import { applicability, isComplete, next } from '../job/next.ts'
import { type Nonconformance, nonconformances } from '../job/nonconformance.ts'
import { openWords } from '../job/open-words.ts'
import { pendingPoint, pointOf } from '../job/point.ts'
import { questionsOf } from '../job/questions.ts'
import { openStop, type State } from '../job/state.ts'
import { findingText, placeName, placeNumber, readingText } from './names.ts'
import { POINT_NAMES } from './points.ts'
import { wordLine } from './radio-words.ts'

export function openLines(defs: Definitions, state: State): string[] {
  const items = openItems(defs, state)
  const others = otherLines(state)
  return items.length === 0
    ? [...notShown(defs, state), NOTHING_OPEN, ...others]
    : ['Still open in this job:', ...items.map((i) => `  ${i}`), ...others]
}

/** What was found or put off is none of what the sheets still ask. */
export const NOTHING_OPEN = 'Nothing that was found or put off is open so far.'

/** The hold point that is asked now: that nothing else is open says nothing of it. */
function notShown(defs: Definitions, state: State): string[] {
  const prompt = next(defs, state)
  return prompt.kind === 'evidence' || prompt.kind === 'clear'
    ? [`Hold point ${prompt.gate.number} is not complete: nobody goes in.`]
    : []
}

/** One line each; empty when nothing is. */
export function openItems(defs: Definitions, state: State): string[] {
  return [...undoneItems(defs, state), ...standingItems(defs, state)]
}

/** What somebody still has to do something about. */
export function undoneItems(defs: Definitions, state: State): string[] {
  const undecided = nonconformances(defs, state)
    .filter((nc) => nc.stands && nc.decided === null)
    .map((nc) => `${findingText(defs, state, nc)}, ${fellOrNone(state, nc)}`)
  const points = defs.steps.flatMap((placed) => pointLine(defs, state, placed))
  const stop = openStop(state) === null ? [] : ['STOP is not released']
  const spoken = openWords(state).map((word) => `${wordLine(defs, state, word)}, NOT COUNTERSIGNED`)
  return [...stop, ...undecided, ...spoken, ...points]
}

/** What was said or asked and stays so: a closed job has nothing of it open. */
export function standingItems(defs: Definitions, state: State): string[] {
  const places = Object.entries(state.notApplicable).map(
    ([place, why]) => `${nameOf(defs, place)}: n/a, ${why}`,
  )
  const kept = keptDoubts(defs, state).map(
    (r) => `${nameOf(defs, r.place)}: ${readingText(defs, r)} kept, ${r.keptBecause}`,
  )
  const asked = defs.steps.flatMap((placed) => questionLines(defs, state, placed))
  return [...places, ...kept, ...asked]
}

/** Points to be signed of steps that are done, and witness points that nobody attended. */
function pointLine(defs: Definitions, state: State, placed: PlacedStep): string[] {
  const point = pointOf(placed)
  if (point === null || !isComplete(state, placed) || applicability(defs, state, placed) !== 'do') return []
  const name = `${placed.number} ${placed.step.title}: ${POINT_NAMES[point.kind].toLowerCase()}`
  if (pendingPoint(state, placed) !== null) return [`${name}, not signed`]
  return state.points[placed.id]?.how === 'not-attended' ? [`${name}, not attended`] : []
}

/** Asked when the step was complete, and standing still. */
function questionLines(defs: Definitions, state: State, placed: PlacedStep): string[] {
  if (placed.step.kind !== 'read' || !isComplete(state, placed)) return []
  if (applicability(defs, state, placed) !== 'do') return []
  return questionsOf(defs, state, asKind(placed, 'read')).map(
    (one) => `${placed.number} ${placed.step.title}: asked, ${one.text}`,
  )
}

function fellOrNone(state: State, { step }: Nonconformance): string {
  const fallen = Object.values(state.dispositions).some((d) => d.about === step && d.void)
  return fallen ? 'its disposition is void' : 'no disposition'
}

function nameOf(defs: Definitions, place: string): string {
  const step = place.split('.')[0] ?? ''
  return `${placeNumber(defs, step, place)} ${placeName(defs, step, place)}`
}
