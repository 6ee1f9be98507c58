// The same choice of jobs in plain lines: the numbers, then what is asked, and nothing drawn over.
import { asciiTwin, clean } from '../core/lib/text.ts'
import { type Choice, hearChoice, wanted } from '../core/talk/choice.ts'
import type { PlainOut } from './tell.ts'

export interface PlainChoice {
  readonly out: PlainOut
  readonly ascii: boolean
  /** The next line that is keyed, or null when there is none to come. */
  readonly next: () => Promise<string | null>
  /** Lines of the make-safe sheet, asked for when it is wanted. */
  readonly safe: () => readonly string[]
}

/** The place of what was chosen, from 0; or that it was left. */
export async function askChoice(choice: Choice, ask: PlainChoice): Promise<number | 'left'> {
  const say = (lines: readonly string[]): void => {
    for (const line of lines) {
      const shown = clean(line)
      ask.out.write(`${ask.ascii ? asciiTwin(shown) : shown}\n`)
    }
  }
  const options = choice.options.map((text, i) => `${i + 1}: ${text}`)
  say([
    '',
    /[?.]$/.test(choice.title) ? choice.title : `${choice.title}.`,
    ...(choice.said ?? []),
    ...choice.lines,
    ...options,
    `0: ${choice.zero}`,
  ])
  for (;;) {
    say([`Asked: ${wanted(choice)} Words: help, safe.`])
    const line = await ask.next()
    if (line === null) return 'left'
    const heard = hearChoice(choice, line)
    if (heard.is === 'left') return 'left'
    if (heard.is === 'chosen') return heard.which
    say(heard.is === 'safe' ? ask.safe() : heard.lines)
  }
}
