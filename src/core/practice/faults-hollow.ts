// Faults of a piston that may be hollow, at the bench. Each of them hurts whoever takes it for what it is not.
import type { Chance } from './chance.ts'
import { BENCH, COMMON, type Fault, HOLLOW, type Shows } from './fault.ts'
import type { CavityTruth } from './parts.ts'

const BOOK =
  'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996, p. 276 and 372'
const STOP: Shows = 'stop'

function cavity(change: (truth: CavityTruth, chance: Chance) => Partial<CavityTruth>): Fault['apply'] {
  return (machine, chance) => {
    const { cavity: truth } = machine.parts
    if (truth === null) throw new Error('a machine without a piston at the bench')
    return { ...machine, parts: { ...machine.parts, cavity: { ...truth, ...change(truth, chance) } } }
  }
}

/** What it weighs of a solid one: invented for practice. */
const HOLLOW_SHARE = [0.55, 0.75] as const

/** Hollow, and said to be so. */
const openly = (truth: CavityTruth, chance: Chance): Partial<CavityTruth> => ({
  isHollow: true,
  written: 'hollow',
  weighedKg: truth.solidKg * chance.between(...HOLLOW_SHARE),
  plugs: 'found',
  knock: 'rings',
})

/** Over the air outside, Pa: about 60 to 300 psi, invented for practice. */
const pressed = (chance: Chance) => chance.between(0.4e6, 2.1e6)

/** Hollow, and said to be solid by all that is written. `weighs`: what it weighs of the same piston in solid metal, as a share. */
function saidSolid(weighs: (truth: CavityTruth, chance: Chance) => number): Fault['apply'] {
  return cavity((truth, chance) => ({
    isHollow: true,
    written: 'solid',
    weighedKg: truth.solidKg * weighs(truth, chance),
    plugs: 'none',
    knock: 'rings',
    vents: 'none',
    pressurePa: pressed(chance),
  }))
}

export const HOLLOW_FAULTS: readonly Fault[] = [
  {
    id: 'hollow-as-solid',
    name: 'The piston is hollow, and record and tag say solid',
    level: 3,
    shows: STOP,
    procedures: [HOLLOW],
    at: ['mass_says', 'handled'],
    hint: 'What does it weigh of the same piston in solid metal, and could the scale be off by so much?',
    teaches:
      'Record, tag and drawing copy one another and are one fact. A piston that is too light for solid metal is hollow, whatever is written on it.',
    source: `${BOOK}; two facts before solid: judgement of the trade, no source`,
    consequence: 'Its nut would have been heated, or a plug turned, with gas shut in behind it.',
    // Plugs and vents were dressed over long ago.
    apply: saidSolid((_truth, chance) => chance.between(...HOLLOW_SHARE)),
  },
  {
    id: 'cavity-small',
    name: 'A small cavity, that the weight does not tell',
    level: 5,
    shows: STOP,
    procedures: [HOLLOW],
    at: ['knock', 'handled'],
    hint: 'Three facts may say solid. What does the fourth say?',
    teaches:
      'A small cavity hides in the error of the scale. Any one fact towards hollow settles it, whatever the others say.',
    source: `${BOOK}; two facts before solid: judgement of the trade, no source`,
    consequence: 'It would have been signed as solid, and heated.',
    apply: saidSolid(({ ratioU }, chance) => 1 - ratioU * chance.between(0.3, 0.8)),
  },
  {
    id: 'vent-plugged',
    name: 'A vent of a hollow piston is plugged',
    level: 2,
    shows: STOP,
    procedures: [HOLLOW],
    at: ['vents', 'way'],
    hint: 'A hole that is quiet is probed with a wire: does it go right through?',
    teaches:
      'A quiet hole may be empty or stopped up. Oil coke and a ring that sat on it hold full pressure back.',
    source: BOOK,
    consequence: 'The plug would have come off with the pressure of the line behind it.',
    apply: cavity((truth, chance) => ({
      ...openly(truth, chance),
      vents: 'blocked',
      pressurePa: pressed(chance),
    })),
  },
  {
    id: 'plug-seized',
    name: 'A plug is seized',
    level: 3,
    shows: STOP,
    procedures: [HOLLOW],
    at: ['slacked'],
    hint: 'One turn, by hand and bar. What if it does not come?',
    teaches:
      'A seized plug stays in: quarantine, tagged PRESSURE. No heat, no longer bar, no drill without a plan by number.',
    source: BOOK,
    consequence: 'Heat or a longer bar, with gas behind it, throws a plug through a roof.',
    apply: cavity((truth, chance) => ({ ...openly(truth, chance), isOpened: true, plug: 'seized' })),
  },
  {
    id: 'cavity-presses',
    name: 'Pressure is left in a cavity after its vent went quiet',
    level: 4,
    shows: STOP,
    procedures: [HOLLOW],
    at: ['waited/quiet'],
    hint: 'The whole wait, and an ear at each plug at its end.',
    teaches:
      'Gas seeps from one cavity to the next through a crack in the wall. Each is waited for, and each is proved apart.',
    source: BOOK,
    consequence: 'At 100 psi a plug of 1.5 in is pushed with 177 lbf, and you were turning it.',
    apply: cavity((truth, chance) => ({
      ...openly(truth, chance),
      isOpened: true,
      hissesLate: true,
      pressurePa: pressed(chance),
    })),
  },
  {
    id: 'plug-spins',
    name: 'A plug comes by itself: gas pushes it',
    level: 4,
    shows: STOP,
    procedures: [HOLLOW],
    at: ['slacked'],
    hint: 'How much hand did that turn need?',
    teaches:
      'A plug that turns freely is being pushed. It is left with the threads it has, and everybody goes.',
    source: BOOK,
    consequence: 'The next turn takes its last threads, and it leaves like a shot.',
    apply: cavity((truth, chance) => ({
      ...openly(truth, chance),
      isOpened: true,
      plug: 'spins',
      pressurePa: pressed(chance),
    })),
  },
  {
    id: 'plug-aimed',
    name: 'A plug face looks where people are',
    level: 1,
    shows: STOP,
    procedures: [BENCH],
    at: ['bench/aimed'],
    hint: 'Stand behind the piston and look where each of its two faces looks.',
    teaches: 'Shield and wall first, on both faces: a plug needs no fault of yours to come out.',
    source: COMMON,
    consequence: 'Whoever came through the door stood in its line.',
    apply: cavity(() => ({ isAimed: false })),
  },
  {
    id: 'piston-hot',
    name: 'The piston is still hot from the machine',
    level: 2,
    shows: STOP,
    procedures: [BENCH],
    at: ['bench/cool'],
    hint: 'A thermometer on the metal, not a hand near it.',
    teaches:
      'Gas shut in presses more the hotter it is, by the gas law in kelvin, and people hurry what burns their hands.',
    source: 'The gas law; the figure is common practice, no source',
    consequence: 'It would have been probed at its highest pressure.',
    apply: cavity((_truth, chance) => ({ overShopK: chance.between(40, 65) })),
  },
]
