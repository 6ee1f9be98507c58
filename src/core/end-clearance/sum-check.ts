// Head and crank end together are a property of the parts. When no part was changed, the sum as left must be the sum as
// found; if not, something is loose, bound or wrongly put together.

import { refuseUnsound } from '../bore/sound.ts'
import { holdJudgement, type Judgement, judgeAgainst } from '../metrology/conformity.ts'
import type { JudgeInput } from '../metrology/judge-input.ts'

export interface SumCheckInput extends Omit<JudgeInput, 'value' | 'expandedU' | 'startsAt'> {
  readonly foundHeadM: number | null | undefined
  readonly foundCrankM: number | null | undefined
  readonly leftHeadM: number | null | undefined
  readonly leftCrankM: number | null | undefined
  /** Expanded uncertainty of one reading, metres. */
  readonly readingU: number | null | undefined
  /** What was changed that bears on the sum (piston, rod, head, gasket); none when the list is empty. */
  readonly changed: readonly string[]
}

export interface SumCheck {
  readonly judgement: Judgement
  /** As left less as found, metres, signed. */
  readonly differenceM: number | null
}

/** U of the difference of two sums of two readings: sqrt(4) = 2 times that of one. Source: JCGM 100:2008 (GUM), 5.1.2. */
export function sumDifferenceU(readingU: number | null | undefined): number | null {
  return readingU === null || readingU === undefined ? null : 2 * readingU
}

/**
 * |(head + crank as left) - (head + crank as found)| against the owner's greatest.
 * Source: geometry. That more than a tenth of the sum calls for a search: common practice, no source; it is not made a
 * limit here.
 * HOLD: a reading or limit missing; a part changed, as then the two sums need not agree.
 *
 * @example found 0.080 and 0.040, left 0.082 and 0.037 in: -0.001 in
 */
export function judgeSum(input: SumCheckInput): SumCheck {
  const { limit } = input
  const fault = refuseUnsound(
    {
      'head end clearance as found': input.foundHeadM,
      'crank end clearance as found': input.foundCrankM,
      'head end clearance as left': input.leftHeadM,
      'crank end clearance as left': input.leftCrankM,
    },
    'zero or more',
  )
  if (fault !== null) return { judgement: holdJudgement([fault.error.say]), differenceM: null }
  const foundM = (input.foundHeadM as number) + (input.foundCrankM as number)
  const differenceM = (input.leftHeadM as number) + (input.leftCrankM as number) - foundM
  const held = (why: string): SumCheck => ({ judgement: holdJudgement([why]), differenceM })
  if (input.changed.length > 0)
    return held(`changed since it was found: ${input.changed.join(', ')}; so the sum need not be the same`)
  if (limit && limit.characteristic !== 'end-clearance-sum')
    return held(`the limit on record is for ${limit.characteristic}, not for the sum of the end clearances`)
  if (limit && limit.bound !== 'at-most') return held('the limit on record does not bound from above')
  const judgement = judgeAgainst({
    value: Math.abs(differenceM),
    expandedU: sumDifferenceU(input.readingU),
    k: input.k,
    resolution: input.resolution,
    limit,
    simpleAcceptance: input.simpleAcceptance,
  })
  return { judgement, differenceM }
}
