// From a seed to a hidden machine: a sound one first, then what is wrong with it. The same seed, level and record give the same
// machine, always. All shares and ranges here are invented for practice, and none of them is a limit.
import type { Level } from '../job/practice.ts'
import { type BoreJudging, tightestOf, verdictOfTruth } from './bore-truth.ts'
import { soundParts } from './build-parts.ts'
import { type Chance, chanceOf } from './chance.ts'
import { drawFaults } from './draw.ts'
import type { BoreFacts, Facts, RodFacts, Showing } from './facts.ts'
import { faultById } from './faults.ts'
import {
  type Air,
  type BoreTruth,
  CLEAN_AIR,
  type HiddenMachine,
  type Off,
  type RodTruth,
  type Warmth,
} from './machine.ts'

export interface Wanted {
  readonly seed: number
  readonly level: Level
  /** For tests and scenarios: these and no others. Left out: drawn by level. */
  readonly faults?: readonly string[]
}

export function buildMachine(facts: Facts, wanted: Wanted): HiddenMachine {
  const { seed, level } = wanted
  const ids = wanted.faults ?? drawFaults(facts.faults, seed, level)
  const sound = soundMachine(facts, seed, level)
  return ids.reduce((machine, id) => {
    const fault = faultById(id)
    const changed = fault.apply(machine, chanceOf(seed, 'fault', id), facts)
    return { ...changed, faults: [...machine.faults, id] }
  }, sound)
}

/** Nothing is wrong with it that has to be found: it is worn as a machine wears that runs well. */
export function soundMachine(facts: Facts, seed: number, level: Level): HiddenMachine {
  const numbers = chanceOf(seed, 'locks')
  const first = Math.floor(numbers.between(110, 880))
  return {
    seed,
    level,
    faults: [],
    plate: facts.tag,
    locks: Object.fromEntries(
      facts.points.map(({ id }, n) => [id, { number: `L-${first + n}`, hangs: 'shut' as const }]),
    ),
    driver: 'still',
    bleeds: { head: 'still', crank: 'still', between: 'still' },
    block: 'both-ways',
    meterAnswers: true,
    air: {
      breathing_zone: CLEAN_AIR,
      in_the_opening: { ...CLEAN_AIR, oxygen: 0.208 },
      at_the_vent: swept(chanceOf(seed, 'swept')),
    },
    returning: null,
    later: null,
    bore: facts.bore === null ? null : wornBore(facts.bore, chanceOf(seed, 'bore')),
    rod: facts.rod === null ? null : wornRod(facts.rod, chanceOf(seed, 'rod')),
    parts: soundParts(facts.parts, (part) => chanceOf(seed, 'part', part)),
    warmth: shopWarmth(chanceOf(seed, 'warmth')),
    off: Object.fromEntries(
      facts.instruments.map((one) => [one.id, offOf(one, chanceOf(seed, 'off', one.id))]),
    ),
  }
}

/** What is left in a cylinder that was swept with inert gas to its end: under 4 % of the lower limit, invented for practice. */
function swept(chance: Chance): Air {
  return { oxygen: chance.between(0.002, 0.008), methane: chance.between(4e-4, 1.9e-3), sulfide: 0 }
}

/**
 * Wear that stays well inside every limit: from top to bottom and in the middle most, as weight and stroke would have it. How much of
 * the tightest limit it uses is drawn; where measuring could still not tell it inside, it is made less.
 */
function wornBore(facts: BoreFacts, chance: Chance): BoreTruth {
  const { judging } = facts
  const tightest = tightestOf(judging)
  const share = chance.between(0.12, 0.45)
  const bottom = chance.between(0.3, 0.6)
  const [least, most] = facts.made
  const size = judging.limits['largest-diameter']?.value ?? judging.nominalM
  const made: BoreTruth = {
    ...AS_NEW,
    madeM: chance.between(least, most),
    counterboreM: facts.counterboreM + chance.between(-0.5, 0.5) * tightest * 0.1,
    evenM: Math.max(0, size - judging.nominalM) * chance.between(0.02, 0.2),
    bottomM: tightest * share * bottom,
    middleM: tightest * share * (1 - bottom),
  }
  return calm(made, judging)
}

const AS_NEW: BoreTruth = {
  madeM: 0,
  counterboreM: 0,
  evenM: 0,
  middleM: 0,
  endsM: 0,
  headM: 0,
  crankM: 0,
  bottomM: 0,
  topM: 0,
  sideM: 0,
  strip: 'head end',
  isTurned: false,
  surface: [],
  jacket: 'none',
}

/** Less worn by a third, again and again, until it is judged ACCEPT. */
function calm(bore: BoreTruth, judging: BoreJudging): BoreTruth {
  let calmer = bore
  for (let n = 0; n < 12 && verdictOfTruth(calmer, judging).verdict !== 'ACCEPT'; n++)
    calmer = {
      ...calmer,
      evenM: calmer.evenM * 0.67,
      bottomM: calmer.bottomM * 0.67,
      middleM: calmer.middleM * 0.67,
    }
  return calmer
}

/** A rod that has run for years and may run on: each of its wears uses 10 to 30 % of its own limit. */
function wornRod(facts: RodFacts, chance: Chance): RodTruth {
  const share = (limitM: number) => limitM * chance.between(0.1, 0.3)
  // Made at the size of the drawing, and never over it.
  const madeM = facts.nominalM - chance.between(0, 0.04) * facts.undersizeM
  return {
    madeM,
    fitM: facts.nominalM * FIT,
    evenM: share(facts.undersizeM),
    crossheadM: share(facts.taperM),
    ovalM: share(facts.outOfRoundM),
    bendM: share(facts.straightnessM),
    pistonThreadM: share(facts.threadM),
    crossheadThreadM: share(facts.threadM),
    shoulderM: share(facts.shoulderM),
  }
}

/** The fit of the piston as a share of the rod: no record has it, and nothing is judged by it. */
const FIT = 0.99

/** A shop in the mild part of the year; part and instrument lay side by side, and both warm up a little. degC. */
function shopWarmth(chance: Chance): Warmth {
  const shop = chance.between(16, 26)
  const boreBefore = shop + chance.between(-0.4, 0.8)
  const gaugeBefore = shop + chance.between(-0.4, 0.4)
  const rise = chance.between(0, 0.5)
  return { boreBefore, gaugeBefore, boreAfter: boreBefore + rise, gaugeAfter: gaugeBefore + rise }
}

/**
 * An instrument as its certificate has it: a steady error, evenly anywhere within 0.6 of its standard uncertainty and within half of
 * what the check on its standard allows; and a scatter of 0.35 of it. Together with half a step of reading they make no more than
 * the certificate says (root sum of squares, JCGM 100:2008 5.1.2); the shares are invented for practice.
 */
function offOf({ standardU, setWithin }: Showing, chance: Chance): Off {
  const most = Math.min(STEADY * standardU, setWithin === null ? Number.POSITIVE_INFINITY : setWithin / 2)
  return { bias: chance.between(-most, most), knocked: 0, scatter: SCATTER * standardU }
}

export const STEADY = 0.6
export const SCATTER = 0.35
