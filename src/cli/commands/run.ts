// barover run: a new job.

import process from 'node:process'
import type { RecordKind } from '../../core/job/definitions.ts'
import { kitOf } from '../../core/kit/kit.ts'
import { kitBeforeJob } from '../../core/kit/words.ts'
import { dayOf, type Instant, readStamp } from '../../core/lib/instant.ts'
import { row } from '../../core/sheet/block.ts'
import { blockText } from '../../core/sheet/linear.ts'
import { runningFrom, steppedFrom, systemClock } from '../../node/clock.ts'
import { findProcedure } from '../../node/home.ts'
import { UserError } from '../../node/user-error.ts'
import { startOf } from '../../plain/answers.ts'
import { ALOUD, type Command, SHARED, text, type Values } from '../args.ts'
import { asCalled } from '../called.ts'
import { answersFrom, drivePerson, driveScripted } from '../drive.ts'
import { EXIT } from '../exit.ts'
import { type OpenedJob, startJob } from '../open.ts'
import { canDraw, print, sheetStyle } from '../terminal.ts'

export const runCommand: Command = {
  name: 'run',
  usage: 'barover run PROCEDURE --machine FILE [--answers FILE] [--jobs DIR]',
  summary: 'Start a job: a procedure on a machine.',
  options: {
    machine: { type: 'string', says: 'the machine record (YAML)' },
    answers: { type: 'string', says: 'take the answers from this file; never for a REAL job' },
    as: {
      type: 'string',
      says: 'real, practice or example (default: example for an invented machine, else real)',
    },
    clock: { type: 'string', says: 'start the clock at this time, 2026-03-14 06:20; never for a REAL job' },
    ...ALOUD,
    ...SHARED,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [procedure]) => {
    const machine = text(values, 'machine')
    if (machine === undefined || procedure === undefined) {
      throw new UserError(
        'A job needs a machine: give its record with --machine FILE.',
        EXIT.wrongUse,
        'barover run --help',
      )
    }
    return runJob({ procedure, machine, values })
  },
}

export interface RunRequest {
  readonly procedure: string
  readonly machine: string
  readonly values: Values
  /** A filled-in sheet is keyed in. */
  readonly paper?: true
}

export async function runJob({ procedure, machine, values, paper }: RunRequest): Promise<number> {
  const base = {
    procedurePath: findProcedure(procedure),
    machinePath: machine,
    jobs: jobsFolder(values),
    record: recordFrom(text(values, 'as')),
    ...(paper === undefined ? {} : { paper }),
  }
  const answers = text(values, 'answers')
  const set = clockFrom(text(values, 'clock'))
  if (answers === undefined) {
    const person = process.stdin.isTTY === true
    const opened = await startJob({
      ...base,
      clock: set === null ? systemClock : runningFrom(set),
      clockKind: set === null ? 'system' : 'set',
      answers: person ? 'person' : 'script',
    })
    await opened.session.look()
    if (paper === undefined) sayKit(opened, values, !canDraw(values))
    return drivePerson(opened, values)
  }
  const lines = answersFrom(answers)
  const start = set ?? startOf(lines)
  const stepped = start === null ? null : steppedFrom(start)
  const clock = stepped ?? systemClock
  const opened = await startJob({
    ...base,
    clock,
    clockKind: stepped === null ? 'system' : 'set',
    answers: 'script',
  })
  await opened.session.look()
  if (paper === undefined) sayKit(opened, values)
  return driveScripted(opened, lines, stepped, values)
}

/** What is missing before the job begins, on the sheet above its first line. Programs ask `barover kit --json`. */
function sayKit({ defs, record, session }: OpenedJob, values: Values, linear?: boolean): void {
  if (values.json === true) return
  const { lines, wrong } = kitBeforeJob(kitOf(defs, dayOf(session.snapshot().now)))
  const rows = lines.map((line) => row(asCalled(line), wrong ? 'caution' : 'faint'))
  print(blockText({ margin: '', rows }, sheetStyle(values, record, linear)))
}

export function jobsFolder(values: Values): string {
  return text(values, 'jobs') ?? 'jobs'
}

export function recordFrom(word: string | undefined): RecordKind | null {
  if (word === undefined) return null
  const record = word.toUpperCase()
  if (record === 'REAL' || record === 'PRACTICE' || record === 'EXAMPLE') return record
  throw new UserError(`--as takes real, practice or example, not "${word.slice(0, 20)}".`, EXIT.wrongUse)
}

export function clockFrom(value: string | undefined): Instant | null {
  if (value === undefined) return null
  const at = readStamp(value)
  if (at === null)
    throw new UserError(
      `--clock takes a time like 2026-03-14 06:20, not "${value.slice(0, 30)}".`,
      EXIT.wrongUse,
    )
  return at
}
