// What does not fit a screen, a screen at a time: the heading stays on each, and no line is left out between two of them.
import type { Line } from './block.ts'

export interface Paged {
  /** Stands on every page. */
  readonly head: readonly Line[]
  readonly body: readonly Line[]
}

/** Pages of at most `rows` lines; at least one. A heading that would leave the lines less than half gives way. */
export function pagesOf({ head, body }: Paged, rows: number): (readonly Line[])[] {
  const kept = head.slice(0, Math.max(0, Math.min(head.length, rows >> 1)))
  const each = Math.max(1, rows - kept.length)
  // What the heading had to give up is read on the first page.
  const lines = [...head.slice(kept.length), ...body]
  const count = Math.max(1, Math.ceil(lines.length / each))
  return Array.from({ length: count }, (_, i) => [...kept, ...lines.slice(i * each, (i + 1) * each)])
}
