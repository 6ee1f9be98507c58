// barover jobs: what is in the folder of jobs.
import { replay } from '../../app/replay.ts'
import { openWords } from '../../core/job/open-words.ts'
import { openStop, type State } from '../../core/job/state.ts'
import { type JobFile, listJobs } from '../../node/job-folder.ts'
import { readJob } from '../../node/job-store.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED } from '../args.ts'
import { EXIT } from '../exit.ts'
import { radioOpen } from '../finish.ts'
import { print } from '../terminal.ts'
import { jobsFolder } from './run.ts'

export const jobsCommand: Command = {
  name: 'jobs',
  usage: 'barover jobs [--jobs DIR]',
  summary: 'List the jobs in a folder, newest first.',
  options: { jobs: SHARED.jobs, json: SHARED.json },
  positionals: { least: 0, most: 0 },
  run: async (values) => {
    const list = listJobs(jobsFolder(values)).map(summary)
    if (values.json === true) print(JSON.stringify(list))
    else if (list.length === 0) print(`No jobs in ${jobsFolder(values)}.`)
    else
      for (const job of list)
        print(`${job.record.padEnd(8)}  ${job.job}  ${job.entries} entries  ${job.standing}`)
    return EXIT.done
  },
}

function openStanding(state: State): string {
  const open = openWords(state).length
  return open === 0 ? 'open' : `open, ${radioOpen(open)}`
}

export interface JobSummary {
  readonly job: string
  readonly record: string
  readonly path: string
  readonly entries: number
  /** In words: what it ended in, or that it is open, stopped or damaged. */
  readonly standing: string
  readonly open: boolean
}

export function standingOf(state: State): string {
  if (state.fellFrom !== null)
    return `closed with ${state.fellFrom}, fallen to ${state.closed}: ${Object.keys(state.doubted).join(', ')} out of calibration`
  if (state.closed !== null && state.asLeft !== null)
    return `closed with ${state.closed} as found, ${state.asLeft} as left`
  if (state.closed !== null) return `closed with ${state.closed}`
  return openStop(state) === null ? openStanding(state) : 'open, under STOP'
}

export function summary(file: JobFile): JobSummary {
  const base = { job: file.id, record: file.record, path: file.path }
  try {
    const { entries } = readJob(file.path)
    const { state } = replay(entries)
    return { ...base, entries: entries.length, standing: standingOf(state), open: state.closed === null }
  } catch (error) {
    if (!(error instanceof UserError)) throw error
    return { ...base, entries: 0, standing: 'DAMAGED: barover verify says where', open: false }
  }
}
