// A limit to vary in tests, and inches to metres (1 in = 0.0254 m exactly).

import type { Limit } from '../../../src/core/metrology/limit.ts'

export const IN = 0.0254

export function sampleLimit(change: Partial<Limit> = {}): Limit {
  return {
    characteristic: 'spread',
    bound: 'at-most',
    value: 0.0095 * IN,
    unit: 'in',
    inclusive: true,
    beyond: 'REWORK',
    source: 'an invented book, p. 1',
    approvedBy: 'A. Lead',
    since: '2024-01-01',
    from: 'machine',
    book: 'invented',
    ...change,
  }
}
