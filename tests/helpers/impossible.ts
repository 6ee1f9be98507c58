// What no machine can be, of any procedure and any machine record; and whether what is wrong with one can be met by looking and measuring.
import type { Instrument } from '../../src/core/definition/instruments.ts'
import type { Definitions } from '../../src/core/job/definitions.ts'
import { asKind } from '../../src/core/job/definitions.ts'
import { gatesOf, itemsFor } from '../../src/core/job/gate.ts'
import { placesOf } from '../../src/core/job/places.ts'
import { diameterAt } from '../../src/core/practice/bore-truth.ts'
import { buildMachine } from '../../src/core/practice/build.ts'
import { type Facts, factsOf } from '../../src/core/practice/facts.ts'
import { faultById } from '../../src/core/practice/faults.ts'
import { AIRED, type Inside } from '../../src/core/practice/inside-air.ts'
import type { HiddenMachine } from '../../src/core/practice/machine.ts'
import type { Spot } from '../../src/core/practice/tell.ts'
import { truthAt } from '../../src/core/practice/truth.ts'

export function factsFor(defs: Definitions): Facts {
  const found = factsOf(defs)
  if (!found.ok) throw new Error(found.error.say)
  return found.value
}

/** Empty: it can be. */
export function impossible(machine: HiddenMachine, of: Facts): string[] {
  const { air, warmth, locks, off, faults, plate, bore, rod, parts } = machine
  const { rings, fit, gap, cavity, closed, pocket, nut, set, opened } = parts
  const checks: Readonly<Record<string, boolean>> = {
    'shares of the air outside 0 to 1': Object.values(air).every(
      ({ oxygen, methane, sulfide }) =>
        Math.min(oxygen, methane, sulfide) >= 0 && oxygen + methane + sulfide <= 1,
    ),
    'a temperature that is no shop': Object.values(warmth).every((c) => c > 5 && c < 60),
    'a lock twice': new Set(Object.values(locks).map(({ number }) => number)).size === of.points.length,
    'an instrument without a scatter': Object.values(off).every(({ scatter }) => scatter > 0),
    'another plate without that fault': (plate === of.tag) !== faults.includes('plate-other'),
    'a bore that cannot be': bore === null || isBore(bore, of),
    'a rod with wear below zero, or worn to nothing': rod === null || isRod(rod),
    'a ring tighter than nothing': rings === null || rings.sideLeastM > 0,
    'the least above the most':
      (rings === null || (rings.sideLeastM <= rings.sideMostM && rings.radialLeastM <= rings.radialMostM)) &&
      (gap === null || (gap.leastM > 0 && gap.leastM <= gap.mostM)),
    'a piston that is no size': fit === null || Math.min(fit.verticalM, fit.horizontalM) > 0.1,
    'a piston heavier than its metal':
      cavity === null || cavity.weighedKg <= cavity.solidKg * (1 + cavity.ratioU),
    'a solid piston with a hole in it':
      cavity === null || cavity.isHollow || (cavity.plugs === 'none' && cavity.pressurePa === 0),
    'a vacuum': closed === null || Math.min(closed.head.pressurePa, closed.crank.pressurePa) >= 0,
    'a pocket past its travel':
      pocket === null ||
      [pocket.wheel, pocket.stem, pocket.ordered].every((share) => share >= 0 && share <= 1),
    'a rod that shrank':
      nut === null || (nut.stretchM > 0 && nut.stretchM < nut.endBeforeM && nut.torqueNm > 0),
    'a driver that gives': pocket === null || pocket.loadW > 0,
    'a piston in its head, or a nut turned back':
      set === null ||
      (Math.min(set.headM, set.crankM, set.pistonM, set.crossheadM) > 0 &&
        set.nutsNm.every((one) => one > 0)),
    'a jacket colder than its shop': opened === null || opened.jacketOverK >= -5,
  }
  return Object.entries(checks).flatMap(([what, holds]) => (holds ? [] : [what]))
}

function isBore(bore: NonNullable<HiddenMachine['bore']>, of: Facts): boolean {
  if (of.bore === null) return false
  const { made, judging } = of.bore
  const { evenM, middleM, endsM, headM, crankM, bottomM, topM, sideM, madeM, counterboreM } = bore
  const sizes = judging.places.map((place) => diameterAt(bore, place))
  return (
    [evenM, middleM, endsM, headM, crankM, bottomM, topM, sideM].every((one) => one >= 0) &&
    sizes.every((size) => size >= madeM && size < counterboreM) &&
    madeM >= made[0] &&
    madeM <= made[1]
  )
}

function isRod({ madeM, fitM, ...wears }: NonNullable<HiddenMachine['rod']>): boolean {
  const all = Object.values(wears)
  return all.every((one) => one >= 0) && fitM < madeM && Math.max(...all) < madeM / 50
}

/** As the work comes by: at once, after a test, an hour later, and once a wait is over; the cylinder just opened, and aired. */
const SWEPT: Inside = { isSwept: true, aired: 0 }
const MOMENTS: readonly Pick<Spot, 'sinceGasS' | 'begunS' | 'answered' | 'inside'>[] = [
  { sinceGasS: null, begunS: null, answered: 0, inside: AIRED },
  { sinceGasS: null, begunS: null, answered: 0, inside: SWEPT },
  { sinceGasS: 3600, begunS: 3600, answered: 1, inside: AIRED },
]

/** The first that may sit there. */
function instrumentFor(defs: Definitions, seat: string): Instrument | null {
  const kinds: readonly string[] = defs.seats.find(({ id }) => id === seat)?.kinds ?? []
  return defs.instruments.instruments.find(({ kind }) => kinds.includes(kind)) ?? null
}

/** All that can be met on a machine, by step, or by step and line. */
export function shown(defs: Definitions, machine: HiddenMachine): ReadonlyMap<string, string> {
  const told = new Map<string, string>()
  for (const placed of defs.steps) {
    const at = (where: string, more: Pick<Spot, 'item' | 'place'>) => {
      for (const moment of MOMENTS) {
        const instrument = placed.step.kind === 'read' ? instrumentFor(defs, placed.step.with) : null
        const truth = truthAt({ defs, machine, placed, instrument, ...more, ...moment })
        told.set(where, `${told.get(where) ?? ''}${JSON.stringify(truth)}`)
      }
    }
    const id = placed.step.id
    if (placed.step.kind === 'read')
      for (const place of placesOf(asKind(placed, 'read'))) at(id, { item: null, place })
    else at(id, { item: null, place: null })
  }
  for (const gate of gatesOf(defs))
    for (const item of itemsFor(defs, gate, ['X']))
      for (const moment of MOMENTS) {
        const truth = truthAt({ defs, machine, placed: gate, instrument: null, item, place: null, ...moment })
        const where = `${gate.step.id}/${item.evidence.id}`
        told.set(where, `${told.get(where) ?? ''}${JSON.stringify(truth)}`)
      }
  told.set('plate', machine.plate)
  told.set('monitor', JSON.stringify([machine.returning]))
  return told
}

/** Where one fault shows that a machine without it would not, of all places; empty: nobody could ever find it. */
export function shownAt(defs: Definitions, of: Facts, machine: HiddenMachine, id: string): string[] {
  const { seed, level } = machine
  const without = buildMachine(of, { seed, level, faults: machine.faults.filter((one) => one !== id) })
  const [here, there] = [shown(defs, machine), shown(defs, without)]
  const differs = [...here].flatMap(([where, text]) => (there.get(where) === text ? [] : [where]))
  // What is wrong with an instrument is in none of its truths: it is in what it shows.
  const isOff = JSON.stringify(machine.off) !== JSON.stringify(without.off)
  const isWarm = JSON.stringify(machine.warmth) !== JSON.stringify(without.warmth)
  return [...differs, ...(isOff ? ['off'] : []), ...(isWarm ? ['warmth'] : [])]
}

/**
 * Where a fault that stops the work may show instead of at its own places. A piston is drawn solid or openly hollow before its fault is
 * put in; of one that was openly hollow, either of these leaves as it was the very fact that it is met at, and turns what is written.
 * The small cavity: the knock rings as before, record and scale no longer say hollow. The piston that is said to be solid: it may weigh the
 * same to the pound, and only what is written is another. It is met there, as the facts do not go together any more.
 */
const INSTEAD: Readonly<Record<string, readonly string[]>> = {
  'cavity-small': ['record_says', 'mass_says'],
  'hollow-as-solid': ['record_says'],
}

/**
 * Whether it shows. What stops the work: at a place of its own, or it would be met too late; where several facts come to it, at each of those
 * it may show at instead. Any other somewhere, as a finding may be drawn from several facts of which one alone is another, and what is
 * wrong with an instrument is at no place.
 */
export function isMet(id: string, differs: readonly string[]): boolean {
  const { at, shows } = faultById(id)
  const isAt = (where: string) => differs.includes(where)
  if (shows !== 'stop') return differs.length > 0
  return at.some(isAt) || INSTEAD[id]?.every(isAt) === true
}
