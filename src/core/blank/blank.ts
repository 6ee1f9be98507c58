// A blank inspection sheet as data: what is printed, and the boxes to write in. For a place where no screen may go. It is no job:
// nothing of it is proved, and it says so.
import type { RecordKind } from '../job/definitions.ts'
import type { Tone } from '../sheet/block.ts'

export interface Box {
  readonly head: string
  /** Share of the width. */
  readonly wide: number
}

export type BlankPiece =
  | { readonly is: 'words'; readonly text: string; readonly tone: Tone; readonly margin: string }
  /** Every sign is as wide as any other. */
  | { readonly is: 'drawing'; readonly lines: readonly string[] }
  /** A square to tick before each. */
  | { readonly is: 'ticks'; readonly texts: readonly string[] }
  /** Ruled boxes under their heads. An empty cell is one to write in. */
  | { readonly is: 'boxes'; readonly columns: readonly Box[]; readonly rows: readonly (readonly string[])[] }
  /** A hold point: all of it in one frame. */
  | {
      readonly is: 'permit'
      readonly margin: string
      readonly name: string
      readonly pieces: readonly BlankPiece[]
    }
  /** What is not to be parted by the end of a page, where one page holds it. */
  | { readonly is: 'together'; readonly pieces: readonly BlankPiece[] }
  | { readonly is: 'gap' }

export interface BlankSection {
  readonly title: string
  readonly pieces: readonly BlankPiece[]
}

export interface BlankSheet {
  readonly record: RecordKind
  readonly title: string
  /** `bore_inspection, edition 3`. */
  readonly procedure: string
  /** `TC-401-1, record edition 4`. */
  readonly machine: string
  /** YYYY-MM-DD: the day it was printed for. */
  readonly day: string
  /** Over the files it is printed from, so that a sheet keyed in later is known from one of another edition. */
  readonly mark: string
  readonly sections: readonly BlankSection[]
}

/** On each page, and in full on the first. */
export const NOT_ENFORCED = 'hold points on paper are not enforced by Barover'

export const GAP: BlankPiece = { is: 'gap' }

export function words(text: string, tone: Tone = 'plain', margin = ''): BlankPiece {
  return { is: 'words', text, tone, margin }
}

export function together(...pieces: readonly BlankPiece[]): BlankPiece {
  return { is: 'together', pieces }
}

export function boxes(columns: readonly Box[], rows: readonly (readonly string[])[]): BlankPiece {
  return { is: 'boxes', columns, rows }
}

export function empty(rows: number): string[][] {
  return Array.from({ length: rows }, () => [])
}

export function box(head: string, wide: number): Box {
  return { head, wide }
}

export const TIME: Box = { head: 'time', wide: 1.3 }
export const INITIALS: Box = { head: 'initials', wide: 1.3 }
/** When, and who: at the end of whatever is filled in. */
export const SIGNED: readonly Box[] = [TIME, INITIALS]
