// Faults of new rings and of the piston that they go on, at the bench and in the bore; and of the oil they run on.
import type { Chance } from './chance.ts'
import type { GapFacts, RingFacts } from './facts-parts.ts'
import { COMMON, type Fault, GAPS, RINGS } from './fault.ts'
import type { HiddenMachine } from './machine.ts'
import type { FeedTruth, FitTruth, GapTruth, RingTruth } from './parts.ts'

const BOOK = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'

function rings(
  change: (rings: RingTruth, facts: RingFacts, chance: Chance) => Partial<RingTruth>,
): Fault['apply'] {
  return (machine, chance, facts) => {
    const { of, truth } = partOf(facts.parts.rings, machine.parts.rings)
    return withPart(machine, 'rings', { ...truth, ...change(truth, of, chance) })
  }
}

function onPiston(
  change: (fit: FitTruth, facts: RingFacts, chance: Chance) => Partial<FitTruth>,
): Fault['apply'] {
  return (machine, chance, facts) => {
    const { of, truth } = partOf(facts.parts.rings, machine.parts.fit)
    return withPart(machine, 'fit', { ...truth, ...change(truth, of, chance) })
  }
}

function gap(change: (facts: GapFacts, chance: Chance) => GapTruth): Fault['apply'] {
  return (machine, chance, facts) => {
    const { of } = partOf(facts.parts.gap, machine.parts.gap)
    return withPart(machine, 'gap', change(of, chance))
  }
}

function feed(change: Partial<FeedTruth>): Fault['apply'] {
  return (machine) => {
    const { truth } = partOf({}, machine.parts.feed)
    return withPart(machine, 'feed', { ...truth, ...change })
  }
}

function partOf<F, T>(of: F | null, truth: T | null): { readonly of: F; readonly truth: T } {
  if (of === null || truth === null) throw new Error('a machine without that part')
  return { of, truth }
}

function withPart<P extends keyof HiddenMachine['parts']>(
  machine: HiddenMachine,
  part: P,
  truth: HiddenMachine['parts'][P],
): HiddenMachine {
  return { ...machine, parts: { ...machine.parts, [part]: truth } }
}

/** The piston past its limit: on riders they are what runs, and what is judged. */
function worn(truth: FitTruth, facts: RingFacts, share: number): Partial<FitTruth> {
  const { riders } = facts
  if (riders === null || truth.riders === null)
    return { verticalM: facts.nominalM - facts.clearance[1] * share }
  return { riders: { ...truth.riders, acrossM: facts.nominalM - riders.clearance[1] * share } }
}

export const RING_FAULTS: readonly Fault[] = [
  {
    id: 'ring-tight',
    name: 'A new ring is tight in its groove',
    level: 1,
    shows: 'figures',
    procedures: [RINGS],
    at: ['side'],
    hint: 'Roll each ring right round, and read where it is tightest.',
    teaches:
      'A ring without side clearance sticks when it is hot, and blows past from then on. Tighter is never better than new.',
    source: `${BOOK}, table 4-4 p. 272`,
    apply: rings((truth, { side }, chance) => ({
      sideLeastM: Math.min(truth.sideLeastM, side[0] * chance.between(0.67, 0.71)),
    })),
  },
  {
    id: 'groove-worn',
    name: 'A groove is worn wide',
    level: 1,
    shows: 'figures',
    procedures: [RINGS],
    at: ['side'],
    hint: 'The greatest clearance of all grooves, right round, against its limit.',
    teaches: 'A new ring in a worn groove hammers it wider at each stroke. The groove is trued first.',
    source: `${BOOK}, p. 270-272`,
    apply: rings((_truth, { side }, chance) => ({ sideMostM: side[1] * chance.between(1.3, 1.7) })),
  },
  {
    id: 'ring-thin',
    name: 'A ring of the new set is worn thin: it has run before',
    level: 2,
    shows: 'figures',
    procedures: [RINGS],
    at: ['radial_new'],
    hint: 'The thinnest ring of the set, across its section, against its limit.',
    teaches:
      'Radial wear opens the gap by more than six times itself, 2 pi, and takes the spring out of a ring. A wrapped ring need not be new.',
    source: `${BOOK}, p. 273-281; the factor is geometry`,
    apply: rings((_truth, { radialLeastM }, chance) => ({
      radialLeastM: radialLeastM * chance.between(0.86, 0.95),
    })),
  },
  {
    id: 'ring-bottoms',
    name: 'A ring stands proud of its land: its groove is too shallow',
    level: 3,
    shows: 'figures',
    procedures: [RINGS],
    at: ['groove_depth'],
    hint: 'Shallowest groove less thickest ring: how much is left?',
    teaches:
      'A ring that touches bottom carries the piston and scores the bore. Carbon in a groove does it as well as a wrong ring.',
    source: `${BOOK}, p. 270`,
    apply: rings(({ radialMostM }, { belowM }, chance) => ({
      grooveM: radialMostM + belowM * chance.between(0, 0.4),
    })),
  },
  {
    id: 'ring-light',
    name: 'A new ring is not round: light passes its face',
    level: 2,
    shows: 'seen',
    procedures: [RINGS],
    at: ['light'],
    hint: 'A lamp behind each ring in the gauge, and the room dark.',
    teaches:
      'A ring that does not lie on the wall leaks from the first day, and no gap and no thickness tells of it.',
    source: COMMON,
    apply: rings((_truth, _facts, chance) => ({ light: chance.pick(['light', 'near_joint']) })),
  },
  {
    id: 'ring-material',
    // Nothing after it is ever met: the set is not fitted.
    isAlone: true,
    name: 'The new rings are of the wrong material',
    level: 3,
    shows: 'seen',
    procedures: [RINGS],
    at: ['new_set'],
    hint: 'What is stamped on the rings themselves, and what does the book have?',
    teaches:
      'Another material wants another gap and another groove: PTFE grows several times as much as iron. The box is not the ring.',
    source: `${BOOK}, table 4-4 p. 272`,
    apply: rings((truth) => ({
      isRightSet: false,
      material: truth.material === 'ptfe' ? 'cast-iron' : 'ptfe',
    })),
  },
  {
    id: 'piston-worn',
    name: 'What the piston runs on is worn under size',
    level: 2,
    shows: 'figures',
    procedures: [RINGS],
    at: ['piston_od', 'rider_od'],
    hint: 'The smallest reading across, against the bore as drawn.',
    teaches: 'With too much clearance the piston drops, and the rod runs out of line with its packing.',
    source: `${BOOK}, p. 268-269`,
    apply: onPiston((truth, facts, chance) => worn(truth, facts, chance.between(1.15, 1.35))),
  },
  {
    id: 'piston-face',
    name: 'A face of the piston is not square to its hub',
    level: 3,
    shows: 'figures',
    procedures: [RINGS],
    at: ['face_swing'],
    hint: 'Both faces are read. Which of them swings?',
    teaches: 'A face out of square bends the rod each time the nut comes tight.',
    source: `${BOOK}, p. 276`,
    apply: onPiston((_truth, { faceM }, chance) => {
      const swing = faceM * chance.between(2.2, 4)
      return chance.isOne(0.5) ? { headFaceM: swing } : { crankFaceM: swing }
    }),
  },
  {
    id: 'gap-wide',
    name: 'A ring gap is beyond its limit',
    level: 1,
    shows: 'figures',
    procedures: [GAPS],
    at: ['gap_left'],
    hint: 'The greatest gap of all, against three times that of a new ring.',
    teaches:
      'A ring whose gap is too wide leaks from the start: a ring of the next size is cut to the bore that is there.',
    source: `${BOOK}, p. 261 and 280-281`,
    apply: gap(({ window: [least, most] }, chance) => ({
      leastM: least + (most - least) * chance.between(0.3, 0.6),
      mostM: most * chance.between(1.12, 1.4),
    })),
  },
  {
    id: 'gap-tight',
    name: 'A ring gap is too small: the ring butts when it is hot',
    level: 1,
    shows: 'figures',
    procedures: [GAPS],
    at: ['gap_left'],
    hint: 'The least gap of all. Below the least is never better than new.',
    teaches:
      'A ring that butts breaks, and takes the bore with it. It is filed in the place where the bore is smallest.',
    source: `${BOOK}, table 4-4 p. 272`,
    apply: gap(({ window: [least, most] }, chance) => {
      const leastM = least * chance.between(0.4, 0.75)
      return { leastM, mostM: Math.max(leastM, least) + (most - least) * chance.between(0.1, 0.25) }
    }),
  },
  {
    id: 'oil-shut',
    name: 'No oil comes into the bore',
    level: 2,
    shows: 'seen',
    procedures: [GAPS],
    at: ['oil_hole'],
    hint: 'A wire from the bore, then the pump: what comes?',
    teaches: 'Ring and bore can be inside every limit and be scrap in a week without this oil.',
    source: `${BOOK}, p. 257`,
    apply: (machine, chance, facts) => feed({ hole: chance.pick(['shut', 'slow']) })(machine, chance, facts),
  },
  {
    id: 'check-valve',
    name: 'A check valve of the oil lines passes',
    level: 3,
    shows: 'seen',
    procedures: [GAPS],
    at: ['check_valve'],
    hint: 'Stop pumping, and watch the glass for longer than a breath.',
    teaches: 'What passes it at a standstill is gas when it runs: it drives the oil back up the line.',
    source: COMMON,
    apply: feed({ checkValve: 'passes' }),
  },
  {
    id: 'lubricator',
    name: 'A feed of the lubricator gives a wrong rate',
    level: 2,
    shows: 'seen',
    procedures: [GAPS],
    at: ['lubricator'],
    hint: 'A whole minute at each glass, and each against its own figure.',
    teaches: 'Too little wears bore and rings. Too much makes carbon, sticks rings and fouls valves.',
    source: `${BOOK}, p. 257`,
    apply: (machine, chance, facts) =>
      feed({ lubricator: chance.pick(['short', 'flooded']) })(machine, chance, facts),
  },
]
