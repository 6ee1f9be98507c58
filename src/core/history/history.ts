// Many jobs together: machines with their wear, what was found again and again, and where procedures are put right most. Jobs come
// one by one from whatever holds them, and only their digests are kept.
import type { RecordKind } from '../job/definitions.ts'
import { readStamp } from '../lib/instant.ts'
import type { JobDigest, StepName } from './digest.ts'
import { type Trend, trendsOf } from './trend.ts'

/** Where jobs come from: a folder today; an index or a shared database may stand behind it. */
export interface JobSource {
  /** Each job once, in any order. */
  readonly jobs: () => Iterable<JobDigest | UnreadJob>
}

/** A log that could not be read to its end, or was not as it was written. */
export interface UnreadJob {
  readonly job: string
  readonly unread: string
}

export interface Wanted {
  readonly record: RecordKind
  /** Tag of one machine; null: all. */
  readonly machine: string | null
  /** Running hours to the next planned overhaul, from the last reading on; null: not said. */
  readonly next: number | null
}

export interface MachineHistory {
  readonly machine: string
  readonly unit: 'in' | 'mm'
  readonly jobs: number
  /** Of the last job. */
  readonly last: Pick<JobDigest, 'job' | 'outcome' | 'asLeft'> & { readonly at: string }
  /** The last running hours that were read. */
  readonly hours: number | null
  readonly trends: readonly Trend[]
  /** Places that may reach their limit before the next planned overhaul, the nearest first. */
  readonly due: readonly Trend[]
}

export interface Repeated {
  readonly machine: string
  /** In which it was found, by title; a step of one title that judges the same is the same step in all of them. */
  readonly procedures: readonly string[]
  readonly step: string
  readonly word: string
  /** Names of the jobs, oldest first. */
  readonly jobs: readonly string[]
}

export interface StepCount extends StepName {
  /** Jobs in which the step applied. */
  readonly asked: number
  /** Jobs in which its answer was put right, or a place of it entered as n/a. */
  readonly corrected: number
  readonly notApplicable: number
}

export interface History {
  readonly record: RecordKind
  readonly machine: string | null
  readonly next: number | null
  /** Jobs read, and those that are still open. */
  readonly jobs: number
  readonly open: number
  /** Names of those that were keyed in from paper, oldest first. */
  readonly paper: readonly string[]
  /** Stamps of the first opening and of the last entry that closed a job; null where there is none. */
  readonly from: string | null
  readonly to: string | null
  readonly machines: readonly MachineHistory[]
  readonly repeated: readonly Repeated[]
  readonly steps: readonly StepCount[]
  readonly unread: readonly UnreadJob[]
}

/** Fewer jobs tell nothing of what is found again. */
const AGAIN = 2

/** Kinds of record are never mixed. Open jobs are counted, and nothing of them is told: what they come to is not known yet. */
export function historyOf(source: JobSource, { record, machine, next }: Wanted): History {
  const unread: UnreadJob[] = []
  const all: JobDigest[] = []
  for (const job of source.jobs()) {
    if ('unread' in job) unread.push(job)
    else if (job.record === record && (machine === null || job.machine === machine)) all.push(job)
  }
  // By the instant and not by its text: a clock may have stood at another offset.
  all.sort((a, b) => msOf(a.opened) - msOf(b.opened) || compare(a.job, b.job))
  const closed = all.filter(({ outcome }) => outcome !== null)
  const byMachine = grouped(closed, (job) => job.machine)
  return {
    record,
    machine,
    next,
    jobs: all.length,
    open: all.length - closed.length,
    paper: all.filter(({ paper }) => paper).map(({ job }) => job),
    from: all[0]?.opened ?? null,
    to:
      closed
        .map((job) => job.closed ?? job.opened)
        .sort((a, b) => msOf(a) - msOf(b))
        .at(-1) ?? null,
    machines: [...byMachine]
      .sort(([a], [b]) => compare(a, b))
      .map(([tag, jobs]) => machineOf(tag, jobs, next)),
    repeated: repeatedIn(byMachine),
    steps: stepCounts(closed),
    unread: unread.sort((a, b) => compare(a.job, b.job)),
  }
}

function machineOf(machine: string, jobs: readonly JobDigest[], next: number | null): MachineHistory {
  // What was known last is told by the job that ended last, whichever was begun first.
  const byEnd = [...jobs].sort((a, b) => endMs(a) - endMs(b) || compare(a.job, b.job))
  const last = byEnd.at(-1)
  if (last === undefined) throw new Error('a machine of no job')
  const trends = trendsOf(jobs)
  return {
    machine,
    unit: last.unit,
    jobs: jobs.length,
    last: { job: last.job, at: last.closed ?? last.opened, outcome: last.outcome, asLeft: last.asLeft },
    hours: byEnd.findLast(({ hours }) => hours !== null)?.hours ?? null,
    trends,
    due: next === null ? [] : trends.filter((trend) => earliest(trend) <= next).sort(nearestFirst),
  }
}

function endMs({ closed, opened }: JobDigest): number {
  return msOf(closed ?? opened)
}

function msOf(at: string): number {
  return readStamp(at)?.ms ?? Number.NEGATIVE_INFINITY
}

/** The early end, to plan by; never where none can be told. */
export function earliest({ left }: Trend): number {
  return left?.ok === true ? left.value.earliest : Number.POSITIVE_INFINITY
}

export function nearestFirst(a: Trend, b: Trend): number {
  return earliest(a) === earliest(b) ? compare(a.name, b.name) : earliest(a) - earliest(b)
}

function repeatedIn(byMachine: ReadonlyMap<string, readonly JobDigest[]>): Repeated[] {
  return [...byMachine]
    .flatMap(([machine, jobs]) => {
      const all = jobs.flatMap(({ job, findings }) => findings.map((finding) => ({ job, ...finding })))
      const same = grouped(all, ({ step, about, word }) => [step, about, word].join('\n'))
      return [...same.values()].flatMap((those): Repeated[] => {
        const names = [...new Set(those.map(({ job }) => job))]
        const [first] = those
        if (first === undefined || names.length < AGAIN) return []
        const { step, word } = first
        const procedures = [...new Set(those.map(({ procedure }) => procedure))]
        return [{ machine, procedures, step, word, jobs: names }]
      })
    })
    .sort((a, b) => b.jobs.length - a.jobs.length || compare(a.machine, b.machine) || compare(a.step, b.step))
}

/** Only steps that were put right or entered as n/a in some job, the largest share of the jobs first. */
function stepCounts(jobs: readonly JobDigest[]): StepCount[] {
  const all = jobs.flatMap(({ steps }) => steps)
  const same = grouped(all, ({ procedure, step }) => [procedure, step].join('\n'))
  const share = ({ asked, corrected, notApplicable }: StepCount) => Math.max(corrected, notApplicable) / asked
  return [...same.values()]
    .flatMap((those): StepCount[] => {
      const [first] = those
      if (first === undefined) return []
      const { procedure, step } = first
      const corrected = those.filter((one) => one.corrected > 0).length
      const notApplicable = those.filter((one) => one.notApplicable > 0).length
      return corrected + notApplicable === 0
        ? []
        : [{ procedure, step, asked: those.length, corrected, notApplicable }]
    })
    .sort((a, b) => share(b) - share(a) || b.asked - a.asked || compare(a.step, b.step))
}

function grouped<T>(list: readonly T[], keyOf: (one: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>()
  for (const one of list) {
    const key = keyOf(one)
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [one])
    else group.push(one)
  }
  return groups
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
