// The sheet for people who hear it: a row is a line, whole, with no margin, no columns and no boxes. What is on record, and each
// heading, begins with the record's word.
import { asciiTwin, clean } from '../lib/text.ts'
import { type Block, layOut, plainText, type Row, type SheetStyle } from './block.ts'

/** `[x] lock at the driver` is done, `[ ]` is open; any other box is its own word. */
export function boxesInWords(text: string): string {
  return text
    .replace(/^\[ \] then (\d+ more)(?: \(word: show\))?$/, 'Then $1.')
    .replace(/\[x\]/g, 'Done:')
    .replace(/\[ \]/g, 'Open:')
    .replace(/\[(\w+)\]/g, (_box, word: string) => `${word.charAt(0).toUpperCase()}${word.slice(1)}:`)
}

/** What stands in columns, one behind the other: the first of them names the others where it is words alone. */
function inOneRun(text: string): string {
  return text
    .trim()
    .replace(/^(\d+) {2,}/, '$1: ')
    .replace(/\blimit {2,}/g, 'limit ')
    .replace(/^([A-Za-z][A-Za-z -]*?|(?:Done|FAILED|Open): .*?) {2,}/, '$1: ')
    .replace(/([;:,]) {2,}/g, '$1 ')
    .replace(/ {2,}/g, ', ')
}

export function linearText({ text, tone }: Row, style: SheetStyle): string {
  const stamp = tone === 'stamp' ? /^\( (\w+) \)$/.exec(text)?.[1] : undefined
  const said = clean(stamp === undefined ? inOneRun(boxesInWords(text)) : `Verdict: ${stamp}`)
  return style.ascii ? asciiTwin(said) : said
}

/** `EXAMPLE. ` before what it says, unless it begins with that word by itself. */
export function marked(text: string, { record }: SheetStyle): string {
  return text.startsWith(`${record}:`) ? text : `${record}. ${text}`
}

/** Rows as lines, not marked: one that alone is set in under another is the end of that one's line. */
export function linearLines(rows: readonly Row[], style: SheetStyle): string[] {
  const isSetIn = (one: Row | undefined) => one?.text.startsWith('  ') === true
  const lines: string[] = []
  for (const [i, one] of rows.entries()) {
    const text = linearText(one, style)
    if (text === '') continue
    const isEnd = isSetIn(one) && !isSetIn(rows[i - 1]) && !isSetIn(rows[i + 1])
    const last = lines.at(-1)
    if (isEnd && last !== undefined) lines[lines.length - 1] = joined(last, text)
    else lines.push(text)
  }
  return lines
}

/** Two lines as one, the second behind what ends the first. */
export function joined(first: string, second: string): string {
  if (first === '') return second
  if (/[.!?:;]$/.test(first)) return `${first} ${second}`
  return `${first}${/^[a-z]/.test(second) ? ';' : '.'} ${second}`
}

/** A block as text: on a ruled sheet, or a marked line to each row for people who hear it. */
export function blockText(block: Block, style: SheetStyle): string {
  if (style.linear !== true) return plainText(layOut(block, style))
  return linearLines(block.rows, style)
    .map((text) => marked(text, style))
    .join('\n')
}
