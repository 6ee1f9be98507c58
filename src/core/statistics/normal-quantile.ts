// The normal distribution read backwards: which z leaves a given part below it.

import { crossing } from './bisect.ts'
import { normalBelow } from './normal.ts'

/**
 * The z below which a part `p` of a standard normal distribution lies. Throws unless 0 < p < 1.
 * Found by halving on `normalBelow`, whose formulas and source stand there.
 * @example p 0.975: 1.95996
 */
export function normalAt(p: number): number {
  if (!(p > 0 && p < 1)) throw new Error('normalAt needs 0 < p < 1')
  if (p === 0.5) return 0
  if (p > 0.5) return -normalAt(1 - p)
  return crossing((z) => normalBelow(z) - p, -40, 0)
}
