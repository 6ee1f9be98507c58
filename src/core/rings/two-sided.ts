// Judges a value that may be too small as well as too large: a gap that is too tight is as wrong as one that is too wide.

import { holdJudgement, type Judgement, judgeAgainst } from '../metrology/conformity.ts'
import type { JudgeInput } from '../metrology/judge-input.ts'
import type { Limit } from '../metrology/limit.ts'
import { type VerdictWord, worst } from '../metrology/verdict.ts'

export interface TwoSidedInput extends Omit<JudgeInput, 'limit' | 'startsAt'> {
  readonly characteristic: string
  readonly least: Limit | null | undefined
  readonly most: Limit | null | undefined
  /** What a value below the least means, in one sentence. */
  readonly tooSmall: string
  /** What a value above the most means, in one sentence. */
  readonly tooLarge: string
}

export interface TwoSidedJudgement {
  readonly verdict: VerdictWord
  readonly least: Judgement
  readonly most: Judgement
  readonly reasons: readonly string[]
}

/**
 * The worse of two judgements, one against the least and one against the most. Both limits are needed: a value is never
 * called good because only one side could be looked at. Limits that contradict each other are HOLD.
 * Decision rule of each side: see judgeAgainst.
 */
export function judgeTwoSided(input: TwoSidedInput): TwoSidedJudgement {
  const { characteristic, least, most, tooSmall, tooLarge, ...reading } = input
  const contradiction = limitsContradiction(characteristic, least, most)
  const one = (limit: Limit | null | undefined): Judgement =>
    contradiction === null ? judgeAgainst({ ...reading, limit }) : holdJudgement([contradiction])
  const low = one(least)
  const high = one(most)
  const isBeyond = ({ verdict }: Judgement) => verdict === 'REWORK' || verdict === 'REPLACE'
  const meaning = [...(isBeyond(low) ? [tooSmall] : []), ...(isBeyond(high) ? [tooLarge] : [])]
  return {
    verdict: worst([low.verdict, high.verdict]),
    least: low,
    most: high,
    reasons: [...new Set([...meaning, ...sided('least', least, low), ...sided('most', most, high)])],
  }
}

/** Only what bears on the verdict: an accepted side has nothing to add to a side that is not. */
function sided(side: 'least' | 'most', limit: Limit | null | undefined, judged: Judgement): string[] {
  const name = limit === null || limit === undefined ? `the ${side} value: ` : ''
  return judged.reasons.map((reason) => `${name}${reason}`)
}

function limitsContradiction(
  characteristic: string,
  least: Limit | null | undefined,
  most: Limit | null | undefined,
): string | null {
  for (const limit of [least, most])
    if (limit && limit.characteristic !== characteristic)
      return `a limit on record is for ${limit.characteristic}, not for ${characteristic}`
  if (least && least.bound !== 'at-least') return 'the least value on record does not bound from below'
  if (most && most.bound !== 'at-most') return 'the greatest value on record does not bound from above'
  if (least && most && !(least.value < most.value))
    return 'the least value on record is not below the greatest'
  return null
}
