// Whether a piston is to be handled as hollow. Hollow is assumed until two independent facts say solid and none says
// hollow: a piston wrongly taken for solid can hold gas under pressure.

import type { Refusal, Result } from '../lib/result.ts'
import type { WeightFact } from './mass-density.ts'

export type Says = 'solid' | 'hollow' | 'unknown'

/**
 * Where a fact comes from. Record, tag and drawing copy one another and are ONE fact together. Plugs or vent holes that
 * are seen say hollow; that none were found says nothing, as they may be dressed over.
 */
export type FactFrom =
  | 'record'
  | 'tag'
  | 'drawing'
  | 'weight'
  | 'sounding'
  | 'ultrasonic'
  | 'radiograph'
  | 'plugs-or-vents'

export interface PistonFact {
  readonly from: FactFrom
  readonly says: Says
}

export interface PistonKind {
  readonly handleAs: 'hollow' | 'solid'
  /** Independent facts towards each; record, tag and drawing count once. */
  readonly towardsSolid: readonly string[]
  readonly towardsHollow: readonly string[]
  /** What contradicts what, or could not be told, in sentences. */
  readonly open: readonly string[]
}

const PAPER: readonly FactFrom[] = ['record', 'tag', 'drawing']

/**
 * Decides how the piston is handled. Any fact towards hollow settles it as hollow; solid needs two independent facts
 * and no open contradiction. Bore size is no fact: that pistons up to about 7 in are mostly solid and larger ones mostly
 * hollow is a guide and never proof (common practice, no source).
 * Source of treating a hollow piston as under pressure: Bloch & Hoefner 1996, p. 276 and 372. The rule of two facts is
 * judgement of the trade, no source.
 */
export function pistonKind(facts: readonly PistonFact[]): PistonKind {
  const groups = new Map<string, Set<Says>>()
  for (const { from, says } of facts) {
    const group = PAPER.includes(from) ? 'record, tag or drawing' : from
    groups.set(group, (groups.get(group) ?? new Set<Says>()).add(heard(from, says)))
  }
  const naming = (says: Says) => [...groups].filter(([, heardOf]) => heardOf.has(says)).map(([name]) => name)
  const towardsHollow = naming('hollow')
  const isSplit = (name: string) => towardsHollow.includes(name)
  const towardsSolid = naming('solid').filter((name) => !isSplit(name))
  const split = naming('solid').filter(isSplit)
  const isSolid = towardsSolid.length >= 2 && towardsHollow.length === 0
  return {
    handleAs: isSolid ? 'solid' : 'hollow',
    towardsSolid,
    towardsHollow,
    open: [
      ...split.map((name) => `The ${name} says both solid and hollow: the record is wrong somewhere.`),
      ...(towardsSolid.length > 0 && towardsHollow.length > 0
        ? [`${sentence(towardsSolid)} says solid and ${towardsHollow.join(', ')} says hollow: hollow stands.`]
        : []),
      ...naming('unknown').map((name) => `The ${name} could not be told.`),
    ],
  }
}

function heard(from: FactFrom, says: Says): Says {
  if (says !== 'solid' && says !== 'hollow') return 'unknown'
  return from === 'plugs-or-vents' && says === 'solid' ? 'unknown' : says
}

function sentence(names: readonly string[]): string {
  const text = names.join(', ')
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** The weight as a fact: a weighing that was refused says nothing, and why it did is kept. */
export function factFromWeight(weighed: Result<WeightFact>): { fact: PistonFact; hold: Refusal | null } {
  if (!weighed.ok) return { fact: { from: 'weight', says: 'unknown' }, hold: weighed.error }
  return { fact: { from: 'weight', says: weighed.value.says }, hold: null }
}
