// barover jobs: what is in the folder of jobs.

import { replay } from '../../app/replay.ts'
import type { RecordKind } from '../../core/job/definitions.ts'
import { markOf, type RecordMark } from '../../core/job/paper.ts'
import { everybodyIn } from '../../core/job/people-on.ts'
import { row } from '../../core/sheet/block.ts'
import { blockText } from '../../core/sheet/linear.ts'
import { standingOf } from '../../core/talk/standing.ts'
import { type JobFile, listJobs } from '../../node/job-folder.ts'
import { readSound } from '../../node/job-store.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED } from '../args.ts'
import { asCalled } from '../called.ts'
import { EXIT } from '../exit.ts'
import { leftLines, machineIn } from '../left-lines.ts'
import { print, sheetStyle } from '../terminal.ts'
import { jobsFolder } from './run.ts'

export const jobsCommand: Command = {
  name: 'jobs',
  usage: 'barover jobs [--jobs DIR]',
  summary:
    'List the jobs in a folder, newest first: when, on which machine, who, how each stands, what is on by the record.',
  options: { jobs: SHARED.jobs, json: SHARED.json, plain: SHARED.plain, ascii: SHARED.ascii },
  positionals: { least: 0, most: 0 },
  run: async (values) => {
    const list = listJobs(jobsFolder(values)).map((file) => ({ ...summary(file), left: leftBy(file) }))
    if (values.json === true) print(JSON.stringify(list))
    else if (list.length === 0) print(`No jobs in ${jobsFolder(values)}.`)
    else
      for (const [i, job] of list.entries()) {
        if (i > 0) print('')
        // An id is to be copied: nothing breaks it but the edge of the screen.
        print(`${job.mark.padEnd(8)}  ${job.job}`)
        const rows = [...aboutLines(job), ...job.left].map((line) => row(line))
        print(blockText({ margin: '', rows }, sheetStyle(values, job.mark)))
      }
    if (list.some(({ damaged }) => damaged !== null)) return EXIT.fileProblem
    return list.some(({ torn }) => torn !== null) ? EXIT.checkFailed : EXIT.done
  },
}

export interface JobSummary {
  readonly job: string
  readonly record: RecordKind
  /** The word on each line of it. */
  readonly mark: RecordMark
  readonly path: string
  /** Entries that could be read. */
  readonly entries: number
  /** In words: what it ended in, or that it is open, stopped or damaged. */
  readonly standing: string
  /** Tag of its machine; null where the record cannot be read. */
  readonly machine: string | null
  /** Stamps of the first and the last entry that could be read. */
  readonly from: string | null
  readonly to: string | null
  readonly people: readonly string[]
  readonly open: boolean
  /** Where a log that is not as it was written breaks; `behind`: lines after it that are not read, null when not known. */
  readonly damaged: { readonly line: number | null; readonly behind: number | null } | null
  /** What is known of an unfinished last line, or null. */
  readonly torn: string | null
}

export function summary(file: JobFile): JobSummary {
  const base = { job: file.id, record: file.record, path: file.path }
  try {
    const { entries, fault, torn } = readSound(file.path)
    const { state } = replay(entries)
    const standing =
      fault === null
        ? standingOf(state)
        : `DAMAGED at line ${fault.line}: ${fault.behind} behind it not read; up to it ${standingOf(state)}`
    return {
      ...base,
      mark: markOf(state),
      entries: entries.length,
      standing,
      machine: machineIn(entries),
      from: entries[0]?.at ?? null,
      to: entries[entries.length - 1]?.at ?? null,
      people: everybodyIn(state, entries).people,
      open: fault === null && state.closed === null,
      damaged: fault === null ? null : { line: fault.line, behind: fault.behind },
      torn,
    }
  } catch (error) {
    if (!(error instanceof UserError)) throw error
    return {
      ...base,
      mark: file.record,
      entries: 0,
      standing: asCalled('DAMAGED: not a line can be read. barover verify says what could be checked'),
      machine: null,
      from: null,
      to: null,
      people: [],
      open: false,
      damaged: { line: null, behind: null },
      torn: null,
    }
  }
}

/** By the lines that can be read. */
function leftBy(file: JobFile): string[] {
  try {
    const { entries } = readSound(file.path)
    return leftLines(entries, replay(entries).state)
  } catch (error) {
    if (!(error instanceof UserError)) throw error
    return ['What it leaves on the machine is not known.']
  }
}

function aboutLines({ standing, machine, from, to, people, entries, torn }: JobSummary): string[] {
  const day = (stamp: string) => `${stamp.slice(0, 10)} ${stamp.slice(11, 16)}`
  const end = (a: string, b: string) => (a.slice(0, 10) === b.slice(0, 10) ? b.slice(11, 16) : day(b))
  return [
    ...(from === null || to === null
      ? []
      : [
          `${day(from)} to ${end(from, to)}   ${machine ?? 'machine not known'}   ${people.length === 0 ? 'nobody signed on' : people.join(', ')}   ${entries} entries`,
        ]),
    standing,
    ...(torn === null ? [] : [torn]),
  ]
}
