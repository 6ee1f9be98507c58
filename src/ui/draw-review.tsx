// A review on the terminal: the list on one screen, and by a number what is behind it, which stays above in the transcript.
import { Box, Static, useApp } from 'ink'
import { useCallback, useRef, useState } from 'react'
import { type Line, layOut, row, type SheetStyle } from '../core/sheet/block.ts'
import { isMakeSafe } from '../core/talk/words.ts'
import { InputLine } from './input-line.tsx'
import { BLANK, edit, type Key } from './line-editor.ts'
import { SheetLine } from './sheet-line.tsx'
import { show, type Terminal } from './show.tsx'
import { useKeys } from './use-keys.ts'
import { useTerminalSize } from './use-terminal-size.ts'

export interface DrawnReview {
  readonly style: SheetStyle
  /** The greatest number there is; 0 when there is none. */
  readonly most: number
  readonly list: (style: SheetStyle, rows: number) => readonly Line[]
  readonly item: (number: number, style: SheetStyle) => readonly Line[]
  readonly safe: () => readonly string[]
}

/** True when it was interrupted. */
export async function drawReview(drawn: DrawnReview, terminal?: Terminal): Promise<boolean> {
  let isInterrupted = true
  await show(
    <ReviewScreen
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

function ReviewScreen({ drawn, onLeft }: { readonly drawn: DrawnReview; readonly onLeft: () => void }) {
  const { exit } = useApp()
  const { columns, rows } = useTerminalSize()
  const held = useRef(BLANK)
  const [above, setAbove] = useState<readonly Line[]>([])
  const [isList, setIsList] = useState(true)
  const [wrong, setWrong] = useState(false)
  const [, redraw] = useState(0)
  const style = { ...drawn.style, width: Math.max(30, columns - 1) }
  const add = useCallback((lines: readonly Line[]) => {
    setAbove((had) => [...had, ...lines])
    setIsList(false)
  }, [])
  const showSafe = () => add(drawn.safe().flatMap((text) => layOut({ margin: '', rows: [row(text)] }, style)))
  const press = (key: Key) => {
    const edited = edit(held.current, key, true)
    held.current = edited.editor
    redraw((n) => n + 1)
    if (edited.submit === null) return
    const text = edited.submit.trim().toLowerCase()
    const number = /^[1-9]\d{0,3}$/.test(text) ? Number(text) : null
    setWrong(false)
    if (isMakeSafe(text)) showSafe()
    else if (text === '') setIsList(true)
    else if (text === '0' || text === 'leave') {
      onLeft()
      exit()
    } else if (number !== null && number <= drawn.most) add(drawn.item(number, style))
    else setWrong(true)
  }
  useKeys(press, exit, showSafe)
  const hint = wrong
    ? drawn.most === 0
      ? 'No such number: 0 leaves.'
      : `No such number: 1 to ${drawn.most}, Enter for the list, 0 leaves.`
    : 'Number: what is behind it. Enter: list. 0: leave. Tab: safe.'
  const [keyed] = layOut({ margin: 'no.', rows: [row('')] }, style)
  const lines = [
    ...(isList ? drawn.list(style, Math.max(1, rows - BELOW)) : []),
    ...layOut({ margin: '', rows: [{ ...row(hint, wrong ? 'caution' : 'faint'), keep: true }] }, style),
  ]
  return (
    <>
      <Static items={[...above]}>{(line, i) => <SheetLine key={i} line={line} />}</Static>
      <Box flexDirection="column">
        {lines.map((line, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place on the sheet
          <SheetLine key={i} line={line} />
        ))}
        <InputLine margin={keyed?.margin ?? ''} editor={held.current} width={20} secret={false} />
      </Box>
    </>
  )
}
