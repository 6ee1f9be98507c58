// One line of the sheet. On a terminal that is narrower than a sheet can be it is cut here: what the renderer cuts ends in a sign that
// is no ASCII.
import { Text } from 'ink'
import { useContext } from 'react'
import { cut, widthOf } from '../core/lib/text.ts'
import type { Line } from '../core/sheet/block.ts'
import { lookOf } from './theme.ts'
import { TerminalContext } from './use-terminal-size.ts'

export function SheetLine({ line }: { readonly line: Line }) {
  // Not followed as it is resized: whatever holds the line is, and a line in the transcript is drawn once.
  const columns = useContext(TerminalContext).columns || 80
  const margin = cut(line.margin, columns)
  return (
    <Text wrap="truncate">
      {margin}
      <Text {...lookOf(line.tone)}>{cut(line.text, columns - widthOf(margin))}</Text>
    </Text>
  )
}
