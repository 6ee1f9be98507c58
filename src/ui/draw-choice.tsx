// A numbered choice on the terminal, before any job is open.
import { Box, Text, useApp } from 'ink'
import { useCallback, useRef, useState } from 'react'
import { choiceSheet } from '../core/sheet/choice-sheet.ts'
import { type Choice, hearChoice } from '../core/talk/choice.ts'
import { DROPPED, dropEarly } from './early-keys.ts'
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
  const early = await dropEarly(terminal?.stdin)
  let chosen: Chosen = 'interrupted'
  await show(
    <ChoiceScreen
      choice={choice}
      first={[...(early.dropped ? [DROPPED] : []), ...(choice.said ?? [])]}
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
  first,
  onChosen,
}: {
  readonly choice: DrawnChoice
  /** Said before anything is keyed. */
  readonly first: readonly string[]
  readonly onChosen: (which: Chosen) => void
}) {
  const { exit } = useApp()
  const size = useTerminalSize()
  const held = useRef(BLANK)
  const [told, setTold] = useState(first)
  const [, redraw] = useState(0)
  const end = useCallback(
    (which: Chosen) => {
      onChosen(which)
      exit()
    },
    [exit, onChosen],
  )
  const [from, setFrom] = useState(0)
  // From its first line, as everything that is said beside the choice.
  const showSafe = useCallback(() => {
    setFrom(0)
    setTold(choice.safe())
  }, [choice])
  const drawn = choiceSheet({ choice, ...size, ascii: choice.ascii, told, from })
  const next = useRef<number | null>(null)
  next.current = drawn.next
  const press = useCallback(
    (key: Key) => {
      const edited = edit(held.current, key, true)
      held.current = edited.editor
      redraw((n) => n + 1)
      if (edited.submit === null) return
      if (edited.submit.trim() === '' && next.current !== null) {
        if (next.current === 0) setTold([])
        return setFrom(next.current)
      }
      const heard = hearChoice(choice, edited.submit)
      if (heard.is === 'safe') return showSafe()
      if (heard.is === 'left') return end('left')
      if (heard.is === 'chosen') return end(heard.which)
      setFrom(0)
      setTold(heard.lines)
    },
    [choice, end, showSafe],
  )
  useKeys(press, () => end('interrupted'), showSafe)
  return (
    <Box flexDirection="column">
      {drawn.lines.map(({ text, strong }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place under the choice
        <Text key={i} bold={strong} wrap="truncate">
          {text}
        </Text>
      ))}
      <InputLine
        margin={drawn.margin}
        editor={held.current}
        width={Math.min(20, drawn.width)}
        secret={false}
      />
    </Box>
  )
}
