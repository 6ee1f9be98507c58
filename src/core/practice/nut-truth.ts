// A piston nut as it was tightened: torque, angle and stretch of one and the same pull.
import type { Chance } from './chance.ts'
import type { Window } from './facts-limits.ts'
import type { NutFacts } from './facts-parts.ts'
import type { NutTruth } from './parts.ts'

const at = ([least, most]: Window, share: number): number => least + (most - least) * share

/** How far friction alone moves torque and angle from the pull that the stretch shows, as a share of their window: invented for practice. */
const FRICTION = 0.05

/** @param share 0 where the book's least pull is reached, 1 where its most is. */
export function pulled(
  { torque, angle, stretch }: NutFacts,
  share: number,
  chance: Chance,
): Pick<NutTruth, 'torqueNm' | 'angleRad' | 'stretchM'> {
  const off = () => share + chance.between(-FRICTION, FRICTION)
  return { torqueNm: at(torque, off()), angleRad: at(angle, off()), stretchM: at(stretch, share) }
}

const IN = 0.0254

export function tightened(facts: NutFacts, chance: Chance): NutTruth {
  return {
    ...pulled(facts, chance.between(0.4, 0.6), chance),
    method: chance.pick(['torque', 'angle', 'stretch']),
    // About a quarter of what the book has in the end: invented for practice.
    snugNm: facts.torque[0] * chance.between(0.24, 0.29),
    endBeforeM: chance.between(0.9, 1.4) * IN,
    contact: 'enough',
    isRightCompound: true,
    isBedded: true,
    recess: 'below',
    isProved: true,
    isVentShut: false,
    isOnRun: false,
  }
}
