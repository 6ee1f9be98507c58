// Histories of invented overhauls for the wear tests.
import type { Renewal, WearHistory } from '../../../src/core/wear/history.ts'

export const MM = 1e-3

/** Hours and readings in mm, all with one U in mm. */
export function history(
  pairs: readonly (readonly [hours: number, mm: number])[],
  uMm = 0.01,
  wears: WearHistory['wears'] = 'larger',
  since: Renewal = 'nothing',
): WearHistory {
  return { wears, readings: pairs.map(([hours, mm]) => ({ hours, value: mm * MM, U: uMm * MM, since })) }
}

/** 300 mm to start with, read every 5000 h, with so much wear between, mm. */
export function everyFiveThousand(steps: readonly number[]): (readonly [hours: number, mm: number])[] {
  const total = (upTo: number) => steps.slice(0, upTo).reduce((sum, step) => sum + step, 300)
  return Array.from({ length: steps.length + 1 }, (_, i) => [i * 5000, total(i)] as const)
}
