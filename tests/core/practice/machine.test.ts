// Hidden machines: the same for the same seed, possible in every respect, and judged as their faults say.
import { describe, expect, it } from 'vitest'
import { LEVELS } from '../../../src/core/job/practice.ts'
import { verdictOfTruth } from '../../../src/core/practice/bore-truth.ts'
import { buildMachine, soundMachine } from '../../../src/core/practice/build.ts'
import { drawFaults } from '../../../src/core/practice/draw.ts'
import { type Facts, factsOf } from '../../../src/core/practice/facts.ts'
import { faultById, faultsFor } from '../../../src/core/practice/faults.ts'
import type { HiddenMachine } from '../../../src/core/practice/machine.ts'
import { practiceDefs } from '../../helpers/trainees.ts'

const OF_BORE = faultsFor(practiceDefs())

function facts(): Facts {
  const found = factsOf(practiceDefs())
  if (!found.ok) throw new Error(found.error.say)
  return found.value
}

/** The parts of it that this procedure has. */
function boreOf({ bore }: HiddenMachine) {
  if (bore === null) throw new Error('a machine without a bore')
  return bore
}

function boreFacts(of: Facts) {
  if (of.bore === null) throw new Error('no facts of a bore')
  return of.bore
}

describe('a hidden machine', () => {
  it('is the same for the same seed and level, and another for another', () => {
    const of = facts()
    expect(buildMachine(of, { seed: 7, level: 3 })).toEqual(buildMachine(of, { seed: 7, level: 3 }))
    expect(buildMachine(of, { seed: 7, level: 3 })).not.toEqual(buildMachine(of, { seed: 8, level: 3 }))
    // The bore of a seed does not hang on what is drawn besides.
    expect(buildMachine(of, { seed: 7, level: 3, faults: ['rust'] }).bore?.madeM).toBe(
      soundMachine(of, 7, 3).bore?.madeM,
    )
  })

  it('is ACCEPT by its bore where it is sound', () => {
    const of = facts()
    for (let seed = 1; seed <= 40; seed++)
      expect(verdictOfTruth(boreOf(soundMachine(of, seed, 1)), boreFacts(of).judging).verdict).toBe('ACCEPT')
  })

  it.each(OF_BORE.filter(({ shows }) => shows === 'figures').map(({ id }) => id))(
    'with %s is beyond a limit for sure, whatever the seed',
    (id) => {
      const of = facts()
      for (let seed = 1; seed <= 20; seed++) {
        const bore = boreOf(buildMachine(of, { seed, level: 5, faults: [id] }))
        expect(['REWORK', 'REPLACE']).toContain(verdictOfTruth(bore, boreFacts(of).judging).verdict)
      }
    },
  )

  it.each(OF_BORE.filter(({ shows }) => shows !== 'figures').map(({ id }) => id))(
    'with %s has a bore that passes by its figures',
    (id) => {
      const of = facts()
      const bore = boreOf(buildMachine(of, { seed: 3, level: 5, faults: [id] }))
      expect(['ACCEPT', 'MONITOR']).toContain(verdictOfTruth(bore, boreFacts(of).judging).verdict)
    },
  )
})

describe('what a seed draws', () => {
  it('is of its level or below, nothing at all now and then, and never two where the first stops the job', () => {
    for (const level of LEVELS) {
      let none = 0
      for (let seed = 1; seed <= 300; seed++) {
        const faults = drawFaults(OF_BORE, seed, level).map(faultById)
        if (faults.length === 0) none += 1
        expect(faults.every((fault) => fault.level <= level)).toBe(true)
        if (faults.some(({ shows }) => shows === 'stop')) expect(faults).toHaveLength(1)
        expect(faults.length).toBeLessThanOrEqual(level >= 4 ? 2 : 1)
      }
      expect(none).toBeGreaterThan(20)
      expect(none).toBeLessThan(80)
    }
  })

  it('may be any fault there is', () => {
    const drawn = new Set(
      LEVELS.flatMap((level) => Array.from({ length: 400 }, (_, n) => drawFaults(OF_BORE, n, level)).flat()),
    )
    expect([...drawn].sort()).toEqual(OF_BORE.map(({ id }) => id).sort())
    expect(OF_BORE.length).toBeGreaterThanOrEqual(25)
  })
})
