// Turns a limit-book rule (so much per unit of bore or stroke, perhaps with a ceiling) into a limit. Which rule applies
// is the caller's choice: two rules are never averaged, and none is made up here.

import { ok, type Result, refuse } from '../lib/result.ts'
import type { Limit } from '../metrology/limit.ts'

export interface LimitRule {
  /** Length per length, for instance 0.00075 in per in. */
  readonly ratio: number
  readonly of: 'nominal-bore' | 'stroke'
  /** Ceiling on the result, metres. */
  readonly atMost?: number | undefined
}

export interface RuleSizes {
  readonly nominalBoreM?: number | null | undefined
  readonly strokeM?: number | null | undefined
}

/**
 * Value of a rule for this machine, metres, and whether the ceiling cut it.
 * Refuses: a ratio that is not between 0 and 1; a ceiling that is not above zero; a size that is not on record.
 *
 * @example 0.00075 per nominal bore, 10.000 in: 0.0075 in (Bloch & Hoefner 1996, p. 259)
 */
export function resolveRule(rule: LimitRule, sizes: RuleSizes): Result<{ valueM: number; capped: boolean }> {
  if (!(rule.ratio > 0 && rule.ratio < 1))
    return refuse(
      'rule-ratio-unsound',
      'The ratio of the rule is not between 0 and 1: correct the limit book.',
    )
  if (rule.of !== 'nominal-bore' && rule.of !== 'stroke')
    return refuse(
      'rule-size-unknown',
      'The rule names neither the nominal bore nor the stroke: correct the limit book.',
    )
  if (rule.atMost !== undefined && !(Number.isFinite(rule.atMost) && rule.atMost > 0))
    return refuse(
      'rule-ceiling-unsound',
      'The ceiling of the rule is not above zero: correct the limit book.',
    )
  const size = rule.of === 'nominal-bore' ? sizes.nominalBoreM : sizes.strokeM
  const name = rule.of === 'nominal-bore' ? 'nominal bore' : 'stroke'
  if (size === null || size === undefined || !(Number.isFinite(size) && size > 0))
    return refuse(
      'rule-size-missing',
      `The ${name} that the rule needs is not on record: add it to the machine record.`,
    )
  const plain = rule.ratio * size
  const capped = rule.atMost !== undefined && plain > rule.atMost
  return ok({ valueM: capped ? (rule.atMost as number) : plain, capped })
}

/** A whole Limit from a rule: everything but the value is said by the book and the one who approved it. */
export function limitFromRule(rule: LimitRule, sizes: RuleSizes, about: Omit<Limit, 'value'>): Result<Limit> {
  const resolved = resolveRule(rule, sizes)
  return resolved.ok ? ok({ ...about, value: resolved.value.valueM }) : resolved
}
