// Turns a limit-book rule (so much per unit of a size, perhaps with a ceiling or a floor) into a limit. Which rule applies
// is the caller's choice: two rules are never averaged, and none is made up here.

import { ok, type Result, refuse } from '../lib/result.ts'
import type { Limit } from '../metrology/limit.ts'

const SIZE_NAMES = {
  'nominal-bore': 'nominal bore',
  stroke: 'stroke',
  'rod-diameter': 'rod diameter',
  'ring-width': 'width of the rings',
  'new-ring-gap': 'end gap of a new ring',
} as const
export type RuleSize = keyof typeof SIZE_NAMES

export interface LimitRule {
  /** Length per length, for instance 0.00075 in per in. */
  readonly ratio: number
  readonly of: RuleSize
  /** Added to the share, metres. */
  readonly plus?: number | undefined
  /** Ceiling on the result, metres. */
  readonly atMost?: number | undefined
  /** Floor under the result, metres. */
  readonly atLeast?: number | undefined
}

/** Sizes that rules are taken of, metres; what is not on record is left out. */
export type RuleSizes = Readonly<Partial<Record<RuleSize, number | null | undefined>>>

/** A share of a size is below one; a worn gap is given as a multiple of the new one. */
const GREATEST_RATIO: Readonly<Partial<Record<RuleSize, number>>> = { 'new-ring-gap': 10 }

export function sizeName(of: RuleSize): string {
  return SIZE_NAMES[of]
}

/**
 * Value of a rule for this machine, metres: ratio x size + plus, kept between floor and ceiling.
 * Refuses: a ratio that is not between 0 and 1 (10 for a multiple of the new gap); a ceiling, a floor or an addition that
 * is not above zero; a floor above the ceiling; a size that is not on record.
 *
 * @example 0.00075 per nominal bore, 10.000 in: 0.0075 in (Bloch & Hoefner 1996, p. 259)
 * @example 0.0015 per nominal bore plus 0.005 in, 10.000 in: 0.020 in (Bloch & Hoefner 1996, p. 269)
 */
export function resolveRule(rule: LimitRule, sizes: RuleSizes): Result<{ valueM: number; capped: boolean }> {
  if (!Object.hasOwn(SIZE_NAMES, rule.of))
    return refuse(
      'rule-size-unknown',
      'The rule names no length of the machine that is known: correct the limit book.',
    )
  const most = GREATEST_RATIO[rule.of] ?? 1
  if (!(rule.ratio > 0 && rule.ratio < most))
    return refuse(
      'rule-ratio-unsound',
      `The ratio of the rule is not between 0 and ${most}: correct the limit book.`,
    )
  for (const [name, figure] of [
    ['ceiling', rule.atMost],
    ['floor', rule.atLeast],
    ['addition', rule.plus],
  ] as const)
    if (figure !== undefined && !(Number.isFinite(figure) && figure > 0))
      return refuse(
        `rule-${name}-unsound`,
        `The ${name} of the rule is not above zero: correct the limit book.`,
      )
  if (rule.atMost !== undefined && rule.atLeast !== undefined && !(rule.atLeast < rule.atMost))
    return refuse(
      'rule-floor-unsound',
      'The floor of the rule is not below its ceiling: correct the limit book.',
    )
  const size = sizes[rule.of]
  if (size === null || size === undefined || !(Number.isFinite(size) && size > 0))
    return refuse(
      'rule-size-missing',
      `The ${SIZE_NAMES[rule.of]} that the rule needs is not on record: add it to the machine record.`,
    )
  const plain = rule.ratio * size + (rule.plus ?? 0)
  const capped = rule.atMost !== undefined && plain > rule.atMost
  return ok({ valueM: capped ? (rule.atMost as number) : Math.max(plain, rule.atLeast ?? plain), capped })
}

/** A whole Limit from a rule: everything but the value is said by the book and the one who approved it. */
export function limitFromRule(rule: LimitRule, sizes: RuleSizes, about: Omit<Limit, 'value'>): Result<Limit> {
  const resolved = resolveRule(rule, sizes)
  return resolved.ok ? ok({ ...about, value: resolved.value.valueM }) : resolved
}
