// Writes names or figures on a row, each under or over its own mark, dropping what has no room.
import { type Settling, settle, sideOf } from './settle.ts'

export interface Tag {
  readonly id: string
  /** Column of the mark it belongs to. */
  readonly column: number
  /** What may be written, best first. */
  readonly forms: readonly string[]
  /** Who goes first when there isn't room for all: low before high. */
  readonly rank: number
}

export interface TagRow {
  /** Columns that may be written on. */
  readonly first: number
  readonly last: number
  /** The column the row is mirrored on. */
  readonly middle: number
  /** Columns of all marks, in any order. */
  readonly marks: readonly number[]
}

export interface WrittenTag {
  readonly id: string
  readonly start: number
  readonly text: string
}

interface Chosen {
  readonly tag: Tag
  readonly text: string
}

/**
 * The tags there is room for, left to right, at least one space apart. Each covers the column of its own mark and of no
 * other, so that a figure can't be taken for a neighbour's. All are shortened alike before one is dropped.
 */
export function writeTags(tags: readonly Tag[], row: TagRow): WrittenTag[] {
  const ranked = [...tags].sort((a, b) => a.rank - b.rank)
  const mostForms = Math.max(1, ...tags.map((tag) => tag.forms.length))
  let best: WrittenTag[] = []
  for (let skip = 0; skip < mostForms && best.length < tags.length; skip += 1) {
    const written = writeFrom(skip, ranked, row)
    if (written.length > best.length) best = written
  }
  return best
}

/** As many tags as go in, by rank, leaving out the `skip` longest forms of each that has others. */
function writeFrom(skip: number, ranked: readonly Tag[], row: TagRow): WrittenTag[] {
  let chosen: Chosen[] = []
  let starts: number[] = []
  for (const tag of ranked) {
    for (const text of tag.forms.slice(Math.min(skip, tag.forms.length - 1))) {
      const tried = [...chosen, { tag, text }].sort((a, b) => a.tag.column - b.tag.column)
      const found = settle(tried.map((one, i) => settling(one, tried[i - 1], row)))
      if (found === undefined) continue
      chosen = tried
      starts = found
      break
    }
  }
  return chosen.map((one, i) => ({ id: one.tag.id, start: starts[i] as number, text: one.text }))
}

function settling({ tag, text }: Chosen, before: Chosen | undefined, row: TagRow): Settling {
  const { column } = tag
  const length = text.length
  const markBefore = Math.max(row.first - 1, ...row.marks.filter((mark) => mark < column))
  const markAfter = Math.min(row.last + 1, ...row.marks.filter((mark) => mark > column))
  // An even text can't sit on its mark: it leans outwards on both halves, so that the two halves mirror.
  const want = column <= row.middle ? column - Math.floor(length / 2) : column - Math.ceil(length / 2) + 1
  return {
    want,
    gap: before === undefined ? 0 : before.text.length + 1,
    min: Math.max(column - length + 1, markBefore + 1),
    max: Math.min(column, markAfter - length),
    side: sideOf(column, row.middle),
  }
}
