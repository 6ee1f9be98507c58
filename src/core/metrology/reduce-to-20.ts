// Brings a reading taken warm or cold to the size it stands for at 20 C. Unknown temperatures are refused, not guessed.

import { ok, type Refusal, type Result, refuse } from '../lib/result.ts'

/** Standard reference temperature, ISO 1:2022 (the third edition, ISO 1:2016, clause 3, gives the same value). */
export const REFERENCE_C = 20

/** Outside these a temperature is a slip of the pen, not a shop: judgement of the trade, no source. */
const COLDEST_C = -40
const HOTTEST_C = 120
/** Iron, steel, bronze and aluminium lie between 6 and 24e-6 per K; 40e-6 lets every metal in and no slip of unit. */
const GREATEST_ALPHA_PER_K = 40e-6

export interface WarmReading {
  /** What the instrument showed, metres. */
  readonly readingM: number
  /** Expansion of the instrument (and of the standard it was set on), per K. */
  readonly instrumentAlpha: number
  readonly instrumentC: number | null | undefined
  /** Expansion of the part, per K. */
  readonly partAlpha: number
  readonly partC: number | null | undefined
}

/**
 * D20 = R (1 + ai (Ti - 20)) / (1 + ap (Tp - 20)): the instrument is longer than it shows by its own expansion, the
 * part larger than it will be at 20 C by its own. Source: JCGM 100:2008 (GUM) H.1.1, equation H.1, solved for the
 * length at 20 C with the instrument in the place of the standard; reference temperature ISO 1:2022.
 * Refuses: a reading that is not above zero; a temperature that is missing or outside -40 to 120 C; a coefficient
 * outside 0 to 40e-6 per K.
 *
 * @example 254 mm grey iron (10.8e-6) at 35 C, read with a steel micrometer (11.5e-6) at 35 C: 254.0027 mm at 20 C
 */
export function reduceTo20(warm: WarmReading): Result<number> {
  if (!(Number.isFinite(warm.readingM) && warm.readingM > 0))
    return refuse('reading-not-a-size', 'The reading is not a size above zero: key the reading again.')
  const fault =
    temperatureFault('part', warm.partC) ??
    temperatureFault('instrument', warm.instrumentC) ??
    coefficientFault('part', warm.partAlpha) ??
    coefficientFault('instrument', warm.instrumentAlpha)
  if (fault !== null) return { ok: false, error: fault }
  const instrument = 1 + warm.instrumentAlpha * ((warm.instrumentC as number) - REFERENCE_C)
  const part = 1 + warm.partAlpha * ((warm.partC as number) - REFERENCE_C)
  return ok((warm.readingM * instrument) / part)
}

function temperatureFault(whose: string, celsius: number | null | undefined): Refusal | null {
  if (celsius === null || celsius === undefined)
    return {
      code: 'temperature-unknown',
      say: `The temperature of the ${whose} is not on record: measure it.`,
    }
  if (Number.isFinite(celsius) && celsius >= COLDEST_C && celsius <= HOTTEST_C) return null
  const say = `The temperature of the ${whose} is not between -40 and 120 C: measure it again and check the unit.`
  return { code: 'temperature-implausible', say }
}

function coefficientFault(whose: string, alpha: number): Refusal | null {
  if (Number.isFinite(alpha) && alpha >= 0 && alpha <= GREATEST_ALPHA_PER_K) return null
  const say = `The expansion of the ${whose} is not between 0 and 40 millionths per K: correct the record.`
  return { code: 'expansion-implausible', say }
}
