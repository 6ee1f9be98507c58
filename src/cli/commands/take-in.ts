// barover take-in: a changed machine record for a job that was left. What differs and what falls is shown before anybody is asked;
// the entry is made by the engine, and only a session that begins after it works by the new record.

import { createHash } from 'node:crypto'
import { basename } from 'node:path'
import process from 'node:process'
import { KEEP_ELSEWHERE } from '../../app/head.ts'
import { admit } from '../../core/job/admit.ts'
import { takeInOf } from '../../core/job/admit-record.ts'
import { type Definitions, personById } from '../../core/job/definitions.ts'
import { bundlesOf, withRecord } from '../../core/job/editions.ts'
import { NO_OTHERS } from '../../core/job/elsewhere.ts'
import type { FileCopy } from '../../core/job/entries.ts'
import type { TakeIn } from '../../core/job/entries-by-lead.ts'
import type { Input } from '../../core/job/input.ts'
import { changedText } from '../../core/job/record-words.ts'
import { waitAfterMisses } from '../../core/job/signature.ts'
import { layOut, plainText, type Row, row } from '../../core/sheet/block.ts'
import { fallenLines } from '../../core/sheet/record-block.ts'
import { entryBlocks } from '../../core/sheet/shown-block.ts'
import { isStop } from '../../core/talk/words.ts'
import { steppedFrom } from '../../node/clock.ts'
import { readTextFile, uniqueName } from '../../node/definition-files.ts'
import { findJob } from '../../node/job-folder.ts'
import { isPin, pinFits } from '../../node/pins.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED, text, type Values } from '../args.ts'
import { type Asker, askLines, askPerson } from '../asker.ts'
import { answersFrom, scripted } from '../drive.ts'
import { EXIT } from '../exit.ts'
import { resumeLine } from '../finish.ts'
import { definitionsOrProblem, type OpenedJob, takeUpJob, unproved } from '../open.ts'
import { print, printCheckNumber, sheetStyle } from '../terminal.ts'
import { clockFor } from './resume.ts'
import { jobsFolder } from './run.ts'

export const takeInCommand: Command = {
  name: 'take-in',
  usage: 'barover take-in JOB --machine FILE [--by INITIALS] [--why TEXT] [--answers FILE] [--jobs DIR]',
  summary:
    'A changed machine record for a job that was left: what differs is shown, a lead signs, and what rested on the old one falls.',
  options: {
    machine: { type: 'string', says: 'the changed machine record (YAML), of the same machine' },
    by: {
      type: 'string',
      says: 'initials of the lead who signs; asked for unless given, and the PIN always',
    },
    why: { type: 'string', says: 'why the record was changed; asked for unless given' },
    answers: { type: 'string', says: 'take the answers from this file; never for a REAL job' },
    ...SHARED,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [job]) => {
    const machine = text(values, 'machine')
    if (machine === undefined)
      throw new UserError('barover take-in needs --machine.', EXIT.wrongUse, 'barover take-in --help')
    const file = findJob(jobsFolder(values), job ?? '')
    const answers = text(values, 'answers')
    const lines = answers === undefined ? null : answersFrom(answers)
    const stepped = lines === null ? null : steppedFrom({ ms: 0, offsetMin: 0 })
    const opened = takeUpJob(file.path, (entries) => clockFor(entries, stepped))
    const asker: { now: Asker | null } = { now: null }
    try {
      if (opened.record === 'REAL' && (lines !== null || process.stdin.isTTY !== true))
        throw new UserError(
          'A REAL job takes its answers from a person at a terminal, not from a file or a pipe.',
          EXIT.checkFailed,
        )
      if (opened.journal.torn !== null && values.json !== true) print(opened.journal.torn)
      const asking = () => {
        asker.now ??= lines === null ? askPerson() : askLines(scripted(lines, stepped, { line: 0 }))
        return asker.now
      }
      return await takeIn(opened, machine, values, asking)
    } finally {
      asker.now?.close()
      opened.journal.close()
    }
  },
}

async function takeIn(opened: OpenedJob, path: string, values: Values, asking: () => Asker): Promise<number> {
  const { session, defs, record } = opened
  if (session.snapshot().state.closed !== null)
    return refused(opened, values, 'This job is closed, and a closed job keeps the record it was judged by.')
  const { file, files } = withFile(opened, path)
  const to = definitionsOrProblem(files, new Map([[file.name, path]]))
  const found = takeInOf(defs, session.snapshot().state, to, null)
  if (!found.ok) return refused(opened, values, found.error.say)
  if (values.json !== true) say(opened, values, beforeRows(opened, to, found.value))
  // What is to be signed is on the screen while it is searched.
  const why = record === 'REAL' ? await unproved(to, files) : null
  const again = takeInOf(defs, session.snapshot().state, to, why)
  if (!again.ok) return refused(opened, values, again.error.say)
  const wanted: Wanted = { do: 'take-in', file, to, unproved: why }
  const signed = await signedBy(opened, values, wanted, asking())
  if (signed === 'stop') return stopped(opened, values)
  if (signed === null) return refused(opened, values, 'Nobody signed for it.')
  if ('barred' in signed) return refused(opened, values, signed.barred)
  return put(opened, values, { ...wanted, ...signed })
}

/** The files of the job with this one in the place of its machine record, under a name that none of the others has. */
function withFile(
  { journal }: OpenedJob,
  path: string,
): { readonly file: FileCopy; readonly files: readonly FileCopy[] } {
  const record = readTextFile(path)
  const bundles = bundlesOf(journal.entries)
  const now = (bundles.at(-1) ?? bundles[0]).files
  const others = new Map(now.filter(({ role }) => role !== 'machine').map(({ name }) => [name, name]))
  const file: FileCopy = {
    role: 'machine',
    name: uniqueName(basename(path), others),
    sha256: createHash('sha256').update(record, 'utf8').digest('hex'),
    text: record,
  }
  return { file, files: withRecord(now, file) }
}

function beforeRows({ defs, session }: OpenedJob, to: Definitions, taken: TakeIn): Row[] {
  const { job } = session.snapshot().state
  return [
    row(`A changed machine record for ${job}`, 'strong'),
    row(
      `Edition ${defs.machine.edition} is in the job, edition ${to.machine.edition} in the file. What differs:`,
    ),
    ...taken.changed.map((one) => row(`  ${changedText(one)}`)),
    row('Once a lead has signed:'),
    ...fallenLines(defs, taken).map((line) => row(`  ${line}`, 'caution')),
  ]
}

type TakingIn = Extract<Input, { do: 'take-in' }>
type Signing = Pick<TakingIn, 'person' | 'proved' | 'why'>
type Wanted = Omit<TakingIn, keyof Signing>

/** Why it would be refused also with the right PIN, or null: told before reason and PIN are asked. */
function barredWith(
  { session, clock }: OpenedJob,
  wanted: Wanted,
  person: string,
  why: string,
): string | null {
  const { state } = session.snapshot()
  const input: TakingIn = { ...wanted, person, why, proved: true }
  return admit(session.engine, state, input, clock.now(), NO_OTHERS).refusal?.say ?? null
}

/** Who signs and why; null where nothing more comes. A line that is only stop is STOP here too. */
async function signedBy(
  opened: OpenedJob,
  values: Values,
  wanted: Wanted,
  asker: Asker,
): Promise<Signing | { readonly barred: string } | 'stop' | null> {
  const { session, defs } = opened
  const given = async (name: string, question: string) => text(values, name) ?? (await asker.ask(question))
  const by = await given('by', 'Initials of the lead who takes it in. Enter alone: nothing is taken in.')
  if (by === null || by.trim() === '') return null
  if (isStop(by)) return 'stop'
  const person = by.trim().toUpperCase()
  const barred = barredWith(opened, wanted, person, 'not asked yet')
  if (barred !== null) return { barred }
  const why = await given('why', 'Why was the record changed?')
  if (why === null) return null
  if (isStop(why)) return 'stop'
  const wordless = barredWith(opened, wanted, person, why)
  if (wordless !== null) return { barred: wordless }
  const key = personById(defs, person)?.pin
  if (key === undefined) return { person, proved: false, why }
  const mustWait = () => waitAfterMisses(session.snapshot().state, person, opened.clock.now().ms) !== null
  while (!mustWait()) {
    const pin = await asker.ask(`PIN of ${person}. It is not shown while it is keyed.`, true)
    if (pin === null) return null
    if (isStop(pin)) return 'stop'
    if (!isPin(pin)) {
      process.stderr.write('A PIN is 4 to 12 figures: this was none, and counts as no try.\n')
      continue
    }
    if (await pinFits(pin, key)) return { person, proved: true, why }
    await asLeft(session)
    await session.bring({ do: 'pin-missed', person })
    process.stderr.write(`That is not the PIN of ${person}.\n`)
  }
  return { person, proved: false, why }
}

/** Nobody is on a job that was cut off: nothing may come of an entry here as if somebody were. */
async function asLeft(session: OpenedJob['session']): Promise<void> {
  if (!session.snapshot().state.left) await session.bring({ do: 'leave' })
}

/** Nothing is written unless the engine takes it. */
async function put(
  opened: OpenedJob,
  values: Values,
  input: Extract<Input, { do: 'take-in' }>,
): Promise<number> {
  const { session, journal, record, path } = opened
  const { state } = session.snapshot()
  const {
    entries,
    refusal,
    state: after,
  } = admit(session.engine, state, input, opened.clock.now(), NO_OTHERS)
  if (refusal !== null) return refused(opened, values, refusal.say)
  await journal.port.append(entries)
  const taken = entries.find((entry) => entry.type === 'record.taken-in')
  if (taken === undefined) throw new Error('a record was taken in without an entry')
  if (values.json === true) {
    const { file, type: _type, at: _at, seq, by: _by, ...rest } = taken
    const { name, sha256 } = file
    print(
      JSON.stringify({
        job: state.job,
        record,
        path,
        refused: null,
        seq,
        name,
        sha256,
        ...rest,
        head: journal.head(),
      }),
    )
    return EXIT.done
  }
  const style = sheetStyle(values, record)
  for (const block of entryBlocks(input.to, after, taken, style)) print(plainText(layOut(block, style)))
  printCheckNumber(`${record}  `, journal.head())
  say(opened, values, [row(KEEP_ELSEWHERE)])
  print(resumeLine(opened, values))
  return EXIT.done
}

async function stopped(opened: OpenedJob, values: Values): Promise<number> {
  await asLeft(opened.session)
  await opened.session.bring({ do: 'stop' })
  const said = 'STOP is on record in this job, and nothing was taken in: take it up to say why.'
  if (values.json === true) printRefused(opened, said)
  else say(opened, values, [row(said, 'caution')])
  return EXIT.unfinished
}

function refused(opened: OpenedJob, values: Values, why: string): number {
  const said = /taken in\.$/.test(why) ? why : `${why} Nothing was taken in.`
  if (values.json === true) printRefused(opened, said)
  else say(opened, values, [row(said, 'caution')])
  return EXIT.checkFailed
}

function printRefused({ session, record, path, journal }: OpenedJob, said: string): void {
  const { job } = session.snapshot().state
  print(JSON.stringify({ job, record, path, refused: said, head: journal.head() }))
}

function say({ record }: OpenedJob, values: Values, rows: readonly Row[]): void {
  print(plainText(layOut({ margin: '', rows }, sheetStyle(values, record))))
}
