// Lines from a terminal that draws nothing: as the terminal itself edits them, or, for a PIN, key by key with nothing shown.
import process from 'node:process'

/** A line as far as it is keyed, and how it ended if it did. */
export interface Unseen {
  readonly text: string
  readonly end: 'open' | 'line' | 'ended' | 'interrupted'
  /** What came after the end. */
  readonly rest: string
}

/** Keys that name themselves with an escape sequence; none of them is part of a line. */
const SEQUENCES = /\u001b\[[0-?]*[ -/]*[@-~]|\u001bO[@-~]|\u001b/gu

/** Takes what was keyed into a line that is not shown: Enter ends it, backspace and Control-U erase. */
export function keyUnseen(text: string, keys: string): Unseen {
  let line = text
  const all = keys.replace(SEQUENCES, '')
  for (let i = 0; i < all.length; i++) {
    const key = all[i] ?? ''
    const rest = all.slice(i + 1)
    if (key === '\r' || key === '\n') return { text: line, end: 'line', rest }
    if (key === '\u0003') return { text: '', end: 'interrupted', rest }
    if (key === '\u0004' && line === '') return { text: '', end: 'ended', rest }
    if (key === '\u007f' || key === '\b') line = line.slice(0, -1)
    else if (key === '\u0015') line = ''
    else if (key >= ' ') line += key
  }
  return { text: line, end: 'open', rest: '' }
}

export interface TerminalLines {
  /** From now on nothing of what is keyed is shown, or all of it: before the question is printed, lest somebody be quick. */
  readonly hide: (on: boolean) => void
  /** The next line, or null when there is none to come. `unseen`: nothing of it is shown while it is keyed. */
  readonly next: (unseen: boolean) => Promise<string | null>
  readonly close: () => void
}

export function terminalLines(stdin: NodeJS.ReadStream): TerminalLines {
  let held = ''
  let over = false
  let wake: () => void = () => undefined
  const take = (chunk: Buffer | string) => {
    held += chunk.toString()
    wake()
  }
  const end = () => {
    over = true
    wake()
  }
  stdin.on('data', take)
  // A screen that was drawn before let go of the terminal: without a hold on it the program would end at the question.
  if ('ref' in stdin) stdin.ref()
  stdin.resume()
  stdin.on('end', end)
  stdin.on('error', end)
  const more = () =>
    new Promise<void>((resolve) => {
      wake = resolve
    })

  const seen = async (): Promise<string | null> => {
    for (;;) {
      // Enter keyed just before the terminal edits lines again comes as it left the key.
      const [line, ...rest] = held.split(/\r\n?|\n/)
      if (rest.length > 0 || (over && held !== '')) {
        held = rest.join('\n')
        return line ?? ''
      }
      if (over) return null
      await more()
    }
  }
  const unseen = async (): Promise<string | null> => {
    let text = ''
    for (;;) {
      const keyed = keyUnseen(text, held)
      held = keyed.rest
      text = keyed.text
      if (keyed.end === 'line') return text
      if (keyed.end === 'ended' || over) return null
      if (keyed.end === 'interrupted') {
        stdin.setRawMode(false)
        process.kill(process.pid, 'SIGINT')
      }
      await more()
    }
  }
  return {
    hide: (on) => void stdin.setRawMode(on),
    next: (isUnseen) => {
      stdin.setRawMode(isUnseen)
      return isUnseen ? unseen() : seen()
    },
    close: () => {
      stdin.setRawMode(false)
      stdin.off('data', take)
      stdin.off('end', end)
      stdin.off('error', end)
      stdin.pause()
    },
  }
}
