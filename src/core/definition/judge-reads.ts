// Which read steps a judge step names outright. What the expressions of a figures judge refer to is known once they are
// compiled (job/figure-reads.ts).
import type { StepOf } from './procedure.ts'
import { at20Of } from './step-judge.ts'

export interface JudgeReads {
  /** Without any of these the verdict is HOLD. */
  readonly needed: readonly string[]
  /** Read where there is something to read: the unswept strip, the counterbore. */
  readonly optional: readonly string[]
}

export function judgeReads(step: StepOf<'judge'>): JudgeReads {
  if (step.compute === 'bore_form') {
    const i = step.inputs
    return {
      needed: [i.diameters, i.set_before, i.set_after, ...i.part_temperature, ...i.instrument_temperature],
      optional: [i.datum, i.counterbore].flatMap((id) => id ?? []),
    }
  }
  const needed = at20Of(step).flatMap((at) => [
    ...at.readings,
    at.set_before,
    at.set_after,
    ...at.part,
    ...at.instrument,
  ])
  return { needed, optional: [] }
}
