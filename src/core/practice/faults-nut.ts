// Faults of a piston nut and of what stands before it is turned.
import type { Chance } from './chance.ts'
import type { NutFacts } from './facts-parts.ts'
import { COMMON, type Fault, NUT, type Shows } from './fault.ts'
import { pulled } from './nut-truth.ts'
import type { NutTruth } from './parts.ts'

const BOOK = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'
const STOP: Shows = 'stop'

function nut(change: (facts: NutFacts, chance: Chance) => Partial<NutTruth>): Fault['apply'] {
  return (machine, chance, facts) => {
    const { nut: of } = facts.parts
    const { nut: truth } = machine.parts
    if (of === null || truth === null) throw new Error('a machine without a piston nut')
    return { ...machine, parts: { ...machine.parts, nut: { ...truth, ...change(of, chance) } } }
  }
}

export const NUT_FAULTS: readonly Fault[] = [
  {
    id: 'tag-unproved',
    name: 'The piston is not proved vented: its tag wants a cavity and a signature',
    level: 1,
    shows: STOP,
    procedures: [NUT],
    at: ['ready/proved'],
    hint: 'Read all of the tag: each cavity, and both signatures.',
    teaches:
      'A nut can be what holds the gas of a hollow piston in. Proved means each cavity, by two people.',
    source: `${BOOK}, p. 276 and 372`,
    consequence: 'The nut would have been turned on a piston that nobody had proved empty.',
    apply: nut(() => ({ isProved: false })),
  },
  {
    id: 'vent-compound',
    name: 'A vent hole is shut by compound',
    level: 3,
    shows: STOP,
    procedures: [NUT],
    at: ['ready/holes'],
    hint: 'A lamp on one side of each vent hole, an eye on the other.',
    teaches: 'Compound or a chip over a vent hole makes a pressure vessel of a hollow piston again.',
    source: `${BOOK}, p. 276`,
    consequence: 'It would have gone into the machine to fill, and waited for whoever opens it next.',
    apply: nut(() => ({ isVentShut: true })),
  },
  {
    id: 'blocks-on-run',
    name: 'The rod lies in the blocks on its packing run',
    level: 2,
    shows: STOP,
    procedures: [NUT],
    at: ['ready/blocks'],
    hint: 'Where along the rod do the blocks take it?',
    teaches: 'A clamp on the packing run slips on its polish, and scores what the packing has to seal on.',
    source: `${BOOK}, p. 295 and 376`,
    consequence: 'The rod would have rolled out of its clamp under the pull of the wrench.',
    apply: nut(() => ({ isOnRun: true })),
  },
  {
    id: 'seat-bare',
    isAlone: true,
    name: 'The shoulder touches on one side only',
    level: 2,
    shows: 'seen',
    procedures: [NUT],
    at: ['contact'],
    hint: 'How much of each seat took blue, and where?',
    teaches:
      'Torque does not make a seat. It bends the rod over the one that is there, and it breaks at its thread.',
    source: `${BOOK}, p. 286`,
    apply: nut(() => ({ contact: 'less' })),
  },
  {
    id: 'compound-copper',
    isAlone: true,
    name: 'The thread compound has copper in it',
    level: 3,
    shows: 'seen',
    procedures: [NUT],
    at: ['contact_right'],
    hint: 'What stands on the tin?',
    teaches: 'Copper attacks some rods, and another friction makes another pull from the same torque.',
    source: `${BOOK}, p. 286`,
    apply: nut(() => ({ isRightCompound: false })),
  },
  {
    id: 'nut-over',
    name: 'The piston nut is over-tightened',
    level: 1,
    shows: 'figures',
    procedures: [NUT],
    at: ['nut_torque', 'nut_angle', 'end_after'],
    hint: 'The figure of the book has a most as well as a least.',
    teaches:
      'An over-tightened thread has used up what it had against fatigue. Slacked to the figure it is not well again: off, and looked at.',
    source: `The machine’s own book; ${BOOK}, p. 286`,
    apply: nut((facts, chance) => pulled(facts, chance.between(1.55, 2), chance)),
  },
  {
    id: 'nut-loose',
    name: 'The piston nut is not tight enough',
    level: 1,
    shows: 'figures',
    procedures: [NUT],
    at: ['nut_torque', 'nut_angle', 'end_after'],
    hint: 'Hold what was reached against the least of the book.',
    teaches: 'A nut below its figure works at each stroke, and comes off with the piston.',
    source: `The machine’s own book; ${BOOK}, p. 286`,
    apply: nut((facts, chance) => pulled(facts, chance.between(-1, -0.6), chance)),
  },
  {
    id: 'nut-gives',
    isAlone: true,
    name: 'The nut gave while it was left alone',
    level: 3,
    shows: 'seen',
    procedures: [NUT],
    at: ['proof'],
    hint: 'Another hand, the same figure, an eye on the two scribed lines.',
    teaches:
      'Seats bed in. A nut that gives in the first quarter of an hour gives again in the first week: tightened anew, from the start.',
    source: COMMON,
    apply: nut(() => ({ isBedded: false })),
  },
  {
    id: 'rod-proud',
    name: 'The rod end stands above the piston face',
    level: 2,
    shows: 'seen',
    procedures: [NUT],
    at: ['recess'],
    hint: 'A straight edge right across the face: does it rock?',
    teaches: 'What stands above the face meets the head first, whatever the end clearance says of the face.',
    source: COMMON,
    apply: nut(() => ({ recess: 'proud' })),
  },
]
