// barover practice: a procedure on a hidden machine, to learn on.
import { randomInt } from 'node:crypto'
import { existsSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import process from 'node:process'
import { readDefinition } from '../../authoring/definition-file.ts'
import type { Diagnostic } from '../../authoring/diagnostic.ts'
import { LEVELS, type Level, type Practised } from '../../core/job/practice.ts'
import { list } from '../../core/lib/wording.ts'
import { EDITION } from '../../core/practice/edition.ts'
import { factsOf } from '../../core/practice/facts.ts'
import { faultsFor } from '../../core/practice/faults.ts'
import type { Grade } from '../../core/practice/grade.ts'
import { practisedBy } from '../../core/practice/lint-scenario.ts'
import { PRACTISED_NAMES } from '../../core/practice/practised.ts'
import { peopleIn, progressLines, progressOf, seedFor } from '../../core/practice/progress.ts'
import { row } from '../../core/sheet/block.ts'
import { blockText } from '../../core/sheet/linear.ts'
import { runningFrom, steppedFrom, systemClock } from '../../node/clock.ts'
import { readTextFile } from '../../node/definition-files.ts'
import { findProcedure, homeFolder, shippedMachine, shippedProcedure } from '../../node/home.ts'
import { UserError } from '../../node/user-error.ts'
import { startOf } from '../../plain/answers.ts'
import { unbroken } from '../../plain/set-out.ts'
import { ALOUD, type Command, SHARED, text, type Values } from '../args.ts'
import { asTyped } from '../called.ts'
import { answersFrom, drivePerson, driveScripted } from '../drive.ts'
import { EXIT } from '../exit.ts'
import { filesToRead, type OpenedJob, renderAt, startJob } from '../open.ts'
import { practiceSessions } from '../practice-folder.ts'
import { canDraw, print, sheetStyle } from '../terminal.ts'
import { edgeOf } from '../to-copy.ts'
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
  usage: 'barover practice [PROCEDURE | SCENARIO.yaml] [--seed N] [--level 1..5] [--who INITIALS]',
  summary:
    'Practise a procedure on a hidden machine, or a scenario of an instructor: every answer is marked, and nothing can be hurt.',
  more: `PROCEDURE is one of ${list(PRACTISED_NAMES, 'or')}; without one it is the first.`,
  options: {
    seed: { type: 'string', says: 'the number of the machine: the same one again (default: drawn)' },
    level: {
      type: 'string',
      says: 'how hard it is to see what is wrong, 1 to 5 (default: as progress has it)',
    },
    who: { type: 'string', says: 'whose progress it goes by (default: of whoever practised last)' },
    progress: { type: 'boolean', says: 'only what the sessions in the folder came to, and what is next' },
    machine: { type: 'string', says: 'the machine record it is made after (default: an example)' },
    answers: { type: 'string', says: 'take the answers from this file' },
    clock: { type: 'string', says: 'start the clock at this time, 2026-03-14 06:20' },
    ...ALOUD,
    ...SHARED,
  },
  positionals: { least: 0, most: 1 },
  run: async (values, [wanted = 'bore-inspection']) => {
    const sessions = practiceSessions(jobsFolder(values))
    if (values.progress === true) return sayProgress(sessions, values)
    const path = scenarioPath(wanted)
    const task = path === null ? drawnTask(wanted, values, sessions) : scenarioTask(path, values)
    const base = {
      procedurePath: task.procedurePath,
      machinePath: task.machinePath,
      jobs: jobsFolder(values),
      record: 'PRACTICE' as const,
      practice: task.practice,
      ...(path === null ? {} : { scenarioPath: path }),
    }
    const set = clockFrom(text(values, 'clock') ?? task.start)
    const answers = text(values, 'answers')
    if (answers === undefined) {
      const opened = await startJob({
        ...base,
        clock: set === null ? systemClock : runningFrom(set),
        clockKind: set === null ? 'system' : 'set',
        answers: process.stdin.isTTY === true ? 'person' : 'script',
      })
      sayCrew(opened, values, task)
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

/** What is practised, and on what. */
interface Task {
  readonly procedurePath: string
  readonly machinePath: string
  readonly practice: Practised
  /** A day on which the calibrations stand, where it is an example's machine. */
  readonly start: string | undefined
  /** Whose progress seed and level were taken from; left out where they were not. */
  readonly by?: string
}

/** Without a seed one is drawn, and where something that was missed is due, one that hides it. */
function drawnTask(procedure: string, values: Values, sessions: readonly Grade[]): Task {
  const own = text(values, 'machine')
  const procedurePath = findProcedure(procedure)
  const example = exampleFor(procedurePath)
  const machinePath = own ?? inExample(example, 'machine.yaml')
  const seed = text(values, 'seed')
  const typed = text(values, 'level')
  const who = whoFrom(values) ?? peopleIn(sessions)[0] ?? null
  const progress = progressOf(sessions, who)
  const level = typed === undefined ? progress.level : levelFrom(typed)
  const faults = faultsFor(filesToRead(procedurePath, machinePath).defs)
  const drawn =
    seed === undefined ? seedFor(progress, faults, level, randomInt(1, MOST_SEED)) : seedFrom(seed)
  const isBy = progress.sessions.length > 0 && (seed === undefined || typed === undefined)
  return {
    procedurePath,
    machinePath,
    practice: { seed: drawn, level, edition: EDITION },
    start: own === undefined ? example.start : undefined,
    ...(isBy && who !== null ? { by: who } : {}),
  }
}

/** A scenario says all of it itself. */
function scenarioTask(path: string, values: Values): Task {
  for (const name of ['seed', 'level', 'machine', 'who'] as const)
    if (values[name] !== undefined)
      throw new UserError(
        `A scenario says itself what is practised: --${name} is not for one.`,
        EXIT.wrongUse,
      )
  const read = readDefinition(readTextFile(path), path)
  if (!read.ok || read.kind !== 'scenario') throw unfit(path, read.ok ? [] : read.diagnostics)
  const { procedure, machine } = read.value
  const found = (name: string, shipped: string | null) => {
    const beside = resolve(dirname(path), name)
    const file = existsSync(beside) ? beside : shipped
    if (file === null) throw new UserError(`${path} names ${name}, which is not there.`, EXIT.fileProblem)
    return file
  }
  const machinePath = found(machine, shippedMachine(machine))
  return {
    procedurePath: found(procedure, shippedProcedure(procedure)),
    machinePath,
    practice: practisedBy(read.value),
    start: EXAMPLES.find((one) => resolve(inExample(one, 'machine.yaml')) === resolve(machinePath))?.start,
  }
}

function unfit(path: string, diagnostics: readonly Diagnostic[]): UserError {
  const source = readTextFile(path)
  const shown = diagnostics.map((one) => renderAt(one, source, path))
  return new UserError(`This scenario cannot be practised:\n\n${shown.join('\n\n')}`, EXIT.checkFailed)
}

/** The path of a scenario, or null for a procedure: its first key tells. */
function scenarioPath(wanted: string): string | null {
  if (!/\.ya?ml$/.test(wanted) || !existsSync(wanted)) return null
  return readDefinition(readTextFile(wanted), wanted).kind === 'scenario' ? wanted : null
}

function sayProgress(sessions: readonly Grade[], values: Values): number {
  const who = whoFrom(values)
  const people = who === null ? peopleIn(sessions) : [who]
  const all = people.map((one) => progressOf(sessions, one))
  if (values.json === true) print(JSON.stringify({ people: all }))
  else {
    const style = sheetStyle(values, 'PRACTICE', !canDraw(values))
    const told = all.length === 0 ? [progressOf([], null)] : all
    for (const one of told)
      print(blockText({ margin: '', rows: progressLines(one).map((line) => row(line)) }, style))
  }
  return EXIT.done
}

function whoFrom(values: Values): string | null {
  const typed = text(values, 'who')
  if (typed === undefined) return null
  const who = typed.toUpperCase()
  if (/^[A-Z][A-Z0-9]{1,3}$/.test(who)) return who
  throw new UserError(`--who takes initials, as in TS, not "${typed.slice(0, 20)}".`, EXIT.wrongUse)
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
function sayCrew({ record, defs }: OpenedJob, values: Values, { practice, machinePath, by }: Task): void {
  if (values.json === true) return
  // Nobody is named among those who sign who may not: a trainee witnesses and decides nothing.
  const signing = defs.crew.crew.filter(({ role }) => role !== 'trainee')
  const crew = signing.map(({ id, role }) => `${id} ${role}`).join(', ')
  const file = asTyped(resolve(dirname(machinePath), defs.machine.uses.crew))
  const rows = [
    row('Progress is kept for whoever signs on first, and you play everybody else as well.', 'faint'),
    row(`Who witnesses or decides is one of these, and did none of it: ${crew}.`, 'faint'),
    row(`Their PINs, which prove nothing, stand at the head of ${file}.`, 'faint'),
    ...(by === undefined
      ? []
      : [
          row(
            `Level ${practice.level}, by the progress of ${by}; --who takes that of somebody else.`,
            'faint',
          ),
        ]),
  ]
  const style = sheetStyle(values, record, !canDraw(values))
  const told = blockText({ margin: '', rows }, style)
  print(style.linear === true ? unbroken(told, edgeOf(process.stdout)) : told)
}
