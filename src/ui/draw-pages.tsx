// Something to read on the terminal, a screen at a time: the list of a review and what is behind its numbers, or a whole job.
import { Box, Static, useApp } from 'ink'
import { useRef, useState } from 'react'
import { type Line, layOut, row, type SheetStyle, textWidth } from '../core/sheet/block.ts'
import { type Paged, pagesOf } from '../core/sheet/pages.ts'
import { isMakeSafe, isStop } from '../core/talk/words.ts'
import { InputLine } from './input-line.tsx'
import { BLANK, edit, type Key } from './line-editor.ts'
import { SheetLine } from './sheet-line.tsx'
import { show, type Terminal } from './show.tsx'
import { useKeys } from './use-keys.ts'
import { useTerminalSize } from './use-terminal-size.ts'

export interface DrawnPages {
  readonly style: SheetStyle
  /** What it begins with and comes back to. `rows`: the lines there are for it; `isFresh`: no line was keyed yet. */
  readonly home: (style: SheetStyle, rows: number, isFresh: boolean) => Paged
  /** What stands behind a word that was keyed; null for none. */
  readonly open: (keyed: string, style: SheetStyle) => Paged | null
  /** Which numbers can be keyed, for a hint; null where a number is that of a page. */
  readonly numbers: string | null
  readonly safe: () => readonly string[]
  /** Words that do something: the screen ends with them. A STOP is one of them wherever there are any. */
  readonly acts?: {
    readonly words: readonly string[]
    /** STOP can be said: the job is not closed. */
    readonly isOpen: boolean
    readonly take: (word: string) => void
  }
}

/** True when it was interrupted. */
export async function drawPages(drawn: DrawnPages, terminal?: Terminal): Promise<boolean> {
  let isInterrupted = true
  await show(
    <PagesScreen
      drawn={drawn}
      onLeft={() => {
        isInterrupted = false
      }}
    />,
    terminal,
  )
  return isInterrupted
}

/** The hint, the line being keyed, and one more, as the live part is always lower than the terminal. */
const BELOW = 3

interface View {
  /** What was keyed for it; null: home. */
  readonly keyed: string | null
  readonly page: number
}

const HOME: View = { keyed: null, page: 0 }

type Said = 'wrong' | 'help' | null

function PagesScreen({ drawn, onLeft }: { readonly drawn: DrawnPages; readonly onLeft: () => void }) {
  const { exit } = useApp()
  const { columns, rows } = useTerminalSize()
  const held = useRef(BLANK)
  const [above, setAbove] = useState<readonly Line[]>([])
  const [view, setView] = useState<View | null>(HOME)
  const [said, setSaid] = useState<Said>(null)
  const [isFresh, setFresh] = useState(true)
  const [, redraw] = useState(0)
  const style = { ...drawn.style, width: Math.max(30, columns - 1) }
  const room = Math.max(1, rows - BELOW)
  const pages = view === null ? [] : pagesFor(drawn, view, style, room, isFresh)
  // A terminal that was made higher has fewer pages.
  const page = Math.min(view?.page ?? 0, pages.length - 1)
  const showSafe = () => {
    const lines = drawn.safe().flatMap((text) => layOut({ margin: '', rows: [row(text)] }, style))
    setAbove((had) => [...had, ...lines])
    setView(null)
  }
  const turn = (by: 1 | -1) => {
    setSaid(null)
    if (view === null) setView(HOME)
    else setView({ ...view, page: Math.max(0, Math.min(pages.length - 1, page + by)) })
  }
  const onEnter = () => {
    if (view !== null && page < pages.length - 1) turn(1)
    else if (view === null || view.keyed !== null) setView(HOME)
  }
  const press = (key: Key) => {
    const edited = edit(held.current, key, true)
    held.current = edited.editor
    redraw((n) => n + 1)
    if (edited.submit === null) return
    const text = edited.submit.trim().toLowerCase()
    setSaid(null)
    setFresh(false)
    const act = actIn(drawn, text)
    if (act !== null) {
      drawn.acts?.take(act)
      onLeft()
      exit()
    } else if (isMakeSafe(text)) showSafe()
    else if (text === '') onEnter()
    else if (LEAVING.includes(text)) {
      onLeft()
      exit()
    } else if (text === 'next') turn(1)
    else if (text === 'back') turn(-1)
    else if (text === 'list') setView(HOME)
    else if (drawn.numbers === null && /^[1-9]\d{0,3}$/.test(text) && Number(text) <= pages.length)
      setView({ keyed: null, page: Number(text) - 1 })
    else if (text === 'help' || text === '?') setSaid('help')
    else if (drawn.open(text, style) !== null) setView({ keyed: text, page: 0 })
    else setSaid('wrong')
  }
  useKeys(press, exit, showSafe, turn)
  const hint = fitting(hintsOf(drawn, view, page, pages.length, said), textWidth(style))
  const [keyed] = layOut({ margin: drawn.numbers === null ? '' : 'no.', rows: [row('')] }, style)
  const lines = [
    ...(pages[page] ?? []),
    ...layOut(
      { margin: '', rows: [{ ...row(hint, said === 'wrong' ? 'caution' : 'faint'), keep: 'words' }] },
      style,
    ),
  ]
  return (
    <>
      <Static items={[...above]}>{(line, i) => <SheetLine key={i} line={line} />}</Static>
      <Box flexDirection="column">
        {lines.map((line, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place on the sheet
          <SheetLine key={i} line={line} />
        ))}
        <InputLine
          margin={keyed?.margin ?? ''}
          editor={held.current}
          width={Math.min(40, style.width - 18)}
          secret={false}
        />
      </Box>
    </>
  )
}

function actIn({ acts }: DrawnPages, text: string): string | null {
  if (acts === undefined) return null
  if (isStop(text)) return 'stop'
  return acts.words.includes(text) ? text : null
}

export const LEAVING: readonly string[] = ['0', 'leave', 'q', 'quit', 'exit']

function pagesFor(
  drawn: DrawnPages,
  { keyed }: View,
  style: SheetStyle,
  room: number,
  isFresh: boolean,
): (readonly Line[])[] {
  const paged = keyed === null ? null : drawn.open(keyed, style)
  return pagesOf(paged ?? drawn.home(style, room, isFresh), room)
}

/** The fullest that is not cut; the last, where none fits. */
function fitting(hints: readonly string[], width: number): string {
  return hints.find((hint) => hint.length <= width) ?? hints.at(-1) ?? ''
}

/** The fullest first: a word that is not seen is not keyed. */
function hintsOf(
  drawn: DrawnPages,
  view: View | null,
  page: number,
  count: number,
  said: Said,
): readonly string[] {
  if (said === 'wrong')
    return drawn.numbers === null
      ? ['No such page or word: next, back, 0 leaves.', 'None such: next, back, 0.']
      : [`No such number: ${drawn.numbers}. Enter: list. 0 leaves.`, `None such: ${drawn.numbers}; 0.`]
  const acts = drawn.acts?.words ?? []
  const stop = drawn.acts?.isOpen === true ? ', stop' : ''
  if (said === 'help' && acts.length > 0)
    return [
      `Ask in words, as: who signed. act, list${stop}, 3-9, entry 214; 0: leave. Tab: safe.`,
      `act: what a lead does. list${stop}, 3-9, entry 214. Or ask in words.`,
      `Ask in words. act, list${stop}, 3-9; 0 leaves.`,
      'Ask in words; act; 0: leave.',
    ]
  if (said === 'help' || view === null)
    return drawn.numbers === null
      ? ['Words: next, back; a number: that page. 0: leave. Tab: safe.', 'next, back, number; 0.']
      : ['A number, or 3-9; next, back, list. 0: leave. Tab: safe.', 'Number, 3-9, list; 0 leaves.']
  if (count > 1) {
    const on = page < count - 1 ? 'Enter: next. ' : view.keyed === null ? '' : 'Enter: list. '
    const jump = drawn.numbers === null ? 'Number: that page. ' : ''
    return [
      `Page ${page + 1} of ${count}. ${on}${page > 0 ? 'back. ' : ''}${jump}0: leave.`,
      `${page + 1} of ${count}. ${on}0: leave.`,
    ]
  }
  if (view.keyed === null && acts.length > 0)
    return [
      `A number; a question in words; ${acts.join(', ')}; help; leave.`,
      `A number; a question; ${acts.join(', ')}; help; leave.`,
      'Ask in words; help; leave.',
    ]
  return view.keyed === null
    ? ['Number: what is behind it. help. 0: leave. Tab: safe.', 'A number; help; 0: leave.']
    : acts.length > 0
      ? ['Another number or question. Enter: list. 0: leave. Tab: safe.', 'Enter: list. 0: leave.']
      : ['Number: another. Enter: list. 0: leave. Tab: safe.', 'Enter: list. 0: leave.']
}
