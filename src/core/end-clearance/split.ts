// How the whole end clearance is shared between the two ends, and what it becomes when the machine is hot.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

/**
 * Head end two thirds, crank end one third of the total, metres, set cold.
 * Source: Bloch & Hoefner, Reciprocating Compressors: Operation and Maintenance, 1996, p. 289: "approximately", as growth
 * by heat and wear of the big end both open the crank end.
 * Refuses: a total that is missing or not above zero.
 *
 * @example total 0.120 in: head 0.080, crank 0.040
 */
export function endClearanceSplit(
  totalM: number | null | undefined,
): Result<{ headM: number; crankM: number }> {
  const fault = refuseUnsound({ 'whole end clearance': totalM })
  if (fault !== null) return fault
  const crankM = (totalM as number) / 3
  return refuseOverflow(crankM) ?? ok({ headM: (totalM as number) - crankM, crankM })
}

/** A part in the chain from crosshead to piston face, or of the frame and cylinder. */
export interface GrowingPart {
  readonly name: string
  readonly lengthM: number | null | undefined
  readonly alphaPerK: number | null | undefined
  /** Hot less cold, K; below zero when it runs colder. */
  readonly riseK: number | null | undefined
}

/**
 * Growth of parts in a row, metres, signed: the sum of L alpha dT.
 * Source: definition of expansion; 6.0e-6 per F for iron and steel, Bloch & Hoefner 1996, p. 228.
 * Refuses: no part; a length or expansion missing or not above zero; an expansion above 60e-6 per K; a rise that is
 * missing or beyond 500 K.
 *
 * @example 60 in of steel, 6e-6 per F, 100 F: 0.036 in
 */
export function growth(parts: readonly GrowingPart[]): Result<number> {
  if (parts.length === 0) return refuse('no-part', 'No part is named whose growth is asked for: name them.')
  let sumM = 0
  for (const { name, lengthM, alphaPerK, riseK } of parts) {
    const fault =
      refuseUnsound({ [`length of the ${name}`]: lengthM, [`expansion of the ${name}`]: alphaPerK }) ??
      refuseUnsound({ [`rise in temperature of the ${name}`]: riseK }, 'any')
    if (fault !== null) return fault
    if ((alphaPerK as number) > 60e-6)
      return refuse(
        'expansion-implausible',
        `The expansion of the ${name} is above 60 millionths per K: check the unit.`,
      )
    if (Math.abs(riseK as number) > 500)
      return refuse(
        'rise-implausible',
        `The rise in temperature of the ${name} is beyond 500 K: check the unit.`,
      )
    sumM += (lengthM as number) * (alphaPerK as number) * (riseK as number)
  }
  return refuseOverflow(sumM) ?? ok(sumM === 0 ? 0 : sumM)
}

export interface HotClearances {
  /** Signed: below zero the piston would strike. */
  readonly headM: number
  readonly crankM: number
  readonly strikes: 'head' | 'crank' | null
}

/**
 * Clearances hot, metres, all growths from the same datum (the main bearing, or the crosshead if both chains start there):
 * head = cold - rod - piston + casing to the head; crank = cold + rod - casing to the crank end face.
 * The rod carries the crank face of the piston; the piston grows from there towards the head.
 * Source: geometry; that heat opens the crank end, Bloch & Hoefner 1996, p. 289. Play in bearings is not counted.
 * Refuses: a clearance missing or below zero; a growth missing or not a number.
 *
 * @example head 0.080, crank 0.040, rod 0.024, piston 0.006, casing 0.008 and 0.004 in: 0.058 and 0.060 in
 */
export function hotClearances(input: {
  readonly headColdM: number | null | undefined
  readonly crankColdM: number | null | undefined
  readonly rodGrowthM: number | null | undefined
  readonly pistonGrowthM: number | null | undefined
  readonly casingToHeadM: number | null | undefined
  readonly casingToCrankM: number | null | undefined
}): Result<HotClearances> {
  const fault =
    refuseUnsound(
      { 'head end clearance': input.headColdM, 'crank end clearance': input.crankColdM },
      'zero or more',
    ) ??
    refuseUnsound(
      {
        'growth of the rod': input.rodGrowthM,
        'growth of the piston': input.pistonGrowthM,
        'growth of the casing to the head': input.casingToHeadM,
        'growth of the casing to the crank end': input.casingToCrankM,
      },
      'any',
    )
  if (fault !== null) return fault
  const rodM = input.rodGrowthM as number
  const outwardM = rodM + (input.pistonGrowthM as number) - (input.casingToHeadM as number)
  const headM = (input.headColdM as number) - outwardM
  const crankM = (input.crankColdM as number) + rodM - (input.casingToCrankM as number)
  const strikes = headM <= 0 ? 'head' : crankM <= 0 ? 'crank' : null
  return refuseOverflow(headM, crankM) ?? ok({ headM, crankM, strikes })
}
