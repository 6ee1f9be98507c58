// Tensile stress area of a thread. Inch and metric threads have different constants, and one used for the other is a
// real error, so there are two functions and no shared one.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

const INCH_CONSTANT = 0.974279
const METRIC_CONSTANT = 0.938194

/**
 * Unified inch thread: pi/4 (D - 0.974279 / n)2, m2, with n threads per inch. For UNC, UNF, UN and 8UN alike.
 * Source: ASME B1.1 (formula read second-hand, constant there 0.9743); J. E. Shigley (Budynas & Nisbett), Mechanical
 * Engineering Design, 9th ed., table 8-2 p. 413 prints the areas.
 * Refuses: a diameter or count not above zero; a thread deeper than the bolt.
 *
 * @example 3/4-16 UNF: 0.373 in2
 */
export function unifiedStressArea(thread: {
  readonly diameterM: number | null | undefined
  readonly threadsPerInch: number | null | undefined
}): Result<number> {
  const fault = refuseUnsound({
    'thread diameter': thread.diameterM,
    'count of threads per inch': thread.threadsPerInch,
  })
  if (fault !== null) return fault
  return area(thread.diameterM as number, (INCH_CONSTANT * 0.0254) / (thread.threadsPerInch as number))
}

/**
 * ISO metric thread: pi/4 (d - 0.938194 P)2, m2, with pitch P.
 * Source: ISO 898-1, stress areas (constant and table from memory; areas read in a table of the same formula).
 * Refuses: a diameter or pitch not above zero; a pitch too coarse for the bolt.
 *
 * @example M24 x 3: 352.5 mm2
 */
export function metricStressArea(thread: {
  readonly diameterM: number | null | undefined
  readonly pitchM: number | null | undefined
}): Result<number> {
  const fault = refuseUnsound({ 'thread diameter': thread.diameterM, 'thread pitch': thread.pitchM })
  if (fault !== null) return fault
  return area(thread.diameterM as number, METRIC_CONSTANT * (thread.pitchM as number))
}

function area(diameterM: number, lessM: number): Result<number> {
  // No standard thread takes as much as half its diameter away: a pitch in the wrong unit does.
  if (lessM >= diameterM / 2)
    return refuse(
      'thread-too-coarse',
      'This thread is too coarse for its diameter: check the unit of the pitch.',
    )
  const areaM2 = (Math.PI / 4) * (diameterM - lessM) ** 2
  return refuseOverflow(areaM2) ?? ok(areaM2)
}
