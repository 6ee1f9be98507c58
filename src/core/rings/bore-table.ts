// Looking a bore up in a printed table of size classes. A bore between two rows or past an end is refused, not guessed.

import { ok, type Result, refuse } from '../lib/result.ts'

const IN = 0.0254

export interface BoreRow<T> {
  /** Edges of the row in inches, both inside; no lower edge where the book prints none. */
  readonly fromIn: number | null
  readonly toIn: number
  readonly value: T
}

/** Inches at which an edge counts as met: far below any printed digit, far above floating noise. */
const SLACK_IN = 1e-7

/**
 * The row of a printed table that a bore (metres, above zero) lies in.
 * Refuses: a bore in no row (`bore-not-in-table`); a bore in two (`bore-on-edge`), which only a table whose rows share
 * an edge can give: the message names both.
 */
export function rowFor<T>(boreM: number, rows: readonly BoreRow<T>[], table: string): Result<BoreRow<T>> {
  const boreIn = boreM / IN
  const found = rows.filter(
    ({ fromIn, toIn }) => (fromIn === null || boreIn >= fromIn - SLACK_IN) && boreIn <= toIn + SLACK_IN,
  )
  const [first, second] = found
  if (first === undefined)
    return refuse('bore-not-in-table', `This bore lies in no row of ${table}: use the machine's own book.`)
  if (second !== undefined)
    return refuse(
      'bore-on-edge',
      `This bore lies on the edge of two rows of ${table}: say which row, to ${first.toIn} in or from ${second.fromIn} in.`,
    )
  return ok(first)
}
