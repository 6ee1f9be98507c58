// barover pin: the key of a PIN for the crew file. The PIN is no argument and is never shown, so that it stays in no
// history, on no screen and in no list of what runs.
import process from 'node:process'
import { text as readAll } from 'node:stream/consumers'
import { hashPin, pinProblem } from '../../node/pins.ts'
import { UserError } from '../../node/user-error.ts'
import type { Command } from '../args.ts'
import { EXIT } from '../exit.ts'
import { askSecrets } from '../secret.ts'
import { print } from '../terminal.ts'

export const pinCommand: Command = {
  name: 'pin',
  usage: 'barover pin [INITIALS] [--stdin]',
  summary: 'Make the key of a PIN, as a line for the crew file. The PIN is asked twice and not shown.',
  options: {
    stdin: { type: 'boolean', says: 'take the PIN from a pipe, on one line' },
  },
  positionals: { least: 0, most: 1 },
  run: async (values, [initials]) => {
    if (initials !== undefined && !/^[A-Z][A-Z0-9]{1,3}$/i.test(initials)) {
      // What was keyed may be the PIN itself, so it is not shown back.
      throw new UserError(
        'Behind pin stand initials and nothing else: a PIN is asked for, and never keyed on the command line.',
        EXIT.wrongUse,
        'barover pin --help',
      )
    }
    const pin = process.stdin.isTTY === true ? await askTwice() : await piped(values.stdin === true)
    const problem = pinProblem(pin)
    if (problem !== null) throw new UserError(problem, EXIT.checkFailed)
    const who = initials === undefined ? 'the person' : initials.toUpperCase()
    process.stderr.write(`In the crew file, with ${who}:\n`)
    print(`pin: "${await hashPin(pin)}"`)
    return EXIT.done
  },
}

async function piped(asked: boolean): Promise<string> {
  if (!asked) {
    throw new UserError(
      'A PIN is keyed at a terminal; --stdin takes it from a pipe.',
      EXIT.wrongUse,
      'barover pin --help',
    )
  }
  return (await readAll(process.stdin)).replace(/\r?\n$/, '')
}

async function askTwice(): Promise<string> {
  const refuse = (pin: string) => {
    const problem = pinProblem(pin)
    if (problem !== null) throw new UserError(problem, EXIT.checkFailed)
  }
  const questions = ['PIN, 4 to 12 digits. It is not shown while it is keyed.', 'The same once more.']
  const [pin = '', again] = await askSecrets(questions, refuse)
  if (again !== pin) throw new UserError('The two were not the same; nothing was made.', EXIT.checkFailed)
  return pin
}
