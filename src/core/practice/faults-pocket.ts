// Faults of a machine on load and of its clearance pocket.
import type { Chance } from './chance.ts'
import type { Facts } from './facts.ts'
import { loadAt, type PocketFacts } from './facts-pocket.ts'
import { COMMON, type Fault, LOAD, SET } from './fault.ts'
import type { PocketTruth } from './parts.ts'
import { apart, loaded, onStep } from './pocket-truth.ts'

function pocket(
  change: (facts: PocketFacts, chance: Chance, truth: PocketTruth) => PocketTruth,
): Fault['apply'] {
  return (machine, chance, facts: Facts) => {
    const { pocket: of } = facts.parts
    const { pocket: truth } = machine.parts
    if (of === null || truth === null) throw new Error('a machine without a pocket')
    return { ...machine, parts: { ...machine.parts, pocket: change(of, chance, truth) } }
  }
}

type Drawn = readonly [least: number, most: number]

/** Over its target. `opened`: how far the pocket stands open. `along`: where in the span of suction pressures. Both are drawn from there. */
function over(span: 'saved' | 'lost', opened: Drawn, along: Drawn): Fault['apply'] {
  return pocket((facts, chance) =>
    loaded(facts, facts[span], {
      opening: onStep(facts, chance.between(...opened)),
      share: apart(chance),
      at: chance.between(...along),
    }),
  )
}

export const POCKET_FAULTS: readonly Fault[] = [
  {
    id: 'overloaded',
    name: 'The driver is overloaded, and the pocket can bring it down',
    level: 1,
    shows: 'figures',
    procedures: [LOAD],
    at: ['judged', 'load'],
    hint: 'The load against the rating less the margin, with the error of the meter.',
    teaches:
      'Load follows the suction pressure more than anything else. More clearance takes in less gas, and only as much as needed is given away.',
    source: 'The sums of procedures/REFERENCE.md under Verdicts; JCGM 106:2012, 8.3 (clause from memory)',
    apply: over('saved', [0, 0.08], [0.1, 0.6]),
  },
  {
    id: 'no-opening',
    name: 'The driver is overloaded, and no opening of the pocket saves it',
    level: 3,
    shows: 'figures',
    procedures: [LOAD],
    at: ['judged', 'load'],
    hint: 'What is the load with the pocket full open?',
    teaches:
      'A pocket takes off so much and no more. Then suction pressure, speed or another pocket is the lead’s question, not a turn more of this one.',
    source: 'The sums of procedures/REFERENCE.md under Verdicts',
    apply: over('lost', [0.7, 1], [0, 1]),
  },
  {
    id: 'pocket-half',
    name: 'The pocket is stuck half open: the wheel turned, the plug did not',
    level: 3,
    shows: 'figures',
    procedures: [LOAD],
    at: ['stem', 'judged'],
    hint: 'Wheel and stem both tell the setting. Do they tell the same?',
    teaches:
      'A wheel whose key has sheared turns on its stem, and its scale counts turns that nothing follows. The stem tells where the plug is.',
    source: COMMON,
    apply: pocket((facts, chance, truth) => {
      const stem = onStep(facts, chance.between(0.45, 0.6))
      const wheel = onStep(facts, chance.between(0, 0.15))
      const { suctionPa, dischargePa, suctionK } = truth
      const load = loadAt(facts.machine, { suctionPa, dischargePa, suctionK, opening: stem })
      if (load === null) throw new Error('a machine that finds no balance')
      return { ...truth, wheel, stem, loadW: load * apart(chance) }
    }),
  },
  {
    id: 'load-apart',
    name: 'The driver takes more than the sums can explain',
    level: 4,
    shows: 'figures',
    procedures: [LOAD],
    at: ['load', 'judged'],
    hint: 'Hold the load that was read against the one worked out for these pressures.',
    teaches:
      'Where load and sums are apart neither can be trusted to move as the other does: leaking valves, a wrong meter or a wrong record first, the pocket after.',
    source: 'Site rule of the machine record: how far they may be apart',
    apply: pocket((_facts, chance, truth) => ({ ...truth, loadW: truth.loadW * chance.between(1.13, 1.2) })),
  },
  {
    id: 'pocket-other',
    isAlone: true,
    name: 'Another pocket is fitted than the record has',
    level: 2,
    shows: 'seen',
    procedures: [LOAD],
    at: ['fitted'],
    hint: 'Look at the end of the cylinder, not at the data sheet.',
    teaches:
      'Loads are worked out for the pocket on record. With another one every figure of them is of another machine.',
    source: COMMON,
    apply: pocket((_facts, _chance, truth) => ({ ...truth, fitted: 'two_position' })),
  },
  {
    id: 'pocket-unlike-order',
    name: 'The pocket does not stand where the order has it',
    level: 1,
    shows: 'seen',
    procedures: [SET],
    at: ['as_ordered'],
    hint: 'Order and setting, read aloud one after the other.',
    teaches: 'The order is what load and rod loads were worked out for. Another setting is another machine.',
    source: COMMON,
    apply: pocket((facts, chance, truth) => {
      const wheel = onStep(facts, Math.min(0.9, truth.ordered + chance.between(0.06, 0.2)))
      return { ...truth, wheel, stem: wheel }
    }),
  },
  {
    id: 'pocket-stuck',
    name: 'The plug of the pocket stuck on its way: wheel as ordered, stem half-way',
    level: 3,
    shows: 'seen',
    procedures: [SET],
    at: ['as_ordered', 'stem_left'],
    hint: 'The wheel is one witness, the stem the other.',
    teaches: 'What is set is where the plug stands. The wheel tells where the hand was.',
    source: COMMON,
    apply: pocket((facts, chance, truth) => {
      const set = onStep(facts, chance.between(0.6, 0.9))
      return { ...truth, ordered: set, wheel: set, stem: onStep(facts, set * chance.between(0.4, 0.6)) }
    }),
  },
]
