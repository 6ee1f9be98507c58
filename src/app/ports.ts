// What a running job needs from outside. The core never sees these; tests put their own in.
import type { Others } from '../core/job/elsewhere.ts'
import type { Entry } from '../core/job/entries.ts'
import type { Instant } from '../core/lib/instant.ts'

export interface Clock {
  readonly now: () => Instant
  /** Milliseconds of a clock that only runs forward and that nobody can set. */
  readonly running: () => number
}

/** Holds PINs against the keys of the crew file. Slow on purpose. */
export interface PinCheck {
  readonly fits: (pin: string, key: string) => Promise<boolean>
}

/** Looks at the other jobs in the folder. Never throws: what cannot be looked at comes back as a job that cannot be read. */
export interface OthersPort {
  readonly look: () => Others
}

export interface JournalPort {
  /** Returns once the entries are on disk; throws when they are not. */
  readonly append: (entries: readonly Entry[]) => Promise<void>
  /** Hash of the last line on disk, 64 hex digits; absent where nothing is chained. */
  readonly head?: () => string
}
