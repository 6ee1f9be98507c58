// A command that is printed to be copied, set to the width of the terminal: names stand whole, and where a line has no room for it the
// command stands below its words. A shell takes it over two lines by the sign at the end of the first.
import process from 'node:process'
import { wrapWords } from '../authoring/wrap-words.ts'
import { widthOf } from '../core/lib/text.ts'

/** Columns to break at; what reads a file or a pipe breaks nothing. */
export function edgeOf(stream: { readonly isTTY?: boolean; readonly columns?: number }): number {
  return stream.isTTY === true ? (stream.columns ?? Number.POSITIVE_INFINITY) : Number.POSITIVE_INFINITY
}

const CONTINUED = ' \\'
const IN = '  '

/** `says`: the words before it, with the mark of the record. One line where it fits. */
export function toCopy(says: string, command: string, columns: number, isPosix = IS_POSIX): string[] {
  const whole = `${says} ${command}`
  if (widthOf(whole) <= columns) return [whole]
  const below = `${IN}${command}`
  // Elsewhere no sign joins lines for every shell, so nothing but the edge of the screen breaks it.
  if (widthOf(below) <= columns || !isPosix) return [says, below]
  const lines = wrapWords(below, columns - widthOf(CONTINUED), 2 * IN.length).split('\n')
  return [says, ...lines.map((line, n) => (n < lines.length - 1 ? `${line}${CONTINUED}` : line))]
}

const IS_POSIX = process.platform !== 'win32'

/** A question or a sentence beside what is printed: broken at spaces, and never within a word. */
export function besides(text: string): string {
  return text
    .split('\n')
    .map((line) => wrapWords(line, edgeOf(process.stderr), IN.length))
    .join('\n')
}
