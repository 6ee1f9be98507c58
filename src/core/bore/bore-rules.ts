// The published fall-back limits of a bore as named rules, for the lead to name one. They stand for a machine's own book
// only where it is silent, they are never averaged, and none is chosen here.

import { ok, type Result, refuse } from '../lib/result.ts'
import type { Limit } from '../metrology/limit.ts'
import type { LimitRule } from './fallback-limits.ts'
import { refuseUnsound } from './sound.ts'

const IN = 0.0254
const BOOK =
  'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996, p. 259'

export interface NamedBoreRule extends LimitRule {
  readonly characteristic: 'spread' | 'out-of-round' | 'taper'
  readonly says: string
  readonly source: string
}

export const BORE_RULES = {
  'spread-general': rule('spread', 0.00075, 'nominal-bore', 'greatest less least of all readings'),
  'spread-light-gas': rule('spread', 0.0005, 'nominal-bore', 'the same for light gas or high differential'),
  'round-metal-rings': rule('out-of-round', 0.001, 'nominal-bore', 'out-of-round, metal rings', 0.015 * IN),
  'round-ptfe-rings': rule('out-of-round', 0.002, 'nominal-bore', 'out-of-round, PTFE rings', 0.018 * IN),
  'taper-per-stroke': rule('taper', 0.0005, 'stroke', 'taper over the length of the bore'),
} as const satisfies Record<string, NamedBoreRule>

export type BoreRuleName = keyof typeof BORE_RULES

function rule(
  characteristic: NamedBoreRule['characteristic'],
  ratio: number,
  of: LimitRule['of'],
  says: string,
  atMost?: number,
): NamedBoreRule {
  return { characteristic, ratio, of, says, source: BOOK, atMost }
}

const LIGHT_GAS_MW = 17
const HIGH_DIFFERENTIAL_PA = 700 * 6894.757293168

/**
 * Which of the two spread rules the service asks for: the tighter one where the gas is lighter than 17 g/mol OR the
 * rings hold more than 700 psi (Bloch & Hoefner 1996, p. 259). On an edge the tighter rule is taken.
 * Refuses: either figure missing or not above zero, as the looser rule may not be taken on a guess.
 *
 * @example gas of 18.5 g/mol, 125 psi across the rings: spread-general
 */
export function spreadRuleFor(service: {
  readonly molarMass: number | null | undefined
  readonly differentialPa: number | null | undefined
}): Result<{ rule: 'spread-general' | 'spread-light-gas'; because: string }> {
  const { molarMass, differentialPa } = service
  const fault = refuseUnsound({
    'molar mass of the gas': molarMass,
    'pressure difference across the rings': differentialPa,
  })
  if (fault !== null) return fault
  if ((molarMass as number) <= LIGHT_GAS_MW)
    return ok({ rule: 'spread-light-gas', because: 'the gas is not heavier than 17 g/mol' })
  if ((differentialPa as number) >= HIGH_DIFFERENTIAL_PA)
    return ok({ rule: 'spread-light-gas', because: 'the rings hold 700 psi or more' })
  return ok({
    rule: 'spread-general',
    because: 'the gas is heavier than 17 g/mol and the rings hold less than 700 psi',
  })
}

/**
 * The ridge at the end of ring travel: bore out "at 0.007 to 0.010 in", all sizes (Bloch & Hoefner 1996, p. 259). The
 * book gives a band and not a figure, so both readings of it are offered and the lead names one.
 */
export const RIDGE_RULES = {
  'ridge-rework-from-0.007-in': { valueM: 0.007 * IN, monitorFrom: undefined, source: BOOK },
  'ridge-watch-from-0.007-rework-from-0.010-in': { valueM: 0.01 * IN, monitorFrom: 0.7, source: BOOK },
} as const

export type RidgeRuleName = keyof typeof RIDGE_RULES

/** A limit for the ridge. Not inclusive: the book sends a ridge that is AT the figure to be bored. */
export function ridgeLimit(
  name: RidgeRuleName,
  about: Pick<Limit, 'approvedBy' | 'since' | 'book'>,
): Result<Limit> {
  const found = Object.hasOwn(RIDGE_RULES, name) ? RIDGE_RULES[name] : undefined
  if (found === undefined)
    return refuse(
      'rule-not-offered',
      `There is no ridge rule by that name: ${Object.keys(RIDGE_RULES).join(', ')}.`,
    )
  return ok({
    characteristic: 'ridge',
    bound: 'at-most',
    value: found.valueM,
    unit: 'in',
    inclusive: false,
    beyond: 'REWORK',
    monitorFrom: found.monitorFrom,
    source: found.source,
    from: 'fallback',
    ...about,
  })
}
