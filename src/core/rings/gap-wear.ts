// How an end gap grows with wear of bore and ring, and how far it may grow under the rule that the lead names.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

const BH = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'

/**
 * Gap growth = pi x bore growth on diameter + 2 pi x radial wear of the ring's face, metres: a ring pressed to the wall
 * lies on a circle, and the circle grows by pi times its diameter.
 * Sources: pi times the bore: Bloch & Hoefner 1996, p. 261 and 281; 2 pi times the face: geometry, no source.
 * Refuses: a growth or wear that is missing, not finite or below zero, as neither bore nor ring grows back.
 *
 * @example bore 0.010 in larger, ring unworn: 0.0314 in; ring face 0.005 in thinner, bore unworn: 0.0314 in
 */
export function gapGrowth(wear: {
  readonly boreGrowthM: number | null | undefined
  readonly radialWearM: number | null | undefined
}): Result<{ fromBoreM: number; fromRingM: number; growthM: number }> {
  const { boreGrowthM, radialWearM } = wear
  const fault = refuseUnsound(
    { 'growth of the bore': boreGrowthM, 'radial wear of the ring': radialWearM },
    'zero or more',
  )
  if (fault !== null) return fault
  const fromBoreM = Math.PI * (boreGrowthM as number)
  const fromRingM = 2 * Math.PI * (radialWearM as number)
  const growthM = fromBoreM + fromRingM
  return refuseOverflow(growthM) ?? ok({ fromBoreM, fromRingM, growthM })
}

/**
 * How large a worn gap may be. Three times new is not universal: a US Army manual for a small air compressor
 * (TM 5-4310-384-13, table G-2) stops at 1.1 to 1.4 times its upper new gap. The lead names one rule.
 */
export const GAP_LIMIT_RULES = {
  'three-times-new': { factor: 3, source: `${BH}, p. 261 and 280-281 (worn rings as well as worn bore)` },
  'stated-factor': { factor: null, source: "the machine's own book, as the lead states it" },
} as const
export type GapLimitRuleName = keyof typeof GAP_LIMIT_RULES

/**
 * Greatest gap = factor x new gap; growth allowed = greatest less new; bore growth that brings it with an unworn ring
 * = growth allowed / pi, metres.
 * Sources: Bloch & Hoefner 1996, p. 261 (0.003 in per in) and p. 281 (0.002 in per in): the same bore gives 0.019 and
 * 0.013 in, which is why the new gap is an input and not a constant here.
 * Refuses: a new gap not above zero; a rule not offered; a stated factor that is missing or not above 1.
 *
 * @example new gap 0.030 in, three times new: 0.090 in, so the bore may grow 0.019 in
 */
export function gapLimit(input: {
  readonly newGapM: number | null | undefined
  readonly rule: GapLimitRuleName
  readonly statedFactor?: number | null | undefined
}): Result<{ greatestM: number; growthM: number; boreGrowthM: number; factor: number }> {
  const { newGapM, rule, statedFactor } = input
  const fault = refuseUnsound({ 'new end gap': newGapM })
  if (fault !== null) return fault
  if (!Object.hasOwn(GAP_LIMIT_RULES, rule))
    return refuse(
      'not-offered',
      `There is no gap rule by that name: choose one of ${Object.keys(GAP_LIMIT_RULES).join(', ')}.`,
    )
  const factor = GAP_LIMIT_RULES[rule].factor ?? statedFactor
  const unstated = refuseUnsound({ 'stated factor': factor })
  if (unstated !== null) return unstated
  if ((factor as number) <= 1)
    return refuse('factor-too-small', 'A factor of 1 or less leaves no wear at all: correct it.')
  const greatestM = (factor as number) * (newGapM as number)
  const growthM = greatestM - (newGapM as number)
  return (
    refuseOverflow(greatestM) ??
    ok({ greatestM, growthM, boreGrowthM: growthM / Math.PI, factor: factor as number })
  )
}

/**
 * Radial wear of a ring = thickness when new less thickness now, metres, at the thinnest place that was measured.
 * No published limit was found: the limit is the machine's own. Source: definition.
 * Refuses: a size missing or not above zero; a ring thicker than new by more than the measuring error U (wrong ring or
 * wrong record). Within U it counts as no wear.
 *
 * @example new 0.500 in, now 0.462 in: 0.038 in
 */
export function radialWear(ring: {
  readonly newM: number | null | undefined
  readonly nowM: number | null | undefined
  readonly differenceU: number | null | undefined
}): Result<{ wearM: number; share: number }> {
  const { newM, nowM, differenceU } = ring
  const fault =
    refuseUnsound({ 'ring thickness when new': newM, 'ring thickness now': nowM }) ??
    refuseUnsound({ 'measuring error of the difference': differenceU }, 'zero or more')
  if (fault !== null) return fault
  const wearM = (newM as number) - (nowM as number)
  if (wearM < -(differenceU as number) - 1e-9)
    return refuse(
      'ring-thicker-than-new',
      'The ring is thicker than when new by more than the measuring error: check that it is the right ring and record.',
    )
  const worn = Math.max(0, wearM)
  return ok({ wearM: worn, share: worn / (newM as number) })
}
