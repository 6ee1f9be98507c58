// A report as a PDF: text that can be selected, fonts embedded, nothing in it that the log does not tell. The same paper gives the
// same bytes: its dates are those of the log, and it is not packed, as packing differs from one version of Node to the next.
import { readStamp } from '../core/lib/instant.ts'
import type { Paper, PaperLine, Piece, Section } from '../core/report/paper.ts'
import type { Tone } from '../core/sheet/block.ts'
import { writtenPdf } from './document.ts'
import { drawLines, heightOfLines } from './draw-lines.ts'
import { drawScene } from './draw-scene.ts'
import type { Fonts } from './fonts.ts'
import { broken, type Hand, put, take } from './ink.ts'
import { INKS, Pages, type PaperSize } from './pages.ts'

type Table = Extract<Piece, { is: 'table' }>
type Sketch = Extract<Piece, { is: 'sketch' }>
type Plot = Extract<Piece, { is: 'plot' }>

const TITLE: Hand = { font: 'bold', size: 15, colour: INKS.ink }
const HEADING: Hand = { font: 'bold', size: 11.5, colour: INKS.ink }
const BODY = 8.5
const CELL = 7
const GAP = 6
/** Of a row or a picture that is higher not more is kept together. */
const MOST_KEPT = 420

const HANDS: Readonly<Record<Tone, Hand>> = {
  plain: { font: 'sans', size: BODY, colour: INKS.ink },
  strong: { font: 'bold', size: BODY, colour: INKS.ink },
  faint: { font: 'sans', size: BODY, colour: INKS.quiet },
  caution: { font: 'bold', size: BODY, colour: INKS.caution },
  stamp: { font: 'bold', size: 11, colour: INKS.ink },
}
const COLUMNS: Hand = { font: 'mono', size: 7, colour: INKS.ink }
const HEAD_CELL: Hand = { font: 'bold', size: CELL, colour: INKS.ink }
const BODY_CELL: Hand = { font: 'sans', size: CELL, colour: INKS.ink }

export async function reportPdf(paper: Paper, fonts: Fonts, size: PaperSize = 'a4'): Promise<Buffer> {
  const { record, job, head, title, at } = paper
  const about = { title, subject: `job ${job}, head ${head}`, day: readStamp(at)?.ms ?? 0 }
  return writtenPdf(about, fonts, size, (doc) => {
    const pages = new Pages(doc, { record, title, foot: `job ${job}`, small: `head ${head}` }, size)
    const [cover, ...rest] = paper.sections
    if (cover !== undefined) sectionPages(pages, cover, true)
    const places = contentsPlaces(pages, rest)
    const starts = rest.map((section) => sectionPages(pages, section, false))
    contentsNumbers(pages, places, starts)
    pages.finish()
  })
}

interface Place {
  readonly page: number
  readonly base: number
}

/** The titles behind the cover; on which page each begins is written beside them once that is known. */
function contentsPlaces(pages: Pages, sections: readonly Section[]): Place[] {
  const height = BODY * 1.4
  pages.keep((sections.length + 1) * height)
  pages.words('Contents', HANDS.strong)
  return sections.map(({ title }) => {
    let base = 0
    pages.line(height, '', (at) => {
      base = at
      take(pages.doc, HANDS.plain)
      put(pages.doc, title, pages.edge.text + 10, at)
    })
    return { page: pageNow(pages), base }
  })
}

function contentsNumbers(pages: Pages, places: readonly Place[], starts: readonly number[]): void {
  for (const [n, { page, base }] of places.entries()) {
    pages.doc.switchToPage(page)
    take(pages.doc, HANDS.plain)
    put(pages.doc, `page ${(starts[n] ?? 0) + 1}`, pages.edge.right, base, 'end')
  }
}

/** From nought. */
function pageNow({ doc }: Pages): number {
  const { start, count } = doc.bufferedPageRange()
  return start + count - 1
}

/** The page it begins on, from nought. */
function sectionPages(pages: Pages, { title, pieces }: Section, isCover: boolean): number {
  if (!isCover) {
    pages.space(14)
    // A title never stands alone at the foot of a page, nor with a line or two of its own and all else overleaf.
    pages.keep(Math.min(MOST_BEGUN, TITLED + beginning(pages, pieces)))
  }
  const begins = pageNow(pages)
  pages.doc.outline.addItem(title)
  pages.words(title, isCover ? TITLE : HEADING)
  pages.space(5)
  for (const piece of pieces) {
    if (piece.is === 'lines') for (const one of piece.lines) linePages(pages, one)
    else if (piece.is === 'table') tablePages(pages, piece)
    else if (piece.is === 'plot') plotPages(pages, piece)
    else sketchPages(pages, piece)
    pages.space(6)
  }
  return begins
}

/** What a title takes with the space below it; and the most that is turned over for it. */
const TITLED = 40
const MOST_BEGUN = 400
/** More lines than these may be parted from what stands below them. */
const FEW = 4

/** How much of a section stands below its title at the least: its first lines, and where they are few what comes behind them. */
function beginning(pages: Pages, [first, ...rest]: readonly Section['pieces'][number][]): number {
  if (first === undefined) return 0
  switch (first.is) {
    case 'lines': {
      const here = Math.min(FEW, first.lines.length) * BODY * 1.4
      return first.lines.length > FEW ? here : here + 6 + beginning(pages, rest)
    }
    case 'table':
      return BODY * 1.4 + 7 * CELL * 1.35
    case 'plot':
      return plotHeight(pages, first) + 40
    case 'sketch':
      return heightOfLines(first.lines) + BODY * 1.4
  }
}

/** A line that is set in is so by as many steps as it has pairs of spaces; columns of the sheet keep theirs. */
function linePages(pages: Pages, { margin, text, tone, right, columns }: PaperLine): void {
  const side = { margin, ...(right === undefined ? {} : { right }) }
  if (columns === true) {
    pages.words(text, COLUMNS, side)
    return
  }
  const lead = /^ */.exec(text)?.[0].length ?? 0
  if (tone === 'strong' || tone === 'caution') pages.keep(2.5 * BODY * 1.4)
  pages.words(text.trim(), HANDS[tone], { ...side, set: Math.min(3, lead >> 1) * 10 })
}

function tablePages(pages: Pages, { caption, columns, rows }: Table): void {
  const { doc } = pages
  const all = columns.reduce((sum, { wide }) => sum + wide, 0)
  const room = pages.room - GAP * (columns.length - 1)
  const widths = columns.map(({ wide }) => (room * wide) / all)
  const at = widths.map(
    (_, i) => pages.edge.text + widths.slice(0, i).reduce((sum, one) => sum + one + GAP, 0),
  )
  const height = CELL * 1.35
  const cellsOf = (cells: readonly string[], hand: Hand) => {
    take(doc, hand)
    return columns.map((_, i) => broken(doc, cells[i] ?? '', widths[i] ?? room))
  }
  const draw = (lines: readonly (readonly string[])[], hand: Hand) => {
    const count = Math.max(1, ...lines.map(({ length }) => length))
    for (let n = 0; n < count; n++)
      pages.line(height, '', (base) => {
        take(doc, hand)
        for (const [i, cell] of lines.entries()) {
          const isRight = columns[i]?.right === true
          const x = (at[i] ?? pages.edge.text) + (isRight ? (widths[i] ?? 0) : 0)
          put(doc, cell[n] ?? '', x, base, isRight ? 'end' : 'start')
        }
      })
    hair(pages)
  }
  const heads = cellsOf(
    columns.map(({ head }) => head),
    HEAD_CELL,
  )
  const headLines = Math.max(...heads.map(({ length }) => length))
  pages.keep(BODY * 1.4 + (headLines + 4) * height)
  pages.words(caption, HANDS.strong)
  draw(heads, HEAD_CELL)
  for (const cells of rows) {
    const lines = cellsOf(cells, BODY_CELL)
    const count = Math.max(...lines.map(({ length }) => length))
    if (pages.keep(Math.min(MOST_KEPT, count * height + 3))) {
      pages.words(`${caption}, continued`, HANDS.faint)
      draw(heads, HEAD_CELL)
    }
    draw(lines, BODY_CELL)
  }
}

function hair(pages: Pages): void {
  const y = pages.y + 1
  pages.doc
    .moveTo(pages.edge.text, y)
    .lineTo(pages.edge.right, y)
    .lineWidth(0.3)
    .strokeColor(INKS.hair)
    .stroke()
  pages.space(2.5)
}

function sketchPages(pages: Pages, { title, lines }: Sketch): void {
  pages.keep(heightOfLines(lines) + BODY * 1.4)
  pages.words(`Sketch: ${title}`, HANDS.strong)
  drawLines(pages, lines)
}

function plotHeight({ room }: Pages, { scene }: Plot): number {
  return (room * scene.height) / scene.width
}

function plotPages(pages: Pages, plot: Plot): void {
  const { scene } = plot
  const height = plotHeight(pages, plot)
  pages.keep(Math.min(pages.edge.bottom - pages.edge.top, height + 40))
  pages.words(scene.title, HANDS.strong)
  drawScene(pages.doc, scene, pages.edge.text, pages.y, pages.room)
  pages.space(height)
  for (const note of scene.notes) pages.words(note, HANDS.faint)
}
