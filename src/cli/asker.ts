// Asks a few questions of a command one after the other: of a person at a terminal, of a pipe, or of an answers file.
import process from 'node:process'
import { createInterface } from 'node:readline'
import { terminalLines } from './terminal-lines.ts'
import { besides } from './to-copy.ts'

export interface Asker {
  /** What was answered; null when nothing more comes. `hidden`: nothing of it is shown. */
  readonly ask: (question: string, hidden?: boolean) => Promise<string | null>
  readonly close: () => void
}

/** Questions stand beside what is printed, which may be read by a program. */
function tell(question: string): void {
  process.stderr.write(`${besides(question)}\n`)
}

/** Of whoever is at the keyboard, or of what is piped in. */
export function askPerson(): Asker {
  if (process.stdin.isTTY === true) {
    const lines = terminalLines(process.stdin)
    return {
      ask: async (question, hidden = false) => {
        // Silent before the question is there: somebody may be quick.
        lines.hide(hidden)
        tell(question)
        return (await lines.next(hidden))?.trim() ?? null
      },
      close: lines.close,
    }
  }
  const reader = createInterface({ input: process.stdin, terminal: false })
  return { ...askLines(reader), close: () => reader.close() }
}

export function askLines(lines: AsyncIterable<string>): Asker {
  const each = lines[Symbol.asyncIterator]()
  return {
    ask: async (question) => {
      tell(question)
      const next = await each.next()
      return next.done === true ? null : next.value.trim()
    },
    close: () => undefined,
  }
}
