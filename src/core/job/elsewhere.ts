// Other jobs on the same machine: what is known of each, and what of it holds this one. Block, locks and people belong to
// the machine, so what one job takes off is void in all. It fails closed: what cannot be read, or cannot be told from a
// hazard of ours, counts as one. Who is waited for is in holdsGate and holdsStep, what falls is in admit-elsewhere.ts.
import { list } from '../lib/wording.ts'
import { type Definitions, hazardName, type PlacedStep, type RecordKind } from './definitions.ts'
import type { State } from './state.ts'

export interface NamedHazard {
  readonly id: string
  readonly name: string
}

/** What another job did that may be void here, by its entry. */
export type Doing =
  /** A step began or ended that lets hazards in: a block off, the crank barred over, a new opening. */
  | {
      readonly what: 'let-in'
      readonly seq: number
      readonly step: string
      readonly hazards: readonly NamedHazard[]
    }
  | { readonly what: 'stop'; readonly seq: number }
  /**
   * Numbers of locks, blinds and tags that may be off now. `told`: they are all there is to it; else something else came
   * off, and what it held is not told by its words.
   */
  | {
      readonly what: 'removed'
      readonly seq: number
      readonly clause: string
      readonly numbers: readonly string[]
      readonly told: boolean
    }

/** Another job as its log tells it. Plain data: it goes into our own log as it is. */
export interface JobSeen {
  /** Its id, which is the name of its file. */
  readonly job: string
  readonly record: RecordKind
  readonly procedure: string
  /** Tag of its cylinder; empty when it is not known. */
  readonly tag: string
  /** false: the two machine records do not tell whether it is the same machine, so it counts as the same. */
  readonly told: boolean
  /** The last of its entries that was read, and the hash of that line. */
  readonly upTo: number
  readonly head: string
  /** Time of that entry, by its own clock; empty when nothing could be read. */
  readonly written: string
  readonly people: readonly string[]
  readonly left: boolean
  /** Why a STOP is open in it, in words; null: none is. */
  readonly stop: string | null
  /** What its hold points hold while people may be behind them: open, or fallen and nobody called clear yet. */
  readonly inside: readonly NamedHazard[]
  /** Every hazard that its procedure names. */
  readonly names: readonly NamedHazard[]
  /** The step it is at, or waits to begin, that lets hazards in. */
  readonly letting: { readonly step: string; readonly hazards: readonly NamedHazard[] } | null
  readonly closed: string | null
  /** Of a sheet that is keyed in: what it has in the machine, in words; left out where that is nothing. */
  readonly placed?: readonly string[]
  /** Why its log cannot be read; what else is said of it is as it was read last. */
  readonly unread: string | null
}

/** One look at another job: how it stands, and everything it ever did that could matter here. */
export interface OtherJob extends JobSeen {
  readonly doings: readonly Doing[]
}

/** What a look at the folder of jobs found. */
export type Others = readonly OtherJob[]

/** For a job that has no folder to share. */
export const NO_OTHERS: Others = []

export function keyOf({ record, job }: Pick<JobSeen, 'record' | 'job'>): string {
  return `${record} ${job}`
}

/** Practice is no record of work on a machine: records of different kinds are shown to each other and void nothing. */
export function counts(state: State, other: Pick<JobSeen, 'record'>): boolean {
  return other.record === state.record
}

export function openElsewhere(state: State): readonly JobSeen[] {
  return Object.values(state.elsewhere).filter((one) => one.closed === null)
}

/** The last letters of its id are its own; the whole id names the tag, which is to be read off the plate. */
export function jobNumber(job: string): string {
  return /-([0-9a-f]{4})$/.exec(job)?.[1] ?? job
}

/** `job 3f2a (ML, KH on it)`. */
export function jobName({ job, people, unread }: JobSeen): string {
  const who = people.length === 0 ? 'nobody on it' : `${list(people)} on it`
  return unread === null ? `job ${jobNumber(job)} (${who})` : `job ${jobNumber(job)}`
}

export function hazardNames(hazards: readonly NamedHazard[]): string {
  return list(hazards.map((h) => h.name))
}

const plain = (name: string) => name.trim().toLowerCase()

function same(one: NamedHazard, two: NamedHazard): boolean {
  return one.id === two.id || plain(one.name) === plain(two.name)
}

/**
 * Ids of our hazards that theirs are: by id or by name. Null: one of theirs is none that our procedure names, so it cannot
 * be told from any of ours.
 */
export function ourHazards(defs: Definitions, theirs: readonly NamedHazard[]): ReadonlySet<string> | null {
  const found = new Set<string>()
  for (const their of theirs) {
    const ours = defs.procedure.hazards.filter((h) => same(h, their))
    if (ours.length === 0) return null
    for (const h of ours) found.add(h.id)
  }
  return found
}

function meets(defs: Definitions, theirs: readonly NamedHazard[], ours: readonly string[]): boolean {
  const known = ourHazards(defs, theirs)
  return known === null || ours.some((id) => known.has(id))
}

/** Why no evidence is taken and no gate opens that holds these hazards, as a clause; null when nothing holds it. */
export function holdsGate(defs: Definitions, state: State, holds: readonly string[]): string | null {
  for (const other of openElsewhere(state)) {
    if (!counts(state, other)) continue
    if (other.unread !== null)
      return `the log of ${jobName(other)} cannot be read, so nobody knows what it takes off (${other.unread}); barover verify says where, and its file leaves the folder of jobs only once somebody knows what that job did`
    if (other.stop !== null)
      return `STOP is open in ${jobName(other)} on this machine: ${other.stop}; it is released there${state.record === 'PRACTICE' ? HOW_ON : ''}`
    if (other.letting !== null && meets(defs, other.letting.hazards, holds))
      return `${jobName(other)} is at "${other.letting.step}", which can let in ${hazardNames(other.letting.hazards)}; what that voids is proved anew once it is done`
  }
  return null
}

/** Whoever practises alone has no lead beside them; a record of work goes on by a lead and by nothing else. */
const HOW_ON = ' by a lead; without one practise in another folder: leave, then barover --jobs and a new name'

/** Another job is at a step that lets in what this holds, or waits to begin it. */
export function isWaitedFor(defs: Definitions, state: State, holds: readonly string[]): boolean {
  return openElsewhere(state).some(
    (other) => counts(state, other) && other.letting !== null && meets(defs, other.letting.hazards, holds),
  )
}

/** Why a step that lets hazards in may not begin: people of another job are let in against them. */
export function holdsStep(defs: Definitions, state: State, placed: PlacedStep): string | null {
  return holdsLetting(defs, state, lettingHazards(defs, placed), 'this')
}

/** The same of anything that lets these hazards in, by what it is called. */
export function holdsLetting(
  defs: Definitions,
  state: State,
  letsIn: readonly NamedHazard[],
  what: string,
): string | null {
  if (letsIn.length === 0) return null
  const ids = letsIn.map((h) => h.id)
  for (const other of openElsewhere(state)) {
    if (!counts(state, other)) continue
    if (other.unread !== null || other.stop !== null) return holdsGate(defs, state, ids)
    const isUnnamed = letsIn.some((h) => !other.names.some((their) => same(h, their)))
    if (other.inside.length > 0 && (isUnnamed || meets(defs, other.inside, ids)))
      return `${what} can let in ${hazardNames(letsIn)}, and ${jobName(other)} has let people in against ${hazardNames(metBy(letsIn, other.inside))}; they come out first, and key there that they have${other.left ? ': take that job up, as it was left' : ''}`
  }
  return null
}

/** Those of theirs that are among ours; all of theirs where none is told apart. */
function metBy(ours: readonly NamedHazard[], theirs: readonly NamedHazard[]): readonly NamedHazard[] {
  const met = theirs.filter((their) => ours.some((h) => same(h, their)))
  return met.length === 0 ? theirs : met
}

/** What the step lets in again, with the names the procedures have for it. */
export function lettingHazards(defs: Definitions, { step }: PlacedStep): readonly NamedHazard[] {
  const ids = 'lets_in' in step ? (step.lets_in ?? []) : []
  return ids.map((id) => ({ id, name: hazardName(defs, id) }))
}
