// The runout a good machine shows when barred over cold. Sideways it is nought; up and down it is NOT nought, as piston
// and crosshead lie in their clearances by different amounts.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

/**
 * How the dial was set. In both, plus is the rod moving UP towards a pin on top of it. The two give opposite signs for
 * one and the same machine, so a reading without its convention is worth nothing.
 * Setting at the outer end: Bloch & Hoefner 1996, p. 243-244, where plus means the piston stands high of the crosshead
 * and a small minus is wanted cold.
 */
export const RUNOUT_CONVENTIONS = {
  'zero-at-outer-end-read-at-inner': -1,
  'zero-at-inner-end-read-at-outer': 1,
} as const
export type RunoutConvention = keyof typeof RUNOUT_CONVENTIONS

export interface RunoutGeometry {
  readonly strokeM: number | null | undefined
  /** From the middle of the piston to the crosshead pin, metres. */
  readonly rodLengthM: number | null | undefined
  /** Running clearances on diameter, metres. */
  readonly pistonClearanceM: number | null | undefined
  readonly crossheadClearanceM: number | null | undefined
  readonly convention: RunoutConvention
}

/**
 * Vertical runout expected of a rigid straight rod, metres, signed by the convention:
 * sign x stroke / L x (piston clearance - crosshead clearance) / 2, minus when read at the inner end and the piston lies
 * lower. Cold, barred by hand, piston and crosshead resting on the bottom, cylinder and guide in line.
 * Sources: that it is reckoned from the two running clearances, rod length and stroke: Compressor Handbook: Principles
 * and Practice (T. Giampaolo, about 2010; author and year from memory), p. 191; the formula is our geometry of it.
 * Refuses: a figure missing or unsound; a stroke as long as the rod; a convention not offered.
 *
 * @example stroke 9 in, L 70 in, clearances 0.060 and 0.008 in, zero at the outer end: -0.0033 in
 */
export function expectedVerticalRunout(geometry: RunoutGeometry): Result<number> {
  const { strokeM, rodLengthM, pistonClearanceM, crossheadClearanceM, convention } = geometry
  const fault =
    refuseUnsound({ stroke: strokeM, 'length from piston to crosshead pin': rodLengthM }) ??
    refuseUnsound(
      {
        'running clearance of the piston': pistonClearanceM,
        'running clearance of the crosshead': crossheadClearanceM,
      },
      'zero or more',
    )
  if (fault !== null) return fault
  if (!Object.hasOwn(RUNOUT_CONVENTIONS, convention))
    return refuse(
      'not-offered',
      `Say how the dial was set, one of ${Object.keys(RUNOUT_CONVENTIONS).join(', ')}: without it a sign means nothing.`,
    )
  if ((strokeM as number) >= (rodLengthM as number))
    return refuse('stroke-longer-than-rod', 'The stroke is not shorter than the rod: check both.')
  const lowM = ((pistonClearanceM as number) - (crossheadClearanceM as number)) / 2
  const runoutM = RUNOUT_CONVENTIONS[convention] * ((strokeM as number) / (rodLengthM as number)) * lowM
  // Minus zero would print as a sign that means nothing.
  return refuseOverflow(runoutM) ?? ok(runoutM === 0 ? 0 : runoutM)
}

/**
 * Expanded uncertainty of the expected runout from that of the two clearances (k as theirs), metres:
 * stroke / L x sqrt(Up2 + Ux2) / 2. Source: JCGM 100:2008 (GUM), 5.1.2. Refuses: what is missing or unsound.
 */
export function expectedRunoutU(input: {
  readonly strokeM: number | null | undefined
  readonly rodLengthM: number | null | undefined
  readonly pistonClearanceU: number | null | undefined
  readonly crossheadClearanceU: number | null | undefined
}): Result<number> {
  const fault =
    refuseUnsound({ stroke: input.strokeM, 'length from piston to crosshead pin': input.rodLengthM }) ??
    refuseUnsound(
      {
        'measuring error of the piston clearance': input.pistonClearanceU,
        'measuring error of the crosshead clearance': input.crossheadClearanceU,
      },
      'zero or more',
    )
  if (fault !== null) return fault
  const both = Math.hypot(input.pistonClearanceU as number, input.crossheadClearanceU as number)
  return ok((((input.strokeM as number) / (input.rodLengthM as number)) * both) / 2)
}

/** Allowed about the expected value, both ways, metres: Compressor Handbook: Principles and Practice, p. 191. */
export const RUNOUT_PER_STROKE = 0.00015
