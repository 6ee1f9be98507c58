// Values printed in books and tables against what Barover works out: bores, rings, pistons, rods, threads, tightening.
// One row each. The tolerance is half the last printed digit unless a row says why it is wider.
//
// Status: `read` = the printed value was seen in a stored copy; `second-hand` = seen in a page that quotes or reprints the
// source; `memory` = recalled, not seen: such rows are worked but do not count as published. Derived figures have no row.

import { describe, expect, test } from 'vitest'
import { MECHANICAL } from './mechanical-rows.ts'

const COUNTED = MECHANICAL.filter(({ status }) => status !== 'memory')

describe('published values of the piston end', () => {
  test.each(MECHANICAL)('$what: $printed ($source, $status)', ({ printed, tolerance, works }) => {
    const worked = works()
    expect(Math.abs(worked - printed), `worked out as ${worked}`).toBeLessThanOrEqual(tolerance * (1 + 1e-9))
  })

  test('there are 30 rows or more, from 8 sources or more, and none is counted from memory', () => {
    expect(COUNTED.length).toBeGreaterThanOrEqual(30)
    expect(new Set(COUNTED.map(({ book }) => book)).size).toBeGreaterThanOrEqual(8)
  })

  test('no tolerance is wider than one in a hundred of the value, unless it is half the last printed digit', () => {
    for (const { what, printed, tolerance, digit } of MECHANICAL)
      expect(tolerance <= Math.max(digit / 2, Math.abs(printed) / 100) * (1 + 1e-9), what).toBe(true)
  })
})
