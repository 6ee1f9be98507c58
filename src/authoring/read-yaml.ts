// YAML text to a document and plain values, or to located problems. Nothing here knows what the file is for.
// YAML 1.2 only, one document, no tags, no tricks: what an author sees is what is read.
import { type Document, LineCounter, parseDocument } from 'yaml'
import { tooDeepAt } from './depth.ts'
import type { Diagnostic } from './diagnostic.ts'
import { screenNodes } from './screen-nodes.ts'
import { type Place, place, type Span } from './span.ts'
import { describeYamlErrors } from './yaml-words.ts'

export interface YamlFile {
  readonly file: string
  readonly text: string
  readonly doc: Document
  readonly lines: LineCounter
  /** The plain values: objects, lists, text, numbers, true, false and null. */
  readonly value: unknown
}

export type YamlResult =
  | { readonly ok: true; readonly yaml: YamlFile; readonly warnings: readonly Diagnostic[] }
  | { readonly ok: false; readonly diagnostics: readonly Diagnostic[] }

/** 1 MiB of UTF-8; the longest honest procedure is a hundredth of that. */
export const MOST_BYTES = 1024 * 1024

/** Errors of the parser looked at; only twenty are shown. */
const MOST_ERRORS = 200

/** Reads one file. Never throws on any text. */
export function readYaml(text: string, file: string): YamlResult {
  const lines = countLines(text)
  const at = (span: Span): Place => place(file, text, lines, span)
  const refuse = (start: number, code: string, message: string, hint: string): YamlResult => {
    return { ok: false, diagnostics: [{ ...at([start, start + 1]), code, message, hint, severity: 'error' }] }
  }
  if (text.length > MOST_BYTES || new TextEncoder().encode(text).length > MOST_BYTES) {
    return refuse(0, 'too-large', 'This file is larger than 1 MiB.', 'check that it is the right file')
  }
  const hidden = hiddenCharacters(text, at)
  if (hidden.length > 0) return { ok: false, diagnostics: hidden }
  if (/^\ufeff?\s*$/.test(text)) {
    return refuse(0, 'empty', 'This file is empty.', 'check that it is the right file')
  }
  const deep = tooDeepAt(text)
  if (deep !== undefined) {
    const message = 'From here on too many levels stand inside one another.'
    return refuse(deep, 'too-deep', message, 'look for a bracket that is not closed')
  }
  return parse(text, file, lines, at)
}

/** Filled from the text itself: filled by the parser (yaml 2.9.1) it misses line ends inside what cannot be parsed. */
function countLines(text: string): LineCounter {
  const lines = new LineCounter()
  lines.addNewLine(0)
  for (const end of text.matchAll(/\n/g)) lines.addNewLine(end.index + 1)
  return lines
}

function parse(text: string, file: string, lines: LineCounter, at: (span: Span) => Place): YamlResult {
  // Undecorated messages: positions are wanted, not pictures.
  const doc = parseDocument(text, { prettyErrors: false, strict: true, uniqueKeys: true, version: '1.2' })
  const failures = [...doc.errors, ...doc.warnings].slice(0, MOST_ERRORS)
  if (failures.length > 0) {
    return { ok: false, diagnostics: describeYamlErrors(failures, { doc, text, lines, at }) }
  }
  const { errors, warnings } = screenNodes(doc, text, lines, at)
  if (errors.length > 0) return { ok: false, diagnostics: errors }
  try {
    return { ok: true, yaml: { file, text, doc, lines, value: doc.toJS() }, warnings }
  } catch (error) {
    // The library counts how far aliases unfold and throws this.
    if (!(error instanceof ReferenceError)) throw error
    const message = 'The aliases of this file unfold to more than can be read.'
    return { ok: false, diagnostics: [{ ...at([0, 1]), code: 'alias', message, severity: 'error' }] }
  }
}

/** Control, bidirectional and zero-width characters: an author cannot see them and a screen may obey them. */
function hiddenCharacters(text: string, at: (span: Span) => Place): Diagnostic[] {
  const pattern =
    /\r(?!\n)|[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2060-\u2069]|(?!^)\ufeff/g
  return [...text.matchAll(pattern)].slice(0, MOST_ERRORS).map((match) => {
    const code = match[0].codePointAt(0)?.toString(16).toUpperCase().padStart(4, '0')
    const message = `The character U+${code} stands here and cannot be seen.`
    const hint = 'delete it and type the text again'
    return {
      ...at([match.index, match.index + 1]),
      code: 'hidden-character',
      message,
      hint,
      severity: 'error',
    }
  })
}
