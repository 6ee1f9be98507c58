// A machine on load: its pocket, its pressures and what its driver takes, by the solver of every load question.
import type { Chance } from './chance.ts'
import { loadAt, type PocketFacts, type Running, type Span } from './facts-pocket.ts'
import type { PocketTruth } from './parts.ts'

/** Load and sums apart on a machine without a fault, as a share: invented for practice. */
const APART = 0.012

export function runningPocket(facts: PocketFacts, chance: Chance): PocketTruth {
  return loaded(facts, facts.easy, {
    opening: onStep(facts, chance.between(0, 0.25)),
    share: apart(chance),
    at: chance.between(0, 1),
  })
}

export const apart = (chance: Chance): number => 1 + chance.between(-APART, APART)

/** The nearest setting that the hand-wheel is set to. */
export const onStep = ({ step }: PocketFacts, opening: number): number => Math.round(opening / step) * step

/** @param share what the driver takes over what the sums say. @param at where in the span. */
export function loaded(
  facts: PocketFacts,
  [from, to]: Span,
  { opening, share, at }: { readonly opening: number; readonly share: number; readonly at: number },
): PocketTruth {
  const running: Running = {
    suctionPa: from + (to - from) * at,
    dischargePa: facts.dischargePa,
    suctionK: facts.suctionK,
    opening,
  }
  const load = loadAt(facts.machine, running)
  if (load === null) throw new Error('a machine that finds no balance')
  return {
    fitted: 'hand_wheel',
    wheel: opening,
    stem: opening,
    suctionPa: running.suctionPa,
    dischargePa: running.dischargePa,
    suctionK: running.suctionK,
    loadW: load * share,
    ordered: opening,
  }
}
