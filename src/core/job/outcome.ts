// How a job ended: the worst of its standing verdicts, and whether that leaves it open.
import { type VerdictWord, worst } from '../metrology/verdict.ts'
import type { Definitions } from './definitions.ts'
import { applicability } from './next.ts'
import { nonconformances } from './nonconformance.ts'
import { openStop, type State } from './state.ts'
import { unsettledPlaces } from './unsettled.ts'

/**
 * The verdict of the whole. A procedure that judges nothing comes to NONE, or to HOLD where readings of a place never
 * agreed: nobody knows what was measured there. A judge step that was skipped has no say.
 */
export function outcomeOf(defs: Definitions, state: State): VerdictWord | 'NONE' {
  if (openStop(state) !== null) return 'STOP'
  if (isHeld(defs, state)) return 'HOLD'
  const judges = defs.steps.filter((s) => s.step.kind === 'judge')
  if (judges.length === 0) return unsettledPlaces(defs, state).length === 0 ? 'NONE' : 'HOLD'
  const asked = judges.filter((s) => applicability(defs, state, s) !== 'skip')
  return worst(
    asked.map((s) => {
      const verdict = state.verdicts[s.id]
      return verdict === undefined || verdict.void ? 'HOLD' : verdict.verdict.result.verdict
    }),
  )
}

/** A lead holds what was found: nothing that was measured outweighs it. */
function isHeld(defs: Definitions, state: State): boolean {
  return nonconformances(defs, state).some(
    ({ decided, step }) => decided?.choice === 'hold' && state.verdicts[step] === undefined,
  )
}
