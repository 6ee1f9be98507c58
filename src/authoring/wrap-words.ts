// Sentences set to the width of a terminal. A word is never broken: paths and ids are there to be copied, and a long one
// stands out over the edge whole.
import { widthOf } from '../core/lib/text.ts'

/** Columns where nothing tells the width: a file, a pipe. */
export const COLUMNS = 80

/** Breaks at spaces only; every line but the first is set in by `hang` columns. */
export function wrapWords(text: string, width: number, hang: number): string {
  const lines: string[] = []
  let line = ''
  // The gap goes with the word behind it, so that two spaces between two columns stay two.
  for (const [piece] of text.matchAll(/ *[^ ]+/g)) {
    if (line.trim() !== '' && widthOf(line + piece) > width) {
      lines.push(line)
      line = ' '.repeat(hang) + piece.trimStart()
    } else line += piece
  }
  return [...lines, line].join('\n')
}
