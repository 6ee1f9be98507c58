// What an instrument shows of what is there: its steady error, its scatter, and what a hurried hand adds.
import type { Manner } from '../job/practice.ts'
import type { Chance } from './chance.ts'
import type { Off } from './machine.ts'

export interface Shown {
  /** What would be read without any error, SI. */
  readonly truth: number
  readonly off: Off
  /** Whether the instrument was dropped before this reading. */
  readonly isKnocked: boolean
  readonly manner: Manner
  /** How much the hurried hand may be off, SI: from and to. */
  readonly hurried: readonly [number, number]
}

/** One reading, SI, before it is rounded to a step of the instrument. */
export function exactOf(shown: Shown, chance: Chance): number {
  const { truth, off, isKnocked, manner, hurried } = shown
  const hand = manner === 'quick' ? chance.between(...hurried) : 0
  return truth + off.bias + (isKnocked ? off.knocked : 0) + off.scatter * chance.normal() + hand
}

export interface WarmTruth {
  /** Size at 20 degC, metres. */
  readonly sizeM: number
  readonly partAlpha: number
  readonly partC: number
  readonly instrumentAlpha: number
  readonly instrumentC: number
}

/**
 * What a faultless instrument of that warmth shows of a part of this warmth: R = D20 (1 + ap (Tp - 20)) / (1 + ai (Ti - 20)), the
 * inverse of what brings a reading to 20 degC (JCGM 100:2008 H.1.1; ISO 1:2022).
 */
export function shownWarm({ sizeM, partAlpha, partC, instrumentAlpha, instrumentC }: WarmTruth): number {
  return (sizeM * (1 + partAlpha * (partC - 20))) / (1 + instrumentAlpha * (instrumentC - 20))
}
