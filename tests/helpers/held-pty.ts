// A program in a pseudo-terminal of its own, of which nothing it wrote last is lost.
import { closeSync, constants, openSync } from 'node:fs'
import { type IPty, type IPtyForkOptions, spawn } from '@lydell/node-pty'

/** Where the other end of the pseudo-terminal stands among the devices. */
export function deviceOf(pty: IPty): string {
  const { _pty: path } = pty as unknown as { readonly _pty: string }
  return path
}

/**
 * Once the last end of a pseudo-terminal is shut the reader is told so beside the last bytes, and may drop what the kernel hands over
 * after them (node-pty issue 72). An end held open here until the program is gone keeps that from happening.
 */
export function heldPty(file: string, args: readonly string[], options: IPtyForkOptions): IPty {
  const pty = spawn(file, [...args], options)
  const end = openSync(deviceOf(pty), constants.O_RDWR | constants.O_NOCTTY)
  pty.onExit(() => closeSync(end))
  return pty
}
