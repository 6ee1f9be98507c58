// Rings, piston, oil feed and cavities as they are where nothing is wrong with them. All shares and ranges are invented for practice,
// and none of them is a limit.
import { gapGrowth } from '../rings/gap-wear.ts'
import type { Chance } from './chance.ts'
import type { Window } from './facts-limits.ts'
import type { CavityFacts, GapFacts, PartFacts, RingFacts } from './facts-parts.ts'
import { tightened } from './nut-truth.ts'
import type {
  CavityTruth,
  ClosedTruth,
  FeedTruth,
  FitTruth,
  GapTruth,
  OpenTruth,
  Parts,
  RingTruth,
} from './parts.ts'
import { runningPocket } from './pocket-truth.ts'
import { setRight } from './set-truth.ts'

/** A share of the way from the least to the most. */
export const within = ([least, most]: Window, share: number): number => least + (most - least) * share

export function soundParts(facts: PartFacts, chanceOfPart: (part: string) => Chance): Parts {
  const { rings, gap, cavity } = facts
  return {
    rings: rings === null ? null : newRings(rings, chanceOfPart('rings')),
    fit: rings === null ? null : pistonAsRun(rings, chanceOfPart('fit')),
    gap: gap === null ? null : gapsInBore(gap, chanceOfPart('gap')),
    feed: facts.hasFeed ? FEED : null,
    cavity: cavity === null ? null : cavityOf(cavity, chanceOfPart('cavity')),
    closed: facts.isClosed ? EMPTY : null,
    pocket: facts.pocket === null ? null : runningPocket(facts.pocket, chanceOfPart('pocket')),
    set: facts.set === null ? null : setRight(facts.set, chanceOfPart('set')),
    opened: facts.opened === null ? null : { ...AS_DRAINED, pocketEnd: facts.opened },
    nut: facts.nut === null ? null : tightened(facts.nut, chanceOfPart('nut')),
  }
}

function newRings(facts: RingFacts, chance: Chance): RingTruth {
  const { side, radialM } = facts
  const least = chance.between(0.2, 0.35)
  const radialMostM = radialM + radialM * chance.between(0, 0.003)
  return {
    sideLeastM: within(side, least),
    sideMostM: within(side, least + chance.between(0.05, 0.15)),
    radialMostM,
    radialLeastM: radialMostM - radialM * chance.between(0.003, 0.008),
    grooveM: radialMostM + facts.belowM * chance.between(2, 3.2),
    light: 'dark',
    material: facts.material,
    isRightSet: true,
  }
}

/** Worn from top to bottom a little more than from side to side, as weight has it. */
function pistonAsRun(facts: RingFacts, chance: Chance): FitTruth {
  const share = chance.between(0.2, 0.4)
  const { riders } = facts
  return {
    horizontalM: facts.nominalM - within(facts.clearance, share),
    verticalM: facts.nominalM - within(facts.clearance, share + chance.between(0.02, 0.08)),
    headFaceM: facts.faceM * chance.between(0.02, 0.2),
    crankFaceM: facts.faceM * chance.between(0.02, 0.2),
    riders:
      riders === null
        ? null
        : {
            acrossM: facts.nominalM - within(riders.clearance, chance.between(0.3, 0.6)),
            proudM: riders.proudM * chance.between(1.4, 2.2),
          },
  }
}

/**
 * New rings in a bore that has grown a little: the gap they were cut for, and what the bore adds to it (Bloch & Hoefner 1996, p. 261 and
 * 281: pi times its growth).
 */
function gapsInBore({ window, newGapM }: GapFacts, chance: Chance): GapTruth {
  const cut = Math.max(newGapM, window[0]) + (window[1] - window[0]) * chance.between(0.08, 0.16)
  const growth = gapGrowth({
    boreGrowthM: (chance.between(0, 0.15) * (window[1] - window[0])) / Math.PI,
    radialWearM: 0,
  })
  if (!growth.ok) throw new Error(growth.error.say)
  const leastM = cut + growth.value.growthM
  return { leastM, mostM: leastM + (window[1] - window[0]) * chance.between(0.03, 0.12) }
}

const AS_DRAINED: Omit<OpenTruth, 'pocketEnd'> = {
  water: 'clear',
  isDry: true,
  jacketOverK: 2,
  isPocketEmpty: true,
  hisses: false,
  inside: 'clean',
}

const FEED: FeedTruth = { hole: 'clear', checkValve: 'holds', lubricator: 'right' }

const EMPTY: ClosedTruth = { head: { pressurePa: 0, risePaPerS: 0 }, crank: { pressurePa: 0, risePaPerS: 0 } }

/** Scale, sizes and metal together, as a share of the mass at k = 2: invented for practice. */
const RATIO_U = 0.03

/** What a hollow piston weighs of a solid one: invented for practice. */
const HOLLOW_SHARE = [0.52, 0.72] as const

/** Hollow as its record has it, or a spare of the other kind that says so on its own tag. */
function cavityOf(facts: CavityFacts, chance: Chance): CavityTruth {
  const isSpare = !facts.isHollow && chance.isOne(0.5)
  const isHollow = facts.isHollow || isSpare
  const hollowShare = chance.between(...HOLLOW_SHARE)
  const solidKg = facts.isHollow ? facts.massKg / hollowShare : facts.massKg
  const scale = 1 + chance.between(-0.01, 0.005)
  return {
    isHollow,
    written: isHollow ? 'hollow' : 'solid',
    solidKg,
    weighedKg: solidKg * (isHollow ? hollowShare : scale),
    ratioU: RATIO_U,
    plugs: isHollow ? 'found' : 'none',
    knock: isHollow ? 'rings' : 'dull',
    vents: isHollow && chance.isOne(0.3) ? 'hissed' : 'silent',
    pressurePa: 0,
    hissesLate: false,
    plug: 'one_turn',
    isOpened: isHollow && chance.isOne(0.4),
    isAimed: true,
    overShopK: 0,
  }
}
