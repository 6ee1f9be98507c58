// A blank inspection sheet as PDF: what is printed, boxes to write in with a pen, hold points in a frame. Vectors and text alone.
import type { BlankPiece, BlankSheet } from '../core/blank/blank.ts'
import { NOT_ENFORCED } from '../core/blank/blank.ts'
import { readStamp } from '../core/lib/instant.ts'
import type { Tone } from '../core/sheet/block.ts'
import { writtenPdf } from './document.ts'
import { drawLines, heightOfLines } from './draw-lines.ts'
import type { Fonts } from './fonts.ts'
import { broken, type Hand, put, take } from './ink.ts'
import { FRAMED, INKS, Pages, type PaperSize } from './pages.ts'

type Boxes = Extract<BlankPiece, { is: 'boxes' }>

const TITLE: Hand = { font: 'bold', size: 14, colour: INKS.ink }
const BODY = 8.5
const HANDS: Readonly<Record<Tone, Hand>> = {
  plain: { font: 'sans', size: BODY, colour: INKS.ink },
  strong: { font: 'bold', size: BODY, colour: INKS.ink },
  faint: { font: 'sans', size: 7, colour: INKS.quiet },
  caution: { font: 'bold', size: BODY, colour: INKS.caution },
  stamp: { font: 'bold', size: 11, colour: INKS.ink },
}
const HEAD: Hand = { font: 'bold', size: 6.5, colour: INKS.ink }
const CELL: Hand = { font: 'sans', size: 7.5, colour: INKS.ink }
/** Points, about 7.5 mm: a line that a hand in a glove can write on. */
const ROW = 21
const PAD = 3
/** A square to tick, and the words behind it. */
const TICK = 15
const TICK_LINE = BODY * 1.7
const UNDER_BOXES = 5
/** Lines in one row of boxes. */
const MOST_LINES = 40
/** Later lines of words are set in by this. */
const HANG = 10
/** A hold point that no one page holds begins on a new one where less than this is left. */
const PERMIT_ROOM = 260
/** So much of a step is kept together with its title. */
const STEP_ROOM = 110

export async function sheetPdf(sheet: BlankSheet, fonts: Fonts, size: PaperSize): Promise<Buffer> {
  const { record, title, procedure, machine, day, mark } = sheet
  const about = {
    title: `${record}: blank sheet, ${title}`,
    subject: `${procedure}; ${machine}`,
    day: readStamp(`${day} 00:00`)?.ms ?? 0,
  }
  const edges = {
    record,
    title: `Blank sheet. ${title}`,
    foot: `${machine}; procedure ${procedure}; check mark ${mark}`,
    small: `printed for ${day}; ${NOT_ENFORCED}`,
  }
  return writtenPdf(about, fonts, size, (doc) => {
    const pages = new Pages(doc, edges, size)
    for (const [n, section] of sheet.sections.entries()) {
      if (n > 0) {
        pages.space(12)
        pages.keep(STEP_ROOM)
      }
      doc.outline.addItem(section.title)
      pages.words(section.title, TITLE)
      pages.space(4)
      for (const piece of section.pieces) draw(pages, piece, 0)
    }
    pages.finish()
  })
}

function draw(pages: Pages, piece: BlankPiece, set: number): void {
  switch (piece.is) {
    case 'words': {
      const { text, tone, margin } = piece
      if (margin !== '' && set === 0) pages.keep(STEP_ROOM)
      else if (tone === 'strong' || tone === 'stamp') pages.keep(3 * BODY * 1.4 + ROW)
      pages.words(text, HANDS[tone], { margin, set })
      return
    }
    case 'drawing':
      drawLines(pages, piece.lines, set)
      return
    case 'ticks':
      ticks(pages, piece.texts, set)
      return
    case 'boxes':
      boxes(pages, piece, set)
      return
    case 'together':
      keepWhole(pages, piece.pieces, set, 0)
      for (const one of piece.pieces) draw(pages, one, set)
      return
    case 'permit':
      pages.space(4)
      keepWhole(pages, piece.pieces, FRAMED, PERMIT_ROOM)
      pages.framed(piece.name, () => {
        pages.strut(PAD)
        for (const one of piece.pieces) draw(pages, one, FRAMED)
        pages.strut(PAD)
      })
      return
    case 'gap':
      pages.space(9)
  }
}

/** On one page where a page holds it; else at least so much of it. */
function keepWhole(pages: Pages, pieces: readonly BlankPiece[], set: number, least: number): void {
  const whole = pieces.reduce((sum, one) => sum + heightOf(pages, one, set), 2 * PAD)
  pages.keep(whole <= pages.edge.bottom - pages.edge.top ? whole : least)
}

/** What it takes of a page where it is not parted. */
function heightOf(pages: Pages, piece: BlankPiece, set: number): number {
  switch (piece.is) {
    case 'words': {
      const hand = HANDS[piece.tone]
      take(pages.doc, hand)
      return broken(pages.doc, piece.text, pages.room - 2 * set, HANG).length * hand.size * 1.4
    }
    case 'drawing':
      return heightOfLines(piece.lines)
    case 'ticks': {
      take(pages.doc, HANDS.plain)
      const lines = piece.texts.flatMap((text) => broken(pages.doc, text, pages.room - 2 * set - TICK))
      return lines.length * TICK_LINE
    }
    case 'boxes': {
      const { heads, rows } = fitted(pages, piece, set)
      return [heads, ...rows].reduce((sum, { height }) => sum + height, UNDER_BOXES)
    }
    case 'together':
    case 'permit':
      return piece.pieces.reduce((sum, one) => sum + heightOf(pages, one, set), 0)
    case 'gap':
      return 9
  }
}

function ticks(pages: Pages, texts: readonly string[], set: number): void {
  const hand = HANDS.plain
  for (const text of texts) {
    take(pages.doc, hand)
    const lines = broken(pages.doc, text, pages.room - 2 * set - TICK)
    pages.keep(TICK_LINE * lines.length)
    for (const [i, one] of lines.entries())
      pages.line(TICK_LINE, '', (base) => {
        if (i === 0) {
          const side = 8
          pages.doc
            .rect(pages.edge.text + set + 1, base - side + 1, side, side)
            .lineWidth(0.7)
            .strokeColor(INKS.ink)
            .stroke()
        }
        take(pages.doc, hand)
        put(pages.doc, one, pages.edge.text + set + TICK, base)
      })
  }
}

interface Fitted {
  readonly lines: readonly (readonly string[])[]
  readonly height: number
}

/** Cells broken to their widths, and how high each row gets with that. */
function fitted(
  { doc, room }: Pages,
  { columns, rows }: Boxes,
  set: number,
): { readonly widths: readonly number[]; readonly heads: Fitted; readonly rows: readonly Fitted[] } {
  const all = columns.reduce((sum, { wide }) => sum + wide, 0)
  const widths = columns.map(({ wide }) => ((room - 2 * set) * wide) / all)
  const cellsIn = (cells: readonly string[], hand: Hand, least: number): Fitted => {
    take(doc, hand)
    const lines = widths.map((width, i) => broken(doc, cells[i] ?? '', width - 2 * PAD))
    const most = Math.max(...lines.map(({ length }) => length))
    return { lines, height: Math.max(least, most * hand.size * 1.3 + 2 * PAD) }
  }
  const heads = columns.map(({ head }) => head)
  return {
    widths,
    heads: cellsIn(heads, HEAD, 0),
    rows: rows.flatMap((cells) => parted(cellsIn(cells, CELL, ROW))),
  }
}

/** A row that no page would hold, as several. */
function parted(row: Fitted): Fitted[] {
  const most = Math.max(...row.lines.map(({ length }) => length))
  if (most <= MOST_LINES) return [row]
  const first = row.lines.map((cell) => cell.slice(0, MOST_LINES))
  const rest = row.lines.map((cell) => cell.slice(MOST_LINES))
  const heightFor = (lines: number) => Math.max(ROW, lines * CELL.size * 1.3 + 2 * PAD)
  return [
    { lines: first, height: heightFor(MOST_LINES) },
    ...parted({ lines: rest, height: heightFor(most - MOST_LINES) }),
  ]
}

function boxes(pages: Pages, piece: Boxes, set: number): void {
  const { doc } = pages
  const { widths, heads, rows } = fitted(pages, piece, set)
  const row = ({ lines, height }: Fitted, hand: Hand, ruled: boolean) =>
    pages.line(height, '', () => {
      let x = pages.edge.text + set
      for (const [i, cell] of lines.entries()) {
        const width = widths[i] ?? 0
        if (ruled) doc.rect(x, pages.y, width, height).lineWidth(0.6).strokeColor(INKS.ink).stroke()
        take(doc, hand)
        for (const [n, text] of cell.entries())
          put(doc, text, x + PAD, pages.y + PAD + hand.size * (0.95 + 1.3 * n))
        x += width
      }
    })
  pages.keep(heads.height + (rows[0]?.height ?? 0))
  row(heads, HEAD, false)
  for (const one of rows) {
    if (pages.keep(one.height)) row(heads, HEAD, false)
    row(one, CELL, true)
  }
  pages.strut(UNDER_BOXES)
}
