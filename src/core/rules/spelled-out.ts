// Joins written as words, or as in another language: what a rule has instead of them.
import type { Range } from './types.ts'

export interface SpelledOut {
  readonly range: Range
  readonly hint: string
}

const NOT = 'write != in a comparison, or ! before one in brackets'
const INSTEAD: ReadonlyMap<string, string> = new Map([
  ['and', 'write && for and'],
  ['or', 'write || for or'],
  ['not', NOT],
  ['is', 'write == for is, and != for is not'],
  ['&', 'write && for and'],
  ['|', 'write || for or'],
])

/** What was meant by the text at `range`, where the reader of rules stopped, or by the word before it. */
export function spelledOut(text: string, range: Range): SpelledOut | undefined {
  const instead = INSTEAD.get(text.slice(range.start, range.end).toLowerCase())
  if (instead !== undefined) return { range, hint: instead }
  const before = text.slice(0, range.start)
  const not = /\bnot\s+$/i.exec(before)
  if (not !== null) return { range: { start: not.index, end: not.index + 3 }, hint: NOT }
  if (text[range.start] !== '>' || !before.endsWith('<')) return undefined
  return { range: { start: range.start - 1, end: range.end }, hint: 'write != for unequal' }
}

/** For `not(...)`, which reads as a call. */
export function calledNot(name: string): string | undefined {
  return name.toLowerCase() === 'not' ? NOT : undefined
}
