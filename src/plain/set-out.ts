// Plain lines of a practice session as they stand on a page: whoever copies one page of them has the word PRACTICE on it, and on a
// terminal no word is broken at the edge.
import { widthOf, wrap } from '../core/lib/text.ts'
import type { PlainOut } from './tell.ts'

export interface Page {
  /** `PRACTICE`. */
  readonly record: string
  /** Columns to break at; without end where a file or a pipe reads it. */
  readonly columns: number
}

/** Rows without the word in a row: fewer than the lowest screen has. */
const MOST_UNMARKED = 8
/** Where nothing tells the width a row is told by this one. */
const COLUMNS = 80
/** What is asked begins with that word wherever it is listened for; what follows it is marked. */
const UNMARKED = /^(?:Asked|Keyed)\b/

export function setOut(out: PlainOut, page: Page): PlainOut {
  let unmarked = 0
  const set = (line: string): string => {
    if (line.trim() === '') return line
    if (line.includes(page.record)) unmarked = 0
    const rows = Math.ceil(widthOf(line) / Math.min(page.columns, COLUMNS))
    const isDue = unmarked + rows > MOST_UNMARKED && !UNMARKED.test(line) && !line.includes(page.record)
    unmarked = isDue ? 0 : unmarked + rows
    return unbroken(isDue ? `${page.record}. ${line}` : line, page.columns)
  }
  return { write: (text) => out.write(text.split('\n').map(set).join('\n')) }
}

/** Lines broken at spaces; the rest of one is set in. */
export function unbroken(text: string, columns: number): string {
  if (!Number.isFinite(columns)) return text
  return text
    .split('\n')
    .flatMap((line) => wrap(line, columns - 1, 2))
    .join('\n')
}
