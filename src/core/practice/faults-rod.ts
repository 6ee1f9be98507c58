// Faults of a piston rod on the bench: sizes, form, straightness, threads and shoulder.
import type { Chance } from './chance.ts'
import type { RodFacts } from './facts.ts'
import { type Fault, ROD } from './fault.ts'
import type { RodTruth } from './machine.ts'

const BOOK =
  'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996, p. 290-294'

/** Beyond a limit by so much of it that no measuring error of a gauge fit for it brings it back. Invented for practice. */
const beyond = (limitM: number, chance: Chance) => limitM * chance.between(1.6, 2.2)

function rod(change: (facts: RodFacts, chance: Chance) => Partial<RodTruth>): Fault['apply'] {
  return (machine, chance, facts) => {
    if (machine.rod === null || facts.rod === null) throw new Error('a machine without a rod')
    return { ...machine, rod: { ...machine.rod, ...change(facts.rod, chance) } }
  }
}

export const ROD_FAULTS: readonly Fault[] = [
  {
    id: 'rod-undersize',
    name: 'The rod is worn under size',
    level: 1,
    shows: 'figures',
    procedures: [ROD],
    at: ['rod_top'],
    hint: 'Hold the smallest size against the drawing.',
    teaches: 'Packing is made for a size of rod. A rod too small for it leaks, whatever packing goes on it.',
    source: BOOK,
    apply: rod((facts, chance) => ({ evenM: beyond(facts.undersizeM, chance) })),
  },
  {
    id: 'rod-oval',
    name: 'The rod is out of round',
    level: 1,
    shows: 'figures',
    procedures: [ROD],
    at: ['rod_side'],
    hint: 'Hold the two axes of one place against each other.',
    teaches: 'Packing rings follow a round rod. One axis alone would have passed this one.',
    source: BOOK,
    apply: rod((facts, chance) => ({ ovalM: beyond(facts.outOfRoundM, chance) })),
  },
  {
    id: 'rod-tapered',
    name: 'The rod is tapered along the packing run',
    level: 2,
    shows: 'figures',
    procedures: [ROD],
    at: ['rod_top'],
    hint: 'Hold the two ends of the packing run against each other.',
    teaches: 'A tapered rod opens and shuts its packing at each stroke, and pumps gas past it.',
    source: BOOK,
    apply: rod((facts, chance) => ({ crossheadM: beyond(facts.taperM, chance) })),
  },
  {
    id: 'rod-bent',
    name: 'The rod is bent',
    level: 2,
    shows: 'figures',
    procedures: [ROD],
    at: ['rod_straight'],
    hint: 'Read the whole swing of the dial, and most of all in the middle.',
    teaches: 'A bent rod is scrap. Straightened, it has yielded once already.',
    source: BOOK,
    apply: rod((facts, chance) => ({ bendM: beyond(facts.straightnessM, chance) })),
  },
  {
    id: 'rod-thread',
    name: 'A thread of the rod does not run true',
    level: 3,
    shows: 'figures',
    procedures: [ROD],
    at: ['thread_runout'],
    hint: 'Both threads are read. Which of them swings?',
    teaches: 'A nut on a thread that is not square pulls the rod aside, and bends it a little at each turn.',
    source: BOOK,
    apply: rod((facts, chance) => {
      const runout = beyond(facts.threadM, chance)
      return chance.isOne(0.5) ? { pistonThreadM: runout } : { crossheadThreadM: runout }
    }),
  },
  {
    id: 'rod-shoulder',
    name: 'The shoulder of the rod is not square',
    level: 3,
    shows: 'figures',
    procedures: [ROD],
    at: ['shoulder_swing'],
    hint: 'The piston is pulled against one face. Does it stand square?',
    teaches: 'The piston takes its stand from the shoulder. Out of square there is out of line in the bore.',
    source: BOOK,
    apply: rod((facts, chance) => ({ shoulderM: beyond(facts.shoulderM, chance) })),
  },
]
