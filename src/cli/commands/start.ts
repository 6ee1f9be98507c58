// barover without a command: a choice of jobs on a terminal; elsewhere the example job from its answers.
import { join } from 'node:path'
import { homeFolder } from '../../node/home.ts'
import { listJobs } from '../../node/job-folder.ts'
import { type Command, SHARED, type Values } from '../args.ts'
import { EXIT } from '../exit.ts'
import { hush } from '../hush.ts'
import { linesWithoutJob } from '../safe-lines.ts'
import { canDraw, wantsAscii } from '../terminal.ts'
import { summary } from './jobs.ts'
import { resumeJob } from './resume.ts'
import { jobsFolder, runJob } from './run.ts'
import { showCommand } from './show.ts'

const EXAMPLE_START = '2026-03-14 06:20+00:00'

export const startCommand: Command = {
  name: '',
  usage: 'barover',
  summary:
    'A choice: take up a job, start the example, see a finished job. Without a terminal: the example job.',
  options: SHARED,
  positionals: { least: 0, most: 0 },
  run: async (values) => (canDraw(values) ? choose(values) : example(values, true)),
}

function example(values: Values, scripted: boolean): Promise<number> {
  const folder = join(homeFolder(), 'examples', 'tc-401')
  const how = scripted ? { answers: join(folder, 'answers.txt') } : { clock: EXAMPLE_START }
  return runJob({
    procedure: 'bore-inspection',
    machine: join(folder, 'machine.yaml'),
    values: { ...values, ...how },
  })
}

async function choose(values: Values): Promise<number> {
  const files = listJobs(jobsFolder(values)).slice(0, 50)
  const jobs = files.map(summary)
  const open = jobs.filter((j) => j.open)
  const safe = () => linesWithoutJob(files.filter((f) => open.some((j) => j.path === f.path)))
  const closed = jobs.filter((j) => !j.open && j.entries > 0)
  const { drawChoice } = await import('../../ui/draw-choice.tsx')
  const ascii = wantsAscii(values)
  const which = await drawChoice({
    title: 'Barover',
    lines: [
      'Takes you through work on the piston end, and keeps the record of it.',
      'Only the example starts from here. A real job: barover run --help.',
    ],
    options: [
      `Take up a job that was left (${open.length})`,
      'Start the example job: a bore inspection on an invented machine',
      `See a finished job (${closed.length})`,
    ],
    ascii,
    safe,
  })
  if (typeof which === 'string') return codeOf(which)
  // The choice gave the terminal back: until the next screen is there it shows nothing either.
  hush()
  if (which === 1) return example(values, false)
  const list = which === 0 ? open : closed
  const picked = await drawChoice({
    title: which === 0 ? 'Take up which job?' : 'See which job?',
    lines: list.length === 0 ? [`There is none in the folder ${jobsFolder(values)}.`] : [],
    options: list.map((j) => `${j.record}  ${j.job}  ${j.standing}`),
    ascii,
    safe,
  })
  if (typeof picked === 'string') return codeOf(picked)
  hush()
  const job = list[picked]
  if (job === undefined) return EXIT.done
  return which === 0 ? resumeJob(job.path, values) : showCommand.run(values, [job.path])
}

function codeOf(how: 'left' | 'interrupted'): number {
  return how === 'left' ? EXIT.done : EXIT.interrupted
}
