// Which steps a judge step names outright. What the expressions of a figures judge refer to is known once they are
// compiled (job/values.ts).
import type { StepOf } from './procedure.ts'
import { at20Of, type FormInputs, type PocketJudge } from './step-judge.ts'

export interface JudgeReads {
  /** Without any of these the verdict is HOLD. */
  readonly needed: readonly string[]
  /** Read where there is something to read: the unswept strip, the counterbore. */
  readonly optional: readonly string[]
  /** Observe steps it rests on. */
  readonly observed: readonly string[]
}

export function judgeReads(step: StepOf<'judge'>): JudgeReads {
  if (step.compute === 'bore_form') {
    const i = step.inputs
    return {
      needed: [i.diameters, i.set_before, i.set_after, ...i.part_temperature, ...i.instrument_temperature],
      optional: [...datumsOf(i), i.counterbore ?? []].flat(),
      observed: [],
    }
  }
  if (step.compute === 'pocket_setting') return pocketReads(step)
  const needed = at20Of(step).flatMap((at) => [
    ...at.readings,
    at.set_before,
    at.set_after,
    ...at.part,
    ...at.instrument,
  ])
  return { needed, optional: [], observed: [] }
}

/** Read steps of the unswept strip, one for each end it may be left at: of those the first that was read counts. */
export function datumsOf({ datum }: Pick<FormInputs, 'datum'>): readonly string[] {
  return datum === undefined ? [] : [datum].flat()
}

/** How the setting is told depends on the kind of pocket, so none of the ways is needed always. */
function pocketReads({ inputs }: PocketJudge): JudgeReads {
  return {
    needed: [inputs.suction, inputs.discharge, ...inputs.suction_temperatures, inputs.driver_load],
    optional: [inputs.wheel, inputs.stem].flatMap((id) => id ?? []),
    observed: [inputs.fitted, inputs.position].flatMap((id) => id ?? []),
  }
}
