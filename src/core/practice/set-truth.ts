// Piston, rod and crosshead as they were set: end clearances, and the runout that geometry makes of the running clearances.
import { expectedVerticalRunout } from '../rod/runout-expected.ts'
import type { Chance } from './chance.ts'
import type { Window } from './facts-limits.ts'
import type { SetFacts } from './facts-set.ts'
import type { SetTruth } from './parts.ts'

const IN = 0.0254
const FT_LB = 1.355818
/** Crosshead in its guide: invented for practice, as no record has it. Metres. */
const CROSSHEAD = [0.006 * IN, 0.012 * IN] as const

const at = ([least, most]: Window, share: number): number => least + (most - least) * share

export function setRight(facts: SetFacts, chance: Chance): SetTruth {
  const pistonM = at(facts.running, chance.between(0.25, 0.5))
  const crossheadM = chance.between(...CROSSHEAD)
  const geometry = expectedVerticalRunout({
    strokeM: facts.strokeM,
    rodLengthM: facts.rodLengthM,
    pistonClearanceM: pistonM,
    crossheadClearanceM: crossheadM,
    convention: 'zero-at-outer-end-read-at-inner',
  })
  if (!geometry.ok) throw new Error(geometry.error.say)
  const book = chance.between(380, 460) * FT_LB
  return {
    pistonM,
    crossheadM,
    headM: at(facts.head, chance.between(0.4, 0.6)),
    crankM: at(facts.crank, chance.between(0.4, 0.6)),
    expectedM: geometry.value,
    upM: geometry.value + facts.upM * chance.between(-0.2, 0.2),
    asideM: facts.asideM * chance.between(-0.25, 0.25),
    returnM: facts.returnM * chance.between(-0.2, 0.2),
    nutsNm: Array.from({ length: 4 }, () => book * chance.between(0.99, 1.01)),
    rings: 'right',
    turned: 'by_hand',
    isCounted: true,
    areEndsOpen: true,
  }
}
