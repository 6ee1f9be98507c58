// The other jobs in the folder of a job, read from their logs: which are on the same machine, and how they stand. A log is
// read again only when its file has changed, and then only what is new of it is followed. It never throws: what cannot be
// read comes back as a job that cannot be read, and the core holds for it.
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import type { OthersPort } from '../app/ports.ts'
import type { Definitions, RecordKind } from '../core/job/definitions.ts'
import { bundlesOf } from '../core/job/editions.ts'
import type { OtherJob, Others } from '../core/job/elsewhere.ts'
import type { Entry, OpenedBody } from '../core/job/entries.ts'
import { readEntries } from '../core/job/entry-schema.ts'
import { type MachineId, machineIdOf, sameMachine } from '../core/job/same-machine.ts'
import { standingOf, type Watched, watch, watchFrom } from '../core/job/watch.ts'
import { machineIdIn } from './definition-files.ts'
import { KINDS, suffixOf } from './job-folder.ts'
import { GENESIS } from './journal/chain.ts'
import { type Examination, examine } from './journal/examine.ts'
import { errorCode, plainReason } from './journal/problem.ts'

export interface OwnJob {
  readonly path: string
  readonly record: RecordKind
  readonly machine: MachineId
  /** Whether our own log has told of this job and not of its end. */
  readonly isTracked: (record: RecordKind, job: string) => boolean
  /** Definitions of a log that was opened before; null when this version does not take its files. */
  readonly definitionsOf: (files: OpenedBody['files']) => Definitions | null
}

interface Kept {
  /** Size, times and number of the file when it was read. */
  readonly mark: string
  /** Null: it does not matter here, as it is of another machine or had ended before our first look. */
  readonly seen: OtherJob | null
  readonly following: Following | null
}

interface Following {
  readonly defs: Definitions
  readonly watched: Watched
  readonly count: number
  readonly head: string
}

/** An empty log may be one that is being made this moment; it is looked at again before it counts as unreadable. */
const MAKING_TRIES = 5
const MAKING_MS = 20

export function otherJobs(own: OwnJob): OthersPort {
  const kept = new Map<string, Kept>()
  let isFirst = true
  return {
    look: () => {
      const found: OtherJob[] = []
      const there = new Set<string>()
      for (const { folder, record } of foldersOf(own)) {
        const names = namesIn(folder, record)
        if (typeof names === 'string') {
          found.push(unreadable(`folder ${basename(folder)}`, record, names))
          continue
        }
        for (const name of names) {
          const path = join(folder, name)
          if (path === resolve(own.path)) continue
          there.add(path)
          const now = lookAt(own, path, record, kept.get(path), isFirst)
          kept.set(path, now)
          if (now.seen !== null) found.push(now.seen)
        }
      }
      for (const path of kept.keys()) if (!there.has(path)) kept.delete(path)
      isFirst = false
      return found satisfies Others
    },
  }
}

/** Kinds of record lie in folders of their own beside each other; a log kept elsewhere has only its own folder. */
function foldersOf({ path }: OwnJob): { folder: string; record: RecordKind }[] {
  const folder = dirname(resolve(path))
  const isKind = KINDS.some((kind) => basename(folder) === kind.toLowerCase())
  if (!isKind) return KINDS.map((record) => ({ folder, record }))
  return KINDS.map((record) => ({ folder: join(dirname(folder), record.toLowerCase()), record }))
}

/** Names of logs, or why the folder cannot be read. */
function namesIn(folder: string, record: RecordKind): readonly string[] | string {
  try {
    return readdirSync(folder).filter((name) => name.endsWith(suffixOf(record)))
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return []
    return `the folder cannot be read: ${plainReason(error)}`
  }
}

function lookAt(
  own: OwnJob,
  path: string,
  record: RecordKind,
  before: Kept | undefined,
  isFirst: boolean,
): Kept {
  const job = basename(path).slice(0, -suffixOf(record).length)
  try {
    const mark = markOf(path)
    if (before?.mark === mark) return before
    return { ...read(own, path, { job, record }, before ?? null, isFirst), mark }
  } catch (error) {
    // Read again at the next look, whatever its mark.
    return {
      mark: '',
      seen: lost(before, job, record, plainReason(error)),
      following: before?.following ?? null,
    }
  }
}

function markOf(path: string): string {
  const { size, mtimeMs, ctimeMs, ino } = statSync(path)
  return `${size} ${mtimeMs} ${ctimeMs} ${ino}`
}

/**
 * A job whose answers come from a file or a pipe shows how it goes, and a practice session has a hidden machine of its own: nobody is at a
 * machine. It holds no other job, none
 * holds it, and left unfinished it is in nobody's way. A REAL job has no such answers, whatever its log says.
 */
export function hasNobodyThere({
  record,
  answers,
  practice,
}: Pick<OpenedBody, 'record' | 'answers' | 'practice'>): boolean {
  return record !== 'REAL' && (answers === 'script' || practice !== undefined)
}

type Named = { readonly job: string; readonly record: RecordKind }

function read(
  own: OwnJob,
  path: string,
  { job, record }: Named,
  before: Kept | null,
  isFirst: boolean,
): Omit<Kept, 'mark'> {
  const seen = examined(path)
  const first = seen.lines[0]
  const machine = first?.type === 'job.opened' ? machineOf(first as unknown as OpenedBody) : null
  const same = machine === null ? 'unknown' : sameMachine(own.machine, machine)
  if (same === 'other') return { seen: null, following: null }
  const following = before?.following ?? null
  const cannot = (why: string) => ({ seen: lost(before ?? undefined, job, record, why), following })
  if (seen.fault !== null) return cannot(seen.fault.what)
  if (first === undefined) return cannot('it holds no complete entry')
  const entries = readEntries(seen.lines)
  if (!entries.ok) return cannot(entries.error.say)
  const opened = entries.value[0]
  if (opened?.type !== 'job.opened') return cannot('it does not begin with the opening of a job')
  if (opened.record !== record) return cannot(`it says it is ${opened.record}, and lies among ${record}`)
  if (hasNobodyThere(opened)) return { seen: null, following: null }
  const last = entries.value[entries.value.length - 1]
  // What had ended before we began has nothing of ours to void.
  if (isFirst && !own.isTracked(record, job) && entries.value.some((e) => e.type === 'job.closed'))
    return { seen: null, following: null }
  if (following !== null && hashAt(seen, following.count) !== following.head)
    return cannot('it is not the log that was read before, or its end was cut off')
  const begun = following?.defs ?? own.definitionsOf(opened.files)
  const followed =
    begun === null
      ? null
      : follow(own, begun, following?.watched ?? watchFrom(opened), entries.value, following?.count ?? 1)
  if (followed === null) return cannot('its files are not taken by this version of Barover')
  const { defs, watched } = followed
  return {
    seen: {
      job,
      record,
      tag: defs.machine.machine,
      told: same === 'same',
      upTo: last?.seq ?? 0,
      head: seen.head,
      unread: null,
      ...standingOf(defs, watched),
    },
    following: { defs, watched, count: entries.value.length, head: seen.head },
  }
}

/** What is new since `count` entries; null where it took in a machine record that this version does not take. */
function follow(
  own: OwnJob,
  begun: Definitions,
  from: Watched,
  entries: readonly Entry[],
  count: number,
): Pick<Following, 'defs' | 'watched'> | null {
  let defs = begun
  let watched = from
  for (const entry of entries.slice(count)) {
    if (entry.type === 'record.taken-in') {
      const bundle = bundlesOf(entries).find((one) => one.from === entry.seq)
      const taken = bundle === undefined ? null : own.definitionsOf(bundle.files)
      if (taken === null) return null
      defs = taken
    }
    watched = watch(defs, watched, entry)
  }
  return { defs, watched }
}

function examined(path: string): Examination {
  let seen = examine(readFileSync(path))
  for (let n = 0; n < MAKING_TRIES && seen.lines.length === 0 && seen.fault === null; n++) {
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, MAKING_MS)
    seen = examine(readFileSync(path))
  }
  return seen
}

/** Hash of the line with this number, from 1: the next line names it. */
function hashAt({ lines, head }: Examination, count: number): string {
  if (count === lines.length) return head
  return lines[count]?.prev ?? GENESIS
}

function machineOf({ files }: OpenedBody): MachineId | null {
  const text = Array.isArray(files) ? files.find((f) => f.role === 'machine')?.text : undefined
  const found = typeof text === 'string' ? machineIdIn(text) : null
  return found === null ? null : machineIdOf(found)
}

/** What was known of it, and that it cannot be read now. */
function lost(before: Kept | undefined, job: string, record: RecordKind, why: string): OtherJob {
  const known = before?.seen ?? null
  const unread = why.trim().replace(/\.$/, '')
  return known === null ? unreadable(job, record, unread) : { ...known, unread }
}

function unreadable(job: string, record: RecordKind, unread: string): OtherJob {
  return {
    job,
    record,
    procedure: '',
    tag: '',
    told: false,
    upTo: -1,
    head: '',
    written: '',
    people: [],
    left: false,
    stop: null,
    inside: [],
    names: [],
    letting: null,
    closed: null,
    unread,
    doings: [],
  }
}
