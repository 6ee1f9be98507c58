// Hours left until a size reaches its limit, where that can be told of a place by itself. It works out nothing new: the wear is
// that of changes, the limit that of the judge step, the reckoning that of wear/hours-left.
import type { CharacteristicId } from '../definition/characteristics.ts'
import type { Change } from '../job/changes.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from '../job/definitions.ts'
import { limitsFor } from '../job/limits.ts'
import { decidedAbout } from '../job/nonconformance.ts'
import { type State, standingVerdict } from '../job/state.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { expandedOfTwo } from '../metrology/budget.ts'
import type { Limit } from '../metrology/limit.ts'
import { type HoursLeft, hoursToLimits } from '../wear/hours-left.ts'

export interface Outlook extends HoursLeft {
  readonly of: Limit
  /** `128 Bore judged: REWORK, NOT DECIDED`, where the size is not as it should be now, whatever its hours; null: it was judged ACCEPT. */
  readonly now: string | null
  /** Why the figure that it is told from was measured on HOLD; null: it was not. */
  readonly held: string | null
}

/** What a lead may decide after which a part runs on as it was found. */
const RUNS_ON = ['accept', 'concession']

/**
 * Null where there is no rate of wear. By what was read, not brought to 20 degC. Refuses: `remade`, where the size was changed
 * or renewed on this job or a lead decided that it is to be, so that what wore is there no more (decision: never across a
 * reline, rebore or change of material); `no-limit`; and what `hoursToLimits` refuses. That refuses a first set of a new ring
 * material: of rings and riders no record tells it, so they are never told; of other parts the question does not arise.
 */
export function hoursLeftOf(defs: Definitions, state: State, change: Change): Result<Outlook> | null {
  const { found, history, rate } = change
  if (found === null || history === null || rate === null || !rate.ok) return null
  const to = wearsTo(defs, state, change, history.wears)
  if (to !== null && to.remade !== null)
    return refuse('remade', 'it was changed or renewed on this job, or is to be: its wear begins anew.')
  if (to === null) return refuse('no-limit', 'no limit on record is of this size by itself.')
  const { limit, firstSet, judge } = to
  const told = hoursToLimits(history, [limit.value], firstSet)
  if (!told.ok) return told
  const [one] = told.value.limits
  return one === undefined
    ? refuse('no-limit', 'no limit on record is of this size by itself.')
    : ok({ ...one, of: limit, now: nowOf(defs, state, judge), held: change.held.found })
}

/** Hours to the limit of one size say nothing of its form, nor of what a lead has still to decide about it. */
function nowOf(defs: Definitions, state: State, judge: string): string | null {
  const { number, step } = stepById(defs, judge)
  const judged = standingVerdict(state, judge)
  const name = `${number} ${step.title}`
  if (judged === null) return `${name}: NOT JUDGED`
  const { verdict } = judged.verdict.result
  if (verdict === 'ACCEPT') return null
  const decided = decidedAbout(state, judge)
  return `${name}: ${verdict}, ${decided === null ? 'NOT DECIDED' : `${decided.choice} by ${decided.person}`}`
}

/** The limit that a size wears towards, where one is on record of the size by itself, and what may be told of its wear. */
export interface WearsTo {
  readonly limit: Limit
  /** The judge step that holds it against that limit. */
  readonly judge: string
  /** Of rings and riders no record tells whether they are the first set of a new material. */
  readonly firstSet: 'no' | 'unknown'
  /** It was changed or renewed on this job, or a lead decided that it is to be: how that is known, as a clause. Null: it was not. */
  readonly remade: string | null
}

/** Null where no judge step holds the size itself against a limit on the side it wears to, or none is on record. */
export function wearsTo(
  defs: Definitions,
  state: State,
  change: Pick<Change, 'found' | 'left'>,
  wears: 'larger' | 'smaller',
): WearsTo | null {
  const one = change.found ?? change.left
  const judged = one === null ? null : judgedBy(defs, one.step, wears)
  if (judged === null) return null
  const limit = limitsFor(defs, [judged.characteristic])[judged.characteristic]
  if (limit === undefined) return null
  return {
    limit,
    judge: judged.judge,
    firstSet: /^ri(ng|der)-/.test(judged.characteristic) ? 'unknown' : 'no',
    remade: remade(state, change, judged.judge),
  }
}

interface JudgedBy {
  readonly characteristic: CharacteristicId
  readonly judge: string
}

/** The judge step that holds the size itself against a limit on the side it wears to: not a difference of two sizes. */
function judgedBy(defs: Definitions, read: PlacedStep, wears: 'larger' | 'smaller'): JudgedBy | null {
  for (const placed of defs.steps) {
    if (placed.step.kind !== 'judge') continue
    const { step } = asKind(placed, 'judge')
    if (step.compute === 'bore_form') {
      const isThis = placed.scope + step.inputs.diameters === read.id
      if (isThis && wears === 'larger' && step.against.includes('largest-diameter'))
        return { characteristic: 'largest-diameter', judge: placed.id }
    } else if (step.compute === 'figures') {
      const own = step.figures.find(({ is }) => sizeItself(is, wears) === read.id.slice(placed.scope.length))
      if (own !== undefined && read.id.startsWith(placed.scope))
        return { characteristic: own.characteristic, judge: placed.id }
    }
  }
  return null
}

/** The step whose worst size the expression is, as wear goes: `max(gap)` or `gap` of what grows, `min(wall)` of what thins. */
function sizeItself(is: string, wears: 'larger' | 'smaller'): string | null {
  const [, worst, step] = /^\s*(?:(max|min)\()?\s*(\w+)\s*\)?\s*$/.exec(is) ?? []
  if (step === undefined) return null
  return worst === undefined || worst === (wears === 'larger' ? 'max' : 'min') ? step : null
}

function remade(state: State, { found, left }: Pick<Change, 'found' | 'left'>, judge: string): string | null {
  const decided = Object.values(state.dispositions).find((d) => d.about === judge && !d.void)
  if (decided !== undefined && !RUNS_ON.includes(decided.choice))
    return `${decided.choice.toUpperCase()} by ${decided.person}`
  if (found === null || left === null) return null
  // Two readings of one size differ by their errors; more than that, or errors nobody states, is taken as work done on it.
  const isSame =
    found.u !== null && left.u !== null && Math.abs(left.si - found.si) <= expandedOfTwo(found.u, left.u)
  return isSame ? null : 'left at another size than found'
}
