// Offsets in a text to line and columns, all from 1 and always inside the file.
import type { LineCounter } from 'yaml'

/** Start and end offset in the text; the end is the first character behind. */
export type Span = readonly [start: number, end: number]

export interface Place {
  readonly file: string
  readonly line: number
  readonly column: number
  readonly endColumn: number
}

/** Where a span starts, cut at the end of its first line; an empty span is one column wide. */
export function place(file: string, text: string, lines: LineCounter, span: Span): Place {
  const start = Math.min(Math.max(0, span[0]), text.length)
  const { line, col } = lines.linePos(start)
  const lineEnd = text.indexOf('\n', start)
  const end = Math.min(Math.max(start, span[1]), lineEnd === -1 ? text.length : lineEnd)
  const length = text.slice(start, end).trimEnd().length
  return {
    file,
    line: Math.max(1, line),
    column: Math.max(1, col),
    endColumn: Math.max(1, col) + Math.max(1, length),
  }
}
