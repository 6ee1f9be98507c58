// How far to move the piston to share the end clearance rightly, and how far to turn the rod in its thread for it.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { endClearanceSplit } from './split.ts'

export const MOVES_THE_ROD =
  'Turning the rod turns the piston with it: read both end clearances and the runout again.'

export interface Correction {
  /** Metres, signed: plus towards the head end. */
  readonly moveM: number
  readonly towards: 'head' | 'crank' | 'neither'
  readonly targetHeadM: number
  readonly targetCrankM: number
  /** Turns of the rod in its thread, without sign. */
  readonly turns: number
  readonly angleRad: number
  /** Flats of the nut or rod end; null when their count is not given. */
  readonly flats: number | null
  /** Out of the crosshead sets the piston towards the head end, whatever the hand of the thread. */
  readonly screw: 'out of the crosshead' | 'into the crosshead' | 'not at all'
}

/**
 * Move = total / 3 - crank end clearance as read, plus towards the head end; turns = |move| / pitch; flats = turns x
 * count of flats. The split is that of endClearanceSplit unless a crank share is stated.
 * Sources: split, Bloch & Hoefner 1996, p. 289; the move and the turns: geometry. Which way it screws does not hang on
 * the hand of the thread: out is longer, in is shorter. That any turning asks for both clearances again: p. 246.
 * Refuses: a clearance missing or below zero; both zero; a pitch not above zero; a share not between 0 and 1; flats not
 * a whole number from 2 to 12.
 *
 * @example crank 0.060, head 0.060, 8 threads per inch, 6 flats: 0.020 in towards the crank, 0.16 turns, 0.96 flats
 */
export function endClearanceMove(input: {
  readonly headM: number | null | undefined
  readonly crankM: number | null | undefined
  readonly pitchM: number | null | undefined
  readonly crankShare?: number | null | undefined
  readonly flats?: number | null | undefined
}): Result<Correction> {
  const { headM, crankM, pitchM, flats } = input
  const fault =
    refuseUnsound({ 'head end clearance': headM, 'crank end clearance': crankM }, 'zero or more') ??
    refuseUnsound({ 'thread pitch': pitchM })
  if (fault !== null) return fault
  if (flats !== null && flats !== undefined && !(Number.isInteger(flats) && flats >= 2 && flats <= 12))
    return refuse('flats-uncounted', 'The count of flats is not a whole number from 2 to 12: count them.')
  const totalM = (headM as number) + (crankM as number)
  const target = crankTarget(totalM, input.crankShare)
  if (!target.ok) return target
  const rawM = target.value - (crankM as number)
  // A move below floating noise is none, and has no direction.
  const moveM = Math.abs(rawM) < 1e-9 ? 0 : rawM
  const turns = Math.abs(moveM) / (pitchM as number)
  return (
    refuseOverflow(turns) ??
    ok({
      moveM,
      towards: moveM === 0 ? 'neither' : moveM > 0 ? 'head' : 'crank',
      targetHeadM: totalM - target.value,
      targetCrankM: target.value,
      turns,
      angleRad: turns * 2 * Math.PI,
      flats: flats === null || flats === undefined ? null : turns * flats,
      screw: moveM === 0 ? 'not at all' : moveM > 0 ? 'out of the crosshead' : 'into the crosshead',
    })
  )
}

function crankTarget(totalM: number, share: number | null | undefined): Result<number> {
  if (share === null || share === undefined) {
    const split = endClearanceSplit(totalM)
    return split.ok ? ok(split.value.crankM) : split
  }
  if (!(share > 0 && share < 1))
    return refuse('share-unsound', 'The share of the crank end is not between 0 and 1: correct it.')
  const fault = refuseUnsound({ 'whole end clearance': totalM })
  return fault ?? ok(totalM * share)
}
