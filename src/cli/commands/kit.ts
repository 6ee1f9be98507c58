// barover kit: what to have before a job begins, and which instruments of the register cannot do it.

import { kitOf } from '../../core/kit/kit.ts'
import { kitLines } from '../../core/kit/words.ts'
import { dayOf, readStamp } from '../../core/lib/instant.ts'
import { asciiTwin, clean, wrap } from '../../core/lib/text.ts'
import { systemClock } from '../../node/clock.ts'
import { findProcedure } from '../../node/home.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED, text, type Values } from '../args.ts'
import { EXIT } from '../exit.ts'
import { filesToRead } from '../open.ts'
import { print, sheetStyle } from '../terminal.ts'

/** Options of commands that look at a job before it is opened. */
export const BEFORE_A_JOB = {
  machine: { type: 'string', says: 'the machine record (YAML)' },
  clock: { type: 'string', says: 'the day of the job, 2026-03-14, for the calibrations (default: today)' },
  ascii: SHARED.ascii,
} as const

/** Widest a line of the list gets: longer ones are hard to follow back. */
const WIDEST = 100

export const kitCommand: Command = {
  name: 'kit',
  usage: 'barover kit PROCEDURE --machine FILE [--clock DAY]',
  summary:
    'What to have before the job: instruments that can do it and those that cannot, locks, lifting gear, papers, people.',
  options: { ...BEFORE_A_JOB, json: SHARED.json },
  positionals: { least: 1, most: 1 },
  run: async (values, [procedure]) => {
    const kit = kitOf(definitionsFor('kit', procedure, values), dayFrom(text(values, 'clock')))
    if (values.json === true) print(JSON.stringify(kit))
    else {
      const { width, ascii } = sheetStyle(values, 'EXAMPLE')
      for (const line of kitLines(kit))
        for (const piece of wrap(clean(line), Math.min(width, WIDEST), 2))
          print(ascii ? asciiTwin(piece) : piece)
    }
    return kit.holds.length > 0 ? EXIT.checkFailed : EXIT.done
  },
}

/** @throws UserError when no machine is given or the files cannot be used. */
export function definitionsFor(command: string, procedure: string | undefined, values: Values) {
  return filesFor(command, procedure, values).defs
}

/** The same with the files they were read from. */
export function filesFor(command: string, procedure: string | undefined, values: Values) {
  const machine = text(values, 'machine')
  if (machine === undefined || procedure === undefined) {
    throw new UserError(
      'For which machine? Give its record with --machine FILE.',
      EXIT.wrongUse,
      `barover ${command} --help`,
    )
  }
  return filesToRead(findProcedure(procedure), machine)
}

/** Today, or the day of a time or a day given. @throws UserError for anything else. */
export function dayFrom(value: string | undefined): string {
  if (value === undefined) return dayOf(systemClock.now())
  const at = readStamp(value) ?? readStamp(`${value} 00:00`)
  if (at === null)
    throw new UserError(`--clock takes a day like 2026-03-14, not "${value.slice(0, 30)}".`, EXIT.wrongUse)
  return dayOf(at)
}
