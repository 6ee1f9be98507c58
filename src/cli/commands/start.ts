// barover without a command: a choice of jobs on a terminal; elsewhere what can be done, and nothing is written.
import { join, relative } from 'node:path'
import process from 'node:process'
import { homeFolder } from '../../node/home.ts'
import { listJobs } from '../../node/job-folder.ts'
import { ALOUD, type Command, SHARED, type Values } from '../args.ts'
import { EXIT } from '../exit.ts'
import { hush } from '../hush.ts'
import { linesWithoutJob } from '../safe-lines.ts'
import { canDraw, print, wantsAscii } from '../terminal.ts'
import { summary } from './jobs.ts'
import { resumeJob } from './resume.ts'
import { jobsFolder, runJob } from './run.ts'
import { showCommand } from './show.ts'

const EXAMPLE_START = '2026-03-14 06:20+00:00'

export const startCommand: Command = {
  name: '',
  usage: 'barover',
  summary:
    'A choice: take up a job, start the example, see a finished job. Without a terminal: what can be done.',
  options: { ...ALOUD, ...SHARED },
  positionals: { least: 0, most: 0 },
  run: async (values) => (canDraw(values) ? choose(values) : whatCanBeDone(values)),
}

const EXAMPLE_FOLDER = () => join(homeFolder(), 'examples', 'tc-401')

/** Nobody is there to choose, and a job is a record: none is begun unasked. */
function whatCanBeDone(values: Values): number {
  const open = listJobs(jobsFolder(values))
    .map(summary)
    .filter((one) => one.open)
  const [machine, answers] = ['machine.yaml', 'answers.txt'].map((name) =>
    named(join(EXAMPLE_FOLDER(), name)),
  )
  const lines = [
    'Barover takes a crew through work on the piston end of a compressor, and keeps the record of it.',
    'Here is no terminal to draw on, so it only says what can be done. Nothing was begun and nothing written.',
    '',
    'The example, an invented machine, from its answers to its verdict:',
    `  barover run bore-inspection --machine ${machine} --answers ${answers}`,
    'The same, keyed by you, line by line:',
    `  barover run bore-inspection --machine ${machine} --clock "2026-03-14 06:20" --plain`,
    '',
    `Open in ${jobsFolder(values)}: ${open.length === 0 ? 'no job' : `${open.length}; barover jobs lists them, barover resume JOB takes one up`}.`,
    'barover --help lists every command. On a terminal, barover alone gives a choice.',
  ]
  if (values.json === true) print(JSON.stringify({ began: false, open: open.map(({ job }) => job) }))
  else for (const line of lines) print(line)
  return EXIT.done
}

/** As it can be typed: in quotes where it has to be, from here where that is shorter. */
function named(path: string): string {
  const near = relative(process.cwd(), path)
  const short = near.length < path.length ? near : path
  return /[^\w./-]/.test(short) ? JSON.stringify(short) : short
}

function example(values: Values): Promise<number> {
  return runJob({
    procedure: 'bore-inspection',
    machine: join(EXAMPLE_FOLDER(), 'machine.yaml'),
    values: { ...values, clock: EXAMPLE_START },
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
  if (which === 1) return example(values)
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
