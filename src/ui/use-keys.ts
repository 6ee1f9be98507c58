// From what the terminal sends to keys of the line editor.
import { type Key as InkKey, useInput } from 'ink'
import type { Key } from './line-editor.ts'

/** Control-C comes apart: it is no key of the line. */
export function useKeys(onKey: (key: Key) => void, onInterrupt: () => void): void {
  useInput((input, key) => {
    if (key.ctrl && input === 'c') return onInterrupt()
    const named = nameKey(input, key)
    if (named !== null) onKey(named)
  })
}

export function nameKey(input: string, key: InkKey): Key | null {
  if (key.return) return { kind: 'enter' }
  // Terminals send the same byte for both; there is no forward delete here.
  if (key.backspace || key.delete) return { kind: 'erase-left' }
  if (key.leftArrow) return { kind: 'left' }
  if (key.rightArrow) return { kind: 'right' }
  if (key.ctrl) {
    if (input === 'u') return { kind: 'erase-all' }
    if (input === 'a') return { kind: 'home' }
    return input === 'e' ? { kind: 'end' } : null
  }
  if (key.escape || key.tab || key.upArrow || key.downArrow || key.pageUp || key.pageDown || input === '')
    return null
  return { kind: 'chunk', text: input }
}
