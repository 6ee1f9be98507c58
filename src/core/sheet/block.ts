// The sheet: blocks of rows set against one ruled margin. The record's word stands on every line of it.
import type { RecordMark } from '../job/paper.ts'
import { asciiTwin, clean, cut, cutWords, widthOf, wrap } from '../lib/text.ts'
import { marginRule } from './ruling.ts'

/** What a row is; a shell may colour by it, and nothing is told by colour alone. */
export type Tone = 'plain' | 'strong' | 'faint' | 'caution' | 'stamp'

export interface Row {
  readonly text: string
  readonly tone: Tone
  /** Never wrapped, only cut: a drawing where it ends, words behind a word. */
  readonly keep?: boolean | 'words'
}

export interface Block {
  /** Step number, or a unit beside a figure to be keyed. */
  readonly margin: string
  /** Who and when, set to the right of the first row. */
  readonly right?: string
  readonly rows: readonly Row[]
}

export interface SheetStyle {
  readonly width: number
  /** The word that stands on every line. NOT LIVE: read before the job, and no record of it. */
  readonly record: RecordMark | 'NOT LIVE'
  readonly ascii: boolean
  /** For people who hear it: what is drawn is told in words. */
  readonly linear?: boolean
}

export interface Line {
  readonly margin: string
  readonly text: string
  readonly tone: Tone
}

const WORD = 'PRACTICE'.length
/** Below this many columns the step number moves over the rule, to leave the words some room. */
const NARROW = 60

/** Drawn, and with few columns: what stood above is soon out of sight. */
export function isSmall({ width, linear }: SheetStyle): boolean {
  return linear !== true && width < NARROW
}

export function row(text: string, tone: Tone = 'plain'): Row {
  return { text, tone }
}

export function marginWidth(style: SheetStyle): number {
  return wordWidth(style) + (style.width < NARROW ? 2 : 9)
}

/** Every line of a job from paper says so, and has that much less room. */
function wordWidth({ record }: SheetStyle): number {
  return Math.max(WORD, record.length)
}

export function textWidth(style: SheetStyle): number {
  return Math.max(12, style.width - marginWidth(style))
}

/** Lines of a block, none wider than the sheet. */
export function layOut(block: Block, style: SheetStyle): Line[] {
  const width = textWidth(style)
  const narrow = style.width < NARROW
  const lines: Line[] = []
  const [first, ...rest] = block.rows
  if (first === undefined) return []
  // Where the words begin with a number too, the two would read as one.
  const number = narrow && block.margin !== '' ? `${block.margin}${/^\d/.test(first.text) ? ':' : ''}  ` : ''
  // The right-hand column stands beside the first row where that leaves it enough room, else on a line of its own.
  const right = cut(clean(block.right ?? ''), width)
  const beside = right !== '' && width - widthOf(right) - 2 >= 20
  for (const [i, r] of [first, ...rest].entries()) {
    const words = clean(i === 0 ? number + r.text : r.text)
    // Wide gaps between figures would part them where columns are few.
    const text = narrow && r.keep === undefined ? words.replace(/(?<=\S) {3,}(?=\S)/g, '  ') : words
    const room = i === 0 && beside ? width - widthOf(right) - 2 : width
    const pieces =
      r.keep === 'words'
        ? [cutWords(text, room)]
        : r.keep === true
          ? [cut(text, room)]
          : wrapped(text, room, narrow)
    for (const piece of pieces)
      lines.push({ margin: margin('', style), text: style.ascii ? asciiTwin(piece) : piece, tone: r.tone })
  }
  const [head, ...tail] = lines
  if (head === undefined) return []
  const marked = { ...head, margin: margin(narrow ? '' : block.margin, style) }
  if (right === '') return [marked, ...tail]
  // Over it, so that what was taken is the last line: on a small screen often the only one in sight.
  if (!beside) {
    // By columns: what is keyed in other scripts is wider than it has characters.
    const set = ' '.repeat(Math.max(0, width - widthOf(right))) + right
    return [{ margin: margin('', style), text: set, tone: 'faint' }, marked, ...tail]
  }
  const gap = width - widthOf(head.text) - widthOf(right)
  return [{ ...marked, text: head.text + ' '.repeat(gap) + right }, ...tail]
}

/** A figure and its unit; few columns part them most often. */
const UNIT =
  /(?<=\d) (?=(?:in|mm|um|ft|psig?|bar|kPa|MPa|deg[CF]|%|ppm|h|min|s|rpm|lb|lbf|kg|N|kN|hp|kW)(?:[\s.,;:)]|$|vol|LEL))/g
/** No other text has it: what was held together goes back to a space. */
const HELD = '\u2007'

/** How far repeats lie apart is one figure with its word; so is a figure with its unit on a narrow sheet. */
function wrapped(text: string, room: number, narrow: boolean): string[] {
  const held = text.replace(/\bspread (?=\d)/g, `spread${HELD}`)
  return wrap(narrow ? held.replace(UNIT, HELD) : held, room, 2).map((line) => line.replaceAll(HELD, ' '))
}

function margin(number: string, style: SheetStyle): string {
  const rule = marginRule(style.ascii)
  const word = style.record.padEnd(wordWidth(style))
  return style.width < NARROW ? `${word}${rule} ` : `${word} ${number.padStart(5)} ${rule} `
}

export function plainText(lines: readonly Line[]): string {
  return lines.map((l) => (l.margin + l.text).trimEnd()).join('\n')
}
