// The form of a rod from its sizes at stations and axes, and what is read on it between centres.

import { type BoreForm, boreForm } from '../bore/bore-form.ts'
import type { BoreReading } from '../bore/bore-readings.ts'
import { refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

/** A size of the rod, metres at 20 C, at a station along the packing travel and on an axis. */
export type RodReading = BoreReading

export interface RodForm {
  readonly outOfRoundM: number
  /** Greatest difference between any two stations on one axis, metres. */
  readonly taperM: number
  readonly smallest: { readonly valueM: number; readonly station: string; readonly axis: string }
  /** Greatest size of the drawing less smallest, metres; zero where the rod is not below it. */
  readonly undersizeM: number
  readonly shape: BoreForm
}

/**
 * Roundness, taper and undersize of a rod. The sums are those of a bore read from outside; see boreForm.
 * Undersize is counted from the GREATEST size of the drawing: the form of p. 350 takes 2.995 as the floor of 2.999/3.000.
 * Source of what is read: Bloch & Hoefner, Reciprocating Compressors: Operation and Maintenance, 1996, p. 290.
 * Refuses: readings that are not whole (fewer than two stations or axes, one missing, one twice); a nominal that is
 * missing; a rod larger than nominal by more than the measuring error (wrong record, or plated and not recorded).
 *
 * @example drawing 2.999/3.000 in, smallest 2.9962 in: undersize 0.0038 in
 */
export function rodForm(
  readings: readonly RodReading[],
  nominal: { readonly nominalM: number | null | undefined; readonly readingU: number | null | undefined },
): Result<RodForm> {
  const fault =
    refuseUnsound({ 'nominal size of the rod': nominal.nominalM }) ??
    refuseUnsound({ 'measuring error of a reading': nominal.readingU }, 'zero or more')
  if (fault !== null) return fault
  const shape = boreForm(readings)
  // Its refusals are worded for a bore.
  if (!shape.ok)
    return refuse(shape.error.code.replace('bore-', 'rod-'), shape.error.say.replaceAll(/\bbore\b/g, 'rod'))
  const { smallest, largest, worstRound, worstTaper } = shape.value
  const [nominalM, readingU] = [nominal.nominalM as number, nominal.readingU as number]
  if (largest.valueM - nominalM > readingU + 1e-9)
    return refuse(
      'rod-larger-than-nominal',
      'The rod measures larger than nominal by more than the measuring error: check the record for plating and the micrometer.',
    )
  return ok({
    outOfRoundM: worstRound.outOfRoundM,
    taperM: worstTaper.taperM,
    smallest,
    undersizeM: Math.max(0, nominalM - smallest.valueM),
    shape: shape.value,
  })
}
