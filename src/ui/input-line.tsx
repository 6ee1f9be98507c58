// The line being keyed, with its unit in the margin and the caret shown. A long line shows the part around the caret.
import { Text } from 'ink'
import { BLANK, type Editor, MOST, viewOf } from './line-editor.ts'

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
  const full = drawn.full ? FULL.slice(0, width - 1) : ''
  const { before, at, after } = viewOf(drawn, width - full.length)
  return (
    <Text wrap="truncate">
      {margin}
      <Text bold>{before}</Text>
      <Text inverse>{at}</Text>
      <Text bold>{after}</Text>
      {full}
    </Text>
  )
}
