// barover doubt: an instrument was found out of calibration after the jobs it was used on were closed. Nothing in their
// logs is changed: an entry is added to each, and what rested on the instrument falls.
import { replay } from '../../app/replay.ts'
import { personById } from '../../core/job/definitions.ts'
import type { Entry } from '../../core/job/entries.ts'
import { layOut, plainText } from '../../core/sheet/block.ts'
import { entryBlocks, saidBlock } from '../../core/sheet/shown-block.ts'
import { standingOf } from '../../core/talk/standing.ts'
import { findJob, type JobFile, listJobs } from '../../node/job-folder.ts'
import { readJob } from '../../node/job-store.ts'
import { pinFits } from '../../node/pins.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED, text, type Values } from '../args.ts'
import { EXIT } from '../exit.ts'
import { exitCodeOf } from '../finish.ts'
import { definitionsOf, takeUpJob } from '../open.ts'
import { askSecret } from '../secret.ts'
import { print, sheetStyle } from '../terminal.ts'
import { clockFor } from './resume.ts'
import { jobsFolder } from './run.ts'

export const doubtCommand: Command = {
  name: 'doubt',
  usage: 'barover doubt [JOB ...] --instrument ID [--why TEXT --says WHO --by INITIALS] [--jobs DIR]',
  summary:
    'An instrument was found out of calibration: list the jobs it read on, or, with JOB, let its readings there fall.',
  options: {
    instrument: { type: 'string', says: 'its id in the register, for example M-3' },
    why: { type: 'string', says: 'what was found wrong with it' },
    says: { type: 'string', says: 'who says so: a person, a laboratory, a paper' },
    by: { type: 'string', says: 'initials of who signs; the PIN is asked for' },
    ...SHARED,
  },
  positionals: { least: 0, most: 500 },
  run: async (values, jobs) => {
    const instrument = needed(values, 'instrument')
    if (jobs.length === 0) return list(values, instrument)
    const said = { instrument, why: needed(values, 'why'), says: needed(values, 'says') }
    const by = needed(values, 'by').trim().toUpperCase()
    const files = jobs.map((job) => findJob(jobsFolder(values), job))
    const pin = await pinFor(files, by)
    const done: Fallen[] = []
    for (const file of files) done.push(await fall(file, said, by, pin, values))
    if (values.json === true) print(JSON.stringify(done))
    if (done.some((one) => one.refused !== null)) return EXIT.checkFailed
    return Math.max(...done.map((one) => one.exit))
  },
}

function needed(values: Values, name: string): string {
  const given = text(values, name)
  if (given !== undefined && given.trim() !== '') return given
  throw new UserError(`barover doubt needs --${name}.`, EXIT.wrongUse, 'barover doubt --help')
}

/** Entries that the instrument read: readings of steps and gas tests of hold points. */
function readWith(entries: readonly Entry[], instrument: string): number {
  return entries
    .filter((e) => 'typed' in e || 'reading' in e)
    .filter((e) => 'instrument' in e && e.instrument === instrument).length
}

interface Listed {
  readonly job: string
  readonly record: string
  readonly path: string
  /** Null when the log cannot be read. */
  readonly readings: number | null
  readonly standing: string
}

/** A log that cannot be read may hold readings of it too, so it is named and the exit code says so. */
function list(values: Values, instrument: string): number {
  const found = listJobs(jobsFolder(values)).flatMap((file): Listed[] => {
    const base = { job: file.id, record: file.record, path: file.path }
    try {
      const { entries } = readJob(file.path)
      const readings = readWith(entries, instrument)
      return readings === 0 ? [] : [{ ...base, readings, standing: standingOf(replay(entries).state) }]
    } catch (error) {
      if (!(error instanceof UserError)) throw error
      return [{ ...base, readings: null, standing: 'DAMAGED: barover verify says where' }]
    }
  })
  if (values.json === true) print(JSON.stringify(found))
  else if (found.length === 0) print(`No job in ${jobsFolder(values)} has readings by ${instrument}.`)
  else
    for (const { record, job, readings, standing } of found)
      print(
        `${record.padEnd(8)}  ${job}  ${readings === null ? 'unknown' : readings} readings by ${instrument}  ${standing}`,
      )
  return found.some((one) => one.readings === null) ? EXIT.fileProblem : EXIT.done
}

/** Asked once, and only when one of the jobs holds a key for this person. */
async function pinFor(files: readonly JobFile[], by: string): Promise<string | null> {
  const keyed = files.some(({ path }) => {
    const { entries } = readJob(path)
    return personById(definitionsOf(path, entries), by)?.pin !== undefined
  })
  return keyed ? askSecret(`PIN of ${by}. It is not shown while it is keyed.`) : null
}

interface Fallen {
  readonly job: string
  readonly record: string
  readonly path: string
  readonly refused: string | null
  readonly outcome: string | null
  readonly closedWith: string | null
  readonly head: string
  readonly exit: number
}

async function fall(
  file: JobFile,
  said: { readonly instrument: string; readonly why: string; readonly says: string },
  by: string,
  pin: string | null,
  values: Values,
): Promise<Fallen> {
  const opened = takeUpJob(file.path, (entries) => clockFor(entries, null))
  try {
    const { session, defs, journal, record } = opened
    const before = session.snapshot()
    const key = personById(defs, by)?.pin
    const proved = key !== undefined && pin !== null && (await pinFits(pin, key))
    const open = before.state.closed === null
    if (!open) await session.bring({ do: 'doubt-instrument', ...said, person: by, proved })
    const { state, shown } = session.snapshot()
    const refused = open
      ? `It is still open: take it up and type instrument.`
      : (shown.slice(before.shown.length).flatMap((one) => (one.kind === 'said' ? one.lines : []))[0] ?? null)
    if (values.json !== true) {
      const style = sheetStyle(values, record)
      print(`${record}  ${file.id}  ${refused === null ? standingOf(state) : 'nothing added'}`)
      for (const one of shown.slice(before.shown.length))
        if (one.kind === 'entry')
          for (const block of entryBlocks(defs, one.state, one.entry, style))
            print(plainText(layOut(block, style)))
      if (refused !== null) print(plainText(layOut(saidBlock([refused], true), style)))
      print(`${record}  head  ${journal.head()}`)
    }
    return {
      job: file.id,
      record,
      path: file.path,
      refused,
      outcome: state.closed,
      closedWith: state.fellFrom ?? state.closed,
      head: journal.head(),
      exit: exitCodeOf(state),
    }
  } finally {
    opened.journal.close()
  }
}
