// Slips that leave a procedure in good shape and weaker than its author thinks: a hazard that nobody is told to hold, one
// gas limit tested twice in place of two, a counterbore where the rings run.

import { list, quote } from '../lib/wording.ts'
import { type Finding, finding, type Path, repeats, warning } from './lint-common.ts'
import type { Procedure, Step, StepOf } from './procedure.ts'

/** Findings of one step; `base` is its path. */
export function lintStepSafety(procedure: Procedure, step: Step, base: Path): Finding[] {
  if (step.kind === 'gate') return lintLimitTwice(step, base)
  const unheld = [...lintUnheld(procedure, step, base), ...lintByRecord(step, base)]
  return step.kind === 'read' ? [...unheld, ...lintCounterbore(step, base)] : unheld
}

/** Copied from a gate with its id changed and its limit forgotten: then the second place is tested by nobody. */
function lintLimitTwice(gate: StepOf<'gate'>, base: Path): Finding[] {
  const tests = gate.evidence.flatMap((one, n) => (one.kind === 'gas' ? [{ ...one, n }] : []))
  return repeats(tests.map((one) => one.limit)).flatMap(({ at, first }) => {
    const [again, before] = [tests[at], tests[first]]
    if (again === undefined || before === undefined) return []
    const message = `${quote(again.id)} is held against ${quote(again.limit)}, as ${quote(before.id)} is already.`
    const hint = 'name the limit of its own gas and place; at one place the worst reading is one test'
    return [warning([...base, 'evidence', again.n, 'limit'], 'limit-twice', message, hint)]
  })
}

/**
 * What a step says can hurt is held back only by what stands in `exposes`. An empty list there is an answer, that no gate
 * need hold it; a missing one may have been lost when the step was copied.
 */
function lintUnheld({ hazards }: Procedure, step: Step, base: Path): Finding[] {
  if (step.hazard === undefined || step.exposes !== undefined || hazards.length === 0) return []
  const message = `${quote(step.id)} has a hazard line and no exposes, so it is behind no gate.`
  const ids = list(hazards.map((hazard) => hazard.id).slice(0, 8))
  const hint = `add exposes with each it faces of ${ids}; or exposes: [] if no gate need hold it`
  return [{ ...warning([...base, 'hazard'], 'hazard-unheld', message, hint), atKey: true }]
}

/** Rules go by what was answered, so an answer stays when the record changes; then somebody has to sign that it still holds. */
function lintByRecord(step: Step, base: Path): Finding[] {
  if (step.kind !== 'observe' || step.by_record !== true || step.point?.kind === 'hold') return []
  const message = `${quote(step.id)} is answered about the machine record and has no hold point, so nobody signs that it holds for a changed one.`
  return [finding([...base, 'by_record'], 'nobody-signs', message, 'give it a point of kind hold')]
}

/** A counterbore is larger by design and the rings do not run there, so a place cannot lie in both. */
function lintCounterbore(read: StepOf<'read'>, base: Path): Finding[] {
  return read.stations.flatMap((station, n) => {
    if (station.in_counterbore !== true || !(station.at > 0 && station.at < 1)) return []
    const message = `${quote(station.id)} is in the counterbore and at ${station.at}, which is inside ring travel.`
    const hint = 'a counterbore lies outside ring travel: at is below 0 or above 1; or delete in_counterbore'
    return [finding([...base, 'stations', n, 'at'], 'in-ring-travel', message, hint)]
  })
}
