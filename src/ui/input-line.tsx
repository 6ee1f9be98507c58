// The line being keyed, with its unit in the margin and the caret shown. A long line shows the part around its end.
import { Text } from 'ink'
import { widthOf } from '../core/lib/text.ts'
import { type Editor, graphemes } from './line-editor.ts'

export function InputLine({
  margin,
  editor,
  width,
}: {
  readonly margin: string
  readonly editor: Editor
  readonly width: number
}) {
  const parts = graphemes(editor.text)
  let from = 0
  while (widthOf(parts.slice(from).join('')) > width - 2 && from < editor.caret) from++
  const before = parts.slice(from, editor.caret).join('')
  const at = parts[editor.caret] ?? ' '
  const after = parts.slice(editor.caret + 1).join('')
  return (
    <Text wrap="truncate">
      {margin}
      <Text bold>{before}</Text>
      <Text inverse>{at}</Text>
      <Text bold>{after}</Text>
    </Text>
  )
}
