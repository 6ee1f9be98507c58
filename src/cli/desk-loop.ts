// The review as a lead works with it: read, act by a word, and read again what it came to. Drawn a screen at a time, or in lines.
import process from 'node:process'
import { createInterface } from 'node:readline'
import { markOf } from '../core/job/paper.ts'
import { changedLines } from '../core/review/changed.ts'
import { lastNumber, screenLines, wholeBlocks } from '../core/review/page.ts'
import { type Block, layOut, plainText, type Row, row, type SheetStyle } from '../core/sheet/block.ts'
import { deskOf } from '../core/talk/desk-words.ts'
import { makeSafeLines } from '../core/talk/make-safe.ts'
import { isMakeSafe, isStop } from '../core/talk/words.ts'
import type { JobFile } from '../node/job-folder.ts'
import type { Values } from './args.ts'
import { type Asker, askLines, askPerson } from './asker.ts'
import { actAtDesk, isDeskWord } from './desk.ts'
import { EXIT } from './exit.ts'
import { opened, type Reviewed } from './reviewed.ts'
import { print, sheetStyle } from './terminal.ts'

export interface Read extends Reviewed {
  readonly file: JobFile
  /** The exit code, were it left now. */
  readonly code: number
  /** Check number of a log that is sound. */
  readonly head: string | null
}

/** `read`: the job as it is on disk at that moment. */
export async function deskOnScreen(values: Values, read: () => Read): Promise<number> {
  const { drawPages } = await import('../ui/draw-pages.tsx')
  let now = read()
  let told: readonly string[] = []
  for (;;) {
    const { review, defs, state } = now
    const most = lastNumber(review)
    const at = now
    let word: string | null = null
    const interrupted = await drawPages({
      style: sheetStyle(values, markOf(review)),
      numbers: most === 0 ? null : `1 to ${most}`,
      home: (style, rows, isFresh) => {
        // Once a line is keyed it is known, and the list has the room again.
        const above = isFresh ? toldLines(told, style, rows) : []
        return { head: [], body: [...above, ...screenLines(defs, review, style, rows - above.length)] }
      },
      open: (keyed, style) => opened(at, keyed, style),
      safe: () => makeSafeLines(defs, state),
      acts: {
        words: deskOf(defs, state).acts.map((one) => one.word),
        isOpen: !review.isClosed,
        take: (keyed) => {
          word = keyed
        },
      },
    })
    if (interrupted) return EXIT.interrupted
    if (word === null || !isDeskWord(word)) return now.code
    const acted = await actAtDesk(now.file, values, word)
    if (acted.interrupted) return EXIT.interrupted
    const before = review
    now = read()
    told = [...acted.told, ...changedLines(before, now.review)]
  }
}

/** So much of a screen may say what changed; the list stays below it. */
const SHARE = 3

function toldLines(told: readonly string[], style: SheetStyle, rows: number) {
  const lines = told.flatMap((text) => layOut({ margin: '', rows: [row(text, 'strong')] }, style))
  const room = Math.max(1, Math.floor(rows / SHARE))
  if (lines.length <= room) return lines
  const more = row(
    `and ${lines.length - room + 1} more lines of what changed: it stands in the list.`,
    'faint',
  )
  return [...lines.slice(0, room - 1), ...layOut({ margin: '', rows: [{ ...more, keep: 'words' }] }, style)]
}

const LEAVING: readonly string[] = ['0', 'leave', 'q', 'quit', 'exit']

/** In lines: of a person at a terminal, or of a pipe, whose lines are read here alone. */
export async function deskInLines(values: Values, read: () => Read): Promise<number> {
  const piped = process.stdin.isTTY === true ? undefined : pipedLines()
  let now = read()
  const style = sheetStyle(values, markOf(now.review))
  const say = (rows: readonly Row[]) => printBlocks([{ margin: '', rows }], style)
  printWhole(now, style)
  for (;;) {
    const { acts } = deskOf(now.defs, now.state)
    const words = acts.map((one) => one.word).join(', ')
    const keyed = await asked(`Asked: a number, a question in words, ${words}, act, list, or leave.`, piped)
    const text = keyed?.trim().toLowerCase() ?? ''
    if (keyed === null || LEAVING.includes(text)) return now.code
    const word = isStop(text) ? 'stop' : text
    if (isMakeSafe(text)) say(makeSafeLines(now.defs, now.state).map((line) => row(line)))
    else if (text === '' || text === 'list') printWhole(now, style)
    else if (word === 'stop' || acts.some((one) => one.word === word)) {
      if (!isDeskWord(word)) continue
      const acted = await actAtDesk(now.file, values, word, piped)
      const before = now.review
      now = read()
      printWhole(now, style)
      say([...acted.told, ...changedLines(before, now.review)].map((line) => row(line, 'strong')))
    } else {
      const blocks = opened(now, text, style)
      if (blocks === null)
        say([row(`No such number or word: 1 to ${lastNumber(now.review)}, ${words}.`, 'caution')])
      else print(plainText([...blocks.head, ...blocks.body]))
    }
  }
}

/** A terminal is read for one question at a time: between them the job itself reads it. */
async function asked(question: string, piped: AsyncIterable<string> | undefined): Promise<string | null> {
  const asker: Asker = piped === undefined ? askPerson() : askLines(piped)
  try {
    return await asker.ask(question)
  } finally {
    asker.close()
  }
}

/** Lines that several readers take one after the other: none of them shuts it. */
function pipedLines(): AsyncIterable<string> {
  const each = createInterface({ input: process.stdin, terminal: false })[Symbol.asyncIterator]()
  return { [Symbol.asyncIterator]: () => ({ next: () => each.next() }) }
}

function printWhole({ defs, review, state }: Read, style: SheetStyle): void {
  printBlocks(wholeBlocks(defs, review, state, style), style)
}

export function printBlocks(blocks: readonly Block[], style: SheetStyle): void {
  for (const block of blocks) print(plainText(layOut(block, style)))
}
