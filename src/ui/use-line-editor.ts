// The line being keyed on the screen, and whether it may be seen. A PIN must show nowhere: not while it is keyed, not when
// its question is gone, and not when it is keyed ahead of its question.
import { useCallback, useReducer, useRef } from 'react'
import type { PromptView } from '../core/sheet/prompt-view.ts'
import { isHidden, type Secrecy } from '../core/talk/ask.ts'
import { isMakeSafe, isStop, wordIn } from '../core/talk/words.ts'
import { BLANK, type Editor, edit, type Key } from './line-editor.ts'

export interface KeyedLine {
  readonly editor: Editor
  /** Nothing of it may be drawn. */
  readonly hidden: boolean
  readonly press: (key: Key) => void
}

/**
 * A reducer holds the line, so that several reads in one turn of the event loop lose no character. While a line before is
 * still being taken nobody knows what the next one will answer: it may be a PIN, and no gauge may answer with it.
 */
export function useLineEditor(
  promptNow: () => PromptView,
  tooSmall: boolean,
  submit: (line: string, unseen: boolean) => Promise<void>,
): KeyedLine {
  const held = useRef<Editor>(BLANK)
  /** Some of the line was keyed where a PIN is asked, or before it is known whether one is: figures of it are not drawn. */
  const unseen = useRef(false)
  const keyedAt = useRef<Secrecy>('open')
  const waiting = useRef(0)
  const [, redraw] = useReducer((n: number) => n + 1, 0)

  const press = useCallback(
    (key: Key) => {
      const { secrecy, scan } = promptNow()
      // Half a PIN must never turn up as an answer to the question that took its place.
      if (keyedAt.current === 'hidden' && secrecy === 'digits') held.current = BLANK
      keyedAt.current = secrecy
      unseen.current = unseen.current || secrecy !== 'open' || waiting.current > 0
      const edited = edit(held.current, key, scan && waiting.current === 0)
      held.current = edited.editor
      const line = edited.submit
      if (line === null) return redraw()
      const wasUnseen = unseen.current
      unseen.current = false
      // What cannot be seen cannot be answered.
      if (tooSmall && !isStop(line) && !isMakeSafe(line) && wordIn(line) !== 'leave') return redraw()
      waiting.current++
      submit(line, wasUnseen).finally(() => {
        waiting.current--
        redraw()
      })
      redraw()
    },
    [promptNow, tooSmall, submit],
  )
  const { secrecy } = promptNow()
  const editor = keyedAt.current === 'hidden' && secrecy === 'digits' ? BLANK : held.current
  const { text } = editor
  const hidden = isHidden(secrecy, text) || (unseen.current && isHidden('digits', text))
  return { editor, hidden, press }
}
