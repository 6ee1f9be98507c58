// One line of the sheet.
import { Text } from 'ink'
import type { Line } from '../core/sheet/block.ts'
import { lookOf } from './theme.ts'

export function SheetLine({ line }: { readonly line: Line }) {
  return (
    <Text wrap="truncate">
      {line.margin}
      <Text {...lookOf(line.tone)}>{line.text}</Text>
    </Text>
  )
}
