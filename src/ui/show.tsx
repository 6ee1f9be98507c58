// Puts a screen on the terminal and takes it off again, leaving the terminal as it was on every way out.
import process from 'node:process'
import { render } from 'ink'
import type { ReactNode } from 'react'
import { markPastes } from './paste-mode.ts'
import { TerminalContext } from './use-terminal-size.ts'

export interface Terminal {
  readonly stdin: NodeJS.ReadStream
  readonly stdout: NodeJS.WriteStream
}

const SIGNALS = ['SIGTERM', 'SIGHUP', 'SIGINT'] as const

/** Until the screen ends itself, or the program is told to end or the terminal goes away: then true. */
export async function show(
  screen: ReactNode,
  { stdin, stdout }: Terminal = { stdin: process.stdin, stdout: process.stdout },
): Promise<boolean> {
  let told = false
  // Paused by questions that were asked in lines before: the renderer would wait for keys that never come, and the program end.
  if (stdin.isPaused()) stdin.resume()
  const unmark = markPastes(stdout)
  const app = render(<TerminalContext value={stdout}>{screen}</TerminalContext>, {
    stdin,
    stdout: bottomless(stdout),
    exitOnCtrlC: false,
    // Only the process's own terminal can be written over by somebody else's printing.
    patchConsole: stdout === process.stdout,
  })
  const end = () => {
    told = true
    app.unmount()
  }
  for (const signal of SIGNALS) process.on(signal, end)
  stdin.on('error', end)
  stdin.on('end', end)
  try {
    await app.waitUntilExit()
  } finally {
    for (const signal of SIGNALS) process.off(signal, end)
    stdin.off('error', end)
    stdin.off('end', end)
    unmark()
  }
  return told
}

/**
 * The renderer wipes the terminal's scrollback when the frame it drew last is as high as the terminal, as it is for a
 * moment after the terminal was made lower. So it is told of a terminal without a bottom; we stay above the real one.
 */
function bottomless(stdout: NodeJS.WriteStream): NodeJS.WriteStream {
  return new Proxy(stdout, {
    get: (real, key) => {
      if (key === 'rows') return Number.MAX_SAFE_INTEGER
      const value: unknown = Reflect.get(real, key, real)
      return typeof value === 'function' ? value.bind(real) : value
    },
  })
}
