// What a sheet that is keyed in tells the other jobs on its machine: only what may make somebody less safe. Nothing of it proves anything,
// and what it does not say counts as the worse of the two.
import type { Definitions } from './definitions.ts'
import { type Doing, lettingHazards, type NamedHazard } from './elsewhere.ts'
import type { Entry } from './entries.ts'
import { comesOff, evidenceByKey, type GateStep, gatesOf, hangs, itemByKey } from './gate.ts'
import { type PaperState, rowOf } from './paper.ts'
import { deviceOnSheet, notedOnSheet } from './paper-devices.ts'
import { saysOut } from './paper-register.ts'
import { FRONT, keyOfCopy } from './paper-rows.ts'
import { openThings, thingText } from './register.ts'
import type { State } from './state.ts'

type RowEntry = Extract<Entry, { type: 'paper.row' }>

/** Whether the sheet says that the work it is of has ended. Until that box is keyed nobody knows. */
function saysEnded(paper: PaperState): boolean {
  return (rowOf(paper, null, FRONT.ended)?.text ?? null) !== null
}

/** People may be behind every hold point of it. Null: it is live, or the work has ended. */
export function insideOnSheet(defs: Definitions, { paper }: State): NamedHazard[] | null {
  if (paper === null || saysEnded(paper)) return null
  const ids = gatesOf(defs).flatMap((gate) => gate.step.holds)
  return defs.procedure.hazards.filter((h) => ids.includes(h.id)).map(({ id, name }) => ({ id, name }))
}

/** Somebody may be at any of its steps that let a hazard in. Null: it is live, the work has ended, or it has no such step. */
export function lettingOnSheet(
  defs: Definitions,
  { paper }: State,
): { step: string; hazards: NamedHazard[] } | null {
  if (paper === null || saysEnded(paper)) return null
  const ids = new Set(defs.steps.flatMap((placed) => lettingHazards(defs, placed).map(({ id }) => id)))
  const hazards = defs.procedure.hazards.filter((h) => ids.has(h.id)).map(({ id, name }) => ({ id, name }))
  return hazards.length === 0 ? null : { step: 'any step of a sheet whose end is not told', hazards }
}

/** What stays in the machine by it: told to the others as long as it is open. */
export function placedBySheet(state: State): { placed?: string[] } {
  const placed = state.paper === null ? [] : openThings(state).map(thingText)
  return placed.length === 0 ? {} : { placed }
}

/** What a box tells by itself: readings and steps that were done are told as those of a live job are. */
export function doingsOfRow(defs: Definitions, after: State, entry: RowEntry): Doing[] {
  const { step, row, says, seq } = entry
  if (step === null) {
    if (row.startsWith('stop.') && says !== null) return [{ what: 'stop', seq }]
    // What held by it cannot be told by a number.
    const clause = 'something temporary was taken off by a sheet'
    return saysOut(entry) ? [{ what: 'removed', seq, clause, numbers: [], told: false }] : []
  }
  const placed = defs.steps.find(({ id }) => id === step)
  if (placed === undefined || after.paper === null) return []
  if (placed.step.kind === 'gate') return cameOff(defs, after.paper, placed as GateStep, entry)
  // Blank, or signed and not ticked: it may have been done all the same.
  const hazards = row === 'done' ? lettingHazards(defs, placed) : []
  return hazards.length === 0 ? [] : [{ what: 'let-in', seq, step: placed.step.title, hazards }]
}

/** A lock that came off by the sheet; where its box is blank, the one that was noted there may be off. */
function cameOff(
  defs: Definitions,
  paper: PaperState,
  gate: GateStep,
  { row, says, seq }: RowEntry,
): Doing[] {
  const item = itemByKey(defs, gate, keyOfCopy(row))
  if (item === null || !comesOff(item.evidence)) return []
  const told = says === null ? null : deviceOnSheet(says, item.evidence).number
  const noted = notedOnSheet(defs, paper, item)
  const numbers = [...new Set([told, noted].flatMap((number) => number ?? []))]
  if (says === null && numbers.length === 0) return []
  const clause =
    says === null
      ? `whether ${numbers.join(', ')} is still on does not stand on a sheet`
      : `${says} came off by a sheet`
  return [{ what: 'removed', seq, clause, numbers, told: numbers.length > 0 }]
}

/** Numbers of what hung for the gate by the sheet. */
export function hungOnSheet({ paper }: State, gate: GateStep): string[] {
  return Object.values(paper?.rows ?? {}).flatMap(({ step, row, text }) => {
    if (step !== gate.id || text === null) return []
    const evidence = evidenceByKey(gate, keyOfCopy(row))
    return hangs(evidence) ? [deviceOnSheet(text, evidence).number ?? text] : []
  })
}
