// Drives an opened job to its end on whatever screen there is.
import process from 'node:process'
import { createInterface } from 'node:readline'
import type { Session } from '../app/session.ts'
import { within } from '../app/within.ts'
import { next } from '../core/job/next.ts'
import { secrecyOf } from '../core/talk/ask.ts'
import type { SetClock } from '../node/clock.ts'
import { readTextFile } from '../node/definition-files.ts'
import { UserError } from '../node/user-error.ts'
import { type AnswerLine, readAnswers } from '../plain/answers.ts'
import { runPlain } from '../plain/plain.ts'
import { setOut } from '../plain/set-out.ts'
import type { Values } from './args.ts'
import { EXIT } from './exit.ts'
import { printEnding } from './finish.ts'
import { unhush } from './hush.ts'
import type { OpenedJob } from './open.ts'
import { canDraw, sheetStyle } from './terminal.ts'
import { terminalLines } from './terminal-lines.ts'
import { edgeOf } from './to-copy.ts'

export function answersFrom(path: string): readonly AnswerLine[] {
  const read = readAnswers(readTextFile(path), path)
  if (!read.ok) throw new UserError(read.error.say, EXIT.wrongUse)
  return read.value
}

/** Answers one by one; the clock goes on as the file says, by its step before each answer. */
export async function* scripted(
  lines: readonly AnswerLine[],
  clock: SetClock | null,
  at: { line: number },
): AsyncGenerator<string> {
  let step = 0
  for (const line of lines) {
    if (line.kind === 'clock') clock?.setTo(line.at)
    else if (line.kind === 'step') step = line.ms
    else if (line.kind === 'wait') clock?.advance(line.ms)
    else {
      clock?.advance(step)
      at.line = line.line
      yield line.text
    }
  }
}

export async function driveScripted(
  opened: OpenedJob,
  lines: readonly AnswerLine[],
  clock: SetClock | null,
  values: Values,
): Promise<number> {
  process.exitCode = EXIT.unfinished
  unhush()
  const at = { line: 0 }
  const out = values.json === true ? { write: () => undefined } : process.stdout
  if (values.aloud === true) out.write('Answers from a file are not read aloud.\n')
  const run = {
    style: sheetStyle(values, opened.mark),
    out: { write: (text: string) => void out.write(text) },
    prompts: false,
    where: () => `Line ${at.line} of the answers`,
  }
  try {
    await runPlain(opened.session, scripted(lines, clock, at), run)
    return printEnding(opened, values)
  } finally {
    opened.journal.close()
  }
}

/** What a person keys at a terminal that draws nothing; a PIN is read without showing it. */
async function* keyedLines(session: Session): AsyncGenerator<string> {
  const lines = terminalLines(process.stdin)
  const isSecret = () => {
    const { state, talk } = session.snapshot()
    return secrecyOf(next(session.engine.defs, state), talk.ask) === 'hidden'
  }
  const unsubscribe = session.subscribe(() => {
    if (isSecret()) lines.hide(true)
  })
  try {
    for (;;) {
      const line = await lines.next(isSecret())
      if (line === null) return
      yield line
    }
  } finally {
    unsubscribe()
    lines.close()
  }
}

/** A person at a terminal waits no longer for a disk that does not answer before the next line is heard: it may be STOP. */
const PATIENCE_MS = 500
const LAST_PATIENCE_MS = 20_000

/** A copy under way goes on record before the log is shut; one from a disk that does not answer is given up. */
async function copiesDone(session: Session): Promise<void> {
  await within(session.settled(), LAST_PATIENCE_MS)
}

export async function drivePerson(opened: OpenedJob, values: Values): Promise<number> {
  process.exitCode = EXIT.unfinished
  try {
    // As if the word had been keyed: where nothing can be read aloud the sheet says so.
    if (values.aloud === true) await opened.session.hear('aloud')
    const interrupted = await keyedBy(opened, values)
    if (interrupted === null) return printEnding(opened, values, true)
    const code = printEnding(opened, values)
    return interrupted ? EXIT.interrupted : code
  } finally {
    opened.journal.close()
  }
}

const PLAIN_OUT = { write: (text: string) => void process.stdout.write(text) }

/**
 * Until the job is over or left, or no line comes any more: on a screen, then whether it was interrupted; in plain lines, then
 * null. `piped`: lines that are read already by whoever calls.
 */
export async function keyedBy(
  opened: Pick<OpenedJob, 'session' | 'mark'>,
  values: Values,
  piped?: AsyncIterable<string>,
): Promise<boolean | null> {
  const { session, mark } = opened
  if (piped === undefined && canDraw(values)) {
    const { drawJob } = await import('../ui/draw-job.tsx')
    const interrupted = await drawJob(session, sheetStyle(values, mark))
    await copiesDone(session)
    return interrupted
  }
  const { DROPPED, dropEarly } = await import('../ui/early-keys.ts')
  const early = await dropEarly()
  if (early.stop) await session.hear('stop')
  const isTerminal = process.stdin.isTTY === true
  const lines =
    piped ?? (isTerminal ? keyedLines(session) : createInterface({ input: process.stdin, terminal: false }))
  const run = {
    style: sheetStyle(values, mark, true),
    out:
      mark === 'PRACTICE' ? setOut(PLAIN_OUT, { record: mark, columns: edgeOf(process.stdout) }) : PLAIN_OUT,
    prompts: true,
    echoed: isTerminal,
    ...(early.dropped && !early.stop ? { notice: DROPPED } : {}),
    ...(isTerminal ? { patienceMs: PATIENCE_MS } : {}),
  }
  await runPlain(session, lines, run)
  await copiesDone(session)
  return null
}
