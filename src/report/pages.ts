// Pages of a PDF as the ruled sheet: the word of the record beside every line, the number of the step before the rule, and at the
// edge of each page word, job, head and page x of y.
import { broken, type Doc, type Hand, put, take } from './ink.ts'

/** Points. A4 with room enough to be printed on Letter too. */
export const PAGE = { top: 54, bottom: 742, left: 36, rule: 116, text: 122, right: 559 } as const
export const ROOM = PAGE.right - PAGE.text

export const INKS = { ink: '#1a1a1a', quiet: '#595959', caution: '#8f1010', hair: '#b8b8b8' } as const
const MARK: Hand = { font: 'sans', size: 5.5, colour: INKS.quiet }
const EDGE: Hand = { font: 'bold', size: 9, colour: INKS.ink }
const SMALL: Hand = { font: 'sans', size: 7, colour: INKS.quiet }
const HASH: Hand = { font: 'mono', size: 6, colour: INKS.quiet }

export interface Marked {
  readonly record: string
  readonly job: string
  readonly head: string
  readonly title: string
}

/** Where on which page the next line goes. */
export class Pages {
  readonly doc: Doc
  readonly #of: Marked
  y: number = PAGE.top

  constructor(doc: Doc, of: Marked) {
    this.doc = doc
    this.#of = of
    this.turn()
  }

  turn(): void {
    this.doc.addPage()
    this.y = PAGE.top
  }

  /** A new page where there is no room for so much; true when it was turned. More than a page is begun where it stands. */
  keep(height: number): boolean {
    if (this.y + height <= PAGE.bottom || this.y === PAGE.top) return false
    this.turn()
    return true
  }

  space(height: number): void {
    this.y = Math.min(PAGE.bottom, this.y + height)
  }

  /** Room for one line; what is drawn on it comes from the caller, at the base that is given. */
  line(height: number, margin: string, draw: (base: number) => void): void {
    this.keep(height)
    const base = this.y + height * 0.75
    take(this.doc, MARK)
    put(this.doc, this.#of.record, PAGE.left, base)
    if (margin !== '') {
      take(this.doc, SMALL)
      put(this.doc, margin, PAGE.rule - 5, base, 'end')
    }
    draw(base)
    this.y += height
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
    const room = ROOM - set
    const isBeside = beside > 0 && beside < room / 2
    const lines = broken(this.doc, text, room - (isBeside ? beside : 0), 10)
    for (const [i, one] of lines.entries())
      this.line(height, i === 0 ? margin : '', (base) => {
        if (i === 0 && isBeside) this.#right(right, base)
        take(this.doc, hand)
        put(this.doc, one, PAGE.text + set + (i === 0 ? 0 : 10), base)
      })
    if (right !== '' && !isBeside) this.line(height, '', (base) => this.#right(right, base))
  }

  #right(text: string, base: number): void {
    take(this.doc, SMALL)
    put(this.doc, text, PAGE.right, base, 'end')
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
    const { doc } = this
    const { record, job, head, title } = this.#of
    doc
      .moveTo(PAGE.rule, PAGE.top - 6)
      .lineTo(PAGE.rule, PAGE.bottom + 4)
      .lineWidth(0.75)
      .strokeColor(INKS.ink)
      .stroke()
    take(doc, EDGE)
    put(doc, record, PAGE.left, 34)
    take(doc, SMALL)
    put(doc, broken(doc, title, 330)[0] ?? '', PAGE.text, 34)
    put(doc, `page ${page} of ${count}`, PAGE.right, 34, 'end')
    put(doc, broken(doc, `${record}  job ${job}`, PAGE.right - PAGE.left)[0] ?? record, PAGE.left, 762)
    take(doc, HASH)
    put(doc, `head ${head}`, PAGE.left, 772)
  }
}
