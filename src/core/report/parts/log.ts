// Every entry of the log as the sheet has it, pictures told in words.
import { defsAt, type Editions } from '../../job/editions.ts'
import type { Move } from '../../review/look.ts'
import type { SheetStyle } from '../../sheet/block.ts'
import { entryBlocks } from '../../sheet/shown-block.ts'
import type { Report } from '../schema.ts'

type Told = Report['log'][number]

/** The width that tables of a block are laid out for: that of the text report. */
export const SHEET_WIDTH = 79

export function logOf(editions: Editions, moves: readonly Move[], record: SheetStyle['record']): Told[] {
  const style: SheetStyle = { width: SHEET_WIDTH, record, ascii: false, linear: true }
  return moves.map(({ entry, after }) => {
    const blocks = entryBlocks(defsAt(editions, entry.seq), after, entry, style, 'read-back')
    const [first] = blocks
    const told = blocks.flatMap(({ rows }) => rows.map(({ text }) => text))
    return {
      seq: entry.seq,
      at: entry.at,
      by: entry.by ?? null,
      type: entry.type,
      number: first?.margin ? first.margin : null,
      told: told.length === 0 ? [entry.type.replaceAll('.', ' ').replaceAll('-', ' ')] : told,
      right: first?.right ?? '',
    }
  })
}
