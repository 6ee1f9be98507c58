// The one place that tells a figure beside its limit with the share of it used, for sheet, review and report alike: with so many
// places that a pencil comes to the same share.
import { formatNumber } from '../lib/decimal.ts'
import { percentText } from './format.ts'

export interface Share {
  /** The figure before rounding; it, the limit and the start in one unit, whichever `shown` takes. */
  readonly value: number
  readonly limit: { readonly value: number; readonly bound: 'at-most' | 'at-least' }
  /** What the share is counted from where that is not nothing: the size a bore had when new. */
  readonly startsAt: number | null
  /** Share of the limit used, 1 on it; null where it is not told. */
  readonly used: number | null
}

export interface ShareTold {
  readonly value: string
  readonly limit: string
  /** `75 %`; null where it is not told. */
  readonly percent: string | null
  /** `counted from 9.5000`: without it nobody could work the share out; null where it is counted from nothing. */
  readonly from: string | null
  /** Places that figure and limit took beyond the usual ones. */
  readonly more: number
}

/** Writes a value with so many places more than usual, its unit behind it or not. */
type Shown = (value: number, more: number) => string

/** Places beyond the usual ones that are shown at most, so that a figure and its share agree. */
const MOST_MORE = 2

/**
 * The share is of unrounded figures, as the verdict is. Figure and limit get as many places more (0 to 2) as a hand calculation
 * takes to come to the whole percentage that is shown: 0.00055 of 0.00100 is 55 %, where 0.0006 of 0.0010 would be 60 %.
 */
export function shareTold(share: Share, shown: Shown): ShareTold {
  const { value, limit, startsAt, used } = share
  const more = placesMore(share, shown)
  return {
    value: shown(value, more),
    limit: shown(limit.value, more),
    percent: used === null ? null : percentText(used),
    from: used === null || startsAt === null ? null : `counted from ${shown(startsAt, more)}`,
    more,
  }
}

/** `, 75 % used` or `, 21 % used, counted from 9.5000`; nothing where no share is told. */
export function usedText({ percent, from }: ShareTold, word = 'used'): string {
  if (percent === null) return ''
  return `, ${percent} ${word}${from === null ? '' : `, ${from}`}`
}

/** Where no number of places comes to the very percentage (it lies on a half), the one that comes nearest. */
function placesMore(share: Share, shown: Shown): number {
  const { used } = share
  if (used === null || !Number.isFinite(used)) return 0
  const tries = Array.from({ length: MOST_MORE + 1 }, (_, more) => ({
    more,
    hand: byHand(share, (value) => Number.parseFloat(shown(value, more))),
  }))
  const off = (hand: number) => Math.abs(hand - used)
  const same = tries.find(({ hand }) => isSamePercentage(hand, used))
  return (same ?? tries.reduce((best, one) => (off(one.hand) < off(best.hand) ? one : best))).more
}

function isSamePercentage(hand: number, used: number): boolean {
  return Number.isFinite(hand) && formatNumber(hand * 100, 0) === formatNumber(used * 100, 0)
}

/** As whoever checks it works it out: what was used by what there is; of a least value that by the figure. */
function byHand({ value, limit, startsAt }: Share, shown: (value: number) => number): number {
  if (startsAt !== null) return (shown(value) - shown(startsAt)) / (shown(limit.value) - shown(startsAt))
  return limit.bound === 'at-most' ? shown(value) / shown(limit.value) : shown(limit.value) / shown(value)
}
