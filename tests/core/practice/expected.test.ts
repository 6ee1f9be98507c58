// What a machine is worth, told before anybody works on it, is what a careful trainee comes to on it.
import { describe, expect, it } from 'vitest'
import type { Level } from '../../../src/core/job/practice.ts'
import { allOf } from '../../../src/core/job/seen.ts'
import { EDITION } from '../../../src/core/practice/edition.ts'
import { expectedOf } from '../../../src/core/practice/expected.ts'
import { faultsFor } from '../../../src/core/practice/faults.ts'
import { judgedTruly } from '../../../src/core/practice/judged-truly.ts'
import { careful, defsOf, seedHiding, session } from '../../helpers/trainees.ts'

const PROCEDURES = ['bore-inspection', 'rod-sizes', 'rings-in-bore', 'piston-on-rod', 'pocket-load'] as const

const ROWS: readonly (readonly [string, string, Level])[] = PROCEDURES.flatMap((name) =>
  faultsFor(defsOf(name)).flatMap(({ id, level, shows }) =>
    // The pocket that no setting helps takes the solver a quarter of a minute.
    shows === 'stop' || id === 'no-opening' ? [] : [[name, id, level] as const],
  ),
)

describe('what is expected of a machine', () => {
  it.each(ROWS)('of %s with %s is what a careful trainee comes to', (name, id, level) => {
    const defs = defsOf(name)
    const seed = seedHiding(id, level, defs)
    const expected = expectedOf(defs, { seed, level, edition: EDITION })
    const { walk } = session(seed, level, careful, defs)
    const { practice } = walk.state
    if (practice === null) throw new Error('no session')
    expect(expected.stop).toBeNull()
    let told = 0
    for (const entry of walk.entries) {
      if (entry.type === 'finding.observed') {
        const seen = expected.findings.get(entry.step)
        if (seen === undefined) continue
        expect([entry.step, seen]).toEqual([entry.step, allOf(entry)])
        told += 1
      }
      if (entry.type === 'verdict.given') {
        const worth = expected.verdicts.get(entry.step)
        if (worth === undefined) continue
        const { result } = judgedTruly(defs, walk.state, practice, entry.step, '')
        expect([entry.step, worth.verdict, result.holds]).toEqual([entry.step, result.verdict, result.holds])
        told += 1
      }
    }
    expect(told).toBeGreaterThan(0)
  })
})
