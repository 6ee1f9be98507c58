// The line being keyed on the screen, and whether it may be seen. A PIN must show nowhere: not while it is keyed, not when
// its question is gone, and not when it is keyed ahead of its question.
import { useCallback, useReducer, useRef } from 'react'
import type { Completion } from '../app/ports.ts'
import type { PromptView } from '../core/sheet/prompt-view.ts'
import { isHidden, type Secrecy } from '../core/talk/ask.ts'
import { BLANK, type Editor, edit, graphemes, type Key } from './line-editor.ts'
import { tabMeans } from './tab.ts'

export interface KeyedLine {
  readonly editor: Editor
  /** Nothing of it may be drawn. */
  readonly hidden: boolean
  readonly press: (key: Key) => void
  /** Tab, hit more than once at a time or not. */
  readonly tab: (again: boolean) => void
  /** Puts a line there to be looked at, as if it had just been keyed; false where something is keyed already. */
  readonly put: (text: string) => boolean
  /** What fits the path as far as it was completed; null where nothing was asked for since the last key. */
  readonly fits: readonly string[] | null
}

export interface TabWork {
  readonly complete: (typed: string) => Promise<Completion>
  readonly makeSafe: () => void
}

/**
 * A reducer holds the line, so that several reads in one turn of the event loop lose no character. While a line before is
 * still being taken nobody knows what the next one will answer: it may be a PIN, and no gauge may answer with it.
 * A line that `isHeldBack` is heard by nobody; `wasUnseen`: nothing of it may be drawn. `hasMore`: sides are still to be turned over.
 */
export function useLineEditor(
  promptNow: () => PromptView,
  tooSmall: boolean,
  hasMore: boolean,
  isHeldBack: (line: string, wasUnseen: boolean) => boolean,
  submit: (line: string, unseen: boolean) => Promise<void>,
  tabWork: TabWork,
): KeyedLine {
  const held = useRef<Editor>(BLANK)
  /** Some of the line was keyed where a PIN is asked, or before it is known whether one is: figures of it are not drawn. */
  const unseen = useRef(false)
  /** Some of it was keyed before all of what is asked was turned over: whoever did may believe that their PIN is asked already. */
  const early = useRef(false)
  const keyedAt = useRef<Secrecy>('open')
  const waiting = useRef(0)
  /** Tab was the last key; then what it brought, once that is known. */
  const tabbed = useRef<{ fits: readonly string[] | null } | null>(null)
  const [, redraw] = useReducer((n: number) => n + 1, 0)

  const press = useCallback(
    (key: Key) => {
      tabbed.current = null
      const { secrecy, scan } = promptNow()
      // Half a PIN must never turn up as an answer to the question that took its place.
      if (keyedAt.current === 'hidden' && isAfterPin(secrecy)) held.current = BLANK
      keyedAt.current = secrecy
      unseen.current = unseen.current || secrecy !== 'open' || waiting.current > 0
      early.current = early.current || hasMore
      const edited = edit(held.current, key, scan && waiting.current === 0)
      held.current = edited.editor
      const line = edited.submit
      if (held.current.text === '') early.current = false
      if (line === null) return redraw()
      const wasUnseen = unseen.current
      unseen.current = false
      if (isHeldBack(line, wasUnseen)) return redraw()
      waiting.current++
      submit(line, wasUnseen).finally(() => {
        waiting.current--
        redraw()
      })
      redraw()
    },
    [promptNow, hasMore, isHeldBack, submit],
  )
  const tab = useCallback(
    (again: boolean) => {
      const { text } = held.current
      const isAgain = again || tabbed.current !== null
      if (tabMeans({ path: promptNow().path, text, again: isAgain, tooSmall }) === 'safe') {
        tabbed.current = null
        return tabWork.makeSafe()
      }
      const asked = { fits: null as readonly string[] | null }
      tabbed.current = asked
      const take = (found: Completion) => {
        // Another key came, or another question.
        if (tabbed.current !== asked || !promptNow().path) return
        asked.fits = found.fits
        held.current = { ...BLANK, text: found.text, caret: graphemes(found.text).length }
        redraw()
      }
      tabWork.complete(text).then(take, () => take({ text, fits: [] }))
    },
    [promptNow, tooSmall, tabWork],
  )
  const put = useCallback((text: string) => {
    if (held.current.text !== '') return false
    held.current = { ...BLANK, text, caret: graphemes(text).length }
    redraw()
    return true
  }, [])
  const { secrecy } = promptNow()
  const editor = keyedAt.current === 'hidden' && isAfterPin(secrecy) ? BLANK : held.current
  const { text } = editor
  const hidden = isHidden(secrecy, text) || ((unseen.current || early.current) && isHidden('digits', text))
  return { editor, hidden, press, tab, put, fits: tabbed.current?.fits ?? null }
}

/** Where a PIN that is still being keyed may go on under its fallen question. */
const isAfterPin = (secrecy: Secrecy) => secrecy === 'digits' || secrecy === 'initials'
