// When a grown bore asks for an oversize piston (table 4-6), and the other published triggers, each on its own.

import { refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { type BoreRow, rowFor } from '../rings/bore-table.ts'

const IN = 0.0254
export const OVERSIZE_PISTON_SOURCE =
  'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996, table 4-6 and text p. 278'

export const OVERSIZE_PISTON_COLUMNS = [
  'iron-on-bore',
  'aluminium-on-bore',
  'non-metallic-rings-and-riders',
] as const
export type OversizePistonColumn = (typeof OVERSIZE_PISTON_COLUMNS)[number]

/** Bore growth in inches in the order of the columns; null where the book gives none. */
const TABLE: readonly BoreRow<readonly [number, number, number | null]>[] = [
  { fromIn: null, toIn: 3.99, value: [0.05, 0.05, 0.015] },
  { fromIn: 4, toIn: 5.999, value: [0.075, 0.07, 0.015] },
  { fromIn: 6, toIn: 7.999, value: [0.105, 0.085, 0.035] },
  { fromIn: 8, toIn: 9.999, value: [0.125, 0.085, 0.04] },
  { fromIn: 10, toIn: 14.999, value: [0.125, 0.085, 0.05] },
  { fromIn: 15, toIn: 17.999, value: [0.125, 0.085, 0.05] },
  { fromIn: 18, toIn: 22.499, value: [0.125, 0.085, 0.065] },
  { fromIn: 22.5, toIn: 29.999, value: [0.125, 0.085, 0.085] },
  { fromIn: 30, toIn: 42, value: [0.125, 0.085, null] },
]

/**
 * Bore growth on diameter, metres, up to which the piston may stay (table 4-6).
 * Refuses: a nominal bore not above zero or in no row; a column the table leaves empty; a column not offered.
 *
 * @example 10 in: iron on the bore 0.125 in, any piston with PTFE rings and riders 0.050 in
 */
export function oversizePistonTrigger(input: {
  readonly nominalM: number | null | undefined
  readonly column: OversizePistonColumn
}): Result<number> {
  const fault = refuseUnsound({ 'nominal bore': input.nominalM })
  if (fault !== null) return fault
  const at = OVERSIZE_PISTON_COLUMNS.indexOf(input.column)
  if (at < 0)
    return refuse(
      'not-offered',
      `There is no such column: choose one of ${OVERSIZE_PISTON_COLUMNS.join(', ')}.`,
    )
  const row = rowFor(input.nominalM as number, TABLE, 'table 4-6')
  if (!row.ok) return row
  const growthIn = row.value.value[at] ?? null
  if (growthIn === null)
    return refuse(
      'table-is-empty',
      'Table 4-6 gives no figure for this bore in that column: use the machine book.',
    )
  return ok(growthIn * IN)
}

/** Rod to packing flange at the bottom, metres: below this the book asks for an oversize piston (p. 278). */
export const LEAST_ROD_TO_FLANGE_M = 0.015 * IN

/**
 * The other two triggers of p. 278, each told apart: runout that the crosshead shoes cannot correct, and less than
 * 0.015 in between rod and packing flange at the bottom. Refuses: a gap that is missing or below zero.
 */
export function otherOversizePistonTriggers(found: {
  readonly rodToFlangeM: number | null | undefined
  readonly runoutCorrectable: boolean
}): Result<readonly string[]> {
  const fault = refuseUnsound({ 'gap between rod and packing flange': found.rodToFlangeM }, 'zero or more')
  if (fault !== null) return fault
  const isLow = (found.rodToFlangeM as number) < LEAST_ROD_TO_FLANGE_M - 1e-9
  return ok([
    ...(isLow ? ['the rod is less than 0.015 in from the packing flange at the bottom'] : []),
    ...(found.runoutCorrectable ? [] : ['the runout cannot be corrected at the crosshead shoes']),
  ])
}
