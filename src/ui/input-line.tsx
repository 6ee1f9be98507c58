// The line being keyed, with its unit in the margin and the caret shown. A long line shows the part around the caret.
import { Text } from 'ink'
import { BLANK, type Editor, viewOf } from './line-editor.ts'

export function InputLine({
  margin,
  editor,
  width,
  secret,
}: {
  readonly margin: string
  readonly editor: Editor
  readonly width: number
  /** Nothing of the line is drawn, not even how long it is. */
  readonly secret: boolean
}) {
  const { before, at, after } = viewOf(secret ? BLANK : editor, width)
  return (
    <Text wrap="truncate">
      {margin}
      <Text bold>{before}</Text>
      <Text inverse>{at}</Text>
      <Text bold>{after}</Text>
    </Text>
  )
}
