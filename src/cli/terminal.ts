// What kind of screen there is: a terminal to draw on, or plain lines.

import process from 'node:process'
import { checkNumberLines } from '../app/head.ts'
import { COLUMNS } from '../authoring/wrap-words.ts'
import type { SheetStyle } from '../core/sheet/block.ts'
import type { Values } from './args.ts'

/** Drawing needs a terminal at both ends. A set CI would keep the renderer from drawing at all, so it counts as none. */
export function canDraw(values: Values): boolean {
  const { env, stdin, stdout } = process
  if (values.plain === true || env.TERM === 'dumb') return false
  if (isSet('CI') || isSet('CONTINUOUS_INTEGRATION')) return false
  return stdin.isTTY === true && stdout.isTTY === true
}

/** A person at a terminal who asked for plain lines, or listens to it. Where only CI keeps it from being drawn nobody may be there. */
export function isListened(values: Values): boolean {
  const { env, stdin, stdout } = process
  if (stdin.isTTY !== true || stdout.isTTY !== true || values.json === true) return false
  return values.plain === true || env.TERM === 'dumb'
}

/** As the renderer itself looks at it: an empty value counts as set. */
function isSet(name: 'CI' | 'CONTINUOUS_INTEGRATION'): boolean {
  const value = process.env[name]
  return value !== undefined && value !== 'false' && value !== '0'
}

/** Columns of the terminal at the end of a stream; 80 for what is none. */
export function columnsOf(stream: { readonly isTTY?: boolean; readonly columns?: number }): number {
  return stream.isTTY === true ? (stream.columns ?? COLUMNS) : COLUMNS
}

/** The check number to be copied, behind a word of so many columns: no group of it is parted by the edge of the screen. */
export function printCheckNumber(before: string, head: string): void {
  for (const line of checkNumberLines(head, columnsOf(process.stdout) - before.length))
    print(`${before}${line}`)
}

/** Rows of the terminal at the end of a stream; as many as there are lines for what is none. */
export function rowsOf(stream: { readonly isTTY?: boolean; readonly rows?: number }): number {
  return stream.isTTY === true ? (stream.rows ?? 24) : Number.POSITIVE_INFINITY
}

/** `linear`: pictures are told in words, as for people who hear the sheet. */
export function sheetStyle(
  values: Values,
  record: SheetStyle['record'],
  linear: boolean = values.plain === true,
): SheetStyle {
  return { width: Math.max(30, columnsOf(process.stdout) - 1), record, ascii: wantsAscii(values), linear }
}

/** ASCII when asked for, or when the locale says that nothing else can be shown. */
export function wantsAscii(values: Values): boolean {
  if (values.ascii === true) return true
  const { LC_ALL, LC_CTYPE, LANG } = process.env
  const locale = LC_ALL || LC_CTYPE || LANG
  return locale !== undefined && locale !== '' && !/utf-?8/i.test(locale)
}

export function print(text: string): void {
  process.stdout.write(`${text}\n`)
}
