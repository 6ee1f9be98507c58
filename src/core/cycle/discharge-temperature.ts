// Ideal discharge temperature of one stage. A real cylinder runs hotter: valves, leakage and warm walls are not in it.
import type { Result } from '../lib/result.ts'
import { exponentFault, firstFault, ratioFault, sound, within } from './guard.ts'

/**
 * T2 = T1 r^((k-1)/k), kelvin. Source: Bloch & Hoefner, Reciprocating Compressors, Gulf 1996, p. 389 (A-1), which
 * wishes for 275 F (135 C) at most and sets 375 F (190 C) as the absolute limit. Zero of temperature is 273.15 and
 * 459.67, not the books' 273 and 460. T1 50 to 1000 K, r 1 to 50, k 1 to 2.
 * Refuses: an input missing or out of range.
 *
 * @example 575 R (319.44 K), r 2, k 1.3: 674.7 R (374.86 K)
 */
export function dischargeTemperature(suctionK: number, ratio: number, k: number): Result<number> {
  const fault = firstFault(
    within('suction temperature in K', suctionK, 50, 1000),
    ratioFault(ratio),
    exponentFault(k),
  )
  return fault ?? sound('discharge temperature', suctionK * ratio ** ((k - 1) / k))
}
