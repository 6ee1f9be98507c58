// Asks for something that is not to be seen: nothing of it is echoed, printed or kept.
import process from 'node:process'
import { UserError } from '../node/user-error.ts'
import { EXIT } from './exit.ts'
import { terminalLines } from './terminal-lines.ts'
import { besides } from './to-copy.ts'

const none = () => new UserError('No PIN was keyed, so nothing was signed.', EXIT.checkFailed)

interface Secrets {
  /** One line, not shown while it is keyed. @throws UserError when it is broken off or there is none. */
  readonly ask: (question: string) => Promise<string>
  readonly close: () => void
}

/** Silent from the first question until it is closed: switched on and off in between, it would show what is keyed meanwhile. */
function fromTerminal(): Secrets {
  const lines = terminalLines(process.stdin)
  lines.hide(true)
  return {
    ask: async (question) => {
      process.stderr.write(`${besides(question)}\n`)
      const line = await lines.next(true)
      if (line === null) throw none()
      return line.trim()
    },
    close: () => lines.close(),
  }
}

/** Several lines from the terminal, one for each question. `stop` ends it early by throwing. */
export async function askSecrets(
  questions: readonly string[],
  stop: (line: string) => void = () => undefined,
): Promise<string[]> {
  const asking = fromTerminal()
  const keyed: string[] = []
  try {
    for (const question of questions) {
      const line = await asking.ask(question)
      stop(line)
      keyed.push(line)
    }
    return keyed
  } finally {
    asking.close()
  }
}
