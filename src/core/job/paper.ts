// A filled-in paper sheet, keyed in afterwards: what stands on it beside each thing, and what of it is keyed so far. It is a record
// of what was written and proves nothing: no hold point of it is ever open, and nothing live rests on it.
import type { RecordKind } from './definitions.ts'
import type { FileCopy } from './entries.ts'

/** Fixed words: they stand at the head of every record that came from paper. */
export const NOT_ENFORCED_BY = 'gates not enforced by Barover'
/** The word for it, on each line. */
export const FROM_PAPER = 'from paper' as const

/** What stands on each line of a record. */
export type RecordMark = RecordKind | `${RecordKind} from paper`

/** `EXAMPLE from paper`; of a live job its word alone. */
export function markOf({
  record,
  paper,
}: {
  readonly record: RecordKind
  readonly paper?: PaperState | boolean | null | undefined
}): RecordMark {
  return paper === undefined || paper === null || paper === false ? record : `${record} ${FROM_PAPER}`
}

/** When and by whom a thing was written on the sheet. Null: that box is blank, so it is not known. */
export interface OnSheet {
  /** `2026-03-14 06:52`; `06:52` where the day is not known. The clock on the wall of whoever wrote it. */
  readonly time: string | null
  /** Initials as written: no signature. */
  readonly who: string | null
  /** Words that stand beside it. */
  readonly says?: string
  /** Earlier than the line before it: asked about, and it is what the sheet says. */
  readonly back?: true
}

/** One box or line of boxes as it was keyed last; `says` null: it is blank. */
export interface SheetRow extends OnSheet {
  readonly seq: number
  readonly step: string | null
  readonly row: string
  readonly text: string | null
}

/** Why a box for a figure gives no value. `instrument`: a figure stands there, and nobody can tell what it is worth. */
export type UnreadWhy = 'blank' | 'unreadable' | 'instrument'

export interface PaperState {
  /** Check mark of the files this is keyed with, as `barover sheet` prints it. */
  readonly mark: string
  readonly rows: Readonly<Record<string, SheetRow>>
  /** The last entry about each place that gives no value. */
  readonly unread: Readonly<Record<string, { readonly seq: number; readonly is: UnreadWhy }>>
  /** The last time keyed, in the order of the sheet. */
  readonly last: string | null
  /** Initials that stand anywhere on it. */
  readonly writers: readonly string[]
  /** Who keyed any of it, or changed what was keyed; nobody for being at the keyboard alone. */
  readonly keyers: readonly string[]
  /** Who signed that everything is keyed as it stands; null again once anything was changed. */
  readonly keyedBy: string | null
  /** The lead who signed that the sheet was compared, and for what is decided on it. */
  readonly comparedBy: string | null
}

export function rowKey(step: string | null, row: string): string {
  return `${step ?? ''} ${row}`
}

export function rowOf(paper: PaperState, step: string | null, row: string): SheetRow | undefined {
  return paper.rows[rowKey(step, row)]
}

/** What a figure of its place is not, in the words of a list. */
export const UNREAD_TEXT: Readonly<Record<UnreadWhy, string>> = {
  blank: 'blank on the sheet',
  unreadable: 'cannot be read on the sheet',
  instrument: 'written on the sheet, and its instrument cannot vouch for it',
}

/**
 * Eight hex digits over the files that a sheet is printed from: procedure, parts, machine record and limit books. It tells an older
 * edition from this one; against somebody who wants to deceive it proves nothing.
 * Source: the hash of G. Fowler, L. C. Noll and K.-P. Vo, FNV-1a, 32 bits.
 */
export function checkMark(files: readonly Pick<FileCopy, 'role' | 'sha256'>[]): string {
  const text = files
    .filter(({ role }) => role !== 'instruments' && role !== 'crew')
    .map(({ role, sha256 }) => `${role} ${sha256}`)
    .sort()
    .join('\n')
  let hash = 0x811c9dc5
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193)
  return (hash >>> 0).toString(16).padStart(8, '0')
}

/** Whether the foot, as it was keyed, has the check mark in it: alone, or beside procedure and edition. */
export function hasMark(text: string, mark: string): boolean {
  return text
    .toLowerCase()
    .split(/[\s,;:.]+/)
    .includes(mark)
}
