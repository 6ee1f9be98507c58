// What is drawn in a test, left again when the test is over; and a line keyed on it.
import { onTestFinished } from 'vitest'
import type { FakeTerminal } from './fake-terminal.ts'

/** The terminal closes when the test is over, and the drawing has to come to its end by that. */
export function endsWithTest<T>(terminal: FakeTerminal, done: Promise<T>): Promise<T> {
  onTestFinished(async () => {
    terminal.stdin.emit('end')
    await done
  })
  return done
}

/** Keys a line as a person does: what was typed is seen on the screen before Enter. */
export async function keyLine({ screen, send }: FakeTerminal, line: string): Promise<void> {
  send(line)
  await screen.until(line, () => screen.input === line)
  send('\r')
}
