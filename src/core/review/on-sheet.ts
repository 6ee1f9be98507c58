// What stands on the sheet of an entry beside what was keyed in it: what a verdict leaves open, what the opening says the procedure is not
// for, how a job closed. Looked through where no entry has a word of a question: that a word is nowhere is said of all that is shown.
import { defsAt } from '../job/editions.ts'
import type { Entry } from '../job/entries.ts'
import { oncePer } from '../lib/once.ts'
import { entryBlocks } from '../sheet/shown-block.ts'
import { sums } from '../talk/sums.ts'
import { entryLine, type OnRecord } from './asked-entries.ts'
import { formOf, formsIn } from './forms.ts'
import { movesOf } from './look.ts'

/** Rows of one word: more are read on the sheet itself. */
const MOST = 3

interface SheetRow {
  readonly entry: Entry
  readonly text: string
  readonly forms: ReadonlySet<string>
}

/** Drawn rows have no words; the width is that of a sheet on paper. */
const rowsOf = oncePer((record: OnRecord): readonly SheetRow[] =>
  movesOf(record.entries).flatMap(({ entry, after }) => {
    const defs = record.editions === undefined ? record.defs : defsAt(record.editions, entry.seq)
    const style = { width: 80, record: record.review.record, ascii: true, linear: true }
    const shown = entryBlocks(defs, after, entry, style, 'read-back').flatMap(({ rows }) =>
      rows.map(({ text }) => text.trim()),
    )
    const worked = entry.type === 'verdict.given' ? sums(defs, entry.verdict, undefined, 'named') : []
    return [...new Set([...shown, ...worked])].map((text) => ({ entry, text, forms: formsIn(text) }))
  }),
)

export interface OnSheets {
  /** A row each, with its entry. */
  readonly lines: readonly string[]
  /** Of the words those that stand on no sheet either. */
  readonly missing: readonly string[]
}

/** `words` as stems of a question. */
export function onSheets(record: OnRecord, words: readonly string[]): OnSheets {
  const found = words.map((word) => {
    const having = rowsOf(record).filter(({ forms }) => forms.has(formOf(word)))
    // The opening says in every log alike what the procedure is for: it is told where nothing else has the word.
    const own = having.filter(({ entry }) => entry.type !== 'job.opened')
    return { word, having: (own.length > 0 ? own : having).slice(0, MOST) }
  })
  const rows = [...new Set(found.flatMap(({ having }) => having))]
  return {
    lines: rows
      .toSorted((a, b) => a.entry.seq - b.entry.seq)
      .map(({ entry, text }) => entryLine(record, entry, text)),
    missing: found.filter(({ having }) => having.length === 0).map(({ word }) => word),
  }
}
