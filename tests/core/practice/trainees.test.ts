// A careful trainee finds each fault by what the machine shows, and a careless one misses it. Over many machines as they are drawn: wide.test.ts.
import { describe, expect, it } from 'vitest'
import type { Level } from '../../../src/core/job/practice.ts'
import { factsOf } from '../../../src/core/practice/facts.ts'
import { faultById, faultsFor } from '../../../src/core/practice/faults.ts'
import { PRACTISED_NAMES } from '../../../src/core/practice/practised.ts'
import { careful, careless, defsOf, seedHiding, session } from '../../helpers/trainees.ts'

/** A fault is looked for in the first procedure that can hide it. */
const placed = new Set<string>()
const ROWS: readonly (readonly [id: string, procedure: string, level: Level])[] = PRACTISED_NAMES.flatMap(
  (name) =>
    faultsFor(defsOf(name)).flatMap(({ id, level }) => {
      if (placed.has(id)) return []
      placed.add(id)
      return [[id, name, level] as const]
    }),
)

describe('a fault', () => {
  it.each(ROWS)('%s in %s of level %i is found by who looks', (id, name, level) => {
    const defs = defsOf(name)
    const { grade } = session(seedHiding(id, level, defs), level, careful, defs)
    expect(grade).toMatchObject({
      safety: 'passed',
      unsafe: [],
      hidden: [{ id, isNamed: true }],
      isPassed: true,
    })
  })

  // One of each sort: all of them in the long run below.
  it.each([
    ['driver-live', 'bore-inspection'],
    ['gas-inside', 'bore-inspection'],
    ['gas-returns', 'bore-inspection'],
    ['barrel', 'bore-inspection'],
    ['ridge', 'bore-inspection'],
    ['gauge-off', 'bore-inspection'],
    ['rod-bent', 'rod-sizes'],
    ['ring-tight', 'ring-fit'],
    ['ring-light', 'ring-fit'],
    ['ring-material', 'ring-fit'],
    ['gap-tight', 'rings-in-bore'],
    ['oil-shut', 'rings-in-bore'],
    ['end-not-empty', 'vent-and-purge'],
    ['valve-creeps', 'vent-and-purge'],
    ['air-stale', 'vent-and-purge'],
    ['hollow-as-solid', 'hollow-piston'],
    ['vent-plugged', 'hollow-piston'],
    ['plug-seized', 'hollow-piston'],
    ['cavity-presses', 'hollow-piston'],
    ['piston-hot', 'hollow-piston'],
    ['axes-swapped', 'bore-inspection'],
    ['vent-compound', 'piston-on-rod'],
    ['nut-over', 'piston-on-rod'],
    ['nut-gives', 'piston-on-rod'],
    ['jacket-runs', 'open-cylinder'],
    ['cover-hisses', 'open-cylinder'],
    ['black-dust', 'open-cylinder'],
    ['barred-uncounted', 'put-back'],
    ['clearance-swapped', 'put-back'],
    ['ring-binds', 'put-back'],
    ['pocket-stuck', 'set-pocket'],
    ['overloaded', 'pocket-load'],
  ])('%s in %s is missed by who keys what is expected', (id, name) => {
    const fault = faultById(id)
    const defs = defsOf(name)
    const { grade } = session(seedHiding(id, fault.level, defs), fault.level, careless, defs)
    expect(grade).toMatchObject({ isPassed: false, hidden: [{ id, isNamed: false }] })
    expect(grade.safety).toBe(fault.shows === 'stop' ? 'failed' : 'passed')
  })
})

describe('on the other machine', () => {
  // The load and its pocket are practised on no other anyway.
  const other = ROWS.filter(([, name]) => !name.includes('pocket') && factsOf(defsOf(name, 'rg-27')).ok)

  it.each(other)(
    '%s in %s of level %i is found by who looks, and missed by who does not',
    (id, name, level) => {
      const defs = defsOf(name, 'rg-27')
      const seed = seedHiding(id, level, defs)
      expect(session(seed, level, careful, defs).grade).toMatchObject({
        safety: 'passed',
        unsafe: [],
        hidden: [{ id, isNamed: true }],
        isPassed: true,
      })
      const { grade } = session(seed, level, careless, defs)
      expect(grade).toMatchObject({ isPassed: false, hidden: [{ id, isNamed: false }] })
      expect(grade.safety).toBe(faultById(id).shows === 'stop' ? 'failed' : 'passed')
    },
  )
})
