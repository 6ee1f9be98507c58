// The line being keyed, as a pure reducer: characters, pastes, bursts from a gauge that types for itself, and the keys
// that move and erase. Knows no terminal; every chunk comes in as it was read.
import { widthOf, withoutUnseen } from '../core/lib/text.ts'
import { isMakeSafe, isStop } from '../core/talk/words.ts'

export interface Editor {
  readonly text: string
  /** Caret, in graphemes from the start. */
  readonly caret: number
  /** Inside a bracketed paste that has not ended yet. */
  readonly pasting: boolean
  /** More came than the line holds, and none of it was erased since: what is seen is not all that was sent. */
  readonly full: boolean
}

export const BLANK: Editor = { text: '', caret: 0, pasting: false, full: false }

export type Key =
  | { readonly kind: 'chunk'; readonly text: string }
  | { readonly kind: 'enter' | 'erase-left' | 'erase-all' | 'left' | 'right' | 'home' | 'end' }

export interface Edited {
  readonly editor: Editor
  /** A whole line to be heard, or null. */
  readonly submit: string | null
}

/** Longest line that makes sense, in UTF-16 units; what is pasted beyond it is dropped. */
export const MOST = 500
const PASTE_START = '[200~'
const PASTE_END = '[201~'

/** `scan`: at this prompt a burst that ends in a carriage return, as a gauge or scanner types it, counts as a line. */
export function edit(editor: Editor, key: Key, scan: boolean): Edited {
  const keep = (change: Partial<Editor>): Edited => ({ editor: { ...editor, ...change }, submit: null })
  const parts = graphemes(editor.text)
  switch (key.kind) {
    case 'enter':
      // A return inside a paste is text like any other; but no lost end of a paste may ever hold back a STOP.
      if (editor.pasting && !isStop(editor.text)) return { editor: insert(editor, ' '), submit: null }
      return { editor: BLANK, submit: editor.text }
    case 'erase-left': {
      if (editor.caret === 0) return keep({})
      const before = parts.slice(0, editor.caret - 1)
      return keep({
        text: [...before, ...parts.slice(editor.caret)].join(''),
        caret: before.length,
        full: false,
      })
    }
    case 'erase-all':
      // A terminal that lost the end of a paste is brought round by this too.
      return keep(BLANK)
    case 'left':
      return keep({ caret: Math.max(0, editor.caret - 1) })
    case 'right':
      return keep({ caret: Math.min(parts.length, editor.caret + 1) })
    case 'home':
      return keep({ caret: 0 })
    case 'end':
      return keep({ caret: parts.length })
    case 'chunk':
      return chunk(editor, key.text, scan)
  }
}

function chunk(editor: Editor, text: string, scan: boolean): Edited {
  // The one key: at the start of an empty line it is STOP at once, also when a held key comes as several.
  if (/^!+$/.test(text) && editor.text === '' && !editor.pasting) return { editor: BLANK, submit: '!' }
  let at = editor
  let typed = ''
  for (const piece of text.split(/(\[20[01]~)/)) {
    if (piece === PASTE_START || piece === PASTE_END) {
      at = { ...at, pasting: piece === PASTE_START }
      typed = ''
    } else {
      if (!at.pasting) typed += piece
      at = insert(at, piece)
    }
  }
  if (!/[\r\n]\s*$/.test(typed)) return { editor: at, submit: null }
  // Typed faster than the terminal read it, or by a gauge. Never taken as a line where evidence is asked for, but STOP
  // is STOP, whatever was half keyed before it; so is the call for the make-safe sheet.
  if (isStop(typed) || isMakeSafe(typed)) return { editor: BLANK, submit: typed.trim() }
  const line = at.text.trim()
  if (isStop(line) || isMakeSafe(line) || scan) return { editor: BLANK, submit: line }
  return { editor: at, submit: null }
}

function insert(editor: Editor, raw: string): Editor {
  // Line ends become spaces; the other control characters are dropped. Far more than fits is not even looked at.
  const looked = raw.slice(0, 4 * MOST)
  const text = withoutUnseen(looked.replace(/[\r\n\t\u2028\u2029]+/g, ' '))
  const parts = graphemes(editor.text)
  const before = parts.slice(0, editor.caret).join('')
  const after = parts.slice(editor.caret).join('')
  let room = MOST - editor.text.length
  let added = ''
  for (const one of graphemes(text)) {
    room -= one.length
    if (room < 0) break
    added += one
  }
  const joined = before + added
  const full = editor.full || room < 0 || looked.length < raw.length
  return { ...editor, text: joined + after, caret: graphemes(joined).length, full }
}

export function graphemes(text: string): string[] {
  return [...new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text)].map((s) => s.segment)
}

export interface EditorView {
  readonly before: string
  /** The grapheme under the caret, or a space past the end. */
  readonly at: string
  readonly after: string
}

/** The part of the line around the caret that fits into `width` columns: all before the caret that it can. */
export function viewOf({ text, caret }: Editor, width: number): EditorView {
  const parts = graphemes(text)
  const at = parts[caret] ?? ' '
  let room = width - widthOf(at)
  let from = caret
  for (; from > 0; from--) {
    room -= widthOf(parts[from - 1] ?? '')
    if (room < 0) break
  }
  let to = caret + 1
  for (; to < parts.length; to++) {
    room -= widthOf(parts[to] ?? '')
    if (room < 0) break
  }
  return { before: parts.slice(from, caret).join(''), at, after: parts.slice(caret + 1, to).join('') }
}
