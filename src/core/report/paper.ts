// A report laid out in sections, before it is written: lines, tables and plots. Text, HTML and PDF are each written from this, so
// that none of them can say more or less than another.
import type { RecordMark } from '../job/paper.ts'
import type { Tone } from '../sheet/block.ts'
import type { Scene } from './plot/scene.ts'
import type { Report } from './schema.ts'

export interface PaperLine {
  /** Step number, beside the rule. */
  readonly margin: string
  readonly text: string
  readonly tone: Tone
  /** Who and when, on the right. */
  readonly right?: string
  /** Columns of the sheet stand in it: every sign is as wide as any other. */
  readonly columns?: true
}

export interface Column {
  readonly head: string
  /** Figures, set to the right. */
  readonly right?: true
  /** Share of the width. */
  readonly wide: number
}

export type Piece =
  | { readonly is: 'lines'; readonly lines: readonly PaperLine[] }
  | {
      readonly is: 'table'
      readonly caption: string
      readonly columns: readonly Column[]
      readonly rows: readonly (readonly string[])[]
    }
  | { readonly is: 'plot'; readonly scene: Scene }
  | {
      readonly is: 'sketch'
      readonly title: string
      readonly told: string
      readonly lines: readonly string[]
    }

export interface Section {
  /** For links within the page. */
  readonly id: string
  readonly title: string
  readonly pieces: readonly Piece[]
}

export interface Paper {
  /** The word on each line. */
  readonly record: RecordMark
  readonly job: string
  readonly head: string
  /** For the window and the properties of a file. */
  readonly title: string
  /** Stamp of the last entry: the only day it knows. */
  readonly at: string
  readonly sections: readonly Section[]
}

export function line(text: string, tone: Tone = 'plain', more: Partial<PaperLine> = {}): PaperLine {
  return { margin: '', text, tone, ...more }
}

export function lines(...all: readonly PaperLine[]): Piece {
  return { is: 'lines', lines: all }
}

/** Nothing at all where there is no row. */
export function table(
  caption: string,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
): Piece[] {
  return rows.length === 0 ? [] : [{ is: 'table', caption, columns, rows }]
}

/** `06:52:10`, with its day where the job is of several. */
export function timeOf(at: string, report: Pick<Report, 'from'>): string {
  const time = at.slice(11, 19)
  return at.slice(0, 10) === report.from.slice(0, 10) ? time : `${at.slice(0, 10)} ${time}`
}
