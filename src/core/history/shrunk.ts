// A size that went against its wear from one reading to the next, by more than both may be off, with no reline, cut or renewal on record
// between them: one of the two is wrong, or work was done that nobody put down. It is said and never put right.
import { readStamp } from '../lib/instant.ts'
import type { JobDigest, PlaceDigest, Sized } from './digest.ts'

export interface Shrunk {
  /** Metres, with where it was read: the job, or the report of an overhaul on record. */
  readonly from: { readonly value: number; readonly of: string }
  readonly to: { readonly value: number; readonly of: string }
  /** Of the difference, at k = 2, metres; null: of one of them none is stated. */
  readonly U: number | null
}

interface Event {
  readonly ms: number
  readonly of: string
  readonly found: Sized | null
  /** What the next is held against; null: nothing, as it was worked on and not read since. */
  readonly back: Sized | null
  /** Nothing before it counts. */
  readonly isAnew: boolean
}

/** When the readings that stand of a place were taken; of one that does not tell it, when its job was opened. Milliseconds. */
export function readMs(job: JobDigest, place: PlaceDigest | undefined): number {
  return readStamp(place?.at ?? job.opened)?.ms ?? readStamp(job.opened)?.ms ?? Number.NEGATIVE_INFINITY
}

/** `jobs` in any order; `own`: the place of a job; `isKnown`: whether it stands in the record already. */
export function shrunkAt(
  jobs: readonly JobDigest[],
  { earlier, wears }: Pick<PlaceDigest, 'earlier' | 'wears'>,
  own: (job: JobDigest) => PlaceDigest | undefined,
  isKnown: (job: JobDigest) => boolean,
): Shrunk[] {
  const events: Event[] = [
    ...earlier.map((one) => ({
      ms: readStamp(`${one.day}T00:00:00.000+00:00`)?.ms ?? Number.NEGATIVE_INFINITY,
      of: one.report,
      found: one,
      back: one,
      isAnew: one.since !== 'nothing',
    })),
    ...jobs.flatMap((job): Event[] => {
      const place = own(job)
      if (place === undefined || isKnown(job)) return []
      const back = place.remade === null ? place.found : place.left
      return [{ ms: readMs(job, place), of: job.job, found: place.found, back, isAnew: false }]
    }),
  ].sort((a, b) => a.ms - b.ms)
  const told: Shrunk[] = []
  let last: { size: Sized; of: string } | null = null
  for (const { of, found, back, isAnew } of events) {
    if (last !== null && found !== null && !isAnew) {
      const U = uOf(last.size, found)
      const against = wears === 'smaller' ? found.si - last.size.si : last.size.si - found.si
      if (!(against <= (U ?? 0)))
        told.push({ from: { value: last.size.si, of: last.of }, to: { value: found.si, of }, U })
    }
    last = back === null ? null : { size: back, of }
  }
  return told
}

/** Two readings of their own, so their errors add as squares. */
function uOf(a: Sized, b: Sized): number | null {
  return a.U === null || b.U === null ? null : Math.hypot(a.U, b.U)
}
