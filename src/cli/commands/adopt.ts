// barover adopt: a lead takes what a closed job left for the baseline of the next overhaul. The machine record is written anew
// under another name with one overhaul more, and the log says by whom, which figures and what hash that file has.
import { createHash } from 'node:crypto'
import { basename } from 'node:path'
import { withOverhaul } from '../../authoring/add-overhaul.ts'
import {
  barsAdopting,
  type LeftFigures,
  leftFigures,
  MEASURE_ANEW,
  type NotLeft,
  nothingLeft,
  notSaidRenewed,
  RENEWED,
  type RenewedPart,
} from '../../core/job/adopt.ts'
import { hoursAtEnd } from '../../core/job/changes.ts'
import type { Definitions } from '../../core/job/definitions.ts'
import { bundlesOf, withRecord } from '../../core/job/editions.ts'
import type { FileCopy } from '../../core/job/entries.ts'
import { recordChanges } from '../../core/job/record-changes.ts'
import { workDay } from '../../core/job/work-day.ts'
import { leftFigureText, notLeftText } from '../../core/sheet/adopted-block.ts'
import { layOut, plainText, type Row, row } from '../../core/sheet/block.ts'
import { isStop } from '../../core/talk/words.ts'
import { readTextFile, uniqueName } from '../../node/definition-files.ts'
import { findJob } from '../../node/job-folder.ts'
import { checkOutFile, stageOutFile } from '../../node/out-file.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED, text, type Values } from '../args.ts'
import { type Asker, askPerson } from '../asker.ts'
import { EXIT } from '../exit.ts'
import { finishLate, lateJob } from '../late-job.ts'
import { definitionsOrProblem, type OpenedJob } from '../open.ts'
import { CLOSED_STOP, signLate } from '../sign-late.ts'
import { print, sheetStyle } from '../terminal.ts'
import { jobsFolder } from './run.ts'

export const adoptCommand: Command = {
  name: 'adopt',
  usage:
    'barover adopt JOB --machine FILE --out FILE [--renewed PARTS] [--hours H] [--without NUMBERS] [--by INITIALS] [--jobs DIR]',
  summary:
    'What a closed job left becomes the baseline of the next overhaul: a lead signs, and the machine record is written with it.',
  options: {
    machine: { type: 'string', says: 'the machine record as it is now (YAML)' },
    out: { type: 'string', says: 'where the record with the new overhaul goes; no file may be there yet' },
    renewed: {
      type: 'string',
      says: `what was made new or cut, of ${RENEWED.join(', ')}; or none. Asked for unless given`,
    },
    hours: { type: 'string', says: 'running hours, where the job has not read them' },
    without: { type: 'string', says: 'numbers of figures that are not adopted, for example 3,4' },
    by: {
      type: 'string',
      says: 'initials of the lead who signs; asked for unless given, and the PIN always',
    },
    ...SHARED,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [job]) => {
    const [machine, out] = [text(values, 'machine'), text(values, 'out')]
    if (machine === undefined || out === undefined)
      throw new UserError('barover adopt needs --machine and --out.', EXIT.wrongUse, 'barover adopt --help')
    checkOutFile(outFile(out))
    const opened = lateJob(findJob(jobsFolder(values), job ?? ''))
    const asker = askPerson()
    try {
      return await adopt(opened, { machine, out }, values, asker)
    } finally {
      asker.close()
      opened.journal.close()
    }
  },
}

interface Paths {
  readonly machine: string
  readonly out: string
}

async function adopt(opened: OpenedJob, paths: Paths, values: Values, asker: Asker): Promise<number> {
  const { session, defs } = opened
  const { state, shown } = session.snapshot()
  const refused = (why: string) => finishLate(opened, values, shown.length, `${why} Nothing was adopted.`)
  const barred = barsAdopting(state)
  if (!barred.ok) return refused(barred.error.say)
  const record = currentRecord(opened, paths.machine)
  const figures = leftFigures(defs, state)
  const without = numbersIn(text(values, 'without'), figures.figures.length)
  if (values.json !== true) say(opened, values, listRows(figures, without))
  if (figures.figures.every((_, n) => without.includes(n + 1))) return refused(nothingLeft(figures))
  const hours = hoursIn(text(values, 'hours')) ?? hoursAtEnd(defs, state)
  if (hours === null) return refused('The running hours were not read on this job: give them with --hours.')
  const cut =
    text(values, 'renewed') ??
    (await asker.ask(`What was made new or cut: any of ${RENEWED.join(', ')}; or none.`)) ??
    ''
  if (isStop(cut)) return refused(CLOSED_STOP)
  const renewed = partsIn(cut)
  if (renewed === null) return refused('What was made new or cut is one or more of these, or none.')
  const silent = notSaidRenewed(defs, state, renewed)
  if (silent !== null) return refused(silent)
  const by =
    text(values, 'by') ??
    (await asker.ask('Initials of the lead who adopts them. Enter alone: nothing is adopted.')) ??
    ''
  if (isStop(by)) return refused(CLOSED_STOP)
  if (by.trim() === '') return refused('Nobody signed for it.')
  const kept = figures.figures.filter((_, n) => !without.includes(n + 1))
  const { day, report } = { day: workDay(opened.journal.entries), report: state.job }
  const written = withOverhaul(record.text, { day, hours, report, renewed, figures: kept })
  checkWritten(opened, record, written)
  const file = {
    name: basename(paths.out),
    sha256: createHash('sha256').update(written, 'utf8').digest('hex'),
  }
  const what = { do: 'adopt', hours, renewed, without, file, person: by.trim().toUpperCase() } as const
  // A baseline that nobody signed for never has the name that was asked for.
  const staged = stageOutFile({ ...outFile(paths.out), bytes: Buffer.from(written) })
  let why: string | null = 'It was broken off.'
  try {
    why = await signLate(opened, what, asker)
    if (why === null) staged.name()
  } finally {
    if (why !== null) staged.drop()
  }
  return why === null ? finishLate(opened, values, shown.length, null) : refused(why)
}

const outFile = (path: string) => ({ path, replace: false, replaceHint: 'Give another name.' })

/** The record as it is now: of this cylinder, and fit to be worked by. @throws UserError. */
function currentRecord(opened: OpenedJob, path: string): FileCopy & { readonly defs: Definitions } {
  const copy: FileCopy = { role: 'machine', name: basename(path), sha256: '', text: readTextFile(path) }
  const defs = definitionsWith(opened, copy)
  const [was, now] = [opened.defs.machine, defs.machine]
  if (now.machine !== was.machine || now.compressor !== was.compressor || now.invented !== was.invented)
    throw new UserError(
      `${path} is the record of ${now.machine}, and the job was on ${was.machine}.`,
      EXIT.checkFailed,
    )
  if ((now.overhauls ?? []).some(({ report }) => report === opened.session.snapshot().state.job))
    throw new UserError(`${path} has what this job left already.`, EXIT.checkFailed)
  return { ...copy, defs }
}

function definitionsWith({ journal }: OpenedJob, copy: FileCopy): Definitions {
  const bundles = bundlesOf(journal.entries)
  const { files } = bundles.at(-1) ?? bundles[0]
  const others = new Map(files.filter(({ role }) => role !== 'machine').map(({ name }) => [name, name]))
  return definitionsOrProblem(
    withRecord(files, { ...copy, name: uniqueName(copy.name, others) }),
    new Map([[copy.name, copy.name]]),
  )
}

/** Whatever was written is read again: it differs from what was there in overhauls, and in nothing else. */
function checkWritten(
  opened: OpenedJob,
  record: FileCopy & { readonly defs: Definitions },
  text: string,
): void {
  const { machine } = definitionsWith(opened, { ...record, text })
  const other = recordChanges(record.defs.machine, machine).find(({ field }) => !field.startsWith('overhaul'))
  const count = (machine.overhauls?.length ?? 0) - (record.defs.machine.overhauls?.length ?? 0)
  if (other !== undefined || count !== 1)
    throw new Error(`the record written differs in more than an overhaul: ${other?.field ?? count}`)
}

function listRows({ figures, not }: LeftFigures, without: readonly number[]): Row[] {
  const held = not.filter(({ measuring }) => measuring === true)
  const back = not.filter((one) => !held.includes(one))
  return [
    ...(figures.length === 0
      ? []
      : [row('What this job left, for the baseline of the next overhaul:', 'strong')]),
    ...figures.map((one, n) =>
      row(`  ${n + 1}  ${leftFigureText(one)}${without.includes(n + 1) ? ': NOT ADOPTED' : ''}`),
    ),
    ...leftOut('Not of what went back, and left out:', back),
    ...leftOut('Measured on HOLD, and no baseline:', held, 'caution'),
    ...(held.length === 0 || figures.length === 0 ? [] : [row(MEASURE_ANEW)]),
    ...(figures.length === 0
      ? []
      : [
          row(
            'Bores are at 20 degC with the error of their place, as their verdict had both; all else as it was read.',
          ),
        ]),
  ]
}

function leftOut(head: string, those: readonly NotLeft[], tone?: Row['tone']): Row[] {
  return those.length === 0 ? [] : [row(head, tone), ...those.map((one) => row(`  ${notLeftText(one)}`))]
}

function say({ mark }: OpenedJob, values: Values, rows: readonly Row[]): void {
  print(plainText(layOut({ margin: '', rows }, sheetStyle(values, mark))))
}

/** @throws UserError for what is no number of the list. */
function numbersIn(keyed: string | undefined, most: number): number[] {
  if (keyed === undefined) return []
  const numbers = keyed.split(',').map((one) => (/^\s*\d{1,3}\s*$/.test(one) ? Number(one) : 0))
  if (numbers.every((one) => one >= 1 && one <= most)) return numbers
  throw new UserError(`--without takes numbers from 1 to ${most}, with commas between.`, EXIT.wrongUse)
}

/** @throws UserError for what is no figure. */
function hoursIn(keyed: string | undefined): number | null {
  if (keyed === undefined) return null
  if (/^\d{1,7}(\.\d)?$/.test(keyed.trim())) return Number(keyed)
  throw new UserError('--hours takes running hours, for example 68300.', EXIT.wrongUse)
}

/** Null for a word that names no part. */
function partsIn(keyed: string): RenewedPart[] | null {
  const words = keyed
    .split(/[\s,;]+/)
    .map((word) => word.trim().toLowerCase())
    .filter((word) => word !== '')
  if (words.length === 1 && words[0] === 'none') return []
  const parts = RENEWED.filter((part) => words.includes(part))
  return words.length > 0 && parts.length === new Set(words).size ? parts : null
}
