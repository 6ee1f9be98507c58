// An uncertainty budget: every source of error on a line of its own, combined, and widened to a stated level.
import { ok, type Result, refuse } from '../lib/result.ts'
import { coverageFactor } from '../statistics/student-t.ts'
import { isTractable, sdOf } from '../statistics/summary.ts'

export interface Component {
  readonly name: string
  /** Standard uncertainty (k = 1), in its own unit; zero or more. */
  readonly u: number
  /** By how much the result moves for one unit of this; 1 when left out. */
  readonly sensitivity?: number | undefined
  /** How well `u` itself is known: n - 1 for a scatter of n; left out where it is as good as certain. */
  readonly dof?: number | undefined
}

export interface Correlation {
  readonly between: readonly [string, string]
  /** -1 to 1. */
  readonly r: number
}

export interface BudgetLine extends Component {
  /** |sensitivity| x u, in the unit of the result. */
  readonly contribution: number
  /** Share of the combined variance; shares need not add to 1 where errors go together. Null when all are zero. */
  readonly share: number | null
}

export interface Budget {
  readonly lines: readonly BudgetLine[]
  /** Combined standard uncertainty. */
  readonly uc: number
  /** Effective degrees of freedom (may be infinite); null when errors go together, as the formula is then not valid. */
  readonly effectiveDof: number | null
}

export interface Expanded {
  readonly level: number
  /** The degrees of freedom used: cut down to a whole number. */
  readonly dof: number
  readonly k: number
  readonly U: number
}

/** Standard uncertainty of what lies anywhere within +- a with equal chance: a / sqrt 3. JCGM 100:2008 4.3.7. */
export function uOfRectangle(halfWidth: number): number {
  return halfWidth / Math.sqrt(3)
}

/** Standard uncertainty of the mean of n repeats, s / sqrt n, with n - 1 degrees of freedom. JCGM 100:2008 4.2.3. */
export function componentOfRepeats(name: string, values: readonly number[]): Result<Component> {
  if (values.length < 2) return refuse('too-few-readings', 'Scatter shows only in two readings or more.')
  if (!values.every(isTractable)) return refuse('not-finite', 'A reading is not a number: key it again.')
  return ok({ name, u: sdOf(values) / Math.sqrt(values.length), dof: values.length - 1 })
}

/**
 * Combines components into one standard uncertainty and its effective degrees of freedom.
 * Source: JCGM 100:2008 (GUM) 5.1.2 equation (10), 5.2.2 equation (16) where errors go together, and G.4.1 equation
 * (G.2b), the Welch-Satterthwaite formula, which holds for independent components only.
 * Refuses: no component; a component that is not finite or below zero; fewer than 1 degree of freedom; a correlation
 * outside -1 to 1, of an unknown component, or that leaves less than no error at all.
 */
export function combineBudget(
  components: readonly Component[],
  correlations: readonly Correlation[] = [],
): Result<Budget> {
  if (components.length === 0) return refuse('no-components', 'The budget has no lines.')
  const wrong = components.find((c) => !isSound(c))
  if (wrong !== undefined)
    return refuse(
      'component-unsound',
      `${wrong.name} must be a number of zero or more, with 1 degree of freedom or more.`,
    )
  const signed = new Map(components.map((c) => [c.name, (c.sensitivity ?? 1) * c.u]))
  if (signed.size !== components.length) throw new Error('two lines of a budget have the same name')
  let variance = [...signed.values()].reduce((sum, part) => sum + part * part, 0)
  const alone = variance
  for (const { between, r } of correlations) {
    const [a, b] = [signed.get(between[0]), signed.get(between[1])]
    if (a === undefined || b === undefined || between[0] === between[1] || !(Math.abs(r) <= 1))
      return refuse('correlation-unsound', `${between.join(' and ')} cannot go together by ${r}.`)
    variance += 2 * a * b * r
  }
  // A whole that cancels is zero, a whole below zero is a contradiction; rounding alone may stray this far.
  if (!Number.isFinite(variance) || variance < -1e-9 * alone)
    return refuse('budget-unsound', 'These figures leave less than no error at all: check them.')
  const uc = Math.sqrt(Math.max(0, variance))
  const lines = components.map((c): BudgetLine => {
    const contribution = Math.abs((c.sensitivity ?? 1) * c.u)
    return { ...c, contribution, share: uc > 0 ? contribution ** 2 / uc ** 2 : null }
  })
  return ok({ lines, uc, effectiveDof: correlations.length > 0 ? null : effectiveDof(lines, uc) })
}

function isSound({ u, sensitivity = 1, dof }: Component): boolean {
  const isKnown = dof === undefined || dof >= 1
  return isTractable(u) && u >= 0 && isTractable(sensitivity) && isKnown
}

function effectiveDof(lines: readonly BudgetLine[], uc: number): number {
  // Ratios first: fourth powers of a nanometre would vanish.
  const below = lines.reduce((sum, line) => {
    const part = uc > 0 ? line.contribution / uc : 0
    return sum + (line.dof === undefined ? 0 : part ** 4 / line.dof)
  }, 0)
  return below === 0 ? Number.POSITIVE_INFINITY : 1 / below
}

/**
 * Widens a budget to a two-sided level (0.95 for 95 in 100): U = t uc, t with the effective degrees of freedom cut down
 * to a whole number. Source: JCGM 100:2008 G.4.1 (cutting down), G.6.4 (recipe; clause from memory).
 * Refuses a budget whose errors go together; throws unless 0 < level < 1.
 */
export function expandBudget(budget: Budget, level: number): Result<Expanded> {
  if (budget.effectiveDof === null)
    return refuse(
      'no-effective-dof',
      'Where errors go together the degrees of freedom are not known: state U at k = 2 and say so.',
    )
  // A hair above a whole number in floating point must not fall to the one below it.
  const dof = Math.max(1, Math.floor(budget.effectiveDof + 1e-9))
  const k = coverageFactor(level, dof)
  return ok({ level, dof, k, U: k * budget.uc })
}

/** U of a - b for readings with their own U at one k and nothing in common: root sum of squares. JCGM 100:2008 5.1.2. */
export function expandedOfTwo(uA: number, uB: number): number {
  if (![uA, uB].every((u) => Number.isFinite(u) && u >= 0))
    throw new Error('an expanded uncertainty must be a number of zero or more')
  return Math.hypot(uA, uB)
}
