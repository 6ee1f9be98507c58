// One thread of a search: takes the number of a piece, answers with what was found there. Definitions hold rules that
// cannot be handed over between threads, so they are made again from the files.
import { parentPort, workerData } from 'node:worker_threads'
import { definitionsFrom, type JobCopy } from '../authoring/definitions.ts'
import { piecesOf } from '../core/proof/prove.ts'

const result = definitionsFrom(workerData as readonly JobCopy[])
if (!result.ok) throw new Error('the files of a search do not hold together')
const pieces = piecesOf(result.defs)
parentPort?.on('message', (n: number) => {
  const piece = pieces[n]
  if (piece === undefined) throw new Error(`there is no piece ${n}`)
  parentPort?.postMessage({ n, found: piece.search() })
})
