// Signing that an instrument was out of calibration on closed jobs. Who signs keys a PIN, and a wrong one goes on record in
// the log of each job it was keyed for, as in a job: all these logs are open for writing before a PIN is asked at all.

import { replay } from '../app/replay.ts'
import { admit } from '../core/job/admit.ts'
import { personById } from '../core/job/definitions.ts'
import { NO_OTHERS } from '../core/job/elsewhere.ts'
import { MISSES_ALLOWED, waitAfterMisses } from '../core/job/signature.ts'
import type { Refusal } from '../core/lib/result.ts'
import { layOut, plainText } from '../core/sheet/block.ts'
import { entryBlocks, saidBlock } from '../core/sheet/shown-block.ts'
import { standingOf } from '../core/talk/standing.ts'
import { isStop } from '../core/talk/words.ts'
import type { JobFile } from '../node/job-folder.ts'
import { readSound } from '../node/job-store.ts'
import { isPin } from '../node/pins.ts'
import { UserError } from '../node/user-error.ts'
import type { Values } from './args.ts'
import { type Asker, askPerson } from './asker.ts'
import { EXIT } from './exit.ts'
import { exitCodeOf } from './finish.ts'
import { lateClock } from './late-clock.ts'
import { type OpenedJob, takeUpJob } from './open.ts'
import { CLOSED_STOP, isOfWhom, leavesPin, NO_PIN, otherInitials, tell } from './sign-late.ts'
import { print, printCheckNumber, sheetStyle } from './terminal.ts'

interface Signing {
  readonly files: readonly JobFile[]
  readonly said: { readonly instrument: string; readonly why: string; readonly says: string }
  readonly by: string
  /** All jobs of the folder: whoever has to wait in one of them waits here too. */
  readonly others: readonly JobFile[]
  readonly values: Values
  /** Where PINs are keyed; the terminal or a pipe unless said. */
  readonly asking?: () => Asker
}

interface One {
  readonly file: JobFile
  readonly opened: OpenedJob
  /** Entries and words that were there before. */
  readonly before: number
  /** Why nothing is added, or null while it may be. */
  refused: string | null
  isDone: boolean
}

export async function signDoubt(asked: Signing): Promise<number> {
  const { files, values } = asked
  heldBack(asked)
  const jobs: One[] = []
  const asker = (asked.asking ?? askPerson)()
  try {
    for (const file of files) jobs.push(openOne(file))
    const signing = await byWhomItMay(jobs, asked, asker)
    const { by } = signing
    for (const one of jobs) one.refused = whyNot(one, signing)?.say ?? null
    const open = jobs.filter(({ refused }) => refused === null)
    const isKeyed = (one: One) => personById(one.opened.defs, by)?.pin !== undefined
    for (const one of open.filter((each) => !isKeyed(each))) await bring(one, signing)
    await withPin(open.filter(isKeyed), signing, asker)
    const done = jobs.map((one) => report(one, values))
    if (values.json === true) print(JSON.stringify(done))
    if (done.some((one) => one.refused !== null)) return EXIT.checkFailed
    return Math.max(...done.map((one) => one.exit))
  } finally {
    asker.close()
    for (const { opened } of jobs) opened.journal.close()
  }
}

/** Initials that may not sign in one of the jobs are asked again, and what was said of the instrument is kept. */
async function byWhomItMay(jobs: readonly One[], asked: Signing, asker: Asker): Promise<Signing> {
  let signing = asked
  for (;;) {
    const barred = jobs.map((one) => whyNot(one, signing)).find((why) => why !== null && isOfWhom(why))
    if (barred === undefined || barred === null) return signing
    const crew = jobs.map(({ opened }) => opened.defs.crew.crew.filter(({ role }) => role !== 'trainee'))
    const [first = [], ...rest] = crew
    const inAll = first.filter(({ id }) => rest.every((other) => other.some((one) => one.id === id)))
    const by = await otherInitials(
      asker,
      barred,
      inAll.map(({ id }) => id),
    )
    if (by === null) throw new UserError(`${barred.say} Nobody signed for it.`, EXIT.checkFailed)
    if (isStop(by)) throw new UserError(`${CLOSED_STOP} Nothing was signed.`, EXIT.checkFailed)
    signing = { ...signing, by: by.toUpperCase() }
    heldBack(signing)
  }
}

/** @throws UserError where the log cannot be written: then no PIN is asked, as a wrong one could go on no record. */
function openOne(file: JobFile): One {
  const opened = takeUpJob(file.path, (entries) => lateClock(entries, file.changedMs))
  return { file, opened, before: opened.session.snapshot().shown.length, refused: null, isDone: false }
}

/** Before a PIN is asked: all that would be refused with the right one. */
function whyNot({ opened }: One, { said, by }: Signing): Refusal | null {
  const { session } = opened
  const { state, now } = session.snapshot()
  if (state.closed === null) return { code: 'open', say: 'It is still open: take it up and type instrument.' }
  const input = { do: 'doubt-instrument', ...said, person: by, proved: true } as const
  return admit(session.engine, state, input, now, NO_OTHERS).refusal
}

/** Three wrong ones in a row in any job of the folder hold a person back in all of them: tries are not dealt out over jobs. */
function heldBack({ others, by }: Signing): void {
  for (const file of others) {
    // What nobody wrote to for so long holds nobody back, and is not read.
    if (Date.now() - file.changedMs > LONGEST_WAIT_MS) continue
    const left = waitIn(file, by)
    if (left !== null)
      throw new UserError(
        `${MISSES_ALLOWED} wrong PINs for ${by} in ${file.id}: no other is looked at for ${Math.ceil(left / 60_000)} min.`,
        EXIT.checkFailed,
      )
  }
}

/** Longer than anybody waits after wrong PINs. */
const LONGEST_WAIT_MS = 10 * 60_000

function waitIn(file: JobFile, by: string): number | null {
  try {
    const { entries } = readSound(file.path)
    const { ms } = lateClock(entries, file.changedMs).now()
    return waitAfterMisses(replay(entries).state, by, ms)
  } catch (error) {
    if (error instanceof UserError) return null
    throw error
  }
}

async function bring({ opened: { session } }: One, { said, by }: Signing): Promise<void> {
  await session.bring({ do: 'doubt-instrument', ...said, person: by, proved: false })
}

/** Asked again in place until it fits or its person has to wait. It is held against the key of each job. */
async function withPin(jobs: readonly One[], signing: Signing, asking: Asker): Promise<void> {
  if (jobs.length === 0) return
  const { by } = signing
  for (let left = jobs; left.length > 0; left = left.filter((one) => !one.isDone && one.refused === null)) {
    const pin = await pinKeyed(asking, by)
    for (const one of left) await tryPin(one, pin, signing)
    tellMisses(left, by)
  }
}

/** What can be no PIN is no wrong one: more likely initials, or a slip. */
async function pinKeyed(asking: Asker, by: string): Promise<string> {
  for (;;) {
    const line = await asking.ask(`PIN of ${by}. It is not shown while it is keyed; back leaves it.`, true)
    if (line === null) throw new UserError('No PIN was keyed, so nothing was signed.', EXIT.checkFailed)
    // These jobs are closed: it is heard, and has nothing left to block.
    if (isStop(line)) throw new UserError(`${CLOSED_STOP} Nothing was signed.`, EXIT.checkFailed)
    if (leavesPin(line)) throw new UserError('No PIN was keyed, so nothing was signed.', EXIT.checkFailed)
    if (isPin(line)) return line
    tell(NO_PIN)
  }
}

async function tryPin(one: One, pin: string, { said, by }: Signing): Promise<void> {
  const { session } = one.opened
  const what = { do: 'doubt-instrument', ...said, person: by } as const
  one.isDone = await session.sign({ person: by, pin, what })
  if (one.isDone) return
  if ((session.snapshot().state.pinMisses[by]?.count ?? 0) >= MISSES_ALLOWED)
    one.refused = `${MISSES_ALLOWED} wrong PINs for ${by} in a row: no other is looked at for 5 min.`
}

/** The sheet of each job is printed at the end; whoever keys has to know at once. */
function tellMisses(tried: readonly One[], by: string): void {
  const missed = tried.filter(({ isDone }) => !isDone)
  const counts = missed.map(({ opened }) => opened.session.snapshot().state.pinMisses[by]?.count ?? 0)
  if (counts.length === 0) return
  const most = Math.max(...counts)
  const where = tried.length === 1 ? '' : ` in ${missed.length} of ${tried.length} jobs`
  tell(
    `Wrong PIN for ${by}${where}, ${most} of ${MISSES_ALLOWED}. It is on record.${most >= MISSES_ALLOWED ? ' No other is looked at for 5 min.' : ''}`,
  )
}

interface Fallen {
  readonly job: string
  readonly record: string
  readonly path: string
  readonly refused: string | null
  readonly outcome: string | null
  readonly closedWith: string | null
  readonly head: string
  readonly exit: number
}

function report({ file, opened, before, refused: why }: One, values: Values): Fallen {
  const { session, defs, journal, record } = opened
  const { state, shown } = session.snapshot()
  const added = shown.slice(before)
  const isAdded = added.some((one) => one.kind === 'entry' && one.entry.type === 'instrument.doubted')
  const said = added.flatMap((one) => (one.kind === 'said' ? one.lines : []))[0]
  const refused = isAdded ? null : (why ?? said ?? 'Nothing was added.')
  if (values.json !== true) {
    const style = sheetStyle(values, record)
    print(`${record.padEnd(8)}  ${file.id}`)
    print(
      plainText(layOut(saidBlock([refused === null ? standingOf(state) : 'nothing added'], false), style)),
    )
    for (const one of added)
      if (one.kind === 'entry')
        for (const block of entryBlocks(defs, one.state, one.entry, style))
          print(plainText(layOut(block, style)))
    if (refused !== null) print(plainText(layOut(saidBlock([refused], true), style)))
    printCheckNumber(`${record}  `, journal.head())
  }
  return {
    job: file.id,
    record,
    path: file.path,
    refused,
    outcome: state.closed,
    closedWith: state.fellFrom ?? state.closed,
    head: journal.head(),
    exit: exitCodeOf(state),
  }
}
