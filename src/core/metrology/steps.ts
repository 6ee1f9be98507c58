// Sizes counted in whole steps of an instrument's resolution, so that a value on a limit never flips on a stray bit.

/**
 * Floating noise, in steps, that counts as nothing. A size of 1 m in steps of 0.1 um is 1e7 steps, where a double
 * carries about 2e-9 of a step; a millionth of a step is far above that and far below anything a person can read.
 */
export function slack(steps: number): number {
  return Math.max(1e-6, 1e-12 * Math.abs(steps))
}

/** Nearest whole step; a half goes UP, the unsafe side, when a greater count is the worse one. */
export function nearestHalfUp(steps: number): number {
  return Math.floor(steps + 0.5 + slack(steps))
}

/** The greatest whole step not above this one. */
export function wholeBelow(steps: number): number {
  return Math.floor(steps + slack(steps))
}

/** True when `steps` is above `bar` by more than floating noise. */
export function isAbove(steps: number, bar: number): boolean {
  return steps > bar + slack(bar)
}
