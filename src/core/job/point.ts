// Inspection points as the trade's inspection plans have them: hold, witness and review. They are about the work that was
// done, and another matter than a gate, which is about what may hurt people.
import type { Point } from '../definition/procedure.ts'
import { readStamp } from '../lib/instant.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import type { State } from './state.ts'

export function pointOf({ step }: PlacedStep): Point | null {
  return step.kind === 'gate' || step.kind === 'part' ? null : (step.point ?? null)
}

/** The point of a step that is still to be signed, or null. */
export function pendingPoint(state: State, placed: PlacedStep): Point | null {
  const given = state.points[placed.id]
  return given === undefined || given.void ? pointOf(placed) : null
}

/** Who did the step, took its readings or decided in it, and who keys now: none of them signs its point. */
export function doersOf(state: State, placed: PlacedStep): Set<string | null> {
  const readings = Object.values(state.readings).flat()
  const behind = state.verdicts[placed.id]?.verdict.readings ?? []
  const disposition = state.dispositions[placed.id]
  return new Set([
    state.doer,
    ...(state.doneBy[placed.id] ?? []),
    ...readings.filter((r) => r.step === placed.id || behind.includes(r.seq)).map((r) => r.by),
    ...(disposition === undefined ? [] : [disposition.person]),
  ])
}

/** The moment from which a witness point may go on unattended; null without a notice that still counts. */
export function noticeRunsOutMs(state: State, placed: PlacedStep): number | null {
  const point = pointOf(placed)
  const notice = state.notices[placed.id]
  if (point?.kind !== 'witness' || notice === undefined) return null
  const ms = (readStamp(notice.at)?.ms ?? Number.NaN) + point.notice.si * 1000
  return Number.isFinite(ms) ? ms : null
}

/** Witness points that a notice can be given for, reached or not. */
export function awaitingNotice(defs: Definitions, state: State): PlacedStep[] {
  return defs.steps.filter(
    (placed) => pendingPoint(state, placed)?.kind === 'witness' && state.notices[placed.id] === undefined,
  )
}
