// barover without a command: a choice of jobs on a terminal, drawn or in plain lines; elsewhere what can be done, and nothing
// is written.
import { join } from 'node:path'
import process from 'node:process'
import type { Choice } from '../../core/talk/choice.ts'
import { homeFolder } from '../../node/home.ts'
import { listJobs } from '../../node/job-folder.ts'
import { askChoice } from '../../plain/choice.ts'
import { ALOUD, type Command, SHARED, type Values } from '../args.ts'
import { asTyped, calledAs } from '../called.ts'
import { EXIT } from '../exit.ts'
import { hush } from '../hush.ts'
import { linesWithoutJob } from '../safe-lines.ts'
import { canDraw, isListened, print, wantsAscii } from '../terminal.ts'
import { terminalLines } from '../terminal-lines.ts'
import { type JobSummary, summary } from './jobs.ts'
import { practiceCommand } from './practice.ts'
import { resumeJob } from './resume.ts'
import { jobsFolder, runJob } from './run.ts'
import { showCommand } from './show.ts'

const EXAMPLE_START = '2026-03-14 06:20+00:00'

export const startCommand: Command = {
  name: '',
  usage: 'barover',
  summary:
    'A choice: take up a job, start the example, practise it, see a finished job. Without a terminal: what can be done.',
  options: { ...ALOUD, ...SHARED },
  positionals: { least: 0, most: 0 },
  run: async (values) => {
    if (canDraw(values)) return choose(values, drawn)
    return isListened(values) ? choose(values, inLines) : whatCanBeDone(values)
  },
}

/** Its place in the choice, from 0. */
const HIDDEN = 4

const EXAMPLE_FOLDER = () => join(homeFolder(), 'examples', 'tc-401')

/** Nobody is there to choose, and a job is a record: none is begun unasked. */
function whatCanBeDone(values: Values): number {
  const open = listJobs(jobsFolder(values))
    .map(summary)
    .filter((one) => one.open)
  const [machine, answers] = ['machine.yaml', 'answers.txt'].map((name) =>
    asTyped(join(EXAMPLE_FOLDER(), name)),
  )
  const barover = calledAs()
  const lines = [
    'Barover takes a crew through work on the piston end of a compressor, and keeps the record of it.',
    'Here is no terminal to draw on, so it only says what can be done. Nothing was begun and nothing written.',
    '',
    'The example, an invented machine, from its answers to its verdict:',
    `  ${barover} run bore-inspection --machine ${machine} --answers ${answers}`,
    'The same, keyed by you, line by line:',
    `  ${barover} run bore-inspection --machine ${machine} --clock "2026-03-14 06:20" --plain`,
    '',
    `Open in ${jobsFolder(values)}: ${open.length === 0 ? 'no job' : `${open.length}; ${barover} jobs lists them, ${barover} resume JOB takes one up`}.`,
    `${barover} --help lists every command. On a terminal, ${barover} alone gives a choice; with --plain in plain lines.`,
  ]
  if (values.json === true) print(JSON.stringify({ began: false, open: open.map(({ job }) => job) }))
  else for (const line of lines) print(line)
  return EXIT.done
}

/** A bore inspection on the invented machine, its clock set to a day on which its calibrations are good. */
function example(values: Values, as: 'example' | 'practice'): Promise<number> {
  return runJob({
    procedure: 'bore-inspection',
    machine: join(EXAMPLE_FOLDER(), 'machine.yaml'),
    values: { ...values, clock: EXAMPLE_START, as },
  })
}

/** The place of what was chosen, from 0. */
type Chosen = number | 'left' | 'interrupted'
type Asker = (choice: Choice, values: Values, safe: () => readonly string[]) => Promise<Chosen>

const drawn: Asker = async (choice, values, safe) => {
  const { drawChoice } = await import('../../ui/draw-choice.tsx')
  return drawChoice({ ...choice, ascii: wantsAscii(values), safe })
}

const inLines: Asker = async (choice, values, safe) => {
  const { DROPPED, dropEarly } = await import('../../ui/early-keys.ts')
  if ((await dropEarly()).dropped) print(DROPPED)
  const lines = terminalLines(process.stdin)
  try {
    return await askChoice(choice, {
      out: { write: (text) => void process.stdout.write(text) },
      ascii: wantsAscii(values),
      next: () => lines.next(false),
      safe,
    })
  } finally {
    lines.close()
  }
}

async function choose(values: Values, asker: Asker): Promise<number> {
  const listened: Values = isListened(values) ? { ...values, plain: true } : values
  let isEmpty = false
  for (;;) {
    const files = listJobs(jobsFolder(values)).slice(0, 50)
    const jobs = files.map(summary)
    const open = jobs.filter((j) => j.open)
    const closed = jobs.filter((j) => !j.open && j.entries > 0)
    const ask = async (choice: Choice): Promise<Chosen> => {
      const safe = () => linesWithoutJob(files.filter((f) => open.some((j) => j.path === f.path)))
      const chosen = await asker(choice, values, safe)
      // The choice gave the terminal back: until the next screen is there it shows nothing either.
      if (typeof chosen === 'number' || choice.zero === 'Back') hush()
      return chosen
    }
    const which = await ask(firstChoice(open.length, closed.length, isEmpty ? jobsFolder(values) : null))
    isEmpty = false
    if (typeof which === 'string') return which === 'left' ? EXIT.done : EXIT.interrupted
    if ((which === 0 && open.length === 0) || (which === 3 && closed.length === 0)) {
      isEmpty = true
      continue
    }
    if (which === 1) return example(values, 'example')
    if (which === 2) return example(values, 'practice')
    if (which === HIDDEN) return practiceCommand.run(values, [])
    const list = which === 0 ? open : closed
    const picked = await ask({
      title: which === 0 ? 'Take up which job?' : 'See which job?',
      lines: [],
      options: list.map(jobOption),
      zero: 'Back',
      help: ['The number before a job and Enter opens it. 0 goes back.'],
    })
    if (picked === 'interrupted') return EXIT.interrupted
    const job = picked === 'left' ? undefined : list[picked]
    if (job === undefined) continue
    if (which === 0) return resumeJob(job.path, values)
    const code = await showCommand.run(listened, [job.path])
    // In lines the sheet stands above, and the choice goes on below it; drawn, it was left with a key.
    if (listened.plain !== true || code !== EXIT.done) return code
  }
}

/** A job of the list: its id says procedure and day; then the machine, who is in it, its last line, and how it stands. */
function jobOption({ mark, job, machine, people, to, standing }: JobSummary): string {
  const last = to === null ? [] : [`last line ${to.slice(0, 10)} ${to.slice(11, 16)}`]
  const who = people.length === 0 ? [] : [people.join(', ')]
  const about = [machine ?? 'machine not known', ...who, ...last].join('; ')
  return `${mark}  ${job}  ${about}: ${standing}`
}

/** Of the example, as the README has it. */
const NEW_HERE =
  'New here? 2, then RO, the PIN 4071, and TC-401-1, the tag on the plate. To learn: 3 or 5, then TS and 1749. help works at every prompt.'

/** `none`: the folder that holds no such job, where one was asked for. */
function firstChoice(open: number, closed: number, none: string | null): Choice {
  return {
    title: 'Barover',
    said: none === null ? [] : [`There is none yet in the folder ${none}: choose another.`],
    lines: [
      'Takes you through work on the piston end of a gas compressor, one thing at a time, and keeps the record of it.',
      'It supports trained people: the maker\u2019s manual, site permit and local code come first.',
      ...(none === null ? [NEW_HERE] : []),
      `No real job starts here: ${calledAs()} run --help.`,
    ],
    options: [
      `Take up a job that was left (${open === 0 ? 'none yet' : open})`,
      'Start the example job: a bore inspection on an invented machine',
      'Practise the same job: a trainee may sign on',
      `See a finished job (${closed === 0 ? 'none yet' : closed})`,
      `Learn it on a machine that hides a fault, every answer marked; other jobs: ${calledAs()} practice --help`,
    ],
    zero: 'Leave',
    help: [
      NEW_HERE,
      'The number before a line and Enter chooses it. safe shows what to do to be safe.',
      `The invented crew and its PINs: ${asTyped(join(EXAMPLE_FOLDER(), 'crew.yaml'))}, at its head.`,
      `In a job, help lists the words that work there. ${calledAs()} --help lists every command.`,
    ],
  }
}
