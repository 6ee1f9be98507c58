// The clock for what is added to a job after it was closed.
import type { Clock } from '../app/ports.ts'
import { openedOf } from '../app/replay.ts'
import type { Entry } from '../core/job/entries.ts'
import { readStamp } from '../core/lib/instant.ts'
import { runningFrom, systemClock } from '../node/clock.ts'

/**
 * The computer's own, so that the day it was done stands in the log. A clock that was set by hand to a later day has gone on
 * since the last line was written (`changedMs`, the file's own time) by as much as any clock.
 */
export function lateClock(entries: readonly Entry[], changedMs: number): Clock {
  const last = readStamp(entries[entries.length - 1]?.at ?? '')
  const now = systemClock.now()
  if (last === null || openedOf(entries).clock !== 'set' || now.ms >= last.ms) return systemClock
  return runningFrom({ ...last, ms: last.ms + Math.max(0, now.ms - changedMs) })
}
