// The line being keyed, as a pure reducer: characters, pastes, bursts from a gauge that types for itself, and the keys
// that move and erase. Knows no terminal; every chunk comes in as it was read.
import { isStop } from '../core/talk/words.ts'

export interface Editor {
  readonly text: string
  /** Caret, in graphemes from the start. */
  readonly caret: number
  /** Inside a bracketed paste that has not ended yet. */
  readonly pasting: boolean
}

export const BLANK: Editor = { text: '', caret: 0, pasting: false }

export type Key =
  | { readonly kind: 'chunk'; readonly text: string }
  | { readonly kind: 'enter' | 'erase-left' | 'erase-all' | 'left' | 'right' | 'home' | 'end' }

export interface Edited {
  readonly editor: Editor
  /** A whole line to be heard, or null. */
  readonly submit: string | null
}

/** Longest line that makes sense; what is pasted beyond it is dropped. */
const MOST = 500
const PASTE_START = '[200~'
const PASTE_END = '[201~'

/** `scan`: at this prompt a burst that ends in a carriage return, as a gauge or scanner types it, counts as a line. */
export function edit(editor: Editor, key: Key, scan: boolean): Edited {
  const keep = (change: Partial<Editor>): Edited => ({ editor: { ...editor, ...change }, submit: null })
  const parts = graphemes(editor.text)
  switch (key.kind) {
    case 'enter':
      // A return inside a paste is text like any other.
      return editor.pasting ? insert(editor, ' ') : { editor: BLANK, submit: editor.text }
    case 'erase-left': {
      if (editor.caret === 0) return keep({})
      return keep({
        text: [...parts.slice(0, editor.caret - 1), ...parts.slice(editor.caret)].join(''),
        caret: editor.caret - 1,
      })
    }
    case 'erase-all':
      return keep({ text: '', caret: 0 })
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
  // The one key: at the start of an empty line it is STOP at once.
  if (text === '!' && editor.text === '' && !editor.pasting) return { editor: BLANK, submit: '!' }
  const pieces = text.split(/(\[20[01]~)/)
  let at = editor
  let pasted = editor.pasting
  let plain = ''
  for (const piece of pieces) {
    if (piece === PASTE_START || piece === PASTE_END) {
      at = { ...at, pasting: piece === PASTE_START }
      pasted = true
    } else {
      plain += piece
      at = insert(at, piece).editor
    }
  }
  const ended = /[\r\n]\s*$/.test(plain)
  if (!ended || at.pasting) return { editor: at, submit: null }
  // Typed faster than the terminal read it, or by a gauge. Never taken as a line where evidence is asked for, but STOP is STOP.
  const line = at.text.trim()
  if (isStop(line) || (scan && !pasted)) return { editor: BLANK, submit: line }
  return { editor: at, submit: null }
}

function insert(editor: Editor, raw: string): Edited {
  // Line ends become spaces; the other control characters and stray escape sequences are dropped.
  const text = raw.replace(/[\r\n\t]+/g, ' ').replace(/[\u0000-\u001f\u007f]/g, '')
  const parts = graphemes(editor.text)
  const before = parts.slice(0, editor.caret).join('')
  const after = parts.slice(editor.caret).join('')
  const room = Math.max(0, MOST - parts.length)
  const added = graphemes(text).slice(0, room).join('')
  const joined = before + added
  return { editor: { ...editor, text: joined + after, caret: graphemes(joined).length }, submit: null }
}

export function graphemes(text: string): string[] {
  return [...new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text)].map((s) => s.segment)
}
