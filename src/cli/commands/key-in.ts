// barover key-in: what was written by hand on a printed sheet is keyed in, as it stands, into a job of its own.
import { FROM_PAPER, NOT_ENFORCED_BY } from '../../core/job/paper.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED, text } from '../args.ts'
import { EXIT } from '../exit.ts'
import { runJob } from './run.ts'

export const keyInCommand: Command = {
  name: 'key-in',
  usage: 'barover key-in PROCEDURE --machine FILE [--answers FILE] [--jobs DIR]',
  summary: `Key in a filled-in sheet of barover sheet, as it stands: a job ${FROM_PAPER}, ${NOT_ENFORCED_BY}. It opens nothing, then or later.`,
  options: {
    machine: { type: 'string', says: 'the machine record the sheet was printed from (YAML)' },
    answers: { type: 'string', says: 'take the answers from this file; never for a REAL job' },
    as: {
      type: 'string',
      says: 'real, practice or example (default: example for an invented machine, else real)',
    },
    clock: { type: 'string', says: 'start the clock at this time, 2026-03-14 16:20; never for a REAL job' },
    ...SHARED,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [procedure]) => {
    const machine = text(values, 'machine')
    if (machine === undefined || procedure === undefined)
      throw new UserError(
        'A sheet is of a machine: give its record with --machine FILE.',
        EXIT.wrongUse,
        'barover key-in --help',
      )
    return runJob({ procedure, machine, values, paper: true })
  },
}
