// One check of the figures a sum is made from, for all parts of the piston end: what is missing or unsound is refused by
// name, never taken for zero.

import { type Refusal, refuse } from '../lib/result.ts'

export type Need = 'above zero' | 'zero or more' | 'any'

export type Figures = Readonly<Record<string, number | null | undefined>>

/**
 * The refusal of the first figure that is missing (`figure-missing`), not finite or outside its need
 * (`figure-unsound`), or null when all are sound. Keys are the figures' names in words, as a person reads them.
 */
export function refuseUnsound(
  figures: Figures,
  need: Need = 'above zero',
): { readonly ok: false; readonly error: Refusal } | null {
  for (const [name, figure] of Object.entries(figures)) {
    if (figure === null || figure === undefined)
      return refuse('figure-missing', `The ${name} is not on record: measure it or look it up.`)
    if (isSound(figure, need)) continue
    const wanted = need === 'any' ? 'a number' : `a number that is ${need}`
    return refuse('figure-unsound', `The ${name} is not ${wanted}: read it again.`)
  }
  return null
}

function isSound(figure: number, need: Need): boolean {
  if (!Number.isFinite(figure)) return false
  return need === 'any' || (need === 'above zero' ? figure > 0 : figure >= 0)
}

/** The refusal of a sum that overflowed, or null: no figure that is not finite ever leaves a computation. */
export function refuseOverflow(...results: readonly number[]) {
  if (results.every(Number.isFinite)) return null
  return refuse('result-not-finite', 'These figures are too far apart in size to reckon with: check each.')
}
