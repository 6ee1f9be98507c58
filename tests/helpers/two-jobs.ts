// Two jobs in memory that look at each other, as two programs do over one folder: each look is at what is written by then.
import type { Definitions } from '../../src/core/job/definitions.ts'
import type { OtherJob } from '../../src/core/job/elsewhere.ts'
import type { Entry } from '../../src/core/job/entries.ts'
import { standingOf, type Watched, watch, watchFrom } from '../../src/core/job/watch.ts'
import { Walk } from './example.ts'

/** One look at a walk from outside, read on from where the last one ended. */
export function watcherOf(walk: Pick<Walk, 'engine' | 'state' | 'entries'>, job: string): () => OtherJob {
  let watched: Watched | null = null
  let count = 0
  return () => {
    for (const entry of walk.entries.slice(count)) {
      if (watched === null) {
        if (entry.type !== 'job.opened') throw new Error('a job begins with job.opened')
        watched = watchFrom(entry)
      } else watched = watch(walk.engine.defs, watched, entry)
    }
    count = walk.entries.length
    if (watched === null) throw new Error('nothing to watch')
    return {
      job,
      record: walk.state.record,
      tag: walk.engine.defs.machine.machine,
      told: true,
      upTo: count - 1,
      head: String(count - 1).padStart(64, '0'),
      unread: null,
      ...standingOf(walk.engine.defs, watched),
    }
  }
}

export interface Pair {
  readonly walks: readonly [Walk, Walk]
  /** Entries of both in the order they were written. */
  readonly written: { readonly who: 0 | 1; readonly entry: Entry }[]
  /** Puts what was written since on the common list; after every act of either. */
  readonly note: () => void
}

export function pair(
  defs: readonly [Definitions, Definitions],
  records: readonly ['EXAMPLE' | 'PRACTICE', 'EXAMPLE' | 'PRACTICE'] = ['EXAMPLE', 'EXAMPLE'],
): Pair {
  const walks = [new Walk(defs[0], records[0]), new Walk(defs[1], records[1])] as const
  const [a, b] = [watcherOf(walks[0], 'job-aaaa'), watcherOf(walks[1], 'job-bbbb')]
  walks[0].others = () => [b()]
  walks[1].others = () => [a()]
  const written: { who: 0 | 1; entry: Entry }[] = []
  const counts = [0, 0]
  const note = () => {
    for (const who of [0, 1] as const) {
      for (const entry of walks[who].entries.slice(counts[who])) written.push({ who, entry })
      counts[who] = walks[who].entries.length
    }
  }
  note()
  return { walks, written, note }
}
