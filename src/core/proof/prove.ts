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

/** What the search of one piece of a job came to. */
export interface Found {
  readonly states: number
  readonly moves: number
  readonly breach: Breach | null
  /** A bound that was hit before everything was seen, or null. */
  readonly bound: string | null
}

/** A piece of the proof that can be searched by itself, in any order and beside others. */
export interface Piece {
  /** The small job that is searched; null for what lies between the gates of the whole. */
  readonly small: Definitions | null
  readonly search: () => Found
}

export interface ProveOptions {
  /** What is walked: the program's own, or, in tests, one that was broken on purpose. */
  readonly engine?: (defs: Definitions) => Engine
  readonly mostStates?: number
}

/** All that has to be searched of a job, in the order in which a breach is told. */
export function piecesOf(whole: Definitions, options: ProveOptions = {}): readonly Piece[] {
  const { engine = own, mostStates = MOST_STATES } = options
  const inSlices = slices(whole).map((small): Piece => {
    const search = () => {
      const walked = engine(small)
      const { states, moves, bound, breach } = explore(walked, freshJob(), { mostStates })
      return { states, moves, bound, breach: breach === null ? null : plainer(walked, breach) }
    }
    return { small, search }
  })
  return [...inSlices, { small: null, search: () => between(engine(whole)) }]
}

function between(engine: Engine): Found {
  const none = { states: 0, moves: 0, bound: null, breach: null }
  const found = barriers(engine, freshJob())
  if (found.is === 'breached') return { ...none, breach: found.breach }
  if (found.is === 'bounded') return { ...none, bound: found.bound }
  return { ...none, breach: unheldVerdict(engine, freshJob()) }
}

/** Whether nothing was left open in a piece. */
export function isSound({ breach, bound }: Found): boolean {
  return breach === null && bound === null
}

/** What the pieces come to, given in their order and up to the first that is not sound. */
export function proofOf(pieces: readonly Found[]): Proof {
  const seen = { states: 0, moves: 0 }
  for (const { states, moves, breach, bound } of pieces) {
    seen.states += states
    seen.moves += moves
    if (breach !== null) return { is: 'refuted', breach, ...seen }
    if (bound !== null) return { is: 'not-proved', bound, ...seen }
  }
  return { is: 'proved', ...seen }
}

/** One piece after the other. */
export function prove(whole: Definitions, options: ProveOptions = {}): Proof {
  const found: Found[] = []
  for (const piece of piecesOf(whole, options)) {
    const one = piece.search()
    found.push(one)
    if (!isSound(one)) break
  }
  return proofOf(found)
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
