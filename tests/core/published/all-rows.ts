// Every published figure that Barover is checked against, from all three lists, with what it works out for each.
import { CYCLE_ROWS } from './cycle-rows.ts'
import { MECHANICAL } from './mechanical-rows.ts'
import { STATISTICS_ROWS } from './statistics-rows.ts'

export interface Checked {
  readonly source: string
  /** read: the printed figure was seen; second-hand: as another text retells it; memory: counts for nothing. */
  readonly seen: 'read' | 'second-hand' | 'memory'
  readonly what: string
  readonly printed: number
  readonly worked: number
  /** Greatest difference allowed. */
  readonly allowed: number
}

const SEEN = {
  read: 'read',
  companion: 'second-hand',
  'second-hand': 'second-hand',
  'read second-hand': 'second-hand',
  memory: 'memory',
  'from memory': 'memory',
} as const

export const CHECKED: readonly Checked[] = [
  ...MECHANICAL.map(({ book, source, status, what, printed, tolerance, works }) => ({
    ...{ source: source.startsWith(book) ? source : `${book}, ${source}`, seen: SEEN[status], what, printed },
    ...{ worked: works(), allowed: tolerance },
  })),
  ...CYCLE_ROWS.map(({ source, status, what, printed, half, ours, widened }) => ({
    ...{ source, seen: SEEN[status], what, printed, worked: ours(), allowed: half + (widened?.[0] ?? 0) },
  })),
  ...STATISTICS_ROWS.map(({ source, status, what, printed, got, tolerance }) => ({
    ...{ source, seen: SEEN[status], what, printed, worked: got, allowed: tolerance },
  })),
]
