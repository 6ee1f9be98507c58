// Rings, cavities, closed cylinders and pockets of hidden machines: possible in every respect, sound where nothing is drawn, and past
// what they are judged by where a fault is.
import { describe, expect, it } from 'vitest'
import { gasLimitById } from '../../../src/core/job/definitions.ts'
import { gatesOf, itemsFor } from '../../../src/core/job/gate.ts'
import { buildMachine, soundMachine } from '../../../src/core/practice/build.ts'
import { handledAs, weightSays } from '../../../src/core/practice/cavity.ts'
import { type Facts, factsOf } from '../../../src/core/practice/facts.ts'
import { loadAt } from '../../../src/core/practice/facts-pocket.ts'
import { AIRED } from '../../../src/core/practice/inside-air.ts'
import { PRACTISED_NAMES } from '../../../src/core/practice/practised.ts'
import { truthAt, uncovered } from '../../../src/core/practice/truth.ts'
import { factsFor as factsOfDefs } from '../../helpers/impossible.ts'
import { defsOf } from '../../helpers/trainees.ts'

/** All but those that are nothing but a bore, or a rod. */
const PRACTISED = PRACTISED_NAMES.filter((name) => name !== 'bore-inspection' && name !== 'rod-sizes')

const factsFor = (name: string): Facts => factsOfDefs(defsOf(name))

describe('a hidden machine', () => {
  it.each(PRACTISED)('has something at every line of every hold point of %s', (name) => {
    const defs = defsOf(name)
    expect(uncovered(defs)).toEqual([])
    const machine = soundMachine(factsFor(name), 3, 1)
    const people = defs.crew.crew.slice(0, 2).map(({ id }) => id)
    const silent = gatesOf(defs).flatMap((gate) =>
      itemsFor(defs, gate, people).flatMap((item) => {
        const spot = { defs, machine, placed: gate, item, place: null, instrument: null }
        const truth = truthAt({ ...spot, sinceGasS: null, begunS: null, answered: 0, inside: AIRED })
        return truth === null && item.evidence.kind !== 'witness' ? [`${gate.id}/${item.key}`] : []
      }),
    )
    expect(silent).toEqual([])
  })

  it.each(PRACTISED)('of %s passes every line of its hold points where it is sound', (name) => {
    const defs = defsOf(name)
    const machine = soundMachine(factsFor(name), 5, 1)
    for (const gate of gatesOf(defs))
      for (const item of itemsFor(defs, gate, ['X'])) {
        const { evidence, key } = item
        const spot = { defs, machine, placed: gate, item, place: null, instrument: null }
        const truth = truthAt({ ...spot, sinceGasS: null, begunS: 3600, answered: 0, inside: AIRED })
        if (truth?.kind === 'line' && key !== 'drill_plan') expect(truth.mayType, key).not.toBeNull()
        if (truth?.kind === 'gas' && evidence.kind === 'gas') {
          const limit = gasLimitById(defs, evidence.limit)
          const value = limit?.gas === 'flammable' ? truth.share / 0.05 : truth.share
          expect(value, key).toBeLessThanOrEqual(limit?.at_most?.si ?? Number.POSITIVE_INFINITY)
          expect(value, key).toBeGreaterThanOrEqual(limit?.at_least?.si ?? 0)
        }
      }
  })
})

describe('a ring gap', () => {
  it('is what it was cut to and pi times the growth of its bore, and inside its limits', () => {
    const { gap: of } = factsFor('rings-in-bore').parts
    if (of === null) throw new Error('no gap')
    for (let seed = 1; seed <= 50; seed++) {
      const { gap } = soundMachine(factsFor('rings-in-bore'), seed, 1).parts
      expect(gap?.leastM).toBeGreaterThan(of.window[0])
      expect(gap?.mostM).toBeLessThan(of.window[1])
      expect(gap?.leastM).toBeGreaterThanOrEqual(of.newGapM)
    }
  })
})

describe('a piston at the bench', () => {
  it('is handled by its facts as it is, whichever is drawn', () => {
    const of = factsFor('hollow-piston')
    const kinds = new Set<string>()
    for (let seed = 1; seed <= 60; seed++) {
      const { cavity } = soundMachine(of, seed, 1).parts
      if (cavity === null) throw new Error('no piston')
      kinds.add(cavity.written)
      expect(handledAs(cavity)).toBe(cavity.isHollow ? 'hollow' : 'solid')
      expect(weightSays(cavity)).toBe(cavity.isHollow ? 'hollow' : 'solid')
    }
    expect([...kinds].sort()).toEqual(['hollow', 'solid'])
  })

  it.each([
    ['hollow-as-solid', 'hollow'],
    ['cavity-small', 'solid'],
  ])(
    'that is hollow and said to be solid is still handled as hollow: %s, whose weight says %s',
    (id, says) => {
      const of = factsFor('hollow-piston')
      for (let seed = 1; seed <= 40; seed++) {
        const { cavity } = buildMachine(of, { seed, level: 5, faults: [id] }).parts
        if (cavity === null) throw new Error('no piston')
        expect([cavity.written, weightSays(cavity), handledAs(cavity)]).toEqual(['solid', says, 'hollow'])
      }
    },
  )
})

describe('a machine on load', () => {
  const of = factsFor('pocket-load')
  const { pocket: facts } = of.parts
  if (facts === null) throw new Error('no pocket')
  const target = facts.machine.driver?.rating.si ?? Number.NaN
  const margin = facts.machine.whole_compressor?.site_rules?.margin?.si ?? Number.NaN

  it.each([
    ['nothing', [], (shut: number) => shut < 1],
    ['overloaded', ['overloaded'], (shut: number, open: number) => shut > 1 && open < 1],
    ['no-opening', ['no-opening'], (_shut: number, open: number) => open > 1],
  ] as const)(
    'with %s drawn takes what the solver says, over or under its target',
    (_what, faults, holds) => {
      for (let seed = 1; seed <= 20; seed++) {
        const { pocket } = buildMachine(of, { seed, level: 3, faults }).parts
        if (pocket === null) throw new Error('no pocket')
        const { suctionPa, dischargePa, suctionK } = pocket
        const at = (opening: number) =>
          (loadAt(facts.machine, { suctionPa, dischargePa, suctionK, opening }) ?? Number.NaN) /
          (target * (1 - margin))
        expect(holds(at(0), at(1)), `seed ${seed}: ${at(0)} shut, ${at(1)} open`).toBe(true)
        expect(Math.abs(pocket.loadW / (at(pocket.stem) * target * (1 - margin)) - 1)).toBeLessThan(0.013)
      }
    },
  )
})

it('practice has all of each procedure it says it knows, and none that is only a part of others', () => {
  for (const name of PRACTISED_NAMES) {
    expect(uncovered(defsOf(name)), name).toEqual([])
    expect(factsOf(defsOf(name)), name).toMatchObject({ ok: true })
  }
  for (const name of ['bench-ready', 'bar-over', 'turn-plug', 'ridge-and-finish'])
    expect(factsOf(defsOf(name)), name).toMatchObject({ ok: false, error: { code: 'not-practised' } })
})

it('practice refuses a machine on which nothing could be hidden, and says why', () => {
  expect(factsOf(defsOf('pocket-load', 'tc-401'))).toMatchObject({ ok: false, error: { code: 'no-wheel' } })
})
