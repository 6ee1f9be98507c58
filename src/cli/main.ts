// The entry point: picks a command, turns what went wrong into one sentence and an exit code. Nothing else exits.
import { asCalled } from './called.ts'
import './hush-first.ts'

import module from 'node:module'
import process from 'node:process'
import { UserError } from '../node/user-error.ts'
import { VERSION } from '../node/version.ts'
import { type Command, commandHelp, generalHelp, readArgs } from './args.ts'
import { adoptCommand } from './commands/adopt.ts'
import { briefingCommand } from './commands/briefing.ts'
import { checkCommand } from './commands/check.ts'
import { computeCommand } from './commands/compute.ts'
import { doubtCommand } from './commands/doubt.ts'
import { historyCommand } from './commands/history.ts'
import { jobsCommand } from './commands/jobs.ts'
import { keyInCommand } from './commands/key-in.ts'
import { kitCommand } from './commands/kit.ts'
import { pinCommand } from './commands/pin.ts'
import { practiceCommand } from './commands/practice.ts'
import { remarkCommand } from './commands/remark.ts'
import { reportCommand } from './commands/report.ts'
import { resumeCommand } from './commands/resume.ts'
import { reviewCommand } from './commands/review.ts'
import { runCommand } from './commands/run.ts'
import { safeCommand } from './commands/safe.ts'
import { sheetCommand } from './commands/sheet.ts'
import { showCommand } from './commands/show.ts'
import { startCommand } from './commands/start.ts'
import { takeInCommand } from './commands/take-in.ts'
import { verifyCommand } from './commands/verify.ts'
import { EXIT } from './exit.ts'
import { columnsOf, print } from './terminal.ts'
import { besides } from './to-copy.ts'

// Free speed where Node has it (22 and later); not there on 20.
const { enableCompileCache } = module as { enableCompileCache?: () => unknown }
enableCompileCache?.()

const COMMANDS: readonly Command[] = [
  runCommand,
  practiceCommand,
  resumeCommand,
  jobsCommand,
  showCommand,
  reviewCommand,
  reportCommand,
  historyCommand,
  safeCommand,
  verifyCommand,
  doubtCommand,
  takeInCommand,
  adoptCommand,
  remarkCommand,
  kitCommand,
  briefingCommand,
  sheetCommand,
  keyInCommand,
  checkCommand,
  computeCommand,
  pinCommand,
]

async function main(args: readonly string[]): Promise<number> {
  const [name, ...rest] = args
  if (name === '--help' || name === 'help' || name === '-h') {
    print(generalHelp(COMMANDS, columnsOf(process.stdout)))
    return EXIT.done
  }
  if (name === '--version') {
    print(VERSION)
    return EXIT.done
  }
  if (name === undefined || name.startsWith('-')) return dispatch(startCommand, args)
  const command = COMMANDS.find((c) => c.name === name)
  if (command === undefined) {
    throw new UserError(
      `"${name.slice(0, 20)}" is no command of Barover.`,
      EXIT.wrongUse,
      `One of: ${COMMANDS.map((c) => c.name).join(', ')}.`,
    )
  }
  return dispatch(command, rest)
}

async function dispatch(command: Command, args: readonly string[]): Promise<number> {
  const { values, positionals } = readArgs(command, args)
  if (values.help === true) {
    print(commandHelp(command, columnsOf(process.stdout)))
    return EXIT.done
  }
  return command.run(values, positionals)
}

function report(error: unknown): number {
  if (error instanceof UserError) {
    process.stderr.write(
      `${besides(error.message)}\n${error.hint === undefined ? '' : `${besides(asCalled(error.hint))}\n`}`,
    )
    return error.exitCode
  }
  const what = error instanceof Error ? error : new Error(String(error))
  process.stderr.write(`A fault in Barover itself: ${what.message}\nWhat was shown as saved is on disk.\n`)
  if (process.env.BAROVER_DEBUG !== undefined) process.stderr.write(`${what.stack ?? ''}\n`)
  return EXIT.bug
}

// A reader or a terminal that went away is no fault of ours and nothing more can be said to it. A job in hand sets the
// exit code it is to have then.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE' || error.code === 'EIO') process.exit(process.exitCode ?? EXIT.done)
  throw error
})

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code
  },
  (error: unknown) => {
    process.exitCode = report(error)
  },
)
