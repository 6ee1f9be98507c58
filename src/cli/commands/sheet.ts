// barover sheet: a blank inspection sheet on paper, for a place where no screen may go. No job is opened and nothing goes on record.
import process from 'node:process'
import { sizeText } from '../../core/job/attachment.ts'
import { kitOf } from '../../core/kit/kit.ts'
import { checkOutFile, writeOutFile } from '../../node/out-file.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, text } from '../args.ts'
import { EXIT } from '../exit.ts'
import { print } from '../terminal.ts'
import { BEFORE_A_JOB, dayFrom, filesFor } from './kit.ts'
import { outFrom, PAPER, paperFrom } from './report.ts'
import { recordFrom } from './run.ts'

const REPLACE_HINT = '--replace puts the sheet in its place; or give another name.'

export const sheetCommand: Command = {
  name: 'sheet',
  usage: 'barover sheet PROCEDURE --machine FILE --out FILE.pdf [--paper a4|letter] [--clock DAY]',
  summary:
    'A blank inspection sheet as PDF: every step, limit, drawing and hold point with boxes to write in. Hold points on paper are not enforced by Barover.',
  options: {
    machine: BEFORE_A_JOB.machine,
    out: { type: 'string', says: 'file to write; - or none: to the pipe' },
    replace: { type: 'boolean', says: 'a file of that name may be replaced' },
    ...PAPER,
    as: {
      type: 'string',
      says: 'real, practice or example (default: example for an invented machine, else real)',
    },
    clock: BEFORE_A_JOB.clock,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [procedure]) => {
    const paper = paperFrom(values)
    const out = outFrom(values, true, REPLACE_HINT)
    if (out !== null) checkOutFile(out)
    const asked = recordFrom(text(values, 'as'))
    const day = dayFrom(text(values, 'clock'))
    const { files, defs } = filesFor('sheet', procedure, values)
    const { blankOf, blankRecord } = await import('../../core/blank/index.ts')
    const record = blankRecord(defs, asked)
    if (!record.ok) throw new UserError(record.error.say, EXIT.checkFailed)
    const sheet = blankOf(defs, kitOf(defs, day), record.value, files)
    const { readFonts, sheetPdf } = await import('../../report/index.ts')
    const bytes = await sheetPdf(sheet, readFonts(), paper)
    if (out === null) process.stdout.write(bytes)
    else {
      writeOutFile({ ...out, bytes })
      print(`${sheet.record}  written  ${out.path}, ${sizeText(bytes.length)}`)
      print(`${sheet.record}  ${sheet.procedure}; ${sheet.machine}; printed for ${sheet.day}`)
      print(`${sheet.record}  check mark ${sheet.mark}; barover key-in takes it once it is filled in`)
      print(`${sheet.record}  HOLD POINTS ON PAPER ARE NOT ENFORCED BY BAROVER.`)
    }
    return EXIT.done
  },
}
