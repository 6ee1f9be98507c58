// From what the terminal sends to keys of the line editor. Reads the raw sequences: the renderer's own key names lose the
// escape character, so a report that a terminal sends of itself would pass for typing, and unknown ones make it throw.
import { useStdin } from 'ink'
import { useEffect, useRef } from 'react'
import type { Key } from './line-editor.ts'

/** Control-C, Tab and the keys that turn come apart: they are no keys of the line. */
export type Pressed =
  | Key
  | { readonly kind: 'interrupt' }
  /** `again`: it was hit more than once. */
  | { readonly kind: 'safe'; readonly again?: true }
  /** Over to another side of what is asked. */
  | { readonly kind: 'turn-back' }
  | { readonly kind: 'turn-on' }

export function useKeys(
  onKey: (key: Key) => void,
  onInterrupt: () => void,
  onSafe: (again: boolean) => void,
  onTurn: (by: 1 | -1) => unknown = () => undefined,
): void {
  const { setRawMode, internal_eventEmitter: input } = useStdin()
  const handlers = useRef({ onKey, onInterrupt, onSafe, onTurn })
  handlers.current = { onKey, onInterrupt, onSafe, onTurn }
  useEffect(() => {
    let held = ''
    const take = (raw: string) => {
      const read = readKeys(held, raw)
      held = read.held
      for (const key of read.keys) {
        if (key.kind === 'interrupt') handlers.current.onInterrupt()
        else if (key.kind === 'safe') handlers.current.onSafe(key.again === true)
        else if (key.kind === 'turn-back') handlers.current.onTurn(-1)
        else if (key.kind === 'turn-on') handlers.current.onTurn(1)
        else handlers.current.onKey(key)
      }
    }
    setRawMode(true)
    input.on('input', take)
    return () => {
      input.off('input', take)
      setRawMode(false)
    }
  }, [setRawMode, input])
}

/** An escape sequence whose end has not come yet. */
const BEGUN = /^\u001b\[[0-?]*[ -/]*$/
const TOKENS = /\u001b\[[0-?]*[ -/]*[@-~]|\u001bO[@-~]|\u001b.?|[^\u001b]+/gsu

/** `held`: the beginning of a sequence that came in two reads, to be given back with the next one. */
export function readKeys(
  held: string,
  raw: string,
): { readonly keys: readonly Pressed[]; readonly held: string } {
  const text = held + raw
  if (BEGUN.test(text)) return { keys: [], held: text }
  // In a paste it is a character like any other that is not seen.
  const split = text.includes('\u001b[200~') ? (token: string) => [token] : withErasing
  return {
    keys: (text.match(TOKENS) ?? [])
      .flatMap(split)
      .flatMap(withTabs)
      .flatMap((token) => nameKey(token) ?? []),
    held: '',
  }
}

/** A key held down over a slow line comes as several in one read, and each of them erases. */
function withErasing(token: string): string[] {
  return token.startsWith('\u001b') ? [token] : token.split(/([\u007f\b])/).filter((part) => part !== '')
}

/**
 * Keys that came while the program was busy are read as one: a Tab after them is a key all the same, also where it might
 * be the end mark of a gauge that types for itself.
 */
function withTabs(token: string): string[] {
  const [, before, tabs] = /^([^\t]+)(\t+)$/s.exec(token) ?? []
  return before === undefined || tabs === undefined || token.startsWith('\u001b') ? [token] : [before, tabs]
}

// Terminals send delete for the key over Enter as often as backspace; there is no forward delete here.
const PLAIN: Readonly<Record<string, Pressed['kind']>> = {
  '\u0003': 'interrupt',
  '\r': 'enter',
  '\u007f': 'erase-left',
  '\b': 'erase-left',
  '\u0001': 'home',
  '\u0005': 'end',
  '\u0015': 'erase-all',
}
const NAMED: Readonly<Record<string, Pressed['kind']>> = {
  A: 'turn-back',
  B: 'turn-on',
  '5~': 'turn-back',
  '6~': 'turn-on',
  C: 'right',
  D: 'left',
  H: 'home',
  F: 'end',
  '1~': 'home',
  '7~': 'home',
  '4~': 'end',
  '8~': 'end',
  '3~': 'erase-left',
}

function nameKey(token: string): Pressed | null {
  // Escape, or a key held for another meaning, right before a character changes nothing about it: `!` must get through.
  const bare = /^\u001b(?![[O]).$/su.test(token) ? token.slice(1) : token
  const plain = PLAIN[bare]
  if (plain !== undefined) return { kind: plain } as Pressed
  if (/^\t+$/.test(bare)) return bare === '\t' ? { kind: 'safe' } : { kind: 'safe', again: true }
  if (!bare.startsWith('\u001b')) return { kind: 'chunk', text: bare }
  // The two marks of a paste; the editor knows them without their escape character.
  if (/^\u001b\[20[01]~$/.test(token)) return { kind: 'chunk', text: token.slice(1) }
  const [, number = '', end = ''] = /^\u001b[[O](\d*)(?:;\d+)*([A-Za-z~])$/.exec(token) ?? []
  const named = NAMED[end === '~' ? `${number}~` : end]
  return named === undefined ? null : ({ kind: named } as Pressed)
}
