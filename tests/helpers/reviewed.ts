// A walk reviewed as if people had keyed it at the machine: what tests spoil is then all that a review may find.
import type { Definitions } from '../../src/core/job/definitions.ts'
import type { Body, Entry } from '../../src/core/job/entries.ts'
import type { State } from '../../src/core/job/state.ts'
import { readStamp, stamp } from '../../src/core/lib/instant.ts'
import type { Beside } from '../../src/core/review/beside.ts'
import type { Exception, Kind } from '../../src/core/review/exception.ts'
import { movesOf } from '../../src/core/review/look.ts'
import { type Review, reviewOf } from '../../src/core/review/review.ts'
import { exampleDefs, noOverhauls, Walk } from './example.ts'
import { gate, NO_START, type Raw, readOne, smallDefs, tell, WITNESS } from './small-job.ts'

/** A log that is sound and proved whole, with nothing beside it. */
export const SOUND: Beside = {
  log: { faults: [], head: 'like', whole: 'proved', checked: [] },
  files: [],
  strays: [],
  crewBefore: null,
}

/** Keyed by a person on the clock of the computer. */
export function asPerson(entries: readonly Entry[]): Entry[] {
  return entries.map((entry) =>
    entry.type === 'job.opened' ? { ...entry, answers: 'person', clock: 'system' } : entry,
  )
}

export function stateOf(entries: readonly Entry[]): State {
  const last = movesOf(entries).at(-1)
  if (last === undefined) throw new Error('no entries')
  return last.after
}

export function reviewOfEntries(
  defs: Definitions,
  entries: readonly Entry[],
  beside: Partial<Beside> = {},
): Review {
  return reviewOf(defs, entries, stateOf(entries), { ...SOUND, ...beside })
}

export function reviewed(walk: Walk, beside: Partial<Beside> = {}): Review {
  return reviewOfEntries(walk.engine.defs, asPerson(walk.entries), beside)
}

export const kindsOf = (review: Review): Kind[] => [...new Set(review.exceptions.map((one) => one.kind))]

export function only(review: Review, kind: Kind): Exception {
  const found = review.exceptions.filter((one) => one.kind === kind)
  const [first] = found
  if (first === undefined || found.length > 1)
    throw new Error(`${found.length} of ${kind}: ${review.exceptions.map((one) => one.what).join(' | ')}`)
  return first
}

/** Entries put in by hand before the one at `at`, as a log from elsewhere might hold them. */
export function withEntries(entries: readonly Entry[], at: number, ...bodies: Body[]): Entry[] {
  const before = entries[at - 1]
  if (before === undefined) throw new Error('nothing stands before that place')
  const put = bodies.map((body): Entry => ({ ...body, seq: 0, at: before.at, by: 'RO' }))
  return [...entries.slice(0, at), ...put, ...entries.slice(at)].map((entry, seq) => ({ ...entry, seq }))
}

/** The time of an entry, moved by minutes. */
export function moved(at: string, minutes: number): string {
  const was = readStamp(at)
  if (was === null) throw new Error(`no time: ${at}`)
  return stamp({ ...was, ms: was.ms + minutes * 60_000 })
}

/** A gate, a tick, a size, a look: one of each that can go wrong. */
export const SMALL: readonly Raw[] = [
  gate('stopped', ['start'], [NO_START, WITNESS]),
  { id: 'wiped', kind: 'confirm', title: 'wiped', seen: 'Dry.', exposes: ['start'] },
  readOne('size'),
  {
    id: 'look',
    kind: 'observe',
    title: 'look',
    conditions: [
      { id: 'sound', label: 'Sound' },
      { id: 'scored', label: 'Scored', note: true, finding: true },
    ],
  },
  tell('end'),
]

export const SMALL_DEFS = smallDefs(SMALL)

/** At the hold point of the small job. */
/** Keyed so that there is a minute between the gas figures of two places: the meter had settled. */
export function settled(defs?: Definitions): Walk {
  const walk = new Walk(defs)
  walk.stepMs = 20_000
  return walk
}

export const smallStart = () => new Walk(SMALL_DEFS).keys('RO', 'TC-401-1')
export const smallAtSize = () => smallStart().keys('NO START', 'KH', '1', '1')
export const smallDone = () => smallAtSize().keys('9.5033', '1', '')

/** A bore that is new, without overhauls of before to compare it with. */
export const NEW_BORE = exampleDefs({ machine: noOverhauls })
export const NEW_BORE_LINES = [
  ...['9.5007', '9.5008', '9.5004', '9.5005', '9.5009', '9.5009'],
  ...['9.5006', '9.5006', '9.5008', '9.5007', '9.5003', '9.5004'],
]
