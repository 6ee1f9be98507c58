// A numbered choice on the terminal, before any job is open.
import { Box, Static, Text, useApp } from 'ink'
import { useCallback, useRef, useState } from 'react'
import { asciiTwin, clean, wrap } from '../core/lib/text.ts'
import { marginRule } from '../core/sheet/ruling.ts'
import { type Choice, hearChoice } from '../core/talk/choice.ts'
import { dropEarly } from './early-keys.ts'
import { InputLine } from './input-line.tsx'
import { BLANK, edit, type Key } from './line-editor.ts'
import { show, type Terminal } from './show.tsx'
import { useKeys } from './use-keys.ts'
import { useTerminalSize } from './use-terminal-size.ts'

export interface DrawnChoice extends Choice {
  readonly ascii: boolean
  /** Lines of the make-safe sheet, asked for when it is wanted. */
  readonly safe: () => readonly string[]
}

/** The place of what was chosen, from 0. */
export type Chosen = number | 'left' | 'interrupted'

export async function drawChoice(choice: DrawnChoice, terminal?: Terminal): Promise<Chosen> {
  await dropEarly(terminal?.stdin)
  let chosen: Chosen = 'interrupted'
  await show(
    <ChoiceScreen
      choice={choice}
      onChosen={(which) => {
        chosen = which
      }}
    />,
    terminal,
  )
  return chosen
}

function ChoiceScreen({
  choice,
  onChosen,
}: {
  readonly choice: DrawnChoice
  readonly onChosen: (which: Chosen) => void
}) {
  const { exit } = useApp()
  const size = useTerminalSize()
  const held = useRef(BLANK)
  const [told, setTold] = useState<readonly string[]>([])
  const [sheet, setSheet] = useState<readonly string[]>([])
  const [, redraw] = useState(0)
  const end = useCallback(
    (which: Chosen) => {
      onChosen(which)
      exit()
    },
    [exit, onChosen],
  )
  const showSafe = useCallback(() => setSheet((lines) => [...lines, ...choice.safe()]), [choice])
  const press = useCallback(
    (key: Key) => {
      const edited = edit(held.current, key, true)
      held.current = edited.editor
      redraw((n) => n + 1)
      if (edited.submit === null) return
      const heard = hearChoice(choice, edited.submit)
      if (heard.is === 'safe') return showSafe()
      if (heard.is === 'left') return end('left')
      if (heard.is === 'chosen') return end(heard.which)
      setTold(heard.lines)
    },
    [choice, end, showSafe],
  )
  useKeys(press, () => end('interrupted'), showSafe)
  const rule = ` ${marginRule(choice.ascii)} `
  // What is said is read whole: a line that is too long goes on below.
  const said = told.flatMap((text) => wrap(text, Math.max(20, size.columns - 9)))
  const room = Math.max(1, size.rows - 6 - choice.lines.length - Math.max(1, said.length))
  const options = choice.options.slice(0, room)
  const line = (margin: string, text: string) => `${margin.padStart(5)}${rule}${text}`
  return (
    <>
      <Static items={[...sheet]}>
        {(text, i) => <Text key={i}>{clean(choice.ascii ? asciiTwin(text) : text)}</Text>}
      </Static>
      <Box flexDirection="column">
        <Text bold>{line('', choice.title)}</Text>
        {choice.lines.map((text) => (
          <Text key={text} wrap="truncate">
            {line('', text)}
          </Text>
        ))}
        {options.map((text, i) => (
          <Text key={text} wrap="truncate">
            {line(String(i + 1), text)}
          </Text>
        ))}
        <Text wrap="truncate">{line('0', choice.zero)}</Text>
        <Text wrap="truncate">{line('Tab', 'Make safe')}</Text>
        {said.map((text, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place under the choice
          <Text key={i} wrap="truncate">
            {line('', text)}
          </Text>
        ))}
        <InputLine margin={line('no.', '')} editor={held.current} width={20} secret={false} />
      </Box>
    </>
  )
}
