// The line being keyed, with its unit in the margin and the caret shown. A long line shows the part around the caret.
import { Text } from 'ink'
import { useContext } from 'react'
import { cut, widthOf } from '../core/lib/text.ts'
import { BLANK, type Editor, MOST, viewOf } from './line-editor.ts'
import { TerminalContext } from './use-terminal-size.ts'

const NOT_SHOWN = '(not shown)'
const FULL = ` full at ${MOST}, rest left out`

export function InputLine({
  margin,
  editor,
  width,
  secret,
}: {
  readonly margin: string
  readonly editor: Editor
  readonly width: number
  /** Nothing of the line is drawn, not even how long it is; only that something is keyed. */
  readonly secret: boolean
}) {
  const drawn = secret && editor.text !== '' ? { ...BLANK, text: NOT_SHOWN, caret: NOT_SHOWN.length } : editor
  const columns = useContext(TerminalContext).columns || 80
  const shown = cut(margin, columns - 1)
  const room = Math.max(1, Math.min(width, columns - widthOf(shown)))
  const full = drawn.full ? FULL.slice(0, room - 1) : ''
  const { before, at, after } = viewOf(drawn, room - full.length)
  return (
    <Text wrap="truncate">
      {shown}
      <Text bold>{before}</Text>
      <Text inverse>{at}</Text>
      <Text bold>{after}</Text>
      {full}
    </Text>
  )
}
