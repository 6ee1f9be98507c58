// What stands between an open job and its close: each by name, with what is keyed for it and where. It decides nothing: the engine
// closes a job by itself once nothing of this is left, and ends one in its STOP by the word close.
import { neverReleased } from '../job/admit-stop.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { gateState, gatesOf } from '../job/gate.ts'
import { hanging } from '../job/locks-on.ts'
import { applicability, isComplete, next, type Prompt } from '../job/next.ts'
import { openFindings } from '../job/nonconformance.ts'
import { openWords } from '../job/open-words.ts'
import { pendingPoint } from '../job/point.ts'
import { holdsUpClosing, thingText } from '../job/register.ts'
import { openStop, type State } from '../job/state.ts'
import { causeWords, openStops } from '../job/stop-causes.ts'
import { list } from '../lib/wording.ts'
import { maySignPoint, peopleText } from './may-sign.ts'
import { findingText } from './names.ts'
import { POINT_NAMES } from './points.ts'
import { wordLine } from './radio-words.ts'

/** A line for each, what is asked first standing first; empty for a closed job and for one that has nothing left. */
export function toClose(defs: Definitions, state: State): string[] {
  if (state.closed !== null) return []
  const prompt = next(defs, { ...state, doer: state.doer ?? '' })
  const isPaper = state.paper !== null
  return [
    ...stopLines(state),
    ...(isPaper ? [] : clearLines(defs, state)),
    ...(isPaper ? sheetLines(prompt) : stepLines(defs, state, prompt)),
    ...(isPaper ? [] : pointLines(defs, state)),
    ...(isPaper ? [] : thingLines(defs, state)),
    ...findingLines(defs, state),
    ...openWords(state).map(
      (word) =>
        `NOT COUNTERSIGNED: ${wordLine(defs, state, word)}. ${word.lead} signs, by the word countersign.`,
    ),
    ...onLine(defs, state),
  ]
}

/** Its name is long, and stands once below the list. */
const AT_MACHINE = 'at the machine, by barover resume'

function stopLines(state: State): string[] {
  return openStops(state).map(({ cause, why, seq }) => {
    const what = cause === null ? (why ?? 'its cause is not told') : `${causeWords(cause).says}: ${why ?? ''}`
    const ways =
      neverReleased(state) !== null
        ? 'close, which ends the job in it; it is never released'
        : cause === null
          ? 'cause tells it; then release lets the job go on, or close ends the job in it'
          : 'release lets the job go on, close ends the job in it'
    return `STOP not released (entry ${seq}), ${what}. The words: ${ways}.`
  })
}

/** People may be in: nobody keyed that they are out since it fell. Coming out is told at the machine, by who is there. */
function clearLines(defs: Definitions, state: State): string[] {
  const missing = gatesOf(defs).filter(({ id }) => gateState(state, id).mustClear)
  const words = [...new Set(missing.map(({ step }) => step.clear_words))]
  return words.map((clear) => {
    const gates = missing.filter(({ step }) => step.clear_words === clear)
    const [first] = gates
    return first !== undefined && gates.length === 1
      ? `${clear} is missing at hold point ${named(first)}: nobody keyed that people are out. ${sentence(AT_MACHINE)} Sign on, then ${clear}.`
      : `${clear} is missing at ${gates.length} hold points, ${list(gates.map(({ number }) => String(number)))}: nobody keyed that people are out. ${sentence(AT_MACHINE)} Sign on, then ${clear} at each.`
  })
}

function stepLines(defs: Definitions, state: State, prompt: Prompt): string[] {
  const asked = defs.steps.filter((one) => applicability(defs, state, one) !== 'skip')
  const left = asked.filter((one) => !isComplete(state, one))
  const [first] = left
  if (first === undefined) return []
  const held = openStop(state) === null && prompt.kind === 'held' ? ` HOLD: ${prompt.why}.` : ''
  const isDecision = prompt.kind === 'decide' && prompt.step.id === first.id
  const way = isDecision ? 'by the word dispose' : AT_MACHINE
  const rest = left.length === 1 ? '1 step is' : `${left.length} steps are`
  return [`${rest} not done, of ${asked.length}: the first is ${named(first)}, ${way}.${held}`]
}

/** What of a sheet is still to be keyed from it or signed for. */
function sheetLines(prompt: Prompt): string[] {
  switch (prompt.kind) {
    case 'sheet': {
      const { placed, label } = prompt.box
      const where = placed === null ? label : `${named(placed)}, ${label}`
      return [`The sheet is not keyed to its end: next is ${where}. The sheet in hand: barover resume.`]
    }
    case 'sheet-doubt':
      return [`A figure of ${named(prompt.placed)} is doubted: answered with barover resume.`]
    case 'decide':
      return [`${named(prompt.step)}: a lead signs for what was decided, by the word dispose.`]
    case 'sheet-sign':
      return [
        prompt.as === 'keyed'
          ? 'Whoever keyed it signs that it stands as on the paper: by the word sign.'
          : 'A lead who keyed none of it compares it with the paper: by the word sign.',
      ]
    default:
      return []
  }
}

function pointLines(defs: Definitions, state: State): string[] {
  return defs.steps.flatMap((placed) => {
    const point = pendingPoint(state, placed)
    if (point === null || !isComplete(state, placed) || applicability(defs, state, placed) !== 'do') return []
    const who = maySignPoint(defs, state, placed)
    const by = who.length === 0 ? 'nobody of the crew file may' : peopleText(who)
    const way = point.kind === 'review' ? 'by the word sign, once all else is done' : AT_MACHINE
    return [`NOT SIGNED: ${named(placed)}, its ${POINT_NAMES[point.kind].toLowerCase()}: ${by}, ${way}.`]
  })
}

function thingLines(defs: Definitions, state: State): string[] {
  return holdsUpClosing(defs, state).map((thing) => {
    const seen =
      thing.seenBy === null ? 'Two people see it and sign' : `${thing.seenBy} saw it, one more signs`
    return `NOT ACCOUNTED FOR: ${thingText(thing)}. ${seen}: taken; or a lead hands it on, once all else is done: dispose, hand on.`
  })
}

function findingLines(defs: Definitions, state: State): string[] {
  return openFindings(defs, state).map(
    (one) =>
      `UNDECIDED: ${findingText(defs, state, one)}. A lead decides, by the word dispose, once the job asks.`,
  )
}

/** They hold up no close, and are the last that anybody looks for: so they stand here by number. */
function onLine(defs: Definitions, state: State): string[] {
  const { on } = hanging(defs, state)
  return on.length === 0
    ? []
    : [
        `Still on by the record: ${list(on.map(({ shown }) => shown))}. The close takes none of it off: a step that asks for it does, ${AT_MACHINE}.`,
      ]
}

const named = ({ number, step }: PlacedStep) => `${number} ${step.title}`

const sentence = (text: string) => `${text.replace(/^./, (first) => first.toUpperCase())}.`
