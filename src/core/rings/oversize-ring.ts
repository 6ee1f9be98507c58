// When a grown bore asks for oversize rings. The published triggers for one 10 in bore run from 0.013 to 0.040 in, so
// each is offered by name and none is the average of others.

import { refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { type BoreRow, rowFor } from './bore-table.ts'
import { gapLimit } from './gap-wear.ts'

const IN = 0.0254
const BH = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'

/** Bore growth on diameter before oversize rings, inches; tables 4-2 (p. 261) and 4-7 (p. 281) print the same. */
const TABLE: readonly BoreRow<number>[] = [
  { fromIn: null, toIn: 3.99, value: 0.015 },
  { fromIn: 4, toIn: 5.999, value: 0.015 },
  { fromIn: 6, toIn: 7.999, value: 0.02 },
  { fromIn: 8, toIn: 9.999, value: 0.03 },
  { fromIn: 10, toIn: 14.999, value: 0.04 },
  { fromIn: 15, toIn: 17.999, value: 0.05 },
  { fromIn: 18, toIn: 22.499, value: 0.065 },
  { fromIn: 22.5, toIn: 29.999, value: 0.085 },
  { fromIn: 30, toIn: 34.999, value: 0.1 },
  { fromIn: 35, toIn: 42, value: 0.12 },
]

export const OVERSIZE_RING_RULES = {
  'handbook-table-4-2': `${BH}, tables 4-2 p. 261 and 4-7 p. 281`,
  'gap-tripled': `${BH}, p. 261 and 281; the book calls its own example more conservative than its table`,
  'navy-0.003-per-in': 'US Navy training manual, set 14075, ch. 7 Auxiliary Machinery',
} as const
export type OversizeRingRuleName = keyof typeof OVERSIZE_RING_RULES

/**
 * Bore growth on diameter, metres, up to which standard rings may be used under the named rule.
 * Table: by row of nominal bore. `gap-tripled`: 2 x new gap / pi. Navy: 0.003 x nominal bore.
 * Refuses: a nominal bore not above zero, or in no row of the table; no new gap for `gap-tripled`; a rule not offered.
 *
 * @example 10 in: 0.040 in by the table, 0.030 in by the Navy, 0.019 in with a new gap of 0.030 in
 */
export function oversizeRingTrigger(input: {
  readonly nominalM: number | null | undefined
  readonly rule: OversizeRingRuleName
  readonly newGapM?: number | null | undefined
}): Result<{ growthM: number; source: string }> {
  const { nominalM, rule, newGapM } = input
  const fault = refuseUnsound({ 'nominal bore': nominalM })
  if (fault !== null) return fault
  const source = Object.hasOwn(OVERSIZE_RING_RULES, rule) ? OVERSIZE_RING_RULES[rule] : ''
  switch (rule) {
    case 'handbook-table-4-2': {
      const row = rowFor(nominalM as number, TABLE, 'tables 4-2 and 4-7')
      return row.ok ? ok({ growthM: row.value.value * IN, source }) : row
    }
    case 'gap-tripled': {
      const tripled = gapLimit({ newGapM, rule: 'three-times-new' })
      return tripled.ok ? ok({ growthM: tripled.value.boreGrowthM, source }) : tripled
    }
    case 'navy-0.003-per-in':
      return ok({ growthM: 0.003 * (nominalM as number), source })
    default:
      return refuse(
        'not-offered',
        `There is no such rule: choose one of ${Object.keys(OVERSIZE_RING_RULES).join(', ')}.`,
      )
  }
}
