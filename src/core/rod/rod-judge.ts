// Judges a rod on four characteristics, always all four: what is missing is HOLD.

import type { Result } from '../lib/result.ts'
import { holdJudgement, type Judgement, judgeAgainst } from '../metrology/conformity.ts'
import type { Limit } from '../metrology/limit.ts'
import { type VerdictWord, worst } from '../metrology/verdict.ts'
import type { RodForm } from './rod-form.ts'

export const ROD_CHARACTERISTICS = [
  'rod-out-of-round',
  'rod-taper',
  'rod-undersize',
  'rod-straightness',
] as const
export type RodCharacteristic = (typeof ROD_CHARACTERISTICS)[number]

export interface RodJudgeInput {
  readonly form: Result<RodForm>
  /** Whole movement of the indicator between centres, metres. */
  readonly straightnessM: number | null | undefined
  readonly limits: Readonly<Partial<Record<RodCharacteristic, Limit>>>
  readonly readingU: number | null | undefined
  readonly differenceU: number | null | undefined
  /** U of the indicator reading between centres. */
  readonly straightnessU: number | null | undefined
  readonly resolutionM: number | null | undefined
  readonly straightnessResolutionM: number | null | undefined
  readonly k?: number | undefined
  readonly simpleAcceptance?: { readonly by: string } | null | undefined
}

export interface RodVerdict {
  readonly verdict: VerdictWord
  readonly judged: Readonly<Record<RodCharacteristic, Judgement>>
}

/**
 * Undersize is judged with the U of one reading, as nominal has none; roundness and taper with that of a difference.
 * A rod whose readings are not whole is HOLD on the three that come from them. Decision rule: see judgeAgainst.
 */
export function judgeRod(input: RodJudgeInput): RodVerdict {
  const { form } = input
  const value = (pick: (whole: RodForm) => number) => (form.ok ? pick(form.value) : null)
  const judged = {
    'rod-out-of-round': one(
      input,
      'rod-out-of-round',
      value((f) => f.outOfRoundM),
      input.differenceU,
    ),
    'rod-taper': one(
      input,
      'rod-taper',
      value((f) => f.taperM),
      input.differenceU,
    ),
    'rod-undersize': one(
      input,
      'rod-undersize',
      value((f) => f.undersizeM),
      input.readingU,
    ),
    'rod-straightness': one(input, 'rod-straightness', input.straightnessM, input.straightnessU),
  }
  return { verdict: worst(Object.values(judged).map(({ verdict }) => verdict)), judged }
}

function one(
  input: RodJudgeInput,
  characteristic: RodCharacteristic,
  value: number | null | undefined,
  expandedU: number | null | undefined,
): Judgement {
  const limit = Object.hasOwn(input.limits, characteristic) ? input.limits[characteristic] : null
  if (limit && limit.characteristic !== characteristic)
    return holdJudgement([`the limit on record is for ${limit.characteristic}, not for this`])
  if (limit && limit.bound !== 'at-most')
    return holdJudgement(['the limit on record does not bound from above'])
  if (!input.form.ok && characteristic !== 'rod-straightness') return holdJudgement([input.form.error.say])
  const isStraightness = characteristic === 'rod-straightness'
  return judgeAgainst({
    value,
    expandedU,
    k: input.k,
    resolution: isStraightness ? input.straightnessResolutionM : input.resolutionM,
    limit,
    simpleAcceptance: input.simpleAcceptance,
  })
}
