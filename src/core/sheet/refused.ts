// Why the line before was not taken. It stands right over the question and under the transcript, and is gone with the next line: in the
// transcript it would still be read as current when that line was taken.
import type { Line } from './block.ts'
import type { Live } from './live.ts'
import { fitToRead, type ReadInput } from './to-read.ts'

/** `refused`: its lines; what has no room above the question is read on sides of its own (to-read.ts), and is none of them. */
export function fitRefused(input: ReadInput, refused: readonly Line[]): Live {
  if (refused.length === 0) return fitToRead(input)
  const over = { over: refused.length }
  const loose = fitToRead({ ...input, ...over, said: refused.length })
  const live =
    room(input, loose) >= refused.length
      ? loose
      : fitToRead({ ...input, ...over, said: Number.MAX_SAFE_INTEGER })
  return { ...live, above: [...refused.slice(0, Math.max(0, room(input, live))), ...live.above] }
}

/** Rows that are left over it. */
function room({ rows }: ReadInput, { above, below }: Live): number {
  return rows - 2 - above.length - below.length
}
