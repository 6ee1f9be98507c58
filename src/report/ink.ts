// Text on a page of a PDF: measured, broken into lines, and drawn with no sign lost and none turned round.
import type PDFDocument from 'pdfkit'

export type Doc = InstanceType<typeof PDFDocument>
export type FontName = 'sans' | 'bold' | 'mono'

export interface Hand {
  readonly font: FontName
  readonly size: number
  readonly colour: string
}

/** Scripts that are written from right to left: a font turns a whole run of them round, figures in it too. */
const TURNED = /([\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]+)/u

interface FontInside {
  readonly font: { hasGlyphForCodePoint: (code: number) => boolean }
}

/** The library keeps the font it works with to itself; only by it can be told which signs there are. */
function hasSign(doc: Doc, code: number): boolean {
  return (doc as unknown as { readonly _font: FontInside })._font.font.hasGlyphForCodePoint(code)
}

/** A sign that the font has no picture of stands as its code: an empty box would be the same for all of them. */
function written(doc: Doc, text: string): string {
  return [...text]
    .map((sign) => {
      const code = sign.codePointAt(0) ?? 0
      return hasSign(doc, code) ? sign : `[U+${code.toString(16).toUpperCase().padStart(4, '0')}]`
    })
    .join('')
}

export function take(doc: Doc, { font, size, colour }: Hand): void {
  doc.font(font).fontSize(size).fillColor(colour)
}

/** Points; the hand has to be taken before. */
export function wide(doc: Doc, text: string): number {
  return pieces(text).reduce((sum, piece) => sum + doc.widthOfString(piece), 0)
}

function pieces(text: string): string[] {
  return text.split(TURNED).filter((piece) => piece !== '')
}

/** One line at its base; `right` and `middle` hang it by its end and by its middle. Breaks nothing. */
export function put(
  doc: Doc,
  text: string,
  x: number,
  base: number,
  anchor: 'start' | 'middle' | 'end' = 'start',
): void {
  const shown = written(doc, text)
  const width = anchor === 'start' ? 0 : wide(doc, shown)
  let at = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x
  for (const piece of pieces(shown)) {
    doc.text(piece, at, base, { lineBreak: false, baseline: 'alphabetic' })
    at += doc.widthOfString(piece)
  }
}

/** Lines no wider than `room`, broken at spaces; a word that is wider alone is broken where it has to be. `hang`: later ones set in. */
export function broken(doc: Doc, text: string, room: number, hang = 0): string[] {
  const shown = written(doc, text)
  const lines: string[] = []
  let line = ''
  for (const word of shown.split(/(?<= )(?=[^ ])/)) {
    const left = room - (lines.length === 0 ? 0 : hang)
    if (line !== '' && wide(doc, (line + word).trimEnd()) > left) {
      lines.push(line.trimEnd())
      line = ''
    }
    line += word
    while (wide(doc, line.trimEnd()) > room - (lines.length === 0 ? 0 : hang)) {
      const head = fitting(doc, line, room - (lines.length === 0 ? 0 : hang))
      if (head === line) break
      lines.push(head)
      line = line.slice(head.length)
    }
  }
  lines.push(line.trimEnd())
  return lines
}

/** As many signs as there is room for, one at the least. */
function fitting(doc: Doc, text: string, room: number): string {
  let head = ''
  for (const sign of text) {
    if (head !== '' && wide(doc, head + sign) > room) return head
    head += sign
  }
  return head
}
