// A job that is taken up, on one sheet: what was done, what fell while nobody watched, and what comes first now.
import type { Definitions } from '../job/definitions.ts'
import { type GateStep, gateState, gatesBefore, gatesOf } from '../job/gate.ts'
import { applicability, current } from '../job/next.ts'
import type { PaperState } from '../job/paper.ts'
import { nextOnSheet } from '../job/paper-next.ts'
import { openStop, type State, waitsForPlate } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { takenLines } from '../talk/last-taken.ts'
import { doneLine, timeLines } from '../talk/where.ts'
import { type Row, row } from './block.ts'

/** Hold points that are named; of the rest it is said how many there are. */
const MOST_NAMED = 3

/** `state` is the one after the entry. */
export function takenUpRows(defs: Definitions, state: State): Row[] {
  if (state.paper !== null)
    return [
      ...[doneLine(defs, state), ...takenLines(defs, state)].map((text) => row(`  ${text}`)),
      row(`  ${nextOfSheet(defs, state, state.paper)}`, 'strong'),
    ]
  return [
    ...[doneLine(defs, state), ...takenLines(defs, state)].map((text) => row(`  ${text}`)),
    row(`  ${voidText(defs, state)}`, 'caution'),
    row(`  ${nextText(defs, state)}`, 'strong'),
    ...timeLines(defs, state).map((text) => row(`  ${text}`, 'faint')),
  ]
}

function voidText(defs: Definitions, state: State): string {
  const all = gatesOf(defs).filter(({ id }) => gateState(state, id).struck.length > 0)
  if (all.length === 0) return 'Void: nothing; no hold point had anything shown.'
  const named = all.slice(0, MOST_NAMED).map(({ number, step }) => `hold point ${number}, ${step.title}`)
  const more = all.length - MOST_NAMED
  return `Void: all that was shown at ${named.join('; ')}${more > 0 ? `; and ${more} more` : ''}.`
}

function nextText(defs: Definitions, state: State): string {
  const at = current(defs, state)?.placed
  const shut = at === undefined ? [] : gatesBefore(defs, at).filter((gate) => !isOpen(state, gate))
  const gates =
    shut.length === 0 ? '' : `; then hold point ${list(shut.map(({ number }) => String(number)))}, shown anew`
  const step = at === undefined ? '' : `${gates}; then sheet ${at.number}, ${at.step.title}`
  const stop = openStop(state) === null ? '' : ' The job is under STOP, and stays so.'
  const plate = waitsForPlate(state) ? '; then the plate' : ''
  return `Next: initials of whoever goes on${plate}${step}.${stop}`
}

/** Of a sheet that is keyed in nothing is void and no work is left: only what is asked next is told. */
function nextOfSheet(defs: Definitions, state: State, paper: PaperState): string {
  const stop = openStop(state) === null ? '' : ' The job is under STOP, and stays so.'
  const prompt = nextOnSheet(defs, state, paper, (placed) => applicability(defs, state, placed))
  return `Next: initials of whoever goes on; then ${askedOnSheet(prompt)}.${stop}`
}

function askedOnSheet(prompt: ReturnType<typeof nextOnSheet>): string {
  switch (prompt.kind) {
    case 'sheet': {
      const { placed, label } = prompt.box
      return placed === null ? label : `${placed.number} ${placed.step.title}: ${label}`
    }
    case 'sheet-doubt':
      return `what becomes of ${prompt.doubt.typed.trim()}, which is doubted, at ${prompt.placed.number} ${prompt.placed.step.title}`
    case 'sheet-sign':
      return prompt.as === 'keyed'
        ? 'whoever keyed the last of it signs that it is keyed as it stands'
        : 'a lead who keyed none of it compares it with the paper, and signs'
    case 'judge':
      return `${prompt.step.number} ${prompt.step.step.title} is worked out`
    case 'decide':
      return `a lead decides at ${prompt.step.number} ${prompt.step.step.title}`
    case 'findings':
      return 'a lead decides on what was found'
    case 'finish':
      return 'nothing more: the job closes'
  }
}

function isOpen(state: State, { id }: GateStep): boolean {
  return gateState(state, id).status === 'open'
}
