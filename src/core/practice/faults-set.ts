// Faults of a piston that goes back in: how it is set, how it turns, and who is where while it is barred over.
import type { Chance } from './chance.ts'
import type { SetFacts } from './facts-set.ts'
import { BAR, COMMON, type Fault, PUT, type Shows } from './fault.ts'
import type { SetTruth } from './parts.ts'

const BOOK = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'
const STOP: Shows = 'stop'

function set(
  change: (truth: SetTruth, facts: SetFacts, chance: Chance) => Partial<SetTruth>,
): Fault['apply'] {
  return (machine, chance, facts) => {
    const { set: of } = facts.parts
    const { set: truth } = machine.parts
    if (of === null || truth === null) throw new Error('a machine whose piston does not go back in')
    return { ...machine, parts: { ...machine.parts, set: { ...truth, ...change(truth, of, chance) } } }
  }
}

/** Past a limit, to one side or the other. Invented for practice. */
const past = (limitM: number, chance: Chance) => chance.pick([-1, 1]) * limitM * chance.between(1.6, 2.4)

export const SET_FAULTS: readonly Fault[] = [
  {
    id: 'barred-uncounted',
    name: 'Somebody is still at another throw when the crank is to be barred',
    level: 2,
    shows: STOP,
    procedures: [BAR],
    at: ['ready/counted'],
    hint: 'Names on the board, and answers. Are they as many?',
    teaches:
      'On one crank every throw moves. A count is names and answers, not heads that somebody remembers.',
    source: COMMON,
    consequence: 'The crosshead of the other throw came through with an arm in its guide.',
    apply: set(() => ({ isCounted: false })),
  },
  {
    id: 'barred-shut',
    name: 'One end is shut in while the crank is to be barred',
    level: 3,
    shows: STOP,
    procedures: [BAR],
    at: ['ready/ends_open'],
    hint: 'A valve out or a vent open: at each end, of each throw.',
    teaches: 'A closed end is compressed as the crank turns, and kicks the bar back.',
    source: COMMON,
    consequence: 'The bar came round backwards, through whoever stood over it.',
    apply: set(() => ({ areEndsOpen: false })),
  },
  {
    id: 'ring-binds',
    name: 'A ring sits wrong on the piston',
    level: 2,
    shows: 'seen',
    procedures: [PUT],
    at: ['rings_set'],
    hint: 'Roll each ring right round, and read each face mark.',
    teaches: 'A ring that binds sticks when it is hot. One that is turned round pumps oil, or nothing.',
    source: `${BOOK}, p. 270-273`,
    apply: set((_truth, _facts, chance) => ({ rings: chance.pick(['tight', 'marked']) })),
  },
  {
    id: 'turns-tight',
    name: 'The crank goes tight at one place',
    level: 3,
    shows: 'seen',
    procedures: [PUT],
    at: ['turned'],
    hint: 'What did the hand at the bar feel?',
    teaches:
      'A tight spot is a ring at a port, a bent rod or something left inside. It is found before the next half turn.',
    source: COMMON,
    apply: set(() => ({ turned: 'tight' })),
  },
  {
    id: 'clearance-swapped',
    name: 'The end clearances are swapped: the small one at the head end',
    level: 2,
    shows: 'figures',
    procedures: [PUT],
    at: ['head_clearance', 'crank_clearance'],
    hint: 'Each end against its own least and most. Which of them wants more?',
    teaches:
      'About two thirds of the sum belong to the head end: heat moves the piston that way. Their sum is right here, and the piston strikes all the same.',
    source: `${BOOK}, p. 289`,
    apply: set(({ headM, crankM }) => ({ headM: crankM, crankM: headM })),
  },
  {
    id: 'clearance-short',
    name: 'The head end clearance is too small',
    level: 1,
    shows: 'figures',
    procedures: [PUT],
    at: ['head_clearance'],
    hint: 'The smaller of the two readings at the head end, against its least.',
    teaches: 'Cold it turns by hand. Hot, with bearings that give, the piston meets the head at each stroke.',
    source: `${BOOK}, p. 289`,
    apply: set((_truth, { head }, chance) => ({ headM: head[0] * chance.between(0.5, 0.85) })),
  },
  {
    id: 'runout-aside',
    name: 'The rod runs out sideways',
    level: 2,
    shows: 'figures',
    procedures: [PUT],
    at: ['runout_horizontal'],
    hint: 'Sideways nothing sags. What should that dial read?',
    teaches: 'Sideways runout is cylinder, guide or rod out of line. Packing pays for it first.',
    source: `${BOOK}, p. 243-246`,
    apply: set((_truth, { asideM }, chance) => ({ asideM: past(asideM, chance) })),
  },
  {
    id: 'runout-up',
    name: 'The rod runs out up and down, beyond what its clearances explain',
    level: 4,
    shows: 'figures',
    procedures: [PUT],
    at: ['runout_vertical'],
    hint: 'Hold it against what stroke, rod and the two running clearances make of it, not against nought.',
    teaches:
      'Up and down a good machine does not read nought. What is beyond geometry is a nut face, a bent rod or a guide.',
    source: `${BOOK}, p. 243-246; the expected figure is geometry`,
    apply: set(({ expectedM }, { upM }, chance) => ({ upM: expectedM + past(upM, chance) })),
  },
  {
    id: 'dial-moved',
    name: 'A dial did not come back to zero',
    level: 3,
    shows: 'figures',
    procedures: [PUT],
    at: ['dial_return'],
    hint: 'After a whole turn both dials stand where they were set, or nothing between counts.',
    teaches: 'A base that moved, or a rod that turned: the runout is read again, from setting the dials on.',
    source: `${BOOK}, p. 244`,
    apply: set((_truth, { returnM }, chance) => ({ returnM: past(returnM, chance) })),
  },
]
