// A key hit twice in a glove. Enter alone closes a job on its last sheet, and nothing opens it again: there the second Enter of one
// stroke is no answer. Everywhere else it is harmless, as it is asked for something else.

/** Common practice, no source: two strokes that are meant are further apart. */
const BOUNCE_MS = 600

export const TOO_SOON = 'Not taken: that Enter came with the one before. Enter once more closes the job.'

/** `closes`: Enter alone ends the job here; `sinceMs`: how long the sheet has been up. */
export function isBounce(line: string, closes: boolean, sinceMs: number): boolean {
  return closes && line.trim() === '' && sinceMs < BOUNCE_MS
}
