// Pages of a PDF as the ruled sheet: the word of the record beside every line, the number of the step before the rule, and at the
// edge of each page word, what it is of, and page x of y.
import { broken, type Doc, type Hand, put, take, wide } from './ink.ts'

/** Points from the upper left corner. What is written stands between `top` and `bottom`, the edges outside. */
const EDGES = { top: 54, left: 36, rule: 116, text: 122 } as const
export const PAPERS = {
  a4: { ...EDGES, size: 'A4', bottom: 792, right: 559 },
  letter: { ...EDGES, size: 'LETTER', bottom: 742, right: 576 },
} as const
export type PaperSize = keyof typeof PAPERS

export const INKS = { ink: '#1a1a1a', quiet: '#595959', caution: '#8f1010', hair: '#b8b8b8' } as const
const MARK: Hand = { font: 'sans', size: 5.5, colour: INKS.quiet }
const EDGE: Hand = { font: 'bold', size: 9, colour: INKS.ink }
const SMALL: Hand = { font: 'sans', size: 7, colour: INKS.quiet }
const CONTINUED: Hand = { font: 'bold', size: 8.5, colour: INKS.ink }
const FRAME_WIDTH = 1.4
/** Of words that stand in a frame. */
export const FRAMED = 6
const HASH: Hand = { font: 'mono', size: 6, colour: INKS.quiet }

/** What stands at the edges of each page. */
export interface Marked {
  readonly record: string
  readonly title: string
  /** Behind the word of the record, at the foot. */
  readonly foot: string
  /** Under that, smaller. */
  readonly small: string
}

/** A box of several lines, ruled around; on the next page it goes on under its name. */
interface Frame {
  readonly name: string
}

/** Where on which page the next line goes. */
export class Pages {
  readonly doc: Doc
  readonly edge: (typeof PAPERS)[PaperSize]
  readonly #of: Marked
  #frame: Frame | null = null
  y: number

  constructor(doc: Doc, of: Marked, size: PaperSize) {
    this.doc = doc
    this.edge = PAPERS[size]
    this.#of = of
    this.y = this.edge.top
    this.turn()
  }

  /** Points of width for what is written. */
  get room(): number {
    return this.edge.right - this.edge.text
  }

  turn(): void {
    this.doc.addPage()
    this.y = this.edge.top
    if (this.#frame === null) return
    const { name } = this.#frame
    this.words(`${name}, continued`, CONTINUED, { set: FRAMED })
  }

  /** Everything that `draw` writes stands in one frame. */
  framed(name: string, draw: () => void): void {
    this.#across()
    this.#frame = { name }
    draw()
    this.#frame = null
    this.#across()
  }

  #across(): void {
    const { text, right } = this.edge
    this.doc.moveTo(text, this.y).lineTo(right, this.y).lineWidth(FRAME_WIDTH).strokeColor(INKS.ink).stroke()
  }

  /** A new page where there is no room for so much; true when it was turned. More than a page is begun where it stands. */
  keep(height: number): boolean {
    if (this.y + height <= this.edge.bottom || this.y === this.edge.top) return false
    this.turn()
    return true
  }

  space(height: number): void {
    this.y = Math.min(this.edge.bottom, this.y + height)
  }

  /** Nothing on so much of a page but the sides of a frame. */
  strut(height: number): void {
    const least = Math.min(height, this.edge.bottom - this.y)
    if (this.#frame !== null) this.#sides(least)
    this.y += least
  }

  /** Room for one line; what is drawn on it comes from the caller, at the base that is given. */
  line(height: number, margin: string, draw: (base: number) => void): void {
    this.keep(height)
    const base = this.y + height * 0.75
    take(this.doc, MARK)
    put(this.doc, this.#of.record, this.edge.left, base)
    if (margin !== '') {
      take(this.doc, SMALL)
      put(this.doc, margin, this.edge.rule - 5, base, 'end')
    }
    draw(base)
    if (this.#frame !== null) this.#sides(height)
    this.y += height
  }

  #sides(height: number): void {
    for (const x of [this.edge.text, this.edge.right])
      this.doc
        .moveTo(x, this.y)
        .lineTo(x, this.y + height)
        .lineWidth(FRAME_WIDTH)
        .strokeColor(INKS.ink)
        .stroke()
  }

  /** Words over as many lines as they take; the one on the right stands on the first, where it has room. */
  words(
    text: string,
    hand: Hand,
    more: { readonly margin?: string; readonly right?: string; readonly set?: number } = {},
  ): void {
    const { margin = '', right = '', set = 0 } = more
    const height = hand.size * 1.4
    take(this.doc, SMALL)
    const beside = right === '' ? 0 : this.doc.widthOfString(right) + 10
    take(this.doc, hand)
    const room = this.room - set - (this.#frame === null ? 0 : FRAMED)
    const isBeside = beside > 0 && beside < room / 2
    const lines = broken(this.doc, text, room - (isBeside ? beside : 0), 10)
    for (const [i, one] of lines.entries())
      this.line(height, i === 0 ? margin : '', (base) => {
        if (i === 0 && isBeside) this.#right(right, base)
        take(this.doc, hand)
        put(this.doc, one, this.edge.text + set + (i === 0 ? 0 : 10), base)
      })
    if (right !== '' && !isBeside) this.line(height, '', (base) => this.#right(right, base))
  }

  #right(text: string, base: number): void {
    take(this.doc, SMALL)
    put(this.doc, text, this.edge.right, base, 'end')
  }

  /** Rule and edges of every page, once it is known how many there are. */
  finish(): void {
    const { start, count } = this.doc.bufferedPageRange()
    for (let i = start; i < start + count; i++) {
      this.doc.switchToPage(i)
      this.#edges(i - start + 1, count)
    }
  }

  #edges(page: number, count: number): void {
    const { doc, edge } = this
    const { record, title, foot, small } = this.#of
    doc
      .moveTo(edge.rule, edge.top - 6)
      .lineTo(edge.rule, edge.bottom + 4)
      .lineWidth(0.75)
      .strokeColor(INKS.ink)
      .stroke()
    const room = edge.right - edge.left
    take(doc, EDGE)
    put(doc, record, edge.left, 34)
    // A word longer than the margin, as of a record from paper, pushes the title along.
    const after = Math.max(edge.text, edge.left + wide(doc, record) + 8)
    take(doc, SMALL)
    put(doc, broken(doc, title, 330)[0] ?? '', after, 34)
    put(doc, `page ${page} of ${count}`, edge.right, 34, 'end')
    put(doc, broken(doc, `${record}  ${foot}`, room)[0] ?? record, edge.left, edge.bottom + 20)
    take(doc, HASH)
    put(doc, broken(doc, small, room)[0] ?? '', edge.left, edge.bottom + 30)
  }
}
