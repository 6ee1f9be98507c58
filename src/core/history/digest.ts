// What a history keeps of one job: small, plain, and read once from its log, so that thousands of them fit where one log does.
import { type Change, changesOf, hoursRead, recordedSame, type Taken } from '../job/changes.ts'
import type { Definitions, PlacedStep, RecordKind } from '../job/definitions.ts'
import { stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { applicability } from '../job/next.ts'
import { nonconformances } from '../job/nonconformance.ts'
import { type State, standing } from '../job/state.ts'
import { readStamp } from '../lib/instant.ts'
import { wearsTo } from '../review/hours-left.ts'
import { placeName } from '../talk/names.ts'
import type { Renewal } from '../wear/history.ts'

/** A size, metres; `U` at k = 2, null where none is stated. */
export interface Sized {
  readonly si: number
  readonly U: number | null
}

/** What an overhaul of before left at a place, by the machine record of the job. */
export interface Earlier extends Sized {
  readonly report: string
  readonly day: string
  readonly hours: number
  readonly since: Renewal
  /** Why no wear reaches across it, as a clause; null: nothing was renewed then. */
  readonly why: string | null
}

export interface PlaceDigest {
  readonly of: string
  readonly station: string
  readonly axis: string | null
  /** As the sheet names it. */
  readonly name: string
  readonly found: Sized | null
  readonly left: Sized | null
  /** Stamp of the last of its readings that stand; of a sheet as it is written there. Left out: not known. */
  readonly at?: string
  /** Why it was measured on HOLD, with its sheet: wear told from it is not to be trusted. Left out: it was not. */
  readonly held?: string
  readonly wears: 'larger' | 'smaller' | null
  readonly limit: { readonly si: number; readonly source: string } | null
  readonly firstSet: 'no' | 'unknown'
  /** Worked on or renewed on this job, or to be, so that what wore is there no more: how that is known. Null: it was not. */
  readonly remade: string | null
  readonly earlier: readonly Earlier[]
}

/** A step under the name of the procedure it belongs to, also where that is a part of a larger one. */
export interface StepName {
  readonly procedure: string
  readonly step: string
}

export interface FindingDigest extends StepName {
  /** What the step judges or looks for: with its title it is the same step in every procedure. */
  readonly about: string
  readonly word: string
}

export interface JobDigest {
  readonly job: string
  readonly record: RecordKind
  /** Keyed in from a paper sheet. */
  readonly paper: boolean
  readonly machine: string
  /** The unit of lengths in its shop. */
  readonly unit: 'in' | 'mm'
  readonly title: string
  /** Stamps. */
  readonly opened: string
  readonly closed: string | null
  /** The verdict as found; and as left, where that is told apart. */
  readonly outcome: string | null
  readonly asLeft: string | null
  /** Running hours of the machine; null where they were not read. */
  readonly hours: number | null
  readonly places: readonly PlaceDigest[]
  readonly findings: readonly FindingDigest[]
  /** Steps that applied, each with how often its answer was put right and how often a place of it was entered as n/a. */
  readonly steps: readonly (StepName & { readonly corrected: number; readonly notApplicable: number })[]
}

export function digestOf(defs: Definitions, entries: readonly Entry[], state: State): JobDigest {
  return {
    job: state.job,
    record: state.record,
    paper: state.paper !== null,
    machine: defs.machine.machine,
    unit: defs.machine.shop_units.length,
    title: defs.procedure.title,
    opened: entries[0]?.at ?? state.lastAt,
    closed: entries.find(({ type }) => type === 'job.closed')?.at ?? null,
    outcome: state.closed,
    asLeft: state.asLeft,
    hours: hoursRead(defs, state),
    places: changesOf(defs, state).flatMap((change) => placeDigest(defs, state, change)),
    findings: nonconformances(defs, state)
      .filter(({ stands }) => stands)
      .map(({ step, word }) => ({
        ...nameOf(defs, stepById(defs, step)),
        about: aboutOf(defs, step),
        word: wordText(defs, step, word),
      })),
    steps: stepDigests(defs, entries, state),
  }
}

function placeDigest(defs: Definitions, state: State, change: Change): PlaceDigest[] {
  const one = change.found ?? change.left
  if (one === null || one.step.step.quantity !== 'length') return []
  const { step, place } = one
  const before = recordedSame(defs, one)
  const wears = before.findLast((figure) => figure.wears !== null)?.wears ?? null
  const to = wears === null ? null : wearsTo(defs, state, change, wears)
  return [
    {
      of: change.of,
      station: place.station.id,
      axis: place.axis?.id ?? null,
      name: placeName(defs, step.id, place.key),
      found: sized(change.found),
      left: sized(change.left),
      ...readAt(state, change),
      ...heldIn(change),
      wears,
      limit: to === null ? null : { si: to.limit.value, source: to.limit.source },
      firstSet: to?.firstSet ?? 'unknown',
      remade: to === null ? (change.left === null ? null : 'read anew as left') : to.remade,
      earlier: before.map(({ report, on, hours, si, u, since, why }) => ({
        why,
        report,
        day: on,
        hours,
        si,
        U: u,
        since,
      })),
    },
  ]
}

function heldIn({ held }: Change): { readonly held?: string } {
  const why = held.found ?? held.left
  return why === null ? {} : { held: why }
}

/** By the instant and not by its text. */
function readAt(state: State, { found, left }: Change): { readonly at?: string } {
  const all = [found, left].flatMap((one) => (one === null ? [] : standing(state, one.place.key)))
  const stamps = all.map(({ at, paper }) =>
    paper?.time != null && SHEET_TIME.test(paper.time)
      ? `${paper.time.replace(' ', 'T')}:00.000${at.slice(23)}`
      : at,
  )
  const ms = (text: string) => readStamp(text)?.ms ?? Number.NEGATIVE_INFINITY
  const [first, ...rest] = stamps
  return first === undefined ? {} : { at: rest.reduce((a, b) => (ms(b) > ms(a) ? b : a), first) }
}

const SHEET_TIME = /^\d{4}-\d\d-\d\d \d\d:\d\d$/

function sized(taken: Taken | null): Sized | null {
  return taken === null ? null : { si: taken.si, U: taken.u }
}

function nameOf(defs: Definitions, placed: PlacedStep): StepName {
  return { procedure: placed.inside.at(-1)?.step.title ?? defs.procedure.title, step: placed.step.title }
}

/** `figures: rod-taper, rod-undersize`: characteristics that are judged, or conditions to choose from, whatever their order. */
function aboutOf(defs: Definitions, id: string): string {
  const { step } = stepById(defs, id)
  switch (step.kind) {
    case 'judge':
      return step.compute === 'figures'
        ? `figures: ${inOrder(step.figures.map((one) => one.characteristic))}`
        : step.compute
    case 'observe':
      return `observe: ${inOrder(step.conditions.map((one) => one.id))}`
    default:
      return step.kind
  }
}

function inOrder(ids: readonly string[]): string {
  return [...new Set(ids)].sort().join(', ')
}

function wordText(defs: Definitions, id: string, word: string): string {
  const { step } = stepById(defs, id)
  return step.kind === 'observe' ? (step.conditions.find((one) => one.id === word)?.label ?? word) : word
}

const CORRECTED: readonly Entry['type'][] = ['reading.corrected', 'finding.corrected', 'step.reopened']

function stepDigests(defs: Definitions, entries: readonly Entry[], state: State): JobDigest['steps'] {
  const corrected = counted(entries.filter(({ type }) => CORRECTED.includes(type)))
  const notApplicable = counted(entries.filter(({ type }) => type === 'reading.not-applicable'))
  return defs.steps.flatMap((placed) =>
    placed.step.kind === 'part' || applicability(defs, state, placed) !== 'do'
      ? []
      : [
          {
            ...nameOf(defs, placed),
            corrected: corrected.get(placed.id) ?? 0,
            notApplicable: notApplicable.get(placed.id) ?? 0,
          },
        ],
  )
}

function counted(entries: readonly Entry[]): Map<string, number> {
  const counts = new Map<string, number>()
  for (const entry of entries)
    if ('step' in entry && entry.step !== null) counts.set(entry.step, (counts.get(entry.step) ?? 0) + 1)
  return counts
}
