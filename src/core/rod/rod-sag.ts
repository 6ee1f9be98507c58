// Sag of a rod under its own weight and what it adds to the vertical runout. Two models, which do not agree: an option,
// never added in silence.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { RUNOUT_CONVENTIONS, type RunoutConvention } from './runout-expected.ts'

/** m/s2, standard (NIST SP 811). */
const GRAVITY = 9.80665

export interface RodBeam {
  readonly lengthM: number | null | undefined
  readonly diameterM: number | null | undefined
  /** kg/m3 and Pa of the rod. */
  readonly density: number | null | undefined
  readonly elasticityPa: number | null | undefined
}

/**
 * Sag in the middle of a round solid rod held at both ends without clamping, metres: 5 w L4 / (384 E I), with
 * w = rho g pi d2/4 and I = pi d4/64, so 5 rho g L4 / (24 E d2).
 * Source: beam on two supports under even load, J. E. Shigley, Mechanical Engineering Design, table A-9 (table from
 * memory). Piston and crosshead do hold the ends a little, so a real rod sags less.
 * Refuses: a figure missing or not above zero; a rod thicker than a tenth of its length (no slender beam).
 *
 * @example steel 2.25 in x 45 in, 7850 kg/m3, 207 GPa: 0.0016 in
 */
export function rodSag(beam: RodBeam): Result<number> {
  const fault = beamFault(beam)
  if (fault !== null) return fault
  const { lengthM, diameterM, density, elasticityPa } = sound(beam)
  const sagM = (5 * density * GRAVITY * lengthM ** 4) / (24 * elasticityPa * diameterM ** 2)
  return refuseOverflow(sagM) ?? ok(sagM)
}

function sound(beam: RodBeam): { lengthM: number; diameterM: number; density: number; elasticityPa: number } {
  return beam as { lengthM: number; diameterM: number; density: number; elasticityPa: number }
}

function beamFault(beam: RodBeam) {
  const fault = refuseUnsound({
    'length of the rod': beam.lengthM,
    'rod diameter': beam.diameterM,
    'density of the rod': beam.density,
    'elasticity of the rod': beam.elasticityPa,
  })
  if (fault !== null) return fault
  if ((beam.diameterM as number) * 10 > (beam.lengthM as number))
    return refuse(
      'rod-not-slender',
      'The rod is thicker than a tenth of its length: it does not sag as a beam.',
    )
  return null
}

export const SAG_MODELS = {
  'two-straight-halves':
    'Compressor Handbook: Principles and Practice (T. Giampaolo, about 2010; author and year from memory), p. 190: stroke over half the rod times the sag, indicator close to the packing',
  'bent-beam': 'mechanics: the curve of a beam on two supports at the two places the indicator touches',
} as const

/**
 * What sag adds to the vertical runout near the packing by the handbook's model, metres, signed: the rod as two straight
 * halves, stroke / (L/2) x sag. Read at the outer end with the zero at the inner one it is MINUS near the packing and
 * plus near the crosshead; about nought at the middle.
 * Refuses: a figure missing or unsound; a stroke longer than half the rod; a convention not offered.
 *
 * @example stroke 9 in, rod 70 in, sag 0.023 in: 0.006 in (printed)
 */
export function sagRunoutTwoHalves(input: {
  readonly strokeM: number | null | undefined
  readonly lengthM: number | null | undefined
  readonly sagM: number | null | undefined
  readonly convention: RunoutConvention
}): Result<number> {
  const { strokeM, lengthM, sagM, convention } = input
  const fault =
    refuseUnsound({ stroke: strokeM, 'length of the rod': lengthM }) ??
    refuseUnsound({ sag: sagM }, 'zero or more')
  if (fault !== null) return fault
  if (!Object.hasOwn(RUNOUT_CONVENTIONS, convention)) return noConvention()
  if ((strokeM as number) > (lengthM as number) / 2)
    return refuse('stroke-over-half-rod', 'The stroke is longer than half the rod: this model does not hold.')
  const runoutM =
    -RUNOUT_CONVENTIONS[convention] * ((strokeM as number) / ((lengthM as number) / 2)) * (sagM as number)
  return refuseOverflow(runoutM) ?? ok(runoutM === 0 ? 0 : runoutM)
}

function noConvention() {
  return refuse(
    'not-offered',
    `Say how the dial was set, one of ${Object.keys(RUNOUT_CONVENTIONS).join(', ')}.`,
  )
}

/**
 * The same by the curve of the beam, metres, signed. `touchesAtOuterM` is how far from the crosshead pin the indicator
 * touches the rod with the piston at its outer end; at the inner end it touches one stroke further along.
 * Down at x from the pin: rho g 16/d2 / (24 E) x (L3 - 2 L x2 + x3) x. Source as rodSag.
 * Refuses: a figure missing or unsound; a place that runs off the rod; a convention not offered.
 */
export function sagRunoutBeam(
  input: RodBeam & {
    readonly strokeM: number | null | undefined
    readonly touchesAtOuterM: number | null | undefined
    readonly convention: RunoutConvention
  },
): Result<number> {
  const { strokeM, touchesAtOuterM, convention } = input
  const fault =
    beamFault(input) ??
    refuseUnsound({ stroke: strokeM }) ??
    refuseUnsound({ 'place of the indicator': touchesAtOuterM }, 'zero or more')
  if (fault !== null) return fault
  if (!Object.hasOwn(RUNOUT_CONVENTIONS, convention)) return noConvention()
  const atOuterM = touchesAtOuterM as number
  const atInnerM = atOuterM + (strokeM as number)
  if (atInnerM > (input.lengthM as number) + 1e-9)
    return refuse(
      'indicator-off-the-rod',
      'The indicator would run off the rod: check its place and the stroke.',
    )
  // Down at the inner place less down at the outer one is how far the rod FALLS from outer to inner.
  const fallsM = downAt(input, atInnerM) - downAt(input, atOuterM)
  const runoutM = RUNOUT_CONVENTIONS[convention] * fallsM
  return refuseOverflow(runoutM) ?? ok(runoutM === 0 ? 0 : runoutM)
}

function downAt(beam: RodBeam, x: number): number {
  const { lengthM, diameterM, density, elasticityPa } = sound(beam)
  const loadOverStiffness = (16 * density * GRAVITY) / (elasticityPa * diameterM ** 2)
  return (loadOverStiffness * x * (lengthM ** 3 - 2 * lengthM * x ** 2 + x ** 3)) / 24
}
