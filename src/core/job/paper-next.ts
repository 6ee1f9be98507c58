// What is asked next of a job that is keyed from a sheet: the first box, in the order of the paper, that is not keyed. No hold point
// holds anything back here, as nothing is done at a machine; nor is any of them ever open.
import { asKind, type Definitions, type PlacedStep } from './definitions.ts'
import type { Applicability } from './next.ts'
import { type Nonconformance, openFindings } from './nonconformance.ts'
import { type PaperState, rowOf } from './paper.ts'
import { registerBox } from './paper-register.ts'
import { endBox, frontBoxes, type SheetBox, stepBoxes } from './paper-rows.ts'
import { openPlace } from './places.ts'
import { type State, standingVerdict } from './state.ts'

export type SheetPrompt =
  | { readonly kind: 'sheet'; readonly box: SheetBox }
  | {
      readonly kind: 'sheet-doubt'
      readonly placed: PlacedStep
      readonly doubt: NonNullable<State['doubt']>
    }
  | { readonly kind: 'sheet-sign'; readonly as: 'keyed' | 'compared' }

type Shared =
  | { readonly kind: 'judge' | 'decide'; readonly step: PlacedStep }
  | { readonly kind: 'findings'; readonly open: readonly Nonconformance[] }
  | { readonly kind: 'finish' }

/** `applies`: whether a step is called for. One where that is not known is on the sheet, so its boxes are keyed all the same. */
export function nextOnSheet(
  defs: Definitions,
  state: State,
  paper: PaperState,
  applies: (placed: PlacedStep) => Applicability,
): SheetPrompt | Shared {
  const { doubt } = state
  if (doubt !== null) {
    const placed = defs.steps.find(({ id }) => id === doubt.step)
    if (placed !== undefined) return { kind: 'sheet-doubt', placed, doubt }
  }
  const front = frontBoxes(defs).find(({ row }) => rowOf(paper, null, row) === undefined)
  if (front !== undefined) return { kind: 'sheet', box: front }
  const asked = defs.steps.filter((placed) => applies(placed) !== 'skip')
  for (const placed of asked) {
    const box = boxOf(defs, state, paper, placed)
    if (box !== null) return { kind: 'sheet', box }
    // What cannot be told to be called for is not judged: the job ends in HOLD.
    if (
      placed.step.kind === 'judge' &&
      applies(placed) === 'do' &&
      standingVerdict(state, placed.id) === null
    )
      return { kind: 'judge', step: placed }
  }
  const end = registerBox(asked, paper) ?? endBox(paper)
  if (end !== null) return { kind: 'sheet', box: end }
  for (const placed of asked) if (isUndecided(state, placed, applies)) return { kind: 'decide', step: placed }
  const open = openFindings(defs, state)
  if (open.length > 0) return { kind: 'findings', open }
  if (paper.keyedBy === null) return { kind: 'sheet-sign', as: 'keyed' }
  return paper.comparedBy === null ? { kind: 'sheet-sign', as: 'compared' } : { kind: 'finish' }
}

/** A decision on a verdict that stands, for which no lead has signed. */
function isUndecided(
  state: State,
  placed: PlacedStep,
  applies: (placed: PlacedStep) => Applicability,
): boolean {
  if (placed.step.kind !== 'decide' || applies(placed) !== 'do') return false
  if (standingVerdict(state, placed.scope + placed.step.about) === null) return false
  const disposition = state.dispositions[placed.id]
  return disposition === undefined || disposition.void
}

/** The first box of a step that is not keyed; behind the line of a place come its figures. */
function boxOf(defs: Definitions, state: State, paper: PaperState, placed: PlacedStep): SheetBox | null {
  const open = placed.step.kind === 'read' ? openPlace(asKind(placed, 'read'), state) : null
  for (const box of stepBoxes(defs, paper, placed)) {
    if (rowOf(paper, placed.id, box.row) === undefined) return box
    if (open !== null && box.place?.key === open.key) return { ...box, takes: 'figure' }
  }
  return null
}
