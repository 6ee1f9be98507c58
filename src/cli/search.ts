// The safety proof of a job with all the processors there are, and without what this very program has searched before.
import { existsSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import process from 'node:process'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { JobCopy } from '../authoring/definitions.ts'
import type { Definitions } from '../core/job/definitions.ts'
import { type Found, isSound, type Piece, type Proof, piecesOf, proofOf } from '../core/proof/prove.ts'
import {
  type KeptPiece,
  type KeptProofs,
  keptProofs,
  NONE_KEPT,
  pieceName,
  programHash,
} from '../node/kept-proofs.ts'
import { VERSION } from '../node/version.ts'

/** Threads need memory for all the states of a piece each. */
const MOST_THREADS = 8

/** Beside the bundle; from source there is none, and the search runs in this thread. */
const WORKER = fileURLToPath(new URL('./search-worker.mjs', import.meta.url))

export interface SearchOptions {
  /** Searches everything, whatever was searched before. */
  readonly anew?: boolean
  /** Told each time a piece is done. */
  readonly onPiece?: (done: number, of: number) => void
  /** Where pieces are kept, and for which program; the running program and its own folder unless said. */
  readonly keeping?: Keeping | null
  /** For tests, without threads: the bound of a piece. */
  readonly mostStates?: number
}

export interface Keeping {
  readonly program: string
  readonly store: KeptProofs
}

export interface Searched {
  readonly proof: Proof
  /** Pieces there are, and those of them that had been searched before. */
  readonly pieces: number
  readonly kept: number
}

export async function searchJob(
  defs: Definitions,
  files: readonly JobCopy[],
  { anew = false, onPiece, keeping = ownKeeping(), mostStates }: SearchOptions = {},
): Promise<Searched> {
  const pieces = piecesOf(defs, mostStates === undefined ? {} : { mostStates })
  const store = keeping?.store ?? NONE_KEPT
  const names = pieces.map(({ small }) => nameOf(keeping, files, small))
  const known = names.map((name) => (name === null || anew ? null : store.find(name)))
  const found: (Found | undefined)[] = known.map((one) => (one === null ? undefined : sound(one)))
  const missing = found.flatMap((one, n) => (one === undefined ? [n] : []))
  let done = pieces.length - missing.length
  const take = (n: number, one: Found) => {
    found[n] = one
    const name = names[n] ?? null
    if (name !== null && isSound(one)) store.keep(name, one)
    done += 1
    onPiece?.(done, pieces.length)
  }
  if (existsSync(WORKER) && missing.length > 1) await inThreads(files, missing, take)
  else inTurn(pieces, missing, take)
  const proof = proofOf(found.filter((one) => one !== undefined))
  // Only behind a piece that is not sound are others left: nothing is proved while one is missing.
  if (proof.is === 'proved' && found.includes(undefined)) throw new Error('a piece of the search was lost')
  return { proof, pieces: pieces.length, kept: known.filter((one) => one !== null).length }
}

function sound({ states, moves }: KeptPiece): Found {
  return { states, moves, breach: null, bound: null }
}

function ownKeeping(): Keeping | null {
  const hash = existsSync(WORKER) ? programHash(fileURLToPath(new URL('.', import.meta.url))) : null
  return hash === null ? null : { program: `${VERSION} ${process.version} ${hash}`, store: keptProofs() }
}

/** What lies between the gates takes a moment and rests on the whole crew: it has no name and is never kept. */
function nameOf(
  keeping: Keeping | null,
  files: readonly JobCopy[],
  small: Definitions | null,
): string | null {
  return keeping === null || small === null ? null : pieceName(keeping.program, files, small)
}

function inTurn(
  pieces: readonly Piece[],
  missing: readonly number[],
  take: (n: number, one: Found) => void,
): void {
  for (const n of missing) {
    const piece = pieces[n]
    if (piece === undefined) return
    const one = piece.search()
    take(n, one)
    if (!isSound(one)) return
  }
}

/** Dealt out in order; after a piece that is not sound no further one is begun, and those before it are still waited for. */
function inThreads(
  files: readonly JobCopy[],
  missing: readonly number[],
  take: (n: number, one: Found) => void,
): Promise<void> {
  const many = Math.min(availableParallelism(), MOST_THREADS, missing.length)
  const waiting = [...missing]
  const threads = Array.from({ length: many }, () => new Worker(WORKER, { workerData: files }))
  const end = () => Promise.all(threads.map((one) => one.terminate())).then(() => undefined)
  const each = threads.map(
    (thread) =>
      new Promise<void>((resolve, reject) => {
        let at: number | undefined
        const nextPiece = () => {
          at = waiting.shift()
          if (at === undefined) resolve()
          else thread.postMessage(at)
        }
        thread.on('message', ({ n, found }: { readonly n: number; readonly found: Found }) => {
          take(n, found)
          if (!isSound(found)) waiting.length = 0
          nextPiece()
        })
        thread.on('error', reject)
        thread.on('exit', () => reject(new Error('a thread of the search ended early')))
        nextPiece()
      }),
  )
  return Promise.all(each).then(end, async (error: unknown) => {
    await end()
    throw error
  })
}
