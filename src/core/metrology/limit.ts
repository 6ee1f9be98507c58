// A limit is data: what it bounds, who approved it, where it came from. Nothing here makes a limit up.

export interface Limit {
  readonly characteristic: string
  readonly bound: 'at-most' | 'at-least'
  /** In SI units (metres for a size or a difference of sizes). */
  readonly value: number
  /** The unit the book states it in, for display only. */
  readonly unit: string
  /** Whether a value exactly on the limit is inside it. */
  readonly inclusive: boolean
  /** The verdict when the value is beyond the limit for sure. */
  readonly beyond: 'REWORK' | 'REPLACE'
  /** Share of the limit, between 0 and 1, from which the owner wants it watched. */
  readonly monitorFrom?: number | undefined
  readonly source: string
  readonly approvedBy: string
  readonly since: string
  /** The machine's own book, or a fallback set that the lead named. */
  readonly from: 'machine' | 'fallback'
  readonly book: string
  /** The rule as the book puts it, when the value was reckoned from one. */
  readonly rule?: string | undefined
}

/** Why a limit cannot be judged against, in one sentence, or null when it can. */
export function limitFault(limit: Limit | null | undefined): string | null {
  if (limit === null || limit === undefined) return 'no limit is on record'
  if (limit.bound !== 'at-most' && limit.bound !== 'at-least')
    return 'the limit does not say which way it bounds'
  if (!Number.isFinite(limit.value)) return 'the limit is not a number'
  if (limit.value <= 0) return 'the limit is zero or less'
  if (typeof limit.inclusive !== 'boolean') return 'the limit does not say whether a value on it is inside'
  if (limit.beyond !== 'REWORK' && limit.beyond !== 'REPLACE')
    return 'the limit does not say what lies beyond it'
  const share = limit.monitorFrom
  if (share !== undefined && !(share > 0 && share < 1))
    return 'the share to watch from is not between 0 and 1'
  return null
}
