// The day of a job's work: of the last thing that people did or read on it, whatever was written to its log after that, at a desk or
// behind its close.
import type { Entry } from './entries.ts'

const WORK: readonly Entry['type'][] = [
  ...(['step.done', 'step.confirmed', 'step.objected', 'reading.taken', 'finding.observed'] as const),
  ...(['evidence.given', 'people.clear', 'gate.opened', 'thing.placed', 'thing.accounted'] as const),
]

/** `2026-05-19`. Of a sheet by the times that stand on it, where it has any; a log of no work has the day of its last entry. */
export function workDay(entries: readonly Entry[]): string {
  const close = entries.findIndex(({ type }) => type === 'job.closed')
  const own = close < 0 ? entries : entries.slice(0, close)
  const onSheet = own.flatMap((entry) => {
    const time = 'paper' in entry && typeof entry.paper === 'object' ? entry.paper.time : null
    return time !== null && /^\d{4}-\d\d-\d\d/.test(time) ? [time.slice(0, 10)] : []
  })
  if (onSheet.length > 0) return [...onSheet].sort().at(-1) ?? ''
  const last = own.findLast(({ type }) => WORK.includes(type)) ?? own.at(-1)
  return (last ?? entries.at(-1))?.at.slice(0, 10) ?? ''
}
