// barover report: a job as a document that stands on its own. It reads the log and what lies beside it, and changes neither.
import process from 'node:process'
import { sizeText } from '../../core/job/attachment.ts'
import { markOf } from '../../core/job/paper.ts'
import type { Report } from '../../core/report/schema.ts'
import { findJob, type JobFile } from '../../node/job-folder.ts'
import { tornText } from '../../node/journal/examine.ts'
import { checkOutFile, writeOutFile } from '../../node/out-file.ts'
import { UserError } from '../../node/user-error.ts'
import { VERSION } from '../../node/version.ts'
import { type Command, SHARED, text, type Values } from '../args.ts'
import { EXIT } from '../exit.ts'
import { exitCodeOf } from '../finish.ts'
import { checkLog, headFrom, type LogCheck } from '../log-check.ts'
import { reviewIn } from '../reviewed.ts'
import { print } from '../terminal.ts'
import { jobsFolder } from './run.ts'

const FORMS = ['text', 'html', 'pdf', 'csv', 'json'] as const
type Form = (typeof FORMS)[number]

const REPLACE_HINT = '--replace puts the report in its place; or give another name.'

/** For every command that writes a PDF. */
export const PAPER = {
  paper: { type: 'string', says: 'of a PDF: a4 (unless said) or letter' },
} as const

const SIZES = ['a4', 'letter'] as const

/** @throws UserError for any other paper. */
export function paperFrom(values: Values): (typeof SIZES)[number] {
  const asked = text(values, 'paper') ?? 'a4'
  const size = SIZES.find((one) => one === asked.toLowerCase())
  if (size === undefined)
    throw new UserError(`--paper takes a4 or letter, not "${asked.slice(0, 20)}".`, EXIT.wrongUse)
  return size
}

export const reportCommand: Command = {
  name: 'report',
  usage:
    'barover report JOB [--to text|html|pdf|csv|json] [--out FILE] [--paper a4|letter] [--head HASH] [--jobs DIR]',
  summary:
    'A job as a document that stands on its own: verdicts, exceptions, readings with plots, hold points, sources, the whole log. JOB: enough of its name, as eb06.',
  options: {
    to: { type: 'string', says: 'text (unless said), html, pdf, csv for a spreadsheet, or json' },
    out: { type: 'string', says: 'file to write; - or none: to the terminal or pipe' },
    ...PAPER,
    replace: { type: 'boolean', says: 'a file of that name may be replaced' },
    head: { type: 'string', says: 'check number that was noted elsewhere: it proves the log whole' },
    jobs: SHARED.jobs,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [job]) => {
    const form = formFrom(values)
    const paper = paperFrom(values)
    if (values.paper !== undefined && form !== 'pdf')
      throw new UserError('--paper is for --to pdf alone.', EXIT.wrongUse)
    const out = outFrom(values, form === 'pdf', REPLACE_HINT)
    if (out !== null) checkOutFile(out)
    const file = findJob(jobsFolder(values), job ?? '')
    const check = checkLog(file.path, headFrom(values))
    refuseUnsound(file, check)
    const { entries, editions, state, review } = reviewIn(values, file, check)
    const { reportOf } = await import('../../core/report/forms.ts')
    const report = reportOf(editions, entries, state, review, {
      head: check.found.head,
      version: VERSION,
      checks: checksOf(check),
      files: new Map(check.attached.files.map(({ seq, state: is }) => [seq, is])),
    })
    const bytes = await written(report, form, paper)
    if (out === null) process.stdout.write(bytes)
    else {
      writeOutFile({ ...out, bytes })
      print(`${markOf(report)}  written  ${out.path}, ${sizeText(bytes.length)}`)
      print(`${markOf(report)}  head     ${report.head}`)
    }
    return check.isWhole ? exitCodeOf(state) : EXIT.checkFailed
  },
}

function formFrom(values: Values): Form {
  const asked = text(values, 'to') ?? 'text'
  const form = FORMS.find((one) => one === asked)
  if (form === undefined)
    throw new UserError(
      `--to takes ${FORMS.slice(0, -1).join(', ')} or ${FORMS.at(-1)}, not "${asked.slice(0, 20)}".`,
      EXIT.wrongUse,
    )
  return form
}

/** The file that is asked for, null for the pipe. @throws UserError for a PDF on a terminal. */
export function outFrom(values: Values, isPdf: boolean, replaceHint: string) {
  const path = text(values, 'out')
  if (path !== undefined && path !== '-' && path !== '')
    return { path, replace: values.replace === true, replaceHint }
  if (path === '') throw new UserError('--out takes the name of a file, or - for the pipe.', EXIT.wrongUse)
  if (isPdf && process.stdout.isTTY === true)
    throw new UserError('A PDF is nothing to read on a terminal: --out FILE.', EXIT.wrongUse)
  return null
}

/** Of a log that is not sound, or has an unfinished end, nothing is made that could pass for a report of the job. */
function refuseUnsound({ path }: JobFile, { found, inside, isSound }: LogCheck): void {
  const { content, tail, whole, torn } = found
  const hint = `No report is made of it. barover verify ${path} says what could be checked; barover show has the lines before a break.`
  if (content.state === 'fault')
    throw new UserError(`THE LOG IS NOT SOUND: ${content.what}`, EXIT.fileProblem, hint)
  const [fault] = [...inside, ...[tail, whole].flatMap((one) => (one.state === 'fault' ? [one.what] : []))]
  if (!isSound) throw new UserError(`THE LOG IS NOT SOUND: ${fault ?? ''}`, EXIT.checkFailed, hint)
  if (torn !== null)
    throw new UserError(
      tornText(torn),
      EXIT.checkFailed,
      'No report is made of it: taking the job up, with barover resume, sets that piece aside.',
    )
}

function checksOf({ found, attached }: LogCheck): Report['checks'] {
  const { content, tail, whole } = found
  const { files, strays } = attached
  return [
    { of: 'content', says: content.what },
    { of: 'tail', says: tail.what },
    { of: 'whole', says: whole.what },
    ...files.map(({ name, what }) => ({ of: 'file', says: `${name}: ${what}` })),
    ...strays.map((stray) => ({ of: 'on no record', says: stray })),
  ]
}

/** Loaded here and not before: no other command needs plots, and nothing but a PDF and a page the fonts. */
async function written(report: Report, form: Form, paper: 'a4' | 'letter'): Promise<Buffer> {
  const { paperOf, TEXT_FORMS } = await import('../../core/report/forms.ts')
  if (form !== 'pdf' && form !== 'html') return Buffer.from(TEXT_FORMS[form](report))
  if (form === 'html') {
    const { htmlPage } = await import('../../report/page.ts')
    return Buffer.from(await htmlPage(paperOf(report)))
  }
  const { readFonts, reportPdf } = await import('../../report/index.ts')
  return reportPdf(paperOf(report), readFonts(), paper)
}
