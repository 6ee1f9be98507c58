// Asks for something that is not to be seen: nothing of it is echoed, printed or kept.
import process from 'node:process'
import { createInterface } from 'node:readline'
import { UserError } from '../node/user-error.ts'
import { EXIT } from './exit.ts'
import { terminalLines } from './terminal-lines.ts'

/** One line from the terminal without echo, or from a pipe. @throws UserError when it is broken off or there is none. */
export async function askSecret(question: string): Promise<string> {
  const [line] = process.stdin.isTTY === true ? await askSecrets([question]) : [await fromPipe(question)]
  if (line === undefined) throw none()
  return line
}

const none = () => new UserError('No PIN was keyed, so nothing was signed.', EXIT.checkFailed)

/**
 * Several lines from the terminal, one for each question. It is silent from the first question to the last answer: switched
 * on and off in between, it would show what is keyed meanwhile. `stop` ends it early by throwing.
 */
export async function askSecrets(
  questions: readonly string[],
  stop: (line: string) => void = () => undefined,
): Promise<string[]> {
  const lines = terminalLines(process.stdin)
  const keyed: string[] = []
  try {
    lines.hide(true)
    for (const question of questions) {
      process.stderr.write(`${question}\n`)
      const line = await lines.next(true)
      if (line === null) throw none()
      stop(line.trim())
      keyed.push(line.trim())
    }
    return keyed
  } finally {
    lines.close()
  }
}

async function fromPipe(question: string): Promise<string> {
  process.stderr.write(`${question}\n`)
  const lines = createInterface({ input: process.stdin, terminal: false })
  for await (const line of lines) {
    lines.close()
    return line.trim()
  }
  throw none()
}
