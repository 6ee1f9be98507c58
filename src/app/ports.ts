// What a running job needs from outside. The core never sees these; tests put their own in.
import type { KeptFile } from '../core/job/attachment.ts'
import type { Others } from '../core/job/elsewhere.ts'
import type { Entry } from '../core/job/entries.ts'
import type { Instant } from '../core/lib/instant.ts'
import type { Result } from '../core/lib/result.ts'
import type { FoundFile } from '../core/talk/ask-file.ts'

export interface Clock {
  readonly now: () => Instant
  /** Milliseconds of a clock that only runs forward and that nobody can set. */
  readonly running: () => number
  /** Lets time go by; only a clock that was set by hand can, and only a practice session asks for it. */
  readonly pass?: (ms: number) => void
}

/** Holds PINs against the keys of the crew file. Slow on purpose. */
export interface PinCheck {
  readonly fits: (pin: string, key: string) => Promise<boolean>
}

/** Looks at the other jobs in the folder. Never throws: what cannot be looked at comes back as a job that cannot be read. */
export interface OthersPort {
  readonly look: () => Others
}

export interface Completion {
  /** The path as far as it is certain. */
  readonly text: string
  /** Names it may become, a few of them; empty when none fits. */
  readonly fits: readonly string[]
}

/** Looks at files outside and copies them to the job's own. Never throws for what a file or a disk does. */
export interface FilesPort {
  readonly find: (path: string) => Promise<Result<FoundFile>>
  /** The newest file in the folder that was named last. */
  readonly newest: () => Promise<Result<FoundFile>>
  /** Resolves once the copy is whole on disk under a name of its own. */
  readonly keep: (file: FoundFile) => Promise<Result<KeptFile>>
  /** Takes back a copy that did not go on record. */
  readonly discard: (name: string) => Promise<void>
  readonly complete: (typed: string) => Promise<Completion>
}

/** The speech program of the computer. Never throws, never waits: what goes wrong comes back as `failed`. */
export interface VoicePort {
  /** Looked for anew each time: it may have been put in meanwhile. `tried`: the names of those that were looked for. */
  readonly program: () =>
    | { readonly ok: true; readonly name: string }
    | { readonly ok: false; readonly tried: readonly string[] }
  /** Begins to say it and returns at once. `ended` is called once, unless it is cut off. */
  readonly say: (words: string, ended: (how: 'said' | 'failed') => void) => void
  /** Cuts off what is being said. */
  readonly hush: () => void
}

export interface JournalPort {
  /** Returns once the entries are on disk; throws when they are not. */
  readonly append: (entries: readonly Entry[]) => Promise<void>
  /** Hash of the last line on disk, 64 hex digits; absent where nothing is chained. */
  readonly head?: () => string
}
