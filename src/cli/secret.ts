// Asks for something that is not to be seen: nothing of it is echoed, printed or kept.
import process from 'node:process'
import { createInterface } from 'node:readline'
import { UserError } from '../node/user-error.ts'
import { EXIT } from './exit.ts'

/** One line from the terminal without echo, or from a pipe. @throws UserError when it is broken off or there is none. */
export function askSecret(question: string): Promise<string> {
  process.stderr.write(`${question}\n`)
  return process.stdin.isTTY === true ? fromTerminal(process.stdin) : fromPipe()
}

const none = () => new UserError('No PIN was keyed, so nothing was signed.', EXIT.checkFailed)

async function fromPipe(): Promise<string> {
  const lines = createInterface({ input: process.stdin, terminal: false })
  for await (const line of lines) {
    lines.close()
    return line.trim()
  }
  throw none()
}

function fromTerminal(stdin: NodeJS.ReadStream): Promise<string> {
  return new Promise((resolve, reject) => {
    let keyed = ''
    const end = (finish: () => void) => {
      stdin.off('data', heard)
      stdin.setRawMode(false)
      stdin.pause()
      finish()
    }
    const heard = (bytes: Buffer) => {
      for (const sign of bytes.toString('utf8')) {
        if (sign === '\r' || sign === '\n') return end(() => resolve(keyed.trim()))
        if (sign === '\u0003' || sign === '\u0004') return end(() => reject(none()))
        keyed = sign === '\u007f' || sign === '\b' ? keyed.slice(0, -1) : keyed + sign
      }
    }
    stdin.setRawMode(true)
    stdin.on('data', heard)
    stdin.resume()
  })
}
