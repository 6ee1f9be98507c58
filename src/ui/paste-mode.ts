// Bracketed paste: the terminal marks what is pasted, so that a pasted line end is never taken for Enter.
import process from 'node:process'

const ON = '\u001b[?2004h'
const OFF = '\u001b[?2004l'

/** Switches it on, and off again on every way out, the abrupt ones too. */
export function markPastes(stdout: NodeJS.WriteStream): () => void {
  const off = () => {
    stdout.write(OFF)
  }
  stdout.write(ON)
  process.once('exit', off)
  return () => {
    process.removeListener('exit', off)
    off()
  }
}
