// A line that proves its own content but stands in the wrong place: says what can be told from numbers and hashes.
// "Written as line n" means the line carries seq n - 1.
import { readLine, type StoredEntry } from './chain.ts'

export interface Misplaced {
  /** Place in the file, from 0. */
  readonly index: number
  readonly entry: StoredEntry
  /** Hash of the line before it in the file. */
  readonly head: string
  /** Every newline-ended piece of the file, raw. */
  readonly pieces: readonly Buffer[]
}

/** One sentence on why the line does not belong here; more than that the chain cannot prove. */
export function explainMisplaced({ index, entry, head, pieces }: Misplaced): string {
  const here = `Line ${index + 1}`
  const writtenAs = `line ${entry.seq + 1}`
  const twin = pieces.findIndex((piece, at) => at !== index && piece.equals(pieces[index] ?? piece))
  if (twin >= 0) return `${here} is a copy of line ${twin + 1}, put in where it does not belong.`
  if (entry.seq === index) return explainForeign(index)
  if (entry.prev === head)
    return `${here} follows from the line before it but says it is ${writtenAs}: it was rewritten.`
  if (entry.seq < index) return `${here} was written as ${writtenAs}, which is already there: it was put in.`
  const later = laterEntries(index, pieces)
  const home = later.find((other) => other.seq === index)
  if (home !== undefined) {
    return later.some((other) => other.seq === entry.seq)
      ? `${here} was put in: another line that says it is ${writtenAs} stands further down.`
      : `Lines are out of order: ${here.toLowerCase()} was written as ${writtenAs}, and the one written as line ${index + 1} stands on line ${home.line}.`
  }
  const gap = entry.seq - index
  const missing = `${here} was written as ${writtenAs}: ${gap} ${gap === 1 ? 'line is' : 'lines are'} missing before it`
  // Nothing further down leans on the last line, so it may as well come from elsewhere.
  return index === pieces.length - 1 ? `${missing}, or it is not of this journal.` : `${missing}.`
}

function explainForeign(index: number): string {
  return index === 0
    ? 'Line 1 names a line before it, so it is not the start of this journal.'
    : `Line ${index + 1} was written after another line ${index} than the one here: one of the two was replaced.`
}

function laterEntries(index: number, pieces: readonly Buffer[]): { seq: number; line: number }[] {
  return pieces.slice(index + 1).flatMap((piece, offset) => {
    const read = readLine(piece.toString('utf8'))
    return read.ok ? [{ seq: read.value.seq, line: index + 2 + offset }] : []
  })
}
