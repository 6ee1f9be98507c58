// barover practice: a procedure on a hidden machine, to learn on.
import { randomInt } from 'node:crypto'
import { join } from 'node:path'
import process from 'node:process'
import { LEVELS, type Level, type Practised } from '../../core/job/practice.ts'
import { list } from '../../core/lib/wording.ts'
import { factsOf } from '../../core/practice/facts.ts'
import type { Fault } from '../../core/practice/fault.ts'
import { faultsFor } from '../../core/practice/faults.ts'
import { PRACTISED_NAMES } from '../../core/practice/practised.ts'
import { type Progress, progressLines, progressOf, seedFor } from '../../core/practice/progress.ts'
import { row } from '../../core/sheet/block.ts'
import { blockText } from '../../core/sheet/linear.ts'
import { runningFrom, steppedFrom, systemClock } from '../../node/clock.ts'
import { findProcedure, homeFolder } from '../../node/home.ts'
import { UserError } from '../../node/user-error.ts'
import { startOf } from '../../plain/answers.ts'
import { ALOUD, type Command, SHARED, text, type Values } from '../args.ts'
import { asTyped } from '../called.ts'
import { answersFrom, drivePerson, driveScripted } from '../drive.ts'
import { EXIT } from '../exit.ts'
import { filesToRead, type OpenedJob, startJob } from '../open.ts'
import { practiceSessions } from '../practice-folder.ts'
import { canDraw, print, sheetStyle } from '../terminal.ts'
import { clockFrom, jobsFolder } from './run.ts'

/** The example machines, and a day on which the calibrations of each stand. */
const EXAMPLES = [
  { folder: 'tc-401', start: '2026-03-14 06:20+00:00' },
  { folder: 'rg-27', start: '2026-05-18 09:10+00:00' },
] as const
type Example = (typeof EXAMPLES)[number]

const inExample = ({ folder }: Example, file: string) => join(homeFolder(), 'examples', folder, file)

/** The first example that the procedure can be practised on; where there is none, the first says why. */
function exampleFor(procedurePath: string): Example {
  const fits = (one: Example) => factsOf(filesToRead(procedurePath, inExample(one, 'machine.yaml')).defs).ok
  return EXAMPLES.find(fits) ?? EXAMPLES[0]
}

/** Seeds that are drawn: short enough to be read out. */
const MOST_SEED = 1_000_000

export const practiceCommand: Command = {
  name: 'practice',
  usage: 'barover practice [PROCEDURE] [--seed N] [--level 1..5]',
  summary: 'Practise a procedure on a hidden machine: every answer is marked, and nothing can be hurt.',
  more: `PROCEDURE is one of ${list(PRACTISED_NAMES, 'or')}; without one it is the first.`,
  options: {
    seed: { type: 'string', says: 'the number of the machine: the same one again (default: drawn)' },
    level: {
      type: 'string',
      says: 'how hard it is to see what is wrong, 1 to 5 (default: as progress has it)',
    },
    progress: { type: 'boolean', says: 'only what the sessions in the folder came to, and what is next' },
    machine: { type: 'string', says: 'the machine record it is made after (default: an example)' },
    answers: { type: 'string', says: 'take the answers from this file' },
    clock: { type: 'string', says: 'start the clock at this time, 2026-03-14 06:20' },
    ...ALOUD,
    ...SHARED,
  },
  positionals: { least: 0, most: 1 },
  run: async (values, [procedure = 'bore-inspection']) => {
    const progress = progressOf(practiceSessions(jobsFolder(values)))
    if (values.progress === true) return sayProgress(progress, values)
    const own = text(values, 'machine')
    const procedurePath = findProcedure(procedure)
    const example = exampleFor(procedurePath)
    const machinePath = own ?? inExample(example, 'machine.yaml')
    const faults = faultsFor(filesToRead(procedurePath, machinePath).defs)
    const base = {
      procedurePath,
      machinePath,
      jobs: jobsFolder(values),
      record: 'PRACTICE' as const,
      practice: practised(values, progress, faults),
    }
    const set = clockFrom(text(values, 'clock') ?? (own === undefined ? example.start : undefined))
    const answers = text(values, 'answers')
    if (answers === undefined) {
      const opened = await startJob({
        ...base,
        clock: set === null ? systemClock : runningFrom(set),
        clockKind: set === null ? 'system' : 'set',
        answers: process.stdin.isTTY === true ? 'person' : 'script',
      })
      sayCrew(opened, values, example)
      return drivePerson(opened, values)
    }
    const lines = answersFrom(answers)
    const start = startOf(lines) ?? set
    const stepped = start === null ? null : steppedFrom(start)
    const clock = stepped ?? systemClock
    const clockKind = stepped === null ? ('system' as const) : ('set' as const)
    const opened = await startJob({ ...base, clock, clockKind, answers: 'script' })
    return driveScripted(opened, lines, stepped, values)
  },
}

/** Without a seed one is drawn, and where something that was missed is due, one that hides it. */
function practised(values: Values, { level: next, due }: Progress, faults: readonly Fault[]): Practised {
  const seed = text(values, 'seed')
  const typed = text(values, 'level')
  const level = typed === undefined ? next : levelFrom(typed)
  return {
    seed: seed === undefined ? seedFor(due, faults, level, randomInt(1, MOST_SEED)) : seedFrom(seed),
    level,
  }
}

function sayProgress(progress: Progress, values: Values): number {
  if (values.json === true) print(JSON.stringify(progress))
  else {
    const rows = progressLines(progress).map((line) => row(line))
    print(blockText({ margin: '', rows }, sheetStyle(values, 'PRACTICE', !canDraw(values))))
  }
  return EXIT.done
}

function seedFrom(typed: string): number {
  const seed = Number(typed)
  if (/^\d{1,9}$/.test(typed)) return seed
  throw new UserError(
    `--seed takes a whole number of up to nine figures, not "${typed.slice(0, 20)}".`,
    EXIT.wrongUse,
  )
}

function levelFrom(typed: string): Level {
  const level = LEVELS.find((one) => String(one) === typed)
  if (level !== undefined) return level
  throw new UserError(`--level takes 1 to 5, not "${typed.slice(0, 20)}".`, EXIT.wrongUse)
}

/** A trainee is alone: whoever witnesses and decides is played with the PINs that prove nothing. */
function sayCrew({ record, defs }: OpenedJob, values: Values, example: Example): void {
  if (values.json === true) return
  const crew = defs.crew.crew.map(({ id, role }) => `${id} ${role}`).join(', ')
  const file = asTyped(inExample(example, 'crew.yaml'))
  const rows = [
    row(`You play the whole crew: ${crew}.`, 'faint'),
    row(`Their PINs, which prove nothing, stand at the head of ${file}.`, 'faint'),
  ]
  print(blockText({ margin: '', rows }, sheetStyle(values, record, !canDraw(values))))
}
