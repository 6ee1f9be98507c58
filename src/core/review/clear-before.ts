// Whether anybody keyed that people were clear before the machine was started: who, when and at which hold point, or that it is on
// no record. It says what was keyed, and never that nobody was in.
import { stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { type GateStep, gateState, gatesOf } from '../job/gate.ts'
import { isFall } from './behind.ts'
import { byWhom, type Look, type Move, named } from './look.ts'

/** Words of a hold point by which somebody vouches for people; what is said of a block, a valve or a pipe is no such word. */
const OF_PEOPLE = /\bCLEAR\b|\bALL OUT\b/i

/** More than these only counted on the head: each says it behind its own number. */
const MOST_NAMED = 4

export interface ClearBefore {
  /** The last such words before it, with who, when and where; null: none are on record. */
  readonly said: string | null
  /** The entry of those words; null also where they stand on a sheet. */
  readonly seq: number | null
  /** Hold points that had fallen by then, with nobody keyed clear since. */
  readonly silent: readonly GateStep[]
}

export function clearBefore(look: Look, start: Move): ClearBefore {
  if (look.state.paper !== null) return { said: onSheet(look, start), seq: null, silent: [] }
  const said = look.entries.findLast(({ seq }, n) => seq < start.entry.seq && wordsIn(look, n) !== null)
  return {
    said: said === undefined ? null : saidText(look, said),
    seq: said?.seq ?? null,
    silent: gatesOf(look.defs).filter((gate) => isSilent(look, gate, start)),
  }
}

/** `clear keyed before it: ALL TOLD AND CLEAR, RO 15:47 at 457 Before the driver may start`; what is not on record is said. */
export function clearText({ said, silent }: ClearBefore): string {
  const not =
    silent.length === 0
      ? ''
      : `; not at ${silent.length} ${silent.length === 1 ? 'hold point' : 'hold points'} that fell before it${silent.length > MOST_NAMED ? '' : `: ${silent.map(({ number }) => number).join(', ')}`}`
  return said === null ? `NO ALL CLEAR ON RECORD before it${not}` : `clear keyed before it: ${said}${not}`
}

function saidText(look: Look, entry: Entry): string {
  const placed = 'step' in entry && entry.step !== null ? stepById(look.defs, entry.step) : null
  const at = placed === null ? '' : ` at ${named(placed)}`
  return `${wordsIn(look, entry.seq) ?? ''}, ${byWhom(look, entry)}${at}`
}

/** The last of the sheet that stands before the start, by its own time: in which order it was keyed tells nothing. */
function onSheet({ defs, state }: Look, { entry }: Move): string | null {
  const rows = Object.values(state.paper?.rows ?? {})
  const start = 'step' in entry ? defs.steps.findIndex(({ id }) => id === entry.step) : -1
  const said = defs.steps
    .slice(0, Math.max(0, start))
    .flatMap((placed) =>
      placed.step.kind !== 'gate'
        ? []
        : rows
            .filter(({ step, text }) => step === placed.id && text !== null && OF_PEOPLE.test(text))
            .map((row) => ({ placed, row })),
    )
  const last = said.at(-1)
  if (last === undefined) return null
  const { placed, row } = last
  return `${row.text}, ${row.who ?? 'nobody named'} ${row.time ?? 'at no time'} by the sheet at ${named(placed)}`
}

/** Words for people that this entry holds, as they were keyed; null for none. */
function wordsIn(look: Look, n: number): string | null {
  const entry = look.entries[n]
  if (entry?.type === 'people.clear') return entry.words
  if (entry?.type !== 'evidence.given') return null
  const placed = look.defs.steps.find(({ id }) => id === entry.step)
  if (placed?.step.kind !== 'gate') return null
  const evidence = placed.step.evidence.find(({ id }) => id === entry.item)
  return evidence?.kind === 'words' && OF_PEOPLE.test(evidence.words) ? evidence.words : null
}

/** Its last fall before the start; null for none. */
export function lastFallBefore({ moves }: Look, gate: GateStep, start: Move): Move | null {
  return moves.findLast((move) => move.entry.seq < start.entry.seq && isFall(gate, move)) ?? null
}

/** Its last fall before the start was of itself, and clear was keyed nowhere between. One that a step makes fall is meant to. */
function isSilent(look: Look, gate: GateStep, start: Move): boolean {
  const before = look.moves.filter(({ entry }) => entry.seq < start.entry.seq)
  const fall = lastFallBefore(look, gate, start)
  if (fall === null || gateState(fall.after, gate.id).cause === 'opening') return false
  return !before.some(
    ({ entry }) =>
      entry.seq > fall.entry.seq &&
      (entry.type === 'people.clear' || entry.type === 'gate.opened') &&
      entry.step === gate.id,
  )
}
