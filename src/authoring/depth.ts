// How deep a text nests, found without recursion, before the parser is let loose on it: some thousand brackets inside
// one another end the whole process inside the library, where nothing can be caught (seen with yaml 2.9.1, Node 20).
import { Lexer } from 'yaml'

/** Levels of brackets, or of dashes on one line. An honest file has three or four. */
export const MOST_LEVELS = 64
/** Columns of indent, which bound the levels of keys. */
const MOST_INDENT = 256

/** Offset of the first place that is too deep, or undefined. */
export function tooDeepAt(text: string): number | undefined {
  let brackets = 0
  let dashes = 0
  let offset = 0
  for (const token of new Lexer().lex(text)) {
    if (token === '[' || token === '{') brackets += 1
    else if (token === ']' || token === '}') brackets = Math.max(0, brackets - 1)
    // Between brackets these nest nothing.
    else if (brackets === 0 && (token === '-' || token === '?' || token === ':')) dashes += 1
    else if (token.includes('\n')) dashes = 0
    if (brackets > MOST_LEVELS || dashes > MOST_LEVELS) return Math.min(offset, text.length)
    // The lexer's own marks (scalar, document) stand for no text.
    if (!/^[\u0002\u0018\u001f]$/.test(token)) offset += token.length
  }
  return new RegExp(`^ {${MOST_INDENT},}(?=\\S)`, 'm').exec(text)?.index
}
