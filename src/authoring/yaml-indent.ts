// One line in a wrong column makes the parser complain of every line behind it. Here that becomes one problem, at the
// first word of that line, with the column it was meant to start in.
import { quote } from '../core/lib/wording.ts'
import type { Diagnostic } from './diagnostic.ts'

/** Codes that a slip in the indent brings about on the lines behind it. */
const FOLLOW_ONS = ['indent', 'missing-character', 'colon', 'unexpected']

/** `found` in the order of the file. All that follows from the first slip in the indent is left out. */
export function onlyFirstIndent(found: readonly Diagnostic[], text: string): Diagnostic[] {
  const lines = text.split(/\r?\n/)
  const first = found.findIndex((one) => isIndent(one, lines))
  const slip = found[first]
  if (slip === undefined) return [...found]
  const others = found.slice(first + 1).filter((one) => !FOLLOW_ONS.includes(one.code))
  return [...found.slice(0, first), located(slip, lines), ...others]
}

/** The complaint is about an indent, or stands in one, with nothing but spaces in front of it. */
function isIndent({ code, line, column }: Diagnostic, lines: readonly string[]): boolean {
  if (code === 'indent') return true
  const before = (lines[line - 1] ?? '').slice(0, column)
  return (code === 'missing-character' || code === 'colon') && before.trim() === ''
}

interface Start {
  readonly line: number
  /** From 1; of a key behind a dash, its own. */
  readonly column: number
  readonly isDash: boolean
  readonly word: string
}

function located(slip: Diagnostic, lines: readonly string[]): Diagnostic {
  const at = lines.findIndex((line, n) => n >= slip.line - 1 && isContent(line))
  const [own] = at === -1 ? [] : startsOf(lines[at] ?? '', at + 1)
  const { file } = slip
  const general = {
    code: 'indent',
    severity: 'error',
    hint: 'keys of one level start in one column',
  } as const
  if (own === undefined) return { ...slip, ...general, message: 'The indent does not fit the lines above.' }
  const word = own.isDash ? 'This dash' : quote(own.word)
  const place = { file, line: own.line, column: own.column, endColumn: own.column + own.word.length }
  const fellow = fellowOf(own, lines)
  if (fellow === undefined && slip.code === 'indent' && isAtWord(slip, lines)) return slip
  if (fellow === undefined)
    return { ...place, ...general, message: `${word} starts in a column that does not fit the lines above.` }
  const message = `${word} starts in column ${own.column}, and its level in column ${fellow.column}.`
  const hint = `put it in column ${fellow.column}, under ${fellow.isDash ? 'the dash' : quote(fellow.word)} of line ${fellow.line}`
  return { ...place, ...general, message, hint }
}

function isAtWord({ line, column }: Diagnostic, lines: readonly string[]): boolean {
  return /\S/.test((lines[line - 1] ?? '').charAt(column - 1))
}

function isContent(line: string): boolean {
  return /^\s*[^\s#]/.test(line)
}

/** The nearest line above whose key, or whose dash, starts one column to the left or right. */
function fellowOf(own: Start, lines: readonly string[]): Start | undefined {
  for (let n = own.line - 2; n >= 0; n -= 1) {
    const line = lines[n] ?? ''
    if (!isContent(line)) continue
    const fellow = startsOf(line, n + 1).find(
      (one) => one.isDash === own.isDash && Math.abs(one.column - own.column) === 1,
    )
    if (fellow !== undefined) return fellow
  }
  return undefined
}

/** Where the dash of a line starts, and where its key or first word does. */
function startsOf(text: string, line: number): Start[] {
  const parts = /^( *)(?:(- +)?([\w.]+)(?=\s*:(?:\s|$))|(-)(?=\s|$)|(\S+))/.exec(text)
  if (parts === null) return []
  const [, indent = '', dash, key, lone, other] = parts
  const column = indent.length + 1
  if (lone !== undefined) return [{ line, column, isDash: true, word: '-' }]
  if (key === undefined) return other === undefined ? [] : [{ line, column, isDash: false, word: other }]
  const own = { line, column: column + (dash?.length ?? 0), isDash: false, word: key }
  return dash === undefined ? [own] : [{ line, column, isDash: true, word: '-' }, own]
}
