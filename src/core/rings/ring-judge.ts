// Judges what is read on a ring: end gap, side clearance, radial wear. Limits are the caller's; none is made up here.

import { holdJudgement, type Judgement, judgeAgainst } from '../metrology/conformity.ts'
import type { JudgeInput } from '../metrology/judge-input.ts'
import type { Limit } from '../metrology/limit.ts'
import { judgeTwoSided, type TwoSidedJudgement } from './two-sided.ts'

export const GAP_TOO_SMALL =
  'the gap is too small: the ends will meet when the ring grows hot, so file the ends at one joint and read it again'
export const GAP_TOO_LARGE = 'the gap is too large: gas blows by the ring'

export interface BandInput extends Omit<JudgeInput, 'limit' | 'startsAt'> {
  readonly least: Limit | null | undefined
  readonly most: Limit | null | undefined
}

/**
 * End gap between a least and a greatest value. Below the least is REWORK and never better than new; above the greatest
 * is what its limit says. A gap is read in the smallest, unworn part of the bore.
 * Source: Bloch & Hoefner, Reciprocating Compressors: Operation and Maintenance, 1996, p. 273 (file the ends of a ring
 * that is too tight; where to read; too much is better than too little) and p. 280-281 (three times new).
 */
export function judgeRingGap(input: BandInput): TwoSidedJudgement {
  const wording = { characteristic: 'ring-end-gap', tooSmall: GAP_TOO_SMALL, tooLarge: GAP_TOO_LARGE }
  if (input.least && input.least.beyond !== 'REWORK') {
    const hold = holdJudgement([
      'a ring that is too tight is filed, so the least gap on record must say REWORK',
    ])
    return { verdict: 'HOLD', least: hold, most: hold, reasons: hold.reasons }
  }
  return judgeTwoSided({ ...input, ...wording })
}

/** Side clearance between a least and a greatest value. Source: Bloch & Hoefner 1996, p. 269-274. */
export function judgeSideClearance(input: BandInput): TwoSidedJudgement {
  return judgeTwoSided({
    ...input,
    characteristic: 'ring-side-clearance',
    tooSmall: 'the ring is too tight in its groove: it will stick when hot',
    tooLarge: 'the ring is too loose in its groove: it will hammer the lands and leak',
  })
}

/** Radial wear against the owner's greatest. Missing limit, wrong limit or missing value: HOLD. */
export function judgeRadialWear(input: Omit<JudgeInput, 'startsAt'>): Judgement {
  const { limit } = input
  if (limit && limit.characteristic !== 'ring-radial-wear')
    return holdJudgement([
      `the limit on record is for ${limit.characteristic}, not for radial wear of a ring`,
    ])
  if (limit && limit.bound !== 'at-most')
    return holdJudgement(['the limit on record does not bound wear from above'])
  return judgeAgainst(input)
}
