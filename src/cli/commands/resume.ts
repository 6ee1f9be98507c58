// barover resume: take a job up where it was left.

import process from 'node:process'
import { headGroups } from '../../app/head.ts'
import type { Clock } from '../../app/ports.ts'
import { openedOf } from '../../app/replay.ts'
import type { Entry } from '../../core/job/entries.ts'
import { readStamp } from '../../core/lib/instant.ts'
import { row } from '../../core/sheet/block.ts'
import { blockText } from '../../core/sheet/linear.ts'
import { runningFrom, steppedFrom, systemClock } from '../../node/clock.ts'
import { findJob } from '../../node/job-folder.ts'
import { UserError } from '../../node/user-error.ts'
import { ALOUD, type Command, SHARED, text, type Values } from '../args.ts'
import { asCalled } from '../called.ts'
import { answersFrom, drivePerson, driveScripted } from '../drive.ts'
import { EXIT } from '../exit.ts'
import { type OpenedJob, takeUpJob } from '../open.ts'
import { print, sheetStyle } from '../terminal.ts'
import { jobsFolder } from './run.ts'

export const resumeCommand: Command = {
  name: 'resume',
  usage: 'barover resume JOB [--answers FILE] [--jobs DIR]',
  summary: 'Take a job up where it was left. JOB is a path, its id, or a part of the id that only it has.',
  options: {
    answers: { type: 'string', says: 'take the answers from this file; never for a REAL job' },
    ...ALOUD,
    ...SHARED,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [job]) => resumeJob(job ?? '', values),
}

export async function resumeJob(job: string, values: Values): Promise<number> {
  const file = findJob(jobsFolder(values), job)
  const answers = text(values, 'answers')
  const lines = answers === undefined ? null : answersFrom(answers)
  const stepped = lines === null ? null : steppedFrom({ ms: 0, offsetMin: 0 })
  const opened = takeUpJob(file.path, (entries) => clockFor(entries, stepped))
  refuseScripted(opened, lines !== null)
  if (opened.session.snapshot().state.closed !== null) {
    opened.journal.close()
    throw new UserError(
      `The job ${file.id} is closed: there is nothing to take up.`,
      EXIT.checkFailed,
      `barover show ${file.id}`,
    )
  }
  if (values.json !== true) tellFrom(opened, values)
  await opened.session.bring({ do: 'take-up' })
  return lines === null ? drivePerson(opened, values) : driveScripted(opened, lines, stepped, values)
}

/** What it is stands in the log itself: a file can be called anything. @throws UserError, with the log shut. */
export function refuseScripted({ record, journal }: OpenedJob, isScript: boolean): void {
  if (record !== 'REAL' || (!isScript && process.stdin.isTTY === true)) return
  journal.close()
  throw new UserError(
    'A REAL job takes its answers from a person at a terminal, not from a file or a pipe.',
    EXIT.checkFailed,
  )
}

/** A log cut off at a line's end looks the same to itself: only whoever noted a head or a count can tell. */
function tellFrom({ journal, mark }: OpenedJob, values: Values): void {
  const { entries, torn } = journal
  const last = entries[entries.length - 1]?.at ?? ''
  const said = [
    ...(torn === null ? [] : [torn]),
    `Taken up from ${entries.length} lines, the last of ${last.slice(0, 10)} ${last.slice(11, 16)}. Their check number is:`,
    ...headGroups(journal.head()),
    asCalled('If another one was noted for the end of it, lines were cut off: barover verify --head.'),
  ]
  print(blockText({ margin: '', rows: said.map((line) => row(line)) }, sheetStyle(values, mark)))
}

/** A clock that was set by hand carries on a minute after the last entry; any other job has the machine's own clock. */
export function clockFor(entries: readonly Entry[], stepped: ReturnType<typeof steppedFrom> | null): Clock {
  const last = readStamp(entries[entries.length - 1]?.at ?? '')
  if (openedOf(entries).clock !== 'set' || last === null) return systemClock
  const from = { ...last, ms: last.ms + 60_000 }
  if (stepped === null) return runningFrom(from)
  stepped.setTo(from)
  return stepped
}
