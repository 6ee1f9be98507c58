// One problem in one file, at one place, and how it is shown to the author. Plain ASCII marks; no colour here.

import { COLUMNS, wrapWords } from './wrap-words.ts'

export interface Diagnostic {
  readonly file: string
  /** From 1. */
  readonly line: number
  /** From 1, in characters as editors count them (UTF-16). */
  readonly column: number
  /** First column behind the span, on the same line; always beyond `column`. */
  readonly endColumn: number
  /** Small letters and dashes. */
  readonly code: string
  /** One sentence about the author's own word. */
  readonly message: string
  readonly hint?: string
  readonly severity: 'error' | 'warning'
}

/** Most problems shown for one file; the rest are mostly follow-ons, and are there after these are put right. */
export const MOST_SHOWN = 20

/**
 * The problems of one file in the order of the file, one of a kind at each span (an error before a warning), and at
 * most `most` of them: the last one then says how many more there are.
 */
export function tidy(diagnostics: readonly Diagnostic[], most: number = MOST_SHOWN): Diagnostic[] {
  const seen = new Set<string>()
  const kept = [...diagnostics].sort(compare).filter((one) => {
    const key = `${one.line}:${one.column}:${one.endColumn} ${one.code} ${one.message}`
    const isNew = !seen.has(key)
    seen.add(key)
    return isNew
  })
  const [next, ...others] = kept.slice(most)
  if (next === undefined) return kept
  const more = 1 + others.length
  const severity = [next, ...others].some((one) => one.severity === 'error') ? 'error' : 'warning'
  const { hint: _hint, ...place } = next
  return [
    ...kept.slice(0, most),
    { ...place, code: 'more', message: `From here on, and ${more} more.`, severity },
  ]
}

function compare(a: Diagnostic, b: Diagnostic): number {
  const rank = (one: Diagnostic) => (one.severity === 'error' ? 0 : 1)
  return a.line - b.line || a.column - b.column || a.endColumn - b.endColumn || rank(a) - rank(b)
}

const UNSEEN = /[\p{C}\p{Zl}\p{Zp}]/u

/** `text` with every character that cannot be seen, or that could move the cursor, shown as `?`. */
export function visible(text: string): string {
  return text.replace(/\t/g, ' ').replace(new RegExp(UNSEEN, 'gu'), '?')
}

const INDENT = '    '
/** Columns of a line kept free of the source line, and the fewest it is given. */
const SPARE = 6
const LEAST_ROOM = 34
/** Columns of the line shown in front of the span when the line is too long. */
const LEAD = 24

/**
 * Three or four lines: `file:line:column  code  sentence`, the source line trimmed around the span, the span
 * underlined, and `hint: ...` if there is one. A warning says so in front of its sentence. Sentences are wrapped at
 * `columns`, with what follows set in.
 */
export function renderDiagnostic(d: Diagnostic, sourceLine: string, columns: number = COLUMNS): string {
  const label = d.severity === 'warning' ? 'warning: ' : ''
  const head = visible(`${d.file}:${d.line}:${d.column}  ${d.code}  ${label}${d.message}`)
  const lines = [wrapWords(head, columns, 2)]
  const cut = window(
    [...sourceLine],
    charactersBefore(sourceLine, d.column),
    charactersBefore(sourceLine, d.endColumn),
    Math.max(LEAST_ROOM, columns - SPARE),
  )
  if (cut.text.trim() !== '') lines.push(`${INDENT}${cut.text}`.trimEnd(), `${INDENT}${cut.underline}`)
  if (d.hint !== undefined) lines.push(wrapWords(visible(`  hint: ${d.hint}`), columns, '  hint: '.length))
  return lines.join('\n')
}

/** Line `line` (from 1) of a text, without its line end. */
export function sourceLine(text: string, line: number): string {
  return text.split(/\r?\n/)[line - 1] ?? ''
}

function charactersBefore(line: string, column: number): number {
  return [...line.slice(0, column - 1)].length
}

/** Cuts the characters down to the room, keeping the span's start in view, and draws the line under the span. */
function window(
  characters: readonly string[],
  start: number,
  end: number,
  room: number,
): { text: string; underline: string } {
  const indent = characters.findIndex((character) => character.trim() !== '')
  const base = Math.max(0, Math.min(indent, start))
  const isLong = widthOf(characters.slice(base)) > room
  // Near the end of the line, more of what stands in front is shown.
  const shifted = Math.min(start - LEAD, characters.length - (room - 2 * 3))
  const isCut = isLong && shifted > base
  const from = isCut ? shifted : base
  const lead = isCut ? '...' : ''
  let to = from
  while (to < characters.length && widthOf(characters.slice(from, to + 1)) <= room - 2 * 3) to += 1
  if (!isLong) to = characters.length
  const tail = to < characters.length ? '...' : ''
  const before = lead.length + widthOf(characters.slice(from, start))
  const length = Math.max(1, widthOf(characters.slice(start, Math.min(end, to))))
  const text = lead + visible(characters.slice(from, to).join('')) + tail
  return { text, underline: ' '.repeat(before) + '^'.repeat(length) }
}

/** Columns a terminal gives to the characters: none to a combining mark, two to East Asian wide ones and pictures. */
function widthOf(characters: readonly string[]): number {
  let columns = 0
  for (const character of characters) {
    if (/\p{M}/u.test(character)) continue
    columns +=
      /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff01-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}|[\u{20000}-\u{3fffd}]/u.test(
        character,
      )
        ? 2
        : 1
  }
  return columns
}
