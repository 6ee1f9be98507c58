// What the YAML parser found wrong, in our own words. Its codes are known; its sentences are for programmers.
import type { Document, LineCounter, YAMLError } from 'yaml'
import { quote } from '../core/lib/wording.ts'
import type { Diagnostic } from './diagnostic.ts'
import { lineAt, wordAt } from './screen-nodes.ts'
import type { Place, Span } from './span.ts'
import { onlyFirstIndent } from './yaml-indent.ts'
import { firstKeyLike, openBracket, openQuote } from './yaml-tree.ts'

interface Words {
  readonly code: string
  readonly say: string
  readonly hint?: string
}

const WORDS: Readonly<Record<string, Words>> = {
  TAB_AS_INDENT: {
    code: 'tab',
    say: 'A tab stands in the indent.',
    hint: 'indent with spaces, two for each level',
  },
  MULTIPLE_DOCS: {
    code: 'several-documents',
    say: 'A second document starts here, and a file holds one.',
    hint: 'delete the --- or ... line, or make a second file',
  },
  BLOCK_AS_IMPLICIT_KEY: {
    code: 'colon',
    say: 'A key stands here inside the value of another key.',
    hint: 'put text that holds a colon and a space in quotes, or check the indent',
  },
  MULTILINE_IMPLICIT_KEY: {
    code: 'indent',
    say: 'This runs on into the next line as if it were one text.',
    hint: 'check the indent of the next line',
  },
  BAD_INDENT: {
    code: 'indent',
    say: 'The indent does not fit the lines above.',
    hint: 'keys of one level start in one column',
  },
  BAD_SCALAR_START: {
    code: 'first-character',
    say: 'A value cannot begin with this character.',
    hint: 'put the value in quotes',
  },
  BAD_DQ_ESCAPE: {
    code: 'escape',
    say: 'This backslash begins nothing that is known.',
    hint: 'use single quotes, where a backslash is a backslash',
  },
  TAG_RESOLVE_FAILED: {
    code: 'tag',
    say: 'A tag stands here, and files have no use for them.',
    hint: 'put text that begins with ! in quotes',
  },
  BAD_DIRECTIVE: {
    code: 'directive',
    say: 'A line that begins with % is an instruction to YAML, and this one is not known.',
    hint: 'delete the line',
  },
  MULTIPLE_ANCHORS: { code: 'anchor', say: 'A second anchor stands on one value.' },
  BAD_ALIAS: {
    code: 'anchor',
    say: 'An anchor or alias without a name stands here.',
    hint: 'put text that begins with & or * in quotes',
  },
  KEY_OVER_1024_CHARS: { code: 'long-key', say: 'This key is longer than 1024 characters.' },
  UNEXPECTED_TOKEN: {
    code: 'unexpected',
    say: 'This does not belong to what stands in front of it.',
    hint: 'check the indent, quotes and brackets here and on the line above',
  },
}

interface Text {
  readonly doc: Document
  readonly text: string
  readonly lines: LineCounter
  readonly at: (span: Span) => Place
}

/**
 * The diagnostics of all errors and warnings of the parser; its warnings are errors to us. One slip makes it complain
 * several times over, so of each line the first complaint is kept, and of a file with
 * tabs in the indent or a quote left open nothing else: both upset all that follows.
 */
export function describeYamlErrors(errors: readonly YAMLError[], source: Text): Diagnostic[] {
  const causes = [errors.filter((one) => one.code === 'TAB_AS_INDENT'), errors.filter(isOpenQuote)]
  const cause = causes.find((some) => some.length > 0)
  // A line indented too deep runs on from the line above, and only that of the two complaints tells where it ends.
  const runOn = new Set(
    errors.filter((one) => one.code === 'MULTILINE_IMPLICIT_KEY').map((one) => one.pos[0]),
  )
  const useful = errors.filter((one) => one.code !== 'BLOCK_AS_IMPLICIT_KEY' || !runOn.has(one.pos[0]))
  const described = (cause ?? useful).map((one) => describe(one, source))
  const sorted = described.sort((a, b) => a.line - b.line || a.column - b.column)
  const first = sorted.filter((one, n) => one.line !== sorted[n - 1]?.line)
  return cause === undefined ? onlyFirstIndent(first, source.text) : first
}

function describe(error: YAMLError, source: Text): Diagnostic {
  const { span, code, say, hint } = wordsFor(error, source)
  const tail = hint === undefined ? {} : { hint }
  return { ...source.at(span), code, message: say, severity: 'error', ...tail }
}

function wordSpan(text: string, start: number): Span {
  const [from, to] = wordAt(text, start)
  return [from, text[to - 1] === ':' && to - from > 1 ? to - 1 : to]
}

function wordsFor(error: YAMLError, source: Text): Words & { readonly span: Span } {
  const { text, doc, lines } = source
  const start = Math.min(error.pos[0], text.length)
  const span = wordSpan(text, start)
  const word = text.slice(...span)
  if (error.code === 'DUPLICATE_KEY') {
    const first = firstKeyLike(doc, start)
    const hint = first === undefined ? 'keep one' : `it stands already at line ${lines.linePos(first).line}`
    return { span, code: 'repeated-key', say: `${named(word)} stands twice in one place.`, hint }
  }
  if (/flow (sequence|map)/i.test(error.message)) return unclosedBracket(error, source, span)
  if (error.code === 'MULTILINE_IMPLICIT_KEY') return runsOn(error, text, span)
  if (error.code === 'MISSING_CHAR') return missingCharacter(error, source, span)
  // Tabs and backslashes are marked alone; an instruction to YAML is its whole line.
  const isPoint = error.code === 'TAB_AS_INDENT' || error.code === 'BAD_DQ_ESCAPE'
  const wide = error.code === 'BAD_DIRECTIVE' ? lineAt(text, start) : span
  const words = WORDS[error.code] ?? { code: 'yaml', say: 'This cannot be read as YAML.' }
  return { ...words, span: isPoint ? [start, start + 1] : wide }
}

function unclosedBracket(error: YAMLError, source: Text, span: Span): Words & { readonly span: Span } {
  const close = /map/i.test(error.message) ? '}' : ']'
  const open = close === '}' ? '{' : '['
  const start = openBracket(source.doc, source.text, error.pos[0], open)
  const say = `The bracket ${open} is never closed.`
  return {
    span: start === undefined ? span : [start, start + 1],
    code: 'bracket',
    say,
    hint: `close it with ${close}`,
  }
}

/** A text that goes on in the next line: a colon without its space, or a next line indented too deep. */
function runsOn(error: YAMLError, text: string, span: Span): Words & { readonly span: Span } {
  const word = text.slice(...span)
  if (hasTightColon(word)) return noColon(word, span)
  const ran = text.slice(error.pos[0], error.pos[1])
  const next = error.pos[0] + ran.lastIndexOf('\n') + 1
  const indent = /^ */.exec(text.slice(next))?.[0].length ?? 0
  const where = ran.includes('\n') ? wordSpan(text, next + indent) : span
  const say = `${named(text.slice(...where))} is indented deeper than the line above it allows.`
  return { span: where, code: 'indent', say, hint: 'keys of one level start in one column' }
}

function missingCharacter(error: YAMLError, source: Text, span: Span): Words & { readonly span: Span } {
  const word = source.text.slice(...span)
  if (isOpenQuote(error)) {
    const start = openQuote(source.doc, error.pos[0]) ?? span[0]
    return { span: [start, start + 1], code: 'quote', say: 'The quote that begins here is never closed.' }
  }
  if (/map values/.test(error.message)) return noColon(word, span)
  const hint = 'look for a comma, bracket or colon'
  return { span, code: 'missing-character', say: 'A character is missing here.', hint }
}

function named(word: string): string {
  return word.trim() === '' ? 'A key without a name' : quote(word)
}

function isOpenQuote(error: YAMLError): boolean {
  return error.code === 'MISSING_CHAR' && /quote/.test(error.message)
}

function hasTightColon(word: string): boolean {
  return /^[A-Za-z_]\w*:[^\s/]/.test(word)
}

function noColon(word: string, span: Span): Words & { readonly span: Span } {
  const hint = 'a key is followed by a colon and a space'
  const say = hasTightColon(word)
    ? `${named(word)} has no space behind its colon.`
    : `${named(word)} is followed by no colon and space.`
  return { span, code: 'no-colon', say, hint }
}
