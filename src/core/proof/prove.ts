// The safety proof of a procedure on a machine: every state a REAL job can come to is searched, and what was found is said.
import type { Engine } from '../job/admit.ts'
import type { Definitions } from '../job/definitions.ts'
import { FORMAT } from '../job/entries.ts'
import { opening } from '../job/fold.ts'
import type { State } from '../job/state.ts'
import { type Instant, stamp } from '../lib/instant.ts'
import { barriers } from './barriers.ts'
import { type Breach, type Explored, explore } from './explore.ts'
import { unheldVerdict } from './gaps.ts'
import { slices } from './reduce.ts'

/** More than ten times what a shipped procedure comes to. */
export const MOST_STATES = 60_000

export type Proof =
  | { readonly is: 'proved'; readonly states: number; readonly moves: number }
  | { readonly is: 'refuted'; readonly breach: Breach; readonly states: number; readonly moves: number }
  /** `bound`: what was hit before everything was seen. */
  | { readonly is: 'not-proved'; readonly bound: string; readonly states: number; readonly moves: number }

/** Any moment will do: a job opened then is like a job opened at any other. */
const SOME_DAY: Instant = { ms: 1_767_600_000_000, offsetMin: 0 }

/** `engine` is what is walked: the program's own, or, in tests, one that was broken on purpose. */
export function prove(
  whole: Definitions,
  options: { readonly engine?: (defs: Definitions) => Engine; readonly mostStates?: number } = {},
): Proof {
  const { engine = own, mostStates = MOST_STATES } = options
  const seen = { states: 0, moves: 0 }
  for (const small of slices(whole)) {
    const walked = engine(small)
    const { states, moves, bound, breach } = explore(walked, freshJob(), { mostStates })
    seen.states += states
    seen.moves += moves
    if (breach !== null) return { is: 'refuted', breach: plainer(walked, breach), ...seen }
    if (bound !== null) return { is: 'not-proved', bound, ...seen }
  }
  const between = barriers(engine(whole), freshJob())
  if (between.is === 'breached') return { is: 'refuted', breach: between.breach, ...seen }
  if (between.is === 'bounded') return { is: 'not-proved', bound: between.bound, ...seen }
  const breach = unheldVerdict(engine(whole), freshJob())
  return breach === null ? { is: 'proved', ...seen } : { is: 'refuted', breach, ...seen }
}

/** For tests: all that was searched of one slice, with its edges. */
export function searchSlice(small: Definitions, mostStates = MOST_STATES): Explored {
  return explore(own(small), freshJob(), { mostStates, keepEdges: true })
}

function own(defs: Definitions): Engine {
  return { defs, version: 'proof' }
}

/** Enough for a path of a few dozen answers; where it is not, the path says what had been answered before. */
const MOST_PLAIN = 4000

/** A path without what was answered before, where there is one: it can be followed by hand. */
function plainer(engine: Engine, breach: Breach): Breach {
  return explore(engine, freshJob(), { mostStates: MOST_PLAIN, withBefore: false }).breach ?? breach
}

/** A REAL job that was just opened. */
export function freshJob(): State {
  return opening({
    type: 'job.opened',
    format: FORMAT,
    record: 'REAL',
    job: 'proof',
    program: { name: 'barover', version: 'proof' },
    zone: 'UTC',
    clock: 'system',
    answers: 'person',
    files: [],
    seq: 0,
    at: stamp(SOME_DAY),
  })
}
