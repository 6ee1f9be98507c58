// Clocks: the machine's own, and one set by hand for examples and practice.
import type { Clock } from '../app/ports.ts'
import type { Instant } from '../core/lib/instant.ts'

function offsetMin(ms: number): number {
  return -new Date(ms).getTimezoneOffset()
}

export const systemClock: Clock = {
  now: () => {
    const ms = Date.now()
    return { ms, offsetMin: offsetMin(ms) }
  },
  running: () => performance.now(),
}

export function zoneName(): string {
  return Intl.DateTimeFormat().resolvedOptions().timeZone
}

/** Starts at a given moment and runs on from there at the pace of the machine's own clock. */
export function runningFrom(start: Instant): Clock {
  const from = performance.now()
  let passed = 0
  return {
    now: () => ({ ms: start.ms + Math.round(performance.now() - from + passed), offsetMin: start.offsetMin }),
    // What was let go by ran on both clocks: to the job nobody moved one.
    running: () => performance.now() + passed,
    pass: (ms) => {
      passed += ms
    },
  }
}

export interface SetClock extends Clock {
  readonly advance: (ms: number) => void
  readonly setTo: (at: Instant) => void
}

/** Stands still until it is told to go on: for scripted answers, so that a run gives the same log each time. */
export function steppedFrom(start: Instant): SetClock {
  let now = start
  let running = 0
  const advance = (ms: number) => {
    now = { ...now, ms: now.ms + ms }
    running += ms
  }
  return {
    now: () => now,
    running: () => running,
    advance,
    pass: advance,
    setTo: (at) => {
      running += at.ms - now.ms
      now = at
    },
  }
}
