// Repeats of one reading become one value, or a call for another reading. Nothing is dropped, first values stay.

export interface RepeatRule {
  /** Readings that must be in before anything settles. */
  readonly atLeast: number
  /** Readings after which it is no use asking for more. */
  readonly atMost: number
  /** How close the middle readings must lie, in metres. */
  readonly within: number
}

export interface CombinedRepeats {
  readonly state: 'more' | 'settled' | 'unsettled'
  /** The median, in metres; only when settled, so that an unsettled value cannot be judged by mistake. */
  readonly value?: number
  /** Greatest less least of all readings, in metres; null before the first. */
  readonly spread: number | null
}

/** Floating noise, in metres: a nanometre is far below any shop instrument's step. */
const NOISE_M = 1e-9

/**
 * Median of all readings, settled when the readings beside the median agree with it.
 *
 * With an even count the middle two must differ by `within` or less; with an odd count the median and at least one
 * neighbour. A single reading settles only where the rule asks for no more than one. The median is used because one
 * bad reading cannot carry it away; which rule is best is common practice, no source.
 *
 * @throws when a reading is not finite or the rule is unsound: entries and procedures are checked before this.
 */
export function combineRepeats(values: readonly number[], rule: RepeatRule): CombinedRepeats {
  checkRule(rule)
  if (!values.every(Number.isFinite)) throw new Error('combineRepeats was given a reading that is not finite')
  if (values.length === 0) return { state: 'more', spread: null }
  const sorted = [...values].sort((a, b) => a - b)
  const spread = at(sorted, sorted.length - 1) - at(sorted, 0)
  if (values.length >= rule.atLeast && middleAgrees(sorted, rule.within))
    return { state: 'settled', value: median(sorted), spread }
  return { state: values.length >= rule.atMost ? 'unsettled' : 'more', spread }
}

function checkRule({ atLeast, atMost, within }: RepeatRule): void {
  const whole = Number.isInteger(atLeast) && Number.isInteger(atMost) && atLeast >= 1 && atMost >= atLeast
  if (!whole) throw new Error('a repeat rule needs whole counts with 1 <= atLeast <= atMost')
  if (!(Number.isFinite(within) && within >= 0)) throw new Error('a repeat rule needs a span of zero or more')
}

function at(sorted: readonly number[], index: number): number {
  const value = sorted[index]
  if (value === undefined) throw new Error('a middle reading was asked for that is not there')
  return value
}

function median(sorted: readonly number[]): number {
  const middle = Math.floor(sorted.length / 2)
  if (sorted.length % 2 === 1) return at(sorted, middle)
  return (at(sorted, middle - 1) + at(sorted, middle)) / 2
}

function middleAgrees(sorted: readonly number[], within: number): boolean {
  if (sorted.length === 1) return true
  const middle = Math.floor(sorted.length / 2)
  const below = at(sorted, middle) - at(sorted, middle - 1)
  if (sorted.length % 2 === 0) return below <= within + NOISE_M
  const above = at(sorted, middle + 1) - at(sorted, middle)
  return Math.min(below, above) <= within + NOISE_M
}
