// Does one group of repeats scatter more than its fellows, or no more than chance would have it?
import { crossing } from './bisect.ts'
import { incompleteBeta } from './student-t.ts'

/** The scatter of one group of repeats. */
export interface Scatter {
  /** Sum of squares about its own mean. */
  readonly squares: number
  /** Degrees of freedom: readings less one, one or more. */
  readonly dof: number
}

/**
 * The share of all squares that chance lets the most scattered of the groups have, but for `risk` of the cases: with equal
 * scatter the share of one group is beta distributed with dof/2 and (all - dof)/2, and each of the groups gets its part of the
 * risk. For groups of one size it is the critical value of W. G. Cochran's C (Annals of Eugenics 11 (1941) 47-52; ISO 5725-2:1994
 * 7.3.3); for unlike sizes the same with the dof of each (R. U. E. 't Lam, Analytica Chimica Acta 659 (2010) 68-84). Clauses and
 * pages from memory. Throws unless there are two groups or more and 0 < risk < 1.
 * @example six groups of two, risk 0.05: 0.781
 */
export function cochranCritical(dof: number, allDof: number, groups: number, risk: number): number {
  if (!(dof >= 1 && allDof > dof && groups >= 2)) throw new Error('the test needs two groups of repeats')
  if (!(risk > 0 && risk < 1)) throw new Error('the test needs a risk between 0 and 1')
  const own = dof / 2
  const others = (allDof - dof) / 2
  // 1 - I_q(own, others), by the symmetry of the function, so that a share near one keeps its digits.
  return crossing((share) => incompleteBeta(others, own, 1 - share, share) - risk / groups, 0, 1)
}

/** How many times the squares of all other groups that share is: what one group may have of its own. */
export function cochranOdds(dof: number, allDof: number, groups: number, risk: number): number {
  const share = cochranCritical(dof, allDof, groups, risk)
  return share / (1 - share)
}
