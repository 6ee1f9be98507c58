// Opening and taking up jobs: files, definitions, journal and session put together. The only composition root.

import { createHash } from 'node:crypto'
import process from 'node:process'
import type { Clock } from '../app/ports.ts'
import { misfit, openedOf, replay } from '../app/replay.ts'
import { createSession, type Session } from '../app/session.ts'
import { definitionsFrom } from '../authoring/definitions.ts'
import { type Diagnostic, renderDiagnostic } from '../authoring/diagnostic.ts'
import { editionsFrom } from '../authoring/editions.ts'
import { practiceRecord } from '../authoring/practice-record.ts'
import type { Definitions, RecordKind } from '../core/job/definitions.ts'
import { asOpened, defsNow, type Editions } from '../core/job/editions.ts'
import { keyOf, NO_OTHERS } from '../core/job/elsewhere.ts'
import type { Entry, FileCopy } from '../core/job/entries.ts'
import { openJob } from '../core/job/open-job.ts'
import { markOf, type RecordMark } from '../core/job/paper.ts'
import type { Practised } from '../core/job/practice.ts'
import { machineIdOf } from '../core/job/same-machine.ts'
import { type Instant, stamp } from '../core/lib/instant.ts'
import { assertNever } from '../core/lib/result.ts'
import { list } from '../core/lib/wording.ts'
import { whyOver } from '../core/practice/edition.ts'
import { factsOf } from '../core/practice/facts.ts'
import { PRACTISED_NAMES } from '../core/practice/practised.ts'
import { uncovered } from '../core/practice/truth.ts'
import { zoneName } from '../node/clock.ts'
import { readJobFiles } from '../node/definition-files.ts'
import { jobFiles } from '../node/job-files.ts'
import { jobPath, newJobId } from '../node/job-folder.ts'
import { createJob, type OpenJournal, openJob as openJournalFile } from '../node/job-store.ts'
import { hasNobodyThere, otherJobs } from '../node/other-jobs.ts'
import { pinFits } from '../node/pins.ts'
import { UserError } from '../node/user-error.ts'
import { VERSION } from '../node/version.ts'
import { systemVoice } from '../node/voice.ts'
import { EXIT } from './exit.ts'
import { hush, unhush } from './hush.ts'
import { searchJob } from './search.ts'
import { columnsOf } from './terminal.ts'

export interface OpenedJob {
  readonly session: Session
  readonly journal: OpenJournal
  readonly path: string
  readonly defs: Definitions
  readonly record: RecordKind
  /** The word on each line of it. */
  readonly mark: RecordMark
  readonly clock: Clock
}

export interface NewJob {
  readonly procedurePath: string
  readonly machinePath: string
  readonly jobs: string
  /** Null: EXAMPLE for a machine marked invented, otherwise REAL. */
  readonly record: RecordKind | null
  readonly clock: Clock
  readonly clockKind: 'system' | 'set'
  readonly answers: 'person' | 'script'
  /** Keyed in from a paper sheet. */
  readonly paper?: true
  /** On a hidden machine, of kind PRACTICE. */
  readonly practice?: Practised
  /** Of an instructor, for that. */
  readonly scenarioPath?: string
}

export async function startJob(wanted: NewJob): Promise<OpenedJob> {
  const { practice } = wanted
  const { files: read, paths } = readJobFiles(wanted.procedurePath, wanted.machinePath, wanted.scenarioPath)
  const files = practice === undefined ? read : read.map(forPractice)
  const defs = definitionsOrProblem(files, paths)
  const record = wanted.record ?? (defs.machine.invented === true ? 'EXAMPLE' : 'REAL')
  if (practice !== undefined) barUnpractised(defs)
  const { machine } = defs.machine
  const openedAt = (now: Instant, why: string | null) => {
    const opening = {
      record,
      job: newJobId(machine, defs.procedure.procedure, now),
      version: VERSION,
      zone: zoneName(),
      clock: wanted.clockKind,
      answers: wanted.answers,
      files,
      ...(wanted.paper === undefined ? {} : { paper: wanted.paper }),
      ...(practice === undefined ? {} : { practice }),
    }
    const opened = openJob(defs, opening, () => why)
    if (!opened.ok) throw new UserError(opened.error.say, EXIT.checkFailed)
    return opened.value
  }
  // What else stands against it is said before minutes of searching, and the job begins when they are over.
  if (record === 'REAL') openedAt(wanted.clock.now(), null)
  // Of a sheet keyed in no gate ever opens, so there is none to search.
  const why = record === 'REAL' && wanted.paper === undefined ? await unproved(defs, files) : null
  const now = wanted.clock.now()
  const opening = openedAt(now, why)
  const { job } = opening
  const first: Entry = { ...opening, seq: 0, at: stamp(now) }
  const path = jobPath(wanted.jobs, record, job)
  return running(path, asOpened(defs), createJob(path, first), wanted.clock)
}

function forPractice(file: FileCopy): FileCopy {
  if (file.role !== 'machine') return file
  const text = practiceRecord(file.text)
  return { ...file, text, sha256: createHash('sha256').update(text, 'utf8').digest('hex') }
}

/** @throws UserError (exit 1) where a hidden machine could not answer every step, or could not be made of these files. */
function barUnpractised(defs: Definitions): void {
  const known = `It knows ${list(PRACTISED_NAMES)}.`
  const facts = factsOf(defs)
  if (!facts.ok) throw new UserError(facts.error.say, EXIT.checkFailed, known)
  const [first, ...more] = uncovered(defs)
  if (first === undefined) return
  const others = more.length === 0 ? '' : ` and ${more.length} more`
  throw new UserError(
    `Practice does not know every step of ${defs.procedure.title} yet: step ${first}${others} could not be answered.`,
    EXIT.checkFailed,
    known,
  )
}

/** Lines on how far a search has come are no closer together, in ms. */
const TOLD_EACH_MS = 5000

/** A REAL job is searched as `barover check` does it, by the very version that opens it. */
export async function unproved(defs: Definitions, files: readonly FileCopy[]): Promise<string | null> {
  // It may take minutes, and Control-C has to end it.
  unhush()
  // Beside the sheet: what is printed may be read by a program.
  const tell = (line: string) => process.stderr.write(`${line}\n`)
  let told = performance.now()
  const onPiece = (done: number, of: number) => {
    if (performance.now() - told < TOLD_EACH_MS) return
    told = performance.now()
    tell(`  ${done} of ${of} pieces searched`)
  }
  tell('Searching every state of this job for a way past a gate: seconds, minutes for a whole piston pull.')
  tell('Key nothing, no PIN above all, until the sheet is there.')
  tell('It is searched once; after that only what was changed.')
  const { proof, pieces, kept } = await searchJob(defs, files, { onPiece })
  if (kept > 0) tell(`${kept} of its ${pieces} pieces had been searched before.`)
  hush()
  switch (proof.is) {
    case 'proved':
      return null
    case 'refuted':
      return `${proof.breach.say}; barover check shows the answers that lead there`
    case 'not-proved':
      return `the search ended at its bound of ${proof.bound}`
    default:
      return assertNever(proof)
  }
}

/** Takes up a job where it was left, on the files it was opened with. `clockFor` may carry on a clock that was set. */
export function takeUpJob(path: string, clockFor: (entries: readonly Entry[]) => Clock): OpenedJob {
  const journal = openJournalFile(path)
  try {
    const editions = editionsOf(path, journal.entries)
    barOtherMachine(defsNow(editions), journal.entries)
    return running(path, editions, journal, clockFor(journal.entries))
  } catch (error) {
    journal.close()
    throw error
  }
}

/** @throws UserError (exit 1) for a practice session whose machine would be another one from here on. */
function barOtherMachine(defs: Definitions, entries: readonly Entry[]): void {
  if (openedOf(entries).practice === undefined) return
  const { practice } = replay(entries).state
  const why = practice === null ? null : whyOver(defs, practice)
  if (why === null) return
  throw new UserError(why, EXIT.checkFailed, 'barover practice begins another one; its log stays as it is.')
}

function running(path: string, editions: Editions, journal: OpenJournal, clock: Clock): OpenedJob {
  const { state, shown } = replay(journal.entries)
  const defs = defsNow(editions)
  const session = createSession({
    engine: { defs, version: VERSION },
    editions,
    state,
    shown,
    journal: journal.port,
    clock,
    pins: { fits: pinFits },
    files: jobFiles(path),
    voice: systemVoice(),
    others: hasNobodyThere(openedOf(journal.entries))
      ? { look: () => NO_OTHERS }
      : otherJobs({
          path,
          record: state.record,
          machine: machineIdOf(defs.machine),
          isTracked: (record, job) => state.elsewhere[keyOf({ record, job })]?.closed === null,
          definitionsOf: (files) => {
            const kept = definitionsFrom(files, 'kept')
            return kept.ok ? kept.defs : null
          },
        }),
  })
  return { session, journal, path, defs, record: state.record, mark: markOf(state), clock }
}

/** The definitions that count at the end of a log. @throws UserError (exit 4) when its entries are not this job's. */
export function definitionsOf(path: string, entries: readonly Entry[]): Definitions {
  return defsNow(editionsOf(path, entries))
}

/** Those a log was opened with, and those of each machine record taken in since. @throws UserError as `definitionsOf`. */
export function editionsOf(path: string, entries: readonly Entry[]): Editions {
  const found = editionsFrom(entries)
  if (!found.ok) throw unusable(found.diagnostics, found.files, new Map())
  const wrong = misfit(found.editions, entries)
  if (wrong === null) return found.editions
  throw new UserError(
    `${path}: its hashes are sound, but its entries do not fit the job it opens (${wrong}).`,
    EXIT.fileProblem,
    `barover verify ${path} says what could be checked.`,
  )
}

/** The definitions of a job that is not opened. @throws UserError when its files cannot be used, or not together. */
export function filesToRead(
  procedurePath: string,
  machinePath: string,
): { readonly files: readonly FileCopy[]; readonly defs: Definitions } {
  const { files, paths } = readJobFiles(procedurePath, machinePath)
  return { files, defs: definitionsOrProblem(files, paths) }
}

/** The definitions of files as a new job takes them. @throws UserError when they cannot be used, or not together. */
export function definitionsOrProblem(
  files: readonly FileCopy[],
  paths: ReadonlyMap<string, string>,
): Definitions {
  const result = definitionsFrom(files, 'new')
  if (result.ok) return result.defs
  throw unusable(result.diagnostics, files, paths)
}

function unusable(
  diagnostics: readonly Diagnostic[],
  files: readonly FileCopy[],
  paths: ReadonlyMap<string, string>,
): UserError {
  const texts = new Map(files.map((f) => [f.name, f.text]))
  const errors = diagnostics.filter((d) => d.severity === 'error')
  const shown = errors.map((d) => renderAt(d, texts.get(d.file) ?? '', paths.get(d.file) ?? d.file))
  return new UserError(`These files cannot be taken to a machine:\n\n${shown.join('\n\n')}`, EXIT.checkFailed)
}

export function renderAt(diagnostic: Diagnostic, text: string, path: string): string {
  const line = text.split(/\r?\n/)[diagnostic.line - 1] ?? ''
  return renderDiagnostic({ ...diagnostic, file: path }, line, columnsOf(process.stdout))
}
