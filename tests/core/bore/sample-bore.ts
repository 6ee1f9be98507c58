// A small bore to vary in tests: three stations, two axes, inches on nominal 9.500 in of an invented machine.

import type { BoreCharacteristic, BoreJudgeInput } from '../../../src/core/bore/bore-judge-input.ts'
import type { BoreReading } from '../../../src/core/bore/bore-readings.ts'
import type { Limit } from '../../../src/core/metrology/limit.ts'
import { IN, sampleLimit } from '../metrology/sample-limit.ts'

export { IN }

/** Rows are stations from head end to crank end, columns vertical and horizontal. */
export function boreOf(rows: readonly (readonly [number, number])[]): BoreReading[] {
  return rows.flatMap(([vertical, horizontal], index) => [
    { station: `S${index + 1}`, at: 0.1 * (index + 1), axis: 'vertical', valueM: vertical * IN },
    { station: `S${index + 1}`, at: 0.1 * (index + 1), axis: 'horizontal', valueM: horizontal * IN },
  ])
}

export const SOUND_ROWS = [
  [9.5012, 9.5008],
  [9.502, 9.5014],
  [9.501, 9.5008],
] as const

export function boreLimit(
  characteristic: BoreCharacteristic,
  valueIn: number,
  change: Partial<Limit> = {},
): Limit {
  return sampleLimit({ characteristic, value: valueIn * IN, ...change })
}

/** Limits by the rules of Bloch & Hoefner 1996, p. 259, for 9.500 in bore and 11.00 in stroke; 9.530 is invented. */
export const LIMITS = {
  'out-of-round': boreLimit('out-of-round', 0.0095),
  taper: boreLimit('taper', 0.0055),
  spread: boreLimit('spread', 0.007125),
  'largest-diameter': boreLimit('largest-diameter', 9.53, { beyond: 'REPLACE' }),
} as const

const CHECK = { deviationM: 0.0001 * IN, allowedM: 0.0002 * IN }

export function boreInput(change: Partial<BoreJudgeInput> = {}): BoreJudgeInput {
  return {
    readings: boreOf(SOUND_ROWS),
    missing: [],
    nominalM: 9.5 * IN,
    limits: LIMITS,
    readingU: 0.0003 * IN,
    differenceU: 0.0003 * Math.SQRT2 * IN,
    resolutionM: 0.0001 * IN,
    datum: { from: 'unswept strip', byAxisM: { vertical: 9.5004 * IN, horizontal: 9.5002 * IN } },
    counterboreM: 9.75 * IN,
    lined: false,
    setCheck: { before: CHECK, after: CHECK },
    temperaturesKnown: true,
    ...change,
  }
}
